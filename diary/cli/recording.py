"""`diary recording`: one recording: its day, title, group; joined to another; removed."""

from datetime import datetime
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import clock, day, echo_json

if TYPE_CHECKING:
    from diary.records.recordings import Recording
    from diary.records.store import Store


@click.command("recording")
@click.argument("name")
@click.argument("action", required=False, type=click.Choice(["remove"]))
@click.option("--date", "recorded", type=click.DateTime(["%Y-%m-%d"]), help="When it was filmed.")
@click.option("--title", help="What to call it.")
@click.option("--group", help="The plant group it is about.")
@click.option("--joins", metavar="OTHER", help="It goes on where OTHER ended.")
@json_option
@with_store
def recording_command(
    store: "Store",
    name: str,
    action: str | None,
    recorded: datetime | None,
    title: str | None,
    group: str | None,
    joins: str | None,
    as_json: bool,
) -> None:
    """Show the recording NAME, change what is known of it, or remove it.

    Removing keeps your corrections and the file itself; adding the file again brings
    everything back.

    \b
    Example:  diary recording bench-walk --date 2031-06-02
              diary recording bench-walk-2 --joins bench-walk
              diary recording bench-walk remove
    """
    from diary.pipeline import read_again
    from diary.records.recordings import change_recording, recording, remove_recording

    one = recording(store, name)
    if action == "remove":
        remove_recording(store, one.id)
        click.echo(f"{one.name}: removed. Your corrections are kept, and so is {one.path}")
        return
    other = recording(store, joins).id if joins else None
    if recorded or title or group or other:
        change_recording(
            store,
            one.id,
            recorded=recorded.date() if recorded else None,
            title=title,
            group=group,
            joins=other,
        )
        if recorded or other:
            read_again(store, one.id)
        one = recording(store, one.id)
    if as_json:
        echo_json(one)
    else:
        _show(one)


def _show(one: "Recording") -> None:
    facts = [
        ("title", one.title),
        ("file", str(one.path)),
        ("filmed", f"{day(one.recorded)} ({one.recorded_from})" if one.recorded else "-"),
        ("length", clock(one.duration_ms) if one.duration_ms else "-"),
        ("plant group", one.group or "-"),
        ("words from", one.words_from or f"interrupted at {clock(one.done_ms)}"),
        ("plants, clips", f"{one.plants}, {one.clips}"),
        ("content (SHA-256)", one.id),
    ]
    click.echo(one.name + ("  (removed)" if one.removed else ""))
    for heading, fact in facts:
        click.echo(f"  {heading}: {fact}")
