"""`diary register renumber|merge|name|status`: what becomes of a seedling."""

from datetime import datetime
from typing import TYPE_CHECKING

import click

from diary.cli.context import with_store

if TYPE_CHECKING:
    from diary.records.store import Store


@click.command("renumber")
@click.argument("number")
@click.argument("new_number", metavar="NEW")
@with_store
def renumber_command(store: "Store", number: str, new_number: str) -> None:
    """Give the seedling NUMBER the number NEW; recordings that say the old one still mean it.

    \b
    Example:  diary register renumber 23-04 24-11
    """
    from diary.records.corrections import Renumber
    from diary.records.journal import correct

    correct(store, Renumber(number=number, to=new_number))
    click.echo(f"{number} is now {new_number}. (diary corrections undo takes it back.)")


@click.command("merge")
@click.argument("number")
@click.argument("into")
@with_store
def merge_command(store: "Store", number: str, into: str) -> None:
    """Make the seedlings NUMBER and INTO one plant, called INTO. Nothing of either is lost.

    \b
    Example:  diary register merge 23-40 23-04
    """
    from diary.records.corrections import MergePlants
    from diary.records.journal import correct

    correct(store, MergePlants(number=number, into=into))
    click.echo(f"{number} is {into}. (diary corrections undo takes it back.)")


@click.command("name")
@click.argument("number")
@click.argument("name")
@with_store
def name_command(store: "Store", number: str, name: str) -> None:
    """Name the seedling NUMBER: found by either from now on.

    \b
    Example:  diary register name 23-04 "Quill Harbour"
    """
    from diary.records.corrections import GiveName
    from diary.records.journal import correct

    correct(store, GiveName(number=number, name=name))
    click.echo(f"{number} is '{name}'. (diary corrections undo takes it back.)")


@click.command("status")
@click.argument("number")
@click.argument("status")
@click.option("--date", "day", type=click.DateTime(["%Y-%m-%d"]), help="Since when.")
@click.option("--reason", help="Why.")
@with_store
def status_command(
    store: "Store", number: str, status: str, day: datetime | None, reason: str | None
) -> None:
    """Set the STATUS of the seedling NUMBER; what it was before is kept.

    \b
    Example:  diary register status 23-04 discard --date 2031-06-02 --reason "rust"
    """
    from diary.records.register import set_status

    one = set_status(store, number, status, day=day.date() if day else None, reason=reason)
    for change in one.history:
        when = change.day.isoformat() if change.day else "no date"
        click.echo(
            f"  {when}: {change.status}{' (' + change.reason + ')' if change.reason else ''}"
        )
