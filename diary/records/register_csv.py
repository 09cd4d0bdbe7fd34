"""The register as CSV: guessed columns, a diff to confirm, and an exact way back."""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from diary.errors import UsageError
from diary.records.columns import KEYS, SAID, guess_columns, guess_table, told_apart
from diary.records.csv_text import from_csv, to_csv
from diary.records.plant_links import link_plants
from diary.records.register import (
    Cross,
    NamedPlant,
    Seedling,
    crosses,
    named_plants,
    seedlings,
)
from diary.records.register_rows import register_identities, rows, write_rows
from diary.records.store import Store, now

LISTED = ("synonyms", "mishearings")
COUNTED = ("seeds_sown", "germinated")
STATUS = ("status", "status_day", "status_reason")
Cells = dict[str, str]


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
    headings, found = from_csv(_text(path))
    if not headings or not any(headings):
        raise UsageError(f"{path}: the file is empty; its first line must name the columns.")
    headings = told_apart(headings)
    table = table or guess_table(headings)
    columns = tuple(
        (heading, (mapping or {}).get(heading, field))
        for heading, field in guess_columns(headings, table)
    )
    key = KEYS[table]
    _check_columns(path, table, columns)
    current = _current(store, table)
    identities = register_identities(store)
    lines: dict[str, int] = {}
    by_title: dict[str, Cells] = {}
    for line, cells in found:
        if len(cells) > len(columns) and any(cell.strip() for cell in cells[len(columns) :]):
            raise UsageError(f"{path}, line {line}: more cells than the first line has columns.")
        entry = _entry(columns, cells)
        title = entry.get(key, "")
        if not title:
            raise UsageError(f"{path}, line {line}: no {key}. Fill it in, or delete the line.")
        present = identities.number(title) if table == "seedlings" else title
        if present in lines and present == title and lines[present] > 0:
            raise UsageError(f"{path}, line {line}: {title} is on line {lines[title]} already.")
        _check_counts(path, line, entry)
        if present in by_title:
            # the file is from before two were merged: what the other lacks is filled in
            by_title[present].update(entry | by_title[present])
        else:
            by_title[present] = entry | {key: present}
        lines[present] = line if present == title else 0
    entries = [*by_title.values()]
    new, filled, changed, same = _compare(key, entries, current)
    return ImportPlan(
        path=path,
        table=table,
        mapping=columns,
        new=new,
        filled=filled,
        changed=changed,
        same=same,
        rows=tuple(tuple(entry.items()) for entry in entries),
    )


def _text(path: Path) -> str:
    try:
        content = path.read_bytes()
    except OSError as error:
        raise UsageError(f"{path}: cannot be read ({error.strerror}).") from error
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return content.decode("cp1252", errors="replace")  # what older spreadsheets write


def _check_columns(path: Path, table: str, columns: tuple[tuple[str, str | None], ...]) -> None:
    taken = [field for _, field in columns if field is not None]
    wrong = [field for field in taken if field not in SAID[table]]
    if wrong:
        raise UsageError(f"{wrong[0]!r} is no field of {table}: {', '.join(SAID[table])}.")
    twice = [field for field in taken if taken.count(field) > 1]
    if twice:
        raise UsageError(f"Two columns are taken for {twice[0]}.")
    if KEYS[table] not in taken:
        names = ", ".join(heading for heading, _ in columns)
        raise UsageError(
            f"{path}: none of its columns ({names}) looks like the {KEYS[table]}. "
            f"Say which: --column HEADING={KEYS[table]}"
        )


def _check_counts(path: Path, line: int, entry: Cells) -> None:
    for field in COUNTED:
        if not entry.get(field, "0").strip().isdigit():
            raise UsageError(f"{path}, line {line}: {field} is {entry[field]!r}, not a number.")
    if "status_day" in entry:
        try:
            date.fromisoformat(entry["status_day"])
        except ValueError as error:
            raise UsageError(
                f"{path}, line {line}: {entry['status_day']!r} is no date like 2031-06-02."
            ) from error


def _entry(columns: tuple[tuple[str, str | None], ...], cells: list[str]) -> Cells:
    """The filled cells of a row by field; unknown columns as "+HEADING"."""
    entry: Cells = {}
    for (heading, field), cell in zip(columns, cells, strict=False):
        if cell.strip():
            # a cell of our own field loses stray blanks; one we only keep is kept as it is
            entry[field or f"+{heading}"] = cell.strip() if field else cell
    return entry


def _cells(table: str, row: Seedling | Cross | NamedPlant) -> Cells:
    """An entry of the register as the filled cells of a row."""
    cells: Cells = {}
    for field in SAID[table]:
        if field in ("status_day", "status_reason"):
            last = row.history[-1] if isinstance(row, Seedling) and row.history else None
            value: object = getattr(last, field.removeprefix("status_")) if last else None
        else:
            value = getattr(row, field)
        if isinstance(value, tuple):
            value = "; ".join(value)
        if value is not None and str(value):
            cells[field] = str(value)
    for heading, text in row.extra:
        cells[f"+{heading}"] = text
    return cells


def _current(store: Store, table: str) -> dict[str, Cells]:
    found: Sequence[Seedling | Cross | NamedPlant]
    if table == "seedlings":
        found = seedlings(store)
    else:
        found = crosses(store) if table == "crosses" else named_plants(store)
    return {cells[KEYS[table]]: cells for cells in (_cells(table, row) for row in found)}


