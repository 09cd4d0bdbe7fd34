"""`diary reel`: every clip of one plant as one film."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import clock, echo_json

if TYPE_CHECKING:
    from diary.records.store import Store


@click.command("reel")
@click.argument("plant")
@click.option(
    "--out",
    type=click.Path(path_type=Path, dir_okay=False),
    help="The film to write (default: PLANT.mp4). Its captions go beside it, as .vtt.",
)
@json_option
@with_store
def reel_command(store: "Store", plant: str, out: Path | None, as_json: bool) -> None:
    """Cut all clips of PLANT and join them to one film with captions, oldest first.

    \b
    Example:  diary reel 24-11A
              diary reel 24-11A --out reels/24-11A.mp4
    """
    from diary.export.captions import webvtt
    from diary.export.reel import make_reel, plan_reel, reel_captions
    from diary.export.sheet_page import file_stem

    plan = plan_reel(store, plant)
    target = out or Path(f"{file_stem(plant)}.mp4")
    for text in plan.left_out:
        click.echo(f"left out: {text}", err=True)
    with click.progressbar(length=plan.length_ms, label=f"Making {target}", file=sys.stderr) as bar:
        make_reel(plan.shots, target, on_progress=lambda done, total: bar.update(done - bar.pos))
    captions = target.with_suffix(".vtt")
    captions.write_text(webvtt(reel_captions(plan.shots)), encoding="utf-8")
    if as_json:
        echo_json({"file": target, "captions": captions, "plan": plan})
        return
    at = 0
    for shot in plan.shots:
        click.echo(
            f"{clock(at)}  {shot.title}  ({shot.path.name} {clock(shot.start_ms)} to "
            f"{clock(shot.end_ms)})"
        )
        at += shot.length_ms
    click.echo(f"written: {target} ({clock(plan.length_ms)}) and {captions}")
