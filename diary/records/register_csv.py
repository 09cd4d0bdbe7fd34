"""The register as CSV: guessed columns, a diff to confirm, and an exact way back."""

from dataclasses import dataclass
from pathlib import Path

from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldChange:
    """One cell that would change. `before` is None for a field that was empty."""

    entry: str  # the number, code or name
    field: str
    before: str | None
    after: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ImportPlan:
    """What importing a file would do; nothing is written before `apply_plan`.

    `table` is "seedlings", "crosses" or "names". `mapping` gives each column of the file
    and the field it is taken for (None: kept as it is under its own heading). `new` are
    entries to be added, `filled` cells empty so far, `changed` cells that hold something
    else now: those are written only when confirmed.
    """

    path: Path
    table: str
    mapping: tuple[tuple[str, str | None], ...]
    new: tuple[str, ...]
    filled: tuple[FieldChange, ...]
    changed: tuple[FieldChange, ...]
    same: int
    rows: tuple[tuple[tuple[str, str], ...], ...]


def plan_import(
    store: Store,
    path: Path,
    *,
    table: str | None = None,
    mapping: dict[str, str | None] | None = None,
) -> ImportPlan:
    """Read a CSV file and say what importing it would do. Raises UsageError with the line."""
    raise NotImplementedError


def apply_plan(store: Store, plan: ImportPlan, *, overwrite: bool = False) -> int:
    """Write a plan; returns how many entries changed. Changed cells only with `overwrite`."""
    raise NotImplementedError


def import_names(store: Store, path: Path) -> int:
    """Take in a list of named plants, one a line ("Name | other name"); returns how many new."""
    raise NotImplementedError


def export_csv(store: Store, table: str = "seedlings") -> str:
    """A table of the register as CSV text; importing it again changes nothing."""
    raise NotImplementedError