def _compare(
    key: str, entries: list[Cells], current: dict[str, Cells]
) -> tuple[tuple[str, ...], tuple[FieldChange, ...], tuple[FieldChange, ...], int]:
    new: list[str] = []
    filled: list[FieldChange] = []
    changed: list[FieldChange] = []
    same = 0
    for entry in entries:
        title = entry[key]
        before = current.get(title)
        if before is None:
            new.append(title)
            continue
        differences = [
            FieldChange(entry=title, field=field, before=before.get(field), after=after)
            for field, after in entry.items()
            if before.get(field) != after and not _same_list(field, before.get(field), after)
        ]
        filled += [change for change in differences if change.before is None]
        changed += [change for change in differences if change.before is not None]
        same += not differences
    return tuple(new), tuple(filled), tuple(changed), same


def _same_list(field: str, before: str | None, after: str) -> bool:
    return field in LISTED and set(_split(after)) <= set(_split(before or ""))


def _split(text: str) -> list[str]:
    return [one.strip() for one in text.split(";") if one.strip()]


def apply_plan(store: Store, plan: ImportPlan, *, overwrite: bool = False) -> int:
    """Write a plan; returns how many entries changed. Changed cells only with `overwrite`."""
    key = KEYS[plan.table]
    held = {(change.entry, change.field) for change in plan.changed} if not overwrite else set()
    with store.db.atomic():
        current = _current(store, plan.table)
        filed = _filed(store) if plan.table == "seedlings" else {}
        entries, statuses = [], []
        for row in plan.rows:
            cells = dict(row)
            title = cells[key]
            before = current.get(title, {})
            write = {f: c for f, c in cells.items() if (title, f) not in held}
            if any(write.get(field, before.get(field)) != before.get(field) for field in STATUS):
                statuses.append((filed.get(title, title), before | write))
            entries.append(_row(plan.table, write, before) | {key: filed.get(title, title)})
        touched = write_rows(store, plan.table, entries)
        _add_statuses(store, statuses)
        _remember_columns(store, plan)
        link_plants(store)
    return max(touched, len(statuses))


def _filed(store: Store) -> dict[str, str]:
    """Present number to the number under which the entry was first written."""
    identities = register_identities(store)
    filed: dict[str, str] = {}
    for row in rows(store, "seedlings"):
        present = identities.number(row["number"])
        if present not in filed or row["number"] == present:
            filed[present] = row["number"]
    return filed


def _row(table: str, cells: Cells, before: Cells) -> dict[str, Any]:
    row: dict[str, Any] = {}
    for field, cell in cells.items():
        if field.startswith("+") or field in STATUS:
            continue
        if field in LISTED:
            both = dict.fromkeys([*_split(before.get(field, "")), *_split(cell)])
            row[field] = json.dumps(list(both), ensure_ascii=False)
        elif field in COUNTED:
            row[field] = int(cell)
        else:
            row["cross_code" if (table, field) == ("seedlings", "cross") else field] = cell
    extra = {f[1:]: c for f, c in (before | cells).items() if f.startswith("+")}
    if extra:
        row["extra"] = json.dumps(list(extra.items()), ensure_ascii=False)
    return row


def _add_statuses(store: Store, statuses: list[tuple[str, Cells]]) -> None:
    stamp = now()
    store.db.conn.executemany(
        "INSERT INTO status_history (seedling, status, day, reason, made_at) "
        "SELECT id, ?, ?, ?, ? FROM seedlings WHERE number = ?",
        [
            (cells["status"], cells.get("status_day"), cells.get("status_reason"), stamp, number)
            for number, cells in statuses
            if "status" in cells
        ],
    )


def _remember_columns(store: Store, plan: ImportPlan) -> None:
    """Keep the headings, so that the export looks like what the breeder brought."""
    store.db.execute(
        "INSERT OR REPLACE INTO preferences (key, value) VALUES (?, ?)",
        [f"columns:{plan.table}", json.dumps(plan.mapping, ensure_ascii=False)],
    )


def import_names(store: Store, path: Path) -> int:
    """Take in a list of named plants, one a line ("Name | other name"); returns how many new."""
    listed: dict[str, list[str]] = {}
    for line in _text(path).splitlines():
        name, *others = [part.strip().strip("'\u2018\u2019") for part in line.split("|")]
        if name and not name.startswith("#"):
            listed.setdefault(name, []).extend(filter(None, others))
    current = _current(store, "names")
    with store.db.atomic():
        write_rows(
            store,
            "names",
            [
                _row("names", {"name": name, "synonyms": "; ".join(others)}, current.get(name, {}))
                for name, others in listed.items()
            ],
        )
        link_plants(store)
    return len(listed.keys() - current.keys())


def export_csv(store: Store, table: str = "seedlings") -> str:
    """A table of the register as CSV text; importing it again changes nothing.

    Columns are those of the file it was imported from, then the others in use; entries
    stand in the order in which they were entered.
    """
    if table not in KEYS:
        raise UsageError(f"No table {table!r}: choose one of {', '.join(KEYS)}.")
    current = _current(store, table)
    identities = register_identities(store)
    order = dict.fromkeys(
        identities.number(row["number"]) if table == "seedlings" else row[KEYS[table]]
        for row in rows(store, table)
    )
    listed = [current[title] for title in order]
    remembered = store.db.execute(
        "SELECT value FROM preferences WHERE key = ?", [f"columns:{table}"]
    ).fetchone()
    columns = [
        (heading, field or f"+{heading}")
        for heading, field in (json.loads(remembered[0]) if remembered else [])
    ]
    used = {field for cells in listed for field in cells} | {KEYS[table]}
    have = {field for _, field in columns}
    extra = dict.fromkeys(f for cells in listed for f in cells if f.startswith("+"))
    for field in (*SAID[table], *extra):
        if field in used and field not in have:
            columns.append((field.removeprefix("+"), field))
    return to_csv(
        [heading for heading, _ in columns],
        ([cells.get(field, "") for _, field in columns] for cells in listed),
    )
