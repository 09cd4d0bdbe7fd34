"""`diary read-again`: understand the recordings anew, keeping every correction."""

from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.listening import listening_options
from diary.cli.output import echo_json
from diary.cli.progress import ProgressLine

if TYPE_CHECKING:
    from diary.records.store import Store
    from diary.speech.settings import SpeechSettings


@click.command("read-again")
@click.argument("name", required=False, metavar="[RECORDING]")
@listening_options
@json_option
@with_store
def read_again_command(
    store: "Store", name: str | None, speech: "SpeechSettings | None", as_json: bool
) -> None:
    """Read all recordings again, or one: after the register or your words have changed.

    With --model, --effort or --language, they are listened to again first.

    Every correction is kept; one that fits nowhere any more is listed for review.

    \b
    Example:  diary read-again
              diary read-again bench-walk --model small.en
    """
    from diary.pipeline import read_again
    from diary.records.journal import unplaced
    from diary.records.recordings import recording

    which = recording(store, name).id if name else None
    with ProgressLine(name or "all recordings", speech) as line:
        done = read_again(store, which, speech=speech, report=line.show)
    if as_json:
        echo_json(done)
        return
    for one in done:
        click.echo(f"{one.name}: {one.plants} plants in {one.clips} clips")
    lost = len(unplaced(store))
    if lost:
        click.echo(f"{lost} corrections fit nowhere now: diary review")
