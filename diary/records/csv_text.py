"""Rows to CSV text and back, safe to open in a spreadsheet. Pure.

A spreadsheet runs a cell that begins with =, +, -, @, tab or return as a formula (OWASP,
"CSV Injection"). Such a cell is written with an apostrophe before it, which is taken off
again when it is read; a cell that has such apostrophes already gets one more.
"""

import csv
import io
from collections.abc import Iterable, Sequence

_RUNS = ("=", "+", "-", "@", "\t", "\r")


def guarded(cell: str) -> str:
    """The cell as it may stand in a file that a spreadsheet opens."""
    return f"'{cell}" if cell.lstrip("'").startswith(_RUNS) else cell


def unguarded(cell: str) -> str:
    """The cell that `guarded` was given."""
    return cell[1:] if cell.startswith("'") and cell.lstrip("'").startswith(_RUNS) else cell


def to_csv(headings: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """CSV as RFC 4180 quotes it, lines ended by a newline."""
    lines: list[str] = []
    for row in (headings, *rows):
        line = io.StringIO(newline="")
        # the writer quotes what holds a character of its own line end: so both of them here
        csv.writer(line, lineterminator="\r\n").writerow([guarded(cell) for cell in row])
        lines.append(line.getvalue().removesuffix("\r\n") + "\n")
    return "".join(lines)


def from_csv(text: str) -> tuple[list[str], list[tuple[int, list[str]]]]:
    """Headings, and the rows that are not empty with the line each ends on.

    The separator (comma, semicolon or tab) is the one the first line has most of.
    """
    first = text.split("\n", 1)[0]
    separator = max(",;\t", key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
    headings = [unguarded(cell).strip() for cell in next(reader, [])]
    rows = []
    for row in reader:
        cells = [unguarded(cell) for cell in row]
        if any(cell.strip() for cell in cells):
            rows.append((reader.line_num, cells))
    return headings, rows
