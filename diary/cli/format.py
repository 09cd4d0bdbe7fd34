"""`diary format`: how the breeder writes a seedling's number."""

from typing import TYPE_CHECKING

import click

from diary.cli.context import with_new_store

if TYPE_CHECKING:
    from diary.records.store import Store


@click.command("format")
@click.argument("example", required=False)
@click.option("--clear", is_flag=True, help="Learn the format from the register again.")
@with_new_store
def format_command(store: "Store", example: str | None, clear: bool) -> None:
    """Show by EXAMPLE how you write a number; needed only where the register does not.

    \b
    Example:  diary format 23-04
    """
    from diary.records.register import number_format, set_number_format

    if clear:
        set_number_format(store, None)
    elif example is not None:
        set_number_format(store, example)
    now = number_format(store)
    click.echo(
        f"Numbers are written like {now}." if now else "Numbers are written as in the register."
    )
    if example is not None or clear:
        click.echo("To hear what is recorded already with it: diary read-again")
