"""`diary cultivars import`: named plants, one a line."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import with_new_store

if TYPE_CHECKING:
    from diary.records.store import Store


@click.group("cultivars")
def cultivars_group() -> None:
    """Named plants: parents, and what a plant is compared with."""


@cultivars_group.command("import")
@click.argument("file", type=click.Path(path_type=Path))
@with_new_store
def import_command(store: "Store", file: Path) -> None:
    """Take in the named plants of FILE, one a line; other names after a bar.

    \b
    Example:  diary cultivars import cultivars.txt
              (a line: Copper Lantern | Old Copper)
    """
    from diary.records.register import named_plants
    from diary.records.register_csv import import_names

    new = import_names(store, file)
    click.echo(f"{new} new named plants; {len(named_plants(store))} on record.")
