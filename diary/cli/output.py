"""How commands print: JSON of any view, tables, times, days."""

import json
import unicodedata
from collections.abc import Sequence
from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from pathlib import Path
from typing import Any

import click


def plain(value: object) -> Any:
    """The value as dicts, lists, text and numbers; days as ISO, paths and enums as text."""
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, dict):
        return {str(key): plain(one) for key, one in value.items()}
    if isinstance(value, tuple | list | set | frozenset):
        return [plain(one) for one in value]
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Path):
        return str(value)
    return value


def to_json(value: object) -> str:
    """Any view as JSON text, two spaces a level."""
    return json.dumps(plain(value), ensure_ascii=False, indent=2)


def echo_json(value: object) -> None:
    """Print any view as JSON."""
    click.echo(to_json(value))


def clock(milliseconds: int) -> str:
    """A time in a recording: 1:23, 1:02:03."""
    seconds = milliseconds // 1000
    hours, minutes = seconds // 3600, seconds // 60 % 60
    if hours:
        return f"{hours}:{minutes:02d}:{seconds % 60:02d}"
    return f"{minutes}:{seconds % 60:02d}"


def day(value: date | None) -> str:
    """A day as ISO, a dash where it is not known."""
    return value.isoformat() if value else "-"


def width(text: str) -> int:
    """How many columns of a terminal the text takes."""
    return sum(
        0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1
        for c in text
    )


def table(headings: Sequence[str], rows: Sequence[Sequence[str]], *, widest: int = 44) -> str:
    """Rows in columns, cells longer than `widest` cut with an ellipsis."""
    cut = [[_cut(cell, widest) for cell in row] for row in rows]
    widths = [
        max(width(line[column]) for line in (headings, *cut)) for column in range(len(headings))
    ]
    ruled = [[*headings], ["-" * one for one in widths], *cut]
    return "\n".join(
        "  ".join(cell + " " * (widths[i] - width(cell)) for i, cell in enumerate(row)).rstrip()
        for row in ruled
    )


def _cut(text: str, widest: int) -> str:
    line = " ".join(text.split())
    return line if width(line) <= widest else line[: widest - 1].rstrip() + "…"
