"""`diary sheet`: the description of a plant, to print."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import echo_json

if TYPE_CHECKING:
    from diary.export.sheet import PlantSheet
    from diary.records.store import Store


@click.command("sheet")
@click.argument("plant")
@click.option(
    "--out",
    type=click.Path(path_type=Path, dir_okay=False),
    help="The file to write, .pdf or .html (default: PLANT.pdf).",
)
@click.option("--no-pictures", is_flag=True, help="Leave out stills from the recordings.")
@json_option
@with_store
def sheet_command(
    store: "Store", plant: str, out: Path | None, no_pictures: bool, as_json: bool
) -> None:
    """Write a sheet of PLANT to print: description, parentage, pictures, where it was said.

    \b
    Example:  diary sheet 24-11A
              diary sheet 24-11A --out sheets/24-11A.html
    """
    from diary.errors import StoreError, UsageError
    from diary.export.sheet_page import file_stem, make_sheet, sheet_pdf

    target = out or Path(f"{file_stem(plant)}.pdf")
    if target.suffix.lower() not in (".pdf", ".html"):
        raise UsageError(f"{target}: a sheet is a .pdf or a .html file.")
    sheet, html = make_sheet(store, plant, pictures=not no_pictures)
    pdf = target.suffix.lower() == ".pdf"
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(sheet_pdf(html, sheet.title) if pdf else html.encode("utf-8"))
    except OSError as error:
        raise StoreError(f"{target} could not be written: {error.strerror}.") from error
    if as_json:
        echo_json({"file": target, "sheet": sheet})
        return
    _show(sheet)
    click.echo(f"\nwritten: {target}")


def _show(sheet: "PlantSheet") -> None:
    click.echo(f"{sheet.title}: {sheet.parentage}")
    for section in sheet.sections:
        for line in section.lines:
            doubt = f" (but: {line.doubt})" if line.doubt else ""
            click.echo(f"  {section.organ}, {line.label}: {line.state}{doubt}")
