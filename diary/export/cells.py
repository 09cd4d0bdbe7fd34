"""Cells that no spreadsheet takes for a formula, and that read back exactly. Pure.

A text that begins with = + - @ (or their full-width forms), a tab or a line end may be run as
a formula (OWASP, "CSV Injection"). In CSV such a text gets an apostrophe in front, and so does
one that would look guarded already, so that reading takes off exactly what writing put on.
"""

import csv
import io
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

Cell = str | int | float | None

_RISKY = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
_GUARD = "'"
# a byte order mark tells spreadsheets that the file is UTF-8
ENCODING = "utf-8-sig"


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A named table: headings and rows of the same width."""

    name: str
    headings: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


def guard(text: str) -> str:
    """The text as it may stand in a CSV file."""
    return _GUARD + text if text.lstrip(_GUARD).startswith(_RISKY) else text


def unguard(text: str) -> str:
    """The text as it was before `guard`."""
    if text.startswith(_GUARD) and text.lstrip(_GUARD).startswith(_RISKY):
        return text[1:]
    return text


def to_csv(table: Table) -> str:
    """A table as CSV (RFC 4180: CRLF, quotes where needed), texts guarded, numbers bare."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow([guard(heading) for heading in table.headings])
    writer.writerows([_cell(cell) for cell in row] for row in table.rows)
    return out.getvalue()


def _cell(cell: Cell) -> str:
    if cell is None:
        return ""
    return guard(cell) if isinstance(cell, str) else f"{cell:.15g}"


def from_csv(text: str, name: str = "") -> Table:
    """A table that `to_csv` wrote; every cell comes back as the text it was."""
    # a long remark must not meet the reader's limit of 131,072 characters
    csv.field_size_limit(2**31 - 1)
    rows = [[unguard(cell) for cell in row] for row in csv.reader(io.StringIO(text, newline=""))]
    if not rows:
        return Table(name=name, headings=(), rows=())
    return Table(name=name, headings=tuple(rows[0]), rows=tuple(tuple(row) for row in rows[1:]))


def to_xlsx(tables: Iterable[Table]) -> bytes:
    """A workbook, a sheet a table: texts as texts whatever they begin with, numbers as numbers.

    A cell holds 32,767 characters at most (the file format's limit); a longer text ends in an
    ellipsis there. CSV keeps it whole.
    """
    import xlsxwriter

    out = io.BytesIO()
    options = {
        "in_memory": True,
        "strings_to_formulas": False,
        "strings_to_urls": False,
        "strings_to_numbers": False,
    }
    with xlsxwriter.Workbook(out, options) as book:
        bold = book.add_format({"bold": True})
        wrap = book.add_format({"text_wrap": True, "valign": "top"})
        for table in tables:
            sheet = book.add_worksheet(_sheet_name(table.name))
            sheet.freeze_panes(1, 0)
            for column, heading in enumerate(table.headings):
                sheet.write_string(0, column, heading, bold)
                sheet.set_column(column, column, _width(table.rows, column, heading))
            for place, row in enumerate(table.rows, start=1):
                for column, cell in enumerate(row):
                    if isinstance(cell, str):
                        sheet.write_string(place, column, _fit(cell), wrap)
                    elif cell is not None:
                        sheet.write_number(place, column, cell, wrap)
            if table.headings:
                sheet.autofilter(0, 0, max(1, len(table.rows)), len(table.headings) - 1)
    return out.getvalue()


_LONGEST = 32_767


def _fit(text: str) -> str:
    # counted in UTF-16 units, as the format does
    if len(text.encode("utf-16-le", "surrogatepass")) // 2 <= _LONGEST:
        return text
    return (
        text[: _LONGEST // 2 - 1] + "\u2026"
        if len(text) < _LONGEST
        else text[: _LONGEST - 1] + "\u2026"
    )


def _sheet_name(name: str) -> str:
    """At most 31 characters and none of []:*?/\\ (the file format's rule)."""
    return "".join("-" if letter in "[]:*?/\\" else letter for letter in name)[:31] or "Sheet"


def _width(rows: Sequence[tuple[Cell, ...]], column: int, heading: str) -> int:
    longest = max((len(str(row[column] or "")) for row in rows[:500]), default=0)
    return max(8, min(60, max(longest, len(heading)) + 2))
