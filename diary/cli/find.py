"""`diary find`: words that were said, and traits."""

from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import clock, day, echo_json, table

if TYPE_CHECKING:
    from diary.records.store import Store


@click.command("find")
@click.argument("words", nargs=-1, required=True)
@click.option("--limit", default=40, show_default=True, help="The most places to show.")
@json_option
@with_store
def find_command(store: "Store", words: tuple[str, ...], limit: int, as_json: bool) -> None:
    """Find WORDS in what was said, and the traits they name.

    \b
    Example:  diary find picotee
              diary find white throat
              diary find "bloom over 50 mm"
    """
    from diary.records.recordings import recordings
    from diary.records.search import find

    found = find(store, " ".join(words), limit=limit)
    if as_json:
        echo_json(found)
        return
    click.echo(f"Looked for {'; '.join(found.understood) or 'nothing that can be looked for'}")
    if not found.hits:
        click.echo("Nothing found.")
        return
    names = {one.id: one.name for one in recordings(store)}
    rows = [
        [
            hit.plant.title if hit.plant else "-",
            day(hit.moment.day),
            f"{names[hit.moment.recording]}@{clock(hit.moment.start_ms)}",
            hit.why,
            hit.moment.text,
        ]
        for hit in found.hits
    ]
    click.echo(table(["plant", "day", "where", "found", "said"], rows))
