"""`diary demo`: the whole job on recordings that come with the program."""

import shutil
from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import diary_folder, folder_option, json_option
from diary.cli.output import clock, day, echo_json, table
from diary.cli.progress import ProgressLine
from diary.errors import NotFound, UsageError

if TYPE_CHECKING:
    from diary.records.pages import PlantSummary
    from diary.records.store import Store

MEDIA = (".mp4", ".m4a")


@click.command("demo")
@click.option("--fresh", is_flag=True, help="Throw the demo's diary away and begin again.")
@folder_option
@json_option
@click.pass_context
def demo_command(ctx: click.Context, fresh: bool, diary: Path | None, as_json: bool) -> None:
    """Make a diary of its own from three invented recordings, and show what came of it.

    \b
    Example:  diary demo
    """
    from diary.records.pages import plants
    from diary.records.store import DATABASE_NAME, open_store
    from diary.settings import demo_store

    clips = demo_clips()
    chosen = diary or diary_folder(ctx)
    if fresh and chosen is not None:
        raise UsageError(f"--fresh only clears the demo's own folder, never {chosen}.")
    folder = chosen or demo_store()
    if fresh and (folder / DATABASE_NAME).is_file():
        shutil.rmtree(folder)
    store = open_store(folder)
    try:
        _fill(store, clips, quiet=as_json)
        summaries = plants(store)
        if as_json:
            echo_json(summaries)
        else:
            _show(summaries, folder, store)
    finally:
        store.close()


def demo_clips() -> Path:
    """The folder of the demo recordings: inside the package, or beside it in a checkout."""
    package = Path(__file__).resolve().parent.parent
    for folder in (package / "demo_clips", package.parent / "demo_clips"):
        if any(one.suffix in MEDIA for one in folder.glob("*")):
            return folder
    raise NotFound(
        "The demo recordings are not here. Install the program again, or use a checkout."
    )


def _fill(store: "Store", clips: Path, *, quiet: bool) -> None:
    from diary.pipeline import add
    from diary.records.register_csv import apply_plan, import_names, plan_import

    apply_plan(store, plan_import(store, clips / "register.csv"))
    import_names(store, clips / "cultivars.txt")
    for path in sorted(one for one in clips.iterdir() if one.suffix in MEDIA):
        with ProgressLine(path.name) as line:
            added = add(store, path, report=line.show)
        if not quiet:
            one = added.recording
            click.echo(
                f"{path.name}: {'added' if added.new else 'here already'}, filmed "
                f"{day(one.recorded)}, {one.plants} plants in {one.clips} clips"
            )


def _show(summaries: "tuple[PlantSummary, ...]", folder: Path, store: "Store") -> None:
    from diary.records.pages import plant_page
    from diary.records.recordings import recordings

    names = {one.id: one.name for one in recordings(store)}
    seen = [one for one in summaries if one.clips]
    rows = []
    for one in seen:
        cross = " x ".join(p or "?" for p in (one.seed_parent, one.pollen_parent))
        first = plant_page(store, one.plant.key).clips[0].moment
        rows.append(
            [
                one.plant.title,
                cross if one.seed_parent or one.pollen_parent else "-",
                str(one.clips),
                f"{names[first.recording]}@{clock(first.start_ms)}",
                _values(one, "colour"),
                _values(one, "bloom_diameter") or "-",
                _values(one, "decision") or "-",
            ]
        )
    click.echo()
    headings = ["plant", "cross", "clips", "first seen", "colours", "bloom", "decision"]
    click.echo(table(headings, rows, widest=40))
    twice = next((one for one in seen if one.clips > 1), seen[0] if seen else None)
    number = twice.plant.key if twice else "NUMBER"
    at = f'--diary "{folder}"'
    click.echo("\nWhere to look next")
    for told, command in (
        ("all that is known of a plant", f"diary seedling {number} {at}"),
        ("where it is spoken of", f"diary play {number} --print {at}"),
        ("words and traits", f"diary find white throat {at}"),
        ("your own recording", "diary add FILE"),
        ("everything else", "diary --help"),
    ):
        click.echo(f"  {told + ':':32} {command}")


def _values(one: "PlantSummary", trait: str) -> str:
    from diary.records.wording import value_words

    said = [
        (f"{belief.part} " if belief.part and belief.part != "bloom" else "")
        + value_words(belief.value, belief.unit, belief.modifiers)
        for belief in one.values(trait)
    ]
    return ", ".join(said)
