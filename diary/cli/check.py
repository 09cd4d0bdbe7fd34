"""`diary check`: is all well with the diary."""

from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import echo_json

if TYPE_CHECKING:
    from diary.records.store import Store


@click.command("check")
@click.option("--recordings", "media", is_flag=True, help="Read every recording whole, too.")
@json_option
@with_store
@click.pass_context
def check_command(ctx: click.Context, store: "Store", media: bool, as_json: bool) -> None:
    """Look the diary over: the database, lost recordings, corrections that fit nowhere.

    The exit code is 6 when something may be lost, else 0.

    \b
    Example:  diary check
              diary check --recordings
    """
    from diary.errors import StoreError
    from diary.export.integrity import check

    def told(name: str) -> None:
        if media and not as_json:
            click.echo(f"reading {name}", err=True)

    report = check(store, media=media, on_recording=told)
    if as_json:
        echo_json(report)
    else:
        click.echo(
            f"{report.recordings} recordings, {report.plants} plants, "
            f"{report.corrections} corrections"
        )
        for finding in report.findings:
            mark = "LOST?" if finding.serious else "note"
            click.echo(f"{mark}  {finding.kind}: {finding.text}")
        click.echo("All is well." if not report.findings else f"{len(report.findings)} findings.")
    if not report.sound:
        ctx.exit(StoreError.exit_code)
