"""`diary seedling`: all that is known of one plant."""

import textwrap
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import clock, day, echo_json

if TYPE_CHECKING:
    from diary.records.pages import PlantPage
    from diary.records.record import Record
    from diary.records.store import Store


@click.command("seedling")
@click.argument("number")
@json_option
@with_store
def seedling_command(store: "Store", number: str, as_json: bool) -> None:
    """Show a plant: its cross, what is believed of it, every clip with the words said.

    NUMBER may be a former number, or the name of a named plant.

    \b
    Example:  diary seedling 23-04
              diary seedling "Copper Lantern" --json
    """
    from diary.records.pages import plant_page
    from diary.records.recordings import recordings

    page = plant_page(store, number)
    if as_json:
        echo_json(page)
        return
    names = {one.id: one.name for one in recordings(store)}
    click.echo("\n".join(_head(page)))
    if page.beliefs:
        click.echo("\nBelieved now")
        for belief in page.beliefs:
            doubt = "" if belief.band.value == "sure" else f" [{belief.band.value}]"
            click.echo(f"  {_said(belief)}{doubt} ({belief.because})")
            if belief.conflict:
                click.echo(f"    but: {belief.conflict}")
    if not page.clips:
        click.echo("\nNot seen in any recording yet.")
    for clip in page.clips:
        moment = clip.moment
        place = f"{names[moment.recording]}@{clock(moment.start_ms)}"
        was = f"  (heard as {clip.heard_plant})" if clip.heard_plant else ""
        click.echo(f"\n{day(moment.day)}  {place} to {clock(moment.end_ms)}{was}")
        click.echo(
            textwrap.fill(moment.text, 92, initial_indent="  “", subsequent_indent="   ") + "”"
        )
        for record in clip.records:
            click.echo(f"    {clock(record.moment.start_ms):>7}  {_said(record)}{_mark(record)}")


def _head(page: "PlantPage") -> list[str]:
    lines = [page.plant.title]
    seedling, cross = page.seedling, page.cross
    heard = {b.trait: str(b.value) for b in page.beliefs if b.trait.endswith("_parent")}
    seed = (seedling and seedling.seed_parent) or (cross and cross.seed_parent)
    pollen = (seedling and seedling.pollen_parent) or (cross and cross.pollen_parent)
    if seed or pollen:
        lines.append(f"  cross: {seed or '?'} x {pollen or '?'} (seed parent first)")
    elif heard:
        parents = (heard.get("seed_parent", "?"), heard.get("pollen_parent", "?"))
        lines.append(f"  cross, as heard: {' x '.join(parents)} (seed parent first)")
    if seedling is None:
        lines.append("  not in the register")
        return lines
    facts = [
        ("sown", seedling.sown),
        ("pricked out", seedling.pricked_out),
        ("first flower", seedling.first_flower),
        ("place", seedling.place),
        ("status", seedling.status),
        ("formerly", ", ".join(seedling.former)),
        ("note", seedling.note),
    ]
    lines += [f"  {name}: {value}" for name, value in facts if value]
    return lines


def _said(one: object) -> str:
    from diary.records.beliefs import Belief
    from diary.records.record import Record
    from diary.records.wording import trait_words, value_words

    assert isinstance(one, Belief | Record)
    value = value_words(one.value, one.unit, one.modifiers)
    return f"{trait_words(one.trait, one.part)}: {value}"


def _mark(record: "Record") -> str:
    from diary.records.wording import value_words

    marks = []
    if record.hedged:
        marks.append("about")
    if record.band.value != "sure":
        marks.append(record.band.value)
    heard = record.heard
    if record.origin.value == "corrected" and heard and heard.value != record.value:
        marks.append(f"corrected; heard {value_words(heard.value, heard.unit, heard.modifiers)}")
    elif record.origin.value == "corrected":
        marks.append("checked")
    elif record.origin.value == "added":
        marks.append("added")
    return f"  [{', '.join(marks)}]" if marks else ""
