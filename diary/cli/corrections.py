"""`diary corrections`: what you corrected: list it, undo it, carry it to another diary."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_new_store, with_store
from diary.cli.output import clock, echo_json, table
from diary.errors import UsageError

if TYPE_CHECKING:
    from diary.records.store import Store


@click.group("corrections")
def corrections_group() -> None:
    """What you corrected: nothing is ever lost, and everything can be undone."""


@corrections_group.command("list")
@json_option
@with_store
def list_command(store: "Store", as_json: bool) -> None:
    """List every correction, oldest first, and what became of it.

    \b
    Example:  diary corrections list
    """
    from diary.records.corrections import told
    from diary.records.journal import journal
    from diary.records.recordings import recordings

    entries = journal(store)
    if as_json:
        echo_json(
            [
                {
                    "kind": type(e.correction.change).__name__,
                    "state": e.state,
                    "event": e.correction,
                }
                for e in entries
            ]
        )
        return
    names = {one.id: one.name for one in recordings(store, removed=True)}
    rows = []
    for entry in entries:
        one = entry.correction
        where = "register"
        if one.span is not None:
            name = names.get(one.span.recording, one.span.recording[:8])
            where = f"{name}@{clock(one.span.start_ms)}"
        rows.append([one.id, one.made_at[:16].replace("T", " "), where, told(one), entry.state])
    click.echo(table(["id", "made", "where", "what", "state"], rows))


@corrections_group.command("undo")
@click.argument("correction", required=False, metavar="[ID]")
@with_store
def undo_command(store: "Store", correction: str | None) -> None:
    """Undo the last correction, or the one with this ID.

    \b
    Example:  diary corrections undo
    """
    from diary.records.corrections import told
    from diary.records.journal import undo, withdraw

    if correction is not None:
        withdraw(store, correction)
        click.echo(f"Undone: {correction}")
        return
    undone = undo(store)
    click.echo(f"Undone: {told(undone)}" if undone else "Nothing to undo.")


@corrections_group.command("redo")
@with_store
def redo_command(store: "Store") -> None:
    """Bring back what was undone last.

    \b
    Example:  diary corrections redo
    """
    from diary.records.corrections import told
    from diary.records.journal import redo

    again = redo(store)
    click.echo(f"Done again: {told(again)}" if again else "Nothing to do again.")


@corrections_group.command("export")
@click.argument("file", required=False, type=click.Path(path_type=Path))
@with_store
def export_command(store: "Store", file: Path | None) -> None:
    """Write every correction as a line of JSON to FILE, or to standard output.

    \b
    Example:  diary corrections export corrections.jsonl
    """
    from diary.records.journal import export_lines

    lines = "".join(f"{line}\n" for line in export_lines(store))
    if file is None:
        click.echo(lines, nl=False)
        return
    if file.exists():
        raise UsageError(f"{file} is there already. Choose another name, or move it away.")
    file.write_text(lines, encoding="utf-8", newline="")
    click.echo(f"Wrote {file}")


@corrections_group.command("import")
@click.argument("file", type=click.Path(path_type=Path, allow_dash=True))
@json_option
@with_new_store
def import_command(store: "Store", file: Path, as_json: bool) -> None:
    """Take in corrections that `export` wrote (FILE, or - for standard input).

    One that is here already is left alone. Corrections of a recording that is not in this
    diary wait for it.

    \b
    Example:  diary corrections import corrections.jsonl
    """
    from diary.records.journal import import_lines

    try:
        text = sys.stdin.read() if str(file) == "-" else file.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise UsageError(f"{file}: cannot be read ({error}).") from error
    done = import_lines(store, text.splitlines())
    if as_json:
        echo_json(done)
    else:
        click.echo(f"{done.new} new corrections, {done.known} were here already.")
