"""`diary list`: what to keep, discard, take cuttings of, show, name, look for."""

from datetime import date, datetime
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.moments import names_of, place, quoted
from diary.cli.output import day, echo_json, table

if TYPE_CHECKING:
    from diary.insight.lists import PlantList
    from diary.records.store import Store

_CAUTION = (
    "Before you spray: follow the product's label and local rules, wear what the label asks for, "
    "and leave what needs a licence to those who hold one."
)


@click.command("list")
@click.argument("name", required=False)
@click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    help="As of this day (default: today, or the last walk's day if that is later).",
)
@json_option
@with_store
def list_command(store: "Store", name: str | None, on: datetime | None, as_json: bool) -> None:
    """Show a list, each entry with the clip that says so; without NAME, how long each is.

    NAME is one of keep, discard, watch, cuttings, breeding, show, naming, repot, unseen,
    first-flower, unlabelled, promised.

    \b
    Example:  diary list keep
              diary list first-flower --on 2031-06-14
    """
    from diary.insight.lists import all_lists, plant_list, reference_day
    from diary.insight.overview import overview

    look = overview(store)
    when = on.date() if on else reference_day(look, date.today())
    if name is None:
        lists = all_lists(look, on=when)
        if as_json:
            echo_json(lists)
            return
        rows = [(one.name, str(len(one.entries)), one.heading) for one in lists]
        click.echo(table(("list", "plants", "what"), rows))
        return
    made = plant_list(look, name, on=when)
    if as_json:
        echo_json(made)
        return
    click.echo(f"{made.heading}, as of {when.isoformat()}: {len(made.entries)}")
    _show(made, names_of(look))


def _show(made: "PlantList", names: dict[str, str]) -> None:
    for entry in made.entries:
        title = entry.plant.title if entry.plant else "(no plant)"
        click.echo(f"\n{title}  {entry.why}  {day(entry.day)}  {place(names, entry.moment)}")
        if entry.words:
            click.echo(f"  {quoted(entry.words)}")
    if any(_spray(entry.words) for entry in made.entries):
        click.echo(f"\n{_CAUTION}")


def _spray(words: str) -> bool:
    return any(word in words.casefold() for word in ("spray", "insecticide", "fungicide", "drench"))
