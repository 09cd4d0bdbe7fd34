"""`diary recordings`: what is in the diary."""

from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import clock, day, echo_json, table

if TYPE_CHECKING:
    from diary.records.store import Store


@click.command("recordings")
@click.option("--all", "everything", is_flag=True, help="Removed ones too.")
@json_option
@with_store
def recordings_command(store: "Store", everything: bool, as_json: bool) -> None:
    """List the recordings, oldest first.

    \b
    Example:  diary recordings
    """
    from diary.records.recordings import recordings

    found = recordings(store, removed=everything)
    if as_json:
        echo_json(found)
        return
    if not found:
        click.echo("No recordings yet. Add one: diary add FILE")
        return
    rows = []
    for one in found:
        length = clock(one.duration_ms) if one.duration_ms else "-"
        state = "removed" if one.removed else one.words_from or "interrupted"
        if not one.complete and one.duration_ms:
            state = f"interrupted at {clock(one.done_ms)}"
        rows.append(
            [one.name, day(one.recorded), length, one.kind, str(one.plants), str(one.clips), state]
        )
    click.echo(table(["recording", "filmed", "length", "kind", "plants", "clips", "words"], rows))
