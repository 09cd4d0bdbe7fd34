"""`diary extract`: what is understood of one file, without a diary."""

import json
import sys
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option
from diary.cli.listening import listening_options

if TYPE_CHECKING:
    from diary.speech.recognise import Progress
    from diary.speech.settings import SpeechSettings


@click.command("extract")
@click.argument("source", type=click.Path(path_type=Path), metavar="FILE")
@click.option("--register", type=click.Path(path_type=Path), help="CSV of the seedlings on record.")
@click.option("--cultivars", type=click.Path(path_type=Path), help="Named plants, one a line.")
@click.option("--recorded", type=click.DateTime(["%Y-%m-%d"]), help="The day it was recorded.")
@listening_options
@click.option(
    "--vocabulary", type=click.Path(path_type=Path), help="Folder of vocabulary files of your own."
)
@click.option(
    "--explain", is_flag=True, help="Say why: the words, the rule, the score, the runner-up."
)
@json_option
def extract_command(
    source: Path,
    register: Path | None,
    cultivars: Path | None,
    recorded: datetime | None,
    speech: "SpeechSettings | None",
    vocabulary: Path | None,
    explain: bool,
    as_json: bool,
) -> None:
    """Read FILE (recording, captions or note) and print what it says; stores nothing.

    \b
    Example:  diary extract walk.vtt --register register.csv --cultivars names.txt --explain
              diary extract walk.mp4 --recorded 2031-06-02 --json
    """
    from diary.extraction import document, explained, extract, load_known

    transcript, reading, day = extract(
        source,
        known=load_known(register, cultivars),
        recorded=recorded.date() if recorded else None,
        speech=speech,
        vocabulary=vocabulary,
        on_progress=_progress,
    )
    if as_json:
        click.echo(
            json.dumps(
                document(source.name, transcript, reading, day), ensure_ascii=False, indent=1
            )
        )
    elif explain:
        click.echo(explained(reading))
    else:
        for clip in reading.clips:
            click.echo(f"{clip.start_ms / 1000:7.1f} s  {clip.plant.title}")
            for o in clip.observations:
                said = " ".join([*o.modifiers, *([o.part] if o.part else []), str(o.value)])
                unit = " mm" if o.unit == "mm" else ""
                mark = "" if o.band.value == "sure" else " ?"
                click.echo(f"{o.start_ms / 1000:7.1f} s    {o.trait}: {said}{unit}{mark}")
        if not reading.clips:
            click.echo("Nothing was understood as being about a plant.")


def _progress(progress: "Progress") -> None:
    if progress.total_ms and sys.stderr.isatty():
        click.echo(
            f"\rlistening, {100 * progress.done_ms // progress.total_ms} %", err=True, nl=False
        )
