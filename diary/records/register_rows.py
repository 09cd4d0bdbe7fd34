"""The register as rows, and the log of what was changed in it; events are folded in by register."""

import json
import secrets
from collections.abc import Iterable, Sequence
from typing import Any

from diary.records.correction_rows import corrections_of_kind
from diary.records.identity import Identities, identities
from diary.records.store import Store, now

TABLES: dict[str, tuple[str, tuple[str, ...]]] = {
    # table: the column that tells entries apart, and the other columns
    "seedlings": (
        "number",
        (
            "cross_code",
            "seed_parent",
            "pollen_parent",
            "sown",
            "pricked_out",
            "first_flower",
            "place",
            "name",
            "note",
            "extra",
        ),
    ),
    "crosses": (
        "code",
        ("seed_parent", "pollen_parent", "day", "seeds_sown", "germinated", "note", "extra"),
    ),
    "names": (
        "name",
        ("synonyms", "mishearings", "seed_parent", "pollen_parent", "note", "extra"),
    ),
}


def rows(store: Store, table: str, among: Sequence[str] | None = None) -> list[dict[str, Any]]:
    """The rows of one table of the register (those with these keys), in the order of entry."""
    key, columns = TABLES[table]
    names = ("id", key, *columns)
    where = "" if among is None else f"WHERE {key} IN ({', '.join('?' for _ in among)})"
    found = store.db.execute(
        f"SELECT {', '.join(names)} FROM {table} {where} ORDER BY id", among or ()
    )
    return [dict(zip(names, row, strict=True)) for row in found]


def write_rows(store: Store, table: str, entries: Iterable[dict[str, Any]]) -> int:
    """Write the given fields of entries, new ones where the key is unknown, and log it.

    Returns how many entries are new or changed. The caller holds the transaction.
    """
    key, columns = TABLES[table]
    present = {row[key]: row for row in rows(store, table)}
    stamp = now()
    touched = 0
    log: list[tuple[str, str, str, str | None, str | None]] = []
    for entry in entries:
        title = entry[key]
        before = present.get(title)
        fields = [column for column in columns if column in entry]
        if before is None:
            filled = [column for column in fields if entry[column] is not None]
            names = [key, *filled]
            marks = ", ".join("?" for _ in names)
            store.db.execute(
                f"INSERT INTO {table} ({', '.join(names)}) VALUES ({marks})",
                [title, *(entry[column] for column in filled)],
            )
            log.append((stamp, f"{table}/{title}", key, None, title))
            log.extend(
                (stamp, f"{table}/{title}", column, None, str(entry[column])) for column in filled
            )
            present[title] = dict.fromkeys(columns) | entry
        else:
            changed = [column for column in fields if entry[column] != before[column]]
            if not changed:
                continue
            sets = ", ".join(f"{column} = ?" for column in changed)
            store.db.execute(
                f"UPDATE {table} SET {sets} WHERE {key} = ?",
                [*(entry[column] for column in changed), title],
            )
            log.extend(
                (stamp, f"{table}/{title}", column, _text(before[column]), _text(entry[column]))
                for column in changed
            )
            present[title] = before | entry
        touched += 1
    bump_revision(store)
    store.db.conn.executemany(
        "INSERT INTO register_log (made_at, entry, field, before, after) VALUES (?, ?, ?, ?, ?)",
        log,
    )
    return touched


def _text(value: object) -> str | None:
    return None if value is None else str(value)


def bump_revision(store: Store) -> None:
    """Note that plants may look different now; the caller holds the transaction."""
    store.db.execute(
        "INSERT OR REPLACE INTO preferences (key, value) VALUES ('revision', ?)",
        [secrets.token_hex(8)],
    )


def revision(store: Store) -> str:
    """A word that is another one after every change to clips, records or the register."""
    row = store.db.execute("SELECT value FROM preferences WHERE key = 'revision'").fetchone()
    return "" if row is None else str(row[0])


def register_identities(store: Store) -> Identities:
    """Which title means which plant, from the register's rows and events."""
    named = store.db.execute("SELECT name, synonyms FROM names ORDER BY id")
    return identities(
        corrections_of_kind(store, "Renumber", "MergePlants", "GiveName"),
        store.db.execute("SELECT number, name FROM seedlings ORDER BY id").fetchall(),
        [(name, tuple(json.loads(synonyms))) for name, synonyms in named],
    )
