"""`diary export`: tables, captions, chapters, annotations and breeding data for other programs."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import echo_json

if TYPE_CHECKING:
    from diary.export.formats import ExportedFile
    from diary.records.store import Store


@click.command("export")
@click.argument("format_name", metavar="FORMAT")
@click.argument("recording", required=False)
@click.option("--table", default="plants", show_default=True, help="csv: which table.")
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    help="File (or, for brapi, folder) to write (default: the screen, where it is text).",
)
@json_option
@with_store
def export_command(
    store: "Store",
    format_name: str,
    recording: str | None,
    table: str,
    out: Path | None,
    as_json: bool,
) -> None:
    """Write the diary, or one RECORDING, in the FORMAT of other programs.

    \b
    The whole diary:  csv (--table plants, observations, crosses, recordings), xlsx,
                      annotations (W3C Web Annotations), brapi (BrAPI 2.1)
    One recording:    webvtt, srt (captions), chapters (WebVTT), chapter-lines

    \b
    Example:  diary export csv --table observations --out said.csv
              diary export chapter-lines bench-walk
              diary export brapi --out brapi/
    """
    from diary.errors import UsageError
    from diary.export.formats import export, write_files

    files = export(store, format_name, which=recording, table=table)
    if out is not None:
        written = write_files(files, out)
        if as_json:
            echo_json({"format": format_name, "files": written})
        else:
            for path in written:
                click.echo(f"written: {path}")
        return
    if as_json:
        echo_json({"format": format_name, "files": [_told(file) for file in files]})
        return
    if any("spreadsheet" in file.media_type for file in files):
        raise UsageError(f"A {format_name} file is not for the screen: name one with --out FILE.")
    for file in files:
        if len(files) > 1:
            click.echo(f"--- {file.name}")
        click.echo(file.content.decode("utf-8-sig"), nl=False)


def _told(file: "ExportedFile") -> dict[str, object]:
    return {"name": file.name, "media_type": file.media_type, "bytes": len(file.content)}
