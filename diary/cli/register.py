"""`diary register`: seedlings, crosses and named plants from and to CSV."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_new_store, with_store
from diary.cli.output import echo_json, table
from diary.cli.register_changes import (
    merge_command,
    name_command,
    renumber_command,
    status_command,
)
from diary.errors import UsageError

if TYPE_CHECKING:
    from diary.records.register_csv import ImportPlan
    from diary.records.store import Store

_TABLES = click.Choice(["seedlings", "crosses", "names"])


@click.group("register")
def register_group() -> None:
    """What you have on record: seedlings, crosses, named plants."""


@register_group.command("import")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--table", "which", type=_TABLES, help="What the file lists (default: guessed).")
@click.option(
    "--column",
    "columns",
    multiple=True,
    metavar="HEADING=FIELD",
    help="Take this column for that field (empty: for none).",
)
@click.option("--overwrite", is_flag=True, help="Also change what is on record otherwise.")
@click.option("--yes", is_flag=True, help="Do not ask.")
@click.option("--dry-run", is_flag=True, help="Only show what would change.")
@json_option
@with_new_store
def import_command(
    store: "Store",
    file: Path,
    which: str | None,
    columns: tuple[str, ...],
    overwrite: bool,
    yes: bool,
    dry_run: bool,
    as_json: bool,
) -> None:
    """Take in a CSV file. Shows what each column is taken for and what would change.

    New entries and empty fields are filled. A field that holds something else is left as
    it is, unless you confirm it (or say --overwrite).

    \b
    Example:  diary register import seedlings.csv
              diary register import list.csv --column "Plant no=number" --dry-run
    """
    from diary.records.register_csv import apply_plan, plan_import

    plan = plan_import(store, file, table=which, mapping=_mapping(columns))
    if as_json:
        changed = 0 if dry_run else apply_plan(store, plan, overwrite=overwrite)
        echo_json({"plan": plan, "written": changed})
        return
    _show(plan)
    if dry_run:
        return
    if plan.changed and not overwrite and not yes:
        overwrite = click.confirm("Overwrite these fields?", default=False)
    changed = apply_plan(store, plan, overwrite=overwrite)
    click.echo(f"{changed} entries written.")
    if plan.changed and not overwrite:
        click.echo(f"{len(plan.changed)} fields left as they were (--overwrite changes them).")


def _mapping(columns: tuple[str, ...]) -> dict[str, str | None]:
    mapping: dict[str, str | None] = {}
    for column in columns:
        heading, equals, field = column.partition("=")
        if not equals:
            raise UsageError(f"--column {column!r}: write it as HEADING=FIELD.")
        mapping[heading] = field or None
    return mapping


def _show(plan: "ImportPlan") -> None:
    click.echo(f"{plan.path.name}: taken for {plan.table}")
    for heading, field in plan.mapping:
        click.echo(f"  {heading} -> {field or '(kept as it is)'}")
    click.echo(
        f"{len(plan.new)} new, {plan.same} as on record, {len(plan.filled)} empty fields to fill, "
        f"{len(plan.changed)} fields that differ"
    )
    if plan.changed:
        rows = [[one.entry, one.field, one.before or "", one.after] for one in plan.changed]
        click.echo(table(["entry", "field", "on record", "in the file"], rows))


@register_group.command("export")
@click.argument("file", required=False, type=click.Path(path_type=Path))
@click.option("--table", "which", type=_TABLES, default="seedlings", show_default=True)
@with_store
def export_command(store: "Store", file: Path | None, which: str) -> None:
    """Write the register as CSV to FILE, or to standard output.

    Importing it again changes nothing. Cells that a spreadsheet would run as a formula have
    an apostrophe before them, which the import takes off.

    \b
    Example:  diary register export seedlings.csv
              diary register export --table crosses
    """
    from diary.records.register_csv import export_csv

    text = export_csv(store, which)
    if file is None:
        click.echo(text, nl=False)
        return
    if file.exists():
        raise UsageError(f"{file} is there already. Choose another name, or move it away.")
    file.write_text(text, encoding="utf-8", newline="")
    click.echo(f"Wrote {file}")


register_group.add_command(renumber_command)
register_group.add_command(merge_command)
register_group.add_command(name_command)
register_group.add_command(status_command)
