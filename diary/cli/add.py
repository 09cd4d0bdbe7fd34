"""`diary add`: recordings, captions and notes into the diary."""

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_new_store
from diary.cli.listening import listening_options
from diary.cli.output import day, echo_json
from diary.cli.progress import ProgressLine

if TYPE_CHECKING:
    from diary.records.store import Store
    from diary.speech.settings import SpeechSettings


@click.command("add")
@click.argument(
    "files", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FILE..."
)
@listening_options
@click.option("--date", "recorded", type=click.DateTime(["%Y-%m-%d"]), help="When it was filmed.")
@click.option("--title", help="What to call it.")
@click.option("--group", help="The plant group it is about.")
@click.option("--captions", is_flag=True, help="Take captions of the same name beside the file.")
@json_option
@with_new_store
def add_command(
    store: "Store",
    files: tuple[Path, ...],
    speech: "SpeechSettings | None",
    recorded: datetime | None,
    title: str | None,
    group: str | None,
    captions: bool,
    as_json: bool,
) -> None:
    """Listen to FILEs and put what is said into the diary.

    Takes video, audio, captions (.vtt, .srt, .json) and typed notes (.txt, .md). A file that
    is here already is not added twice; one that was interrupted goes on where it stopped.

    \b
    Example:  diary add bench-walk.mp4
              diary add --date 2031-06-02 memo.m4a note.txt
              diary add --effort draft three-hours.mov
    """
    from diary.pipeline import add

    results = []
    for path in files:
        with ProgressLine(path.name, speech) as line:
            added = add(
                store,
                path,
                speech=speech,
                recorded=recorded.date() if recorded else None,
                title=title,
                group=group,
                use_captions=captions,
                report=line.show,
            )
        results.append(added)
        one = added.recording
        if not as_json:
            state = "added" if added.new else "here already"
            click.echo(
                f"{one.name}: {state} ({day(one.recorded)}, {one.plants} plants in "
                f"{one.clips} clips)"
            )
            if one.recorded is None:
                click.echo(
                    f"  when was it filmed? diary recording {one.name} --date YYYY-MM-DD", err=True
                )
        for sentence in added.missing:
            click.echo(f"  {sentence}", err=True)
    if as_json:
        echo_json(results)
