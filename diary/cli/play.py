"""`diary play`: open the recording where a plant is spoken of."""

import re
import shutil
import subprocess
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import clock, echo_json
from diary.errors import NotFound, UsageError

if TYPE_CHECKING:
    from diary.records.record import Moment
    from diary.records.store import Store

_PLACE = re.compile(r"^(?P<name>.+)@(?:(?P<h>\d+):)?(?P<m>\d+):(?P<s>\d{2})$")
# players that can begin in the middle, and how each is told the seconds
_PLAYERS = (
    ("mpv", ("--start={s}",)),
    ("vlc", ("--start-time={s}",)),
    ("ffplay", ("-autoexit", "-ss", "{s}")),
)


@click.command("play")
@click.argument("what", metavar="NUMBER|CLIP")
@click.option("--print", "only_print", is_flag=True, help="Print addresses instead of playing.")
@json_option
@with_store
def play_command(store: "Store", what: str, only_print: bool, as_json: bool) -> None:
    """Play the latest clip of a plant, or the clip at a place such as bench-walk@1:23.

    With --print: one address a clip, FILE#t=START,END in seconds (W3C Media Fragments).

    \b
    Example:  diary play 23-04
              diary play bench-walk@1:23
              diary play 23-04 --print
    """
    from diary.records.recordings import locate, media_fragment

    moments = _moments(store, what)
    if only_print or as_json:
        found = [(moment, locate(store, moment.recording)) for moment in moments]
        addresses = [media_fragment(path, m.start_ms, m.end_ms) for m, path in found]
        if as_json:
            echo_json(
                [{"address": a, **_plain(m)} for a, m in zip(addresses, moments, strict=True)]
            )
        else:
            click.echo("\n".join(addresses))
        return
    moment = moments[-1]
    path = locate(store, moment.recording)
    start = f"{moment.start_ms / 1000:.1f}"
    for player, told in _PLAYERS:
        program = shutil.which(player)
        if program:
            arguments = [one.format(s=start) for one in told]
            subprocess.run([program, *arguments, str(path)], check=False)
            return
    click.echo(f"Opening {path}: go to {clock(moment.start_ms)}")
    if click.launch(str(path)) != 0:
        raise UsageError(f"No player opened {path}. Open it yourself, at {clock(moment.start_ms)}.")


def _plain(moment: "Moment") -> dict[str, object]:
    return {
        "recording": moment.recording,
        "start_ms": moment.start_ms,
        "end_ms": moment.end_ms,
        "day": moment.day,
        "text": moment.text,
    }


def _moments(store: "Store", what: str) -> list["Moment"]:
    """The clips of a plant, oldest first, or the one clip at a place."""
    from diary.records.pages import plant_page
    from diary.records.recordings import clips, recording

    place = _PLACE.match(what)
    if place is None:
        moments = [clip.moment for clip in plant_page(store, what).clips]
        if not moments:
            raise NotFound(f"{what} has not been seen in any recording yet.")
        return moments
    one = recording(store, place["name"])
    at_ms = 1000 * (3600 * int(place["h"] or 0) + 60 * int(place["m"]) + int(place["s"]))
    for clip in clips(store, one.id):
        # a place is told to the second: the clip may begin later in that second
        if clip.moment.start_ms < at_ms + 1000 and clip.moment.end_ms > at_ms:
            return [clip.moment]
    raise NotFound(f"No clip at {what}. `diary seedling NUMBER` shows where clips begin.")
