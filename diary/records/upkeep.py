"""Looking after the store itself: is the database sound, and where do recordings lie now."""

import sqlite3
from pathlib import Path

from diary.errors import NotFound, StoreError
from diary.records.record import RecordingId
from diary.records.store import DATABASE_NAME, Store


def problems(store: Store) -> tuple[str, ...]:
    """What SQLite finds wrong with the database, a sentence each; empty when it is sound."""
    try:
        found = [
            f"The database is damaged: {text}."
            for (text,) in store.db.execute("PRAGMA integrity_check")
            if text != "ok"
        ]
        found.extend(
            f"Row {row} of {table} points at an entry of {parent} that is not there."
            for table, row, parent, _ in store.db.execute("PRAGMA foreign_key_check")
        )
    except sqlite3.DatabaseError as error:
        return (f"The database is damaged: {error}.",)
    return tuple(found)


def copy_database(store: Store, out: Path) -> None:
    """Write a whole and consistent copy of the database to `out`, whatever is going on in it."""
    copy = sqlite3.connect(out)
    try:
        store.db.conn.backup(copy)
        # one file that needs no journal beside it
        copy.execute("PRAGMA journal_mode = DELETE")
    except sqlite3.Error as error:
        raise StoreError(
            f"{store.folder / DATABASE_NAME}: it cannot be copied ({error}). Try: diary check"
        ) from error
    finally:
        copy.close()


def move_recording(store: Store, recording_id: RecordingId, path: Path) -> None:
    """Note that a recording's file now lies at `path`. Raises NotFound."""
    with store.db.atomic():
        done = store.db.execute(
            "UPDATE recordings SET path = ? WHERE id = ?", [str(path), recording_id]
        )
        if done.rowcount == 0:
            raise NotFound(f"No recording {recording_id[:8]} in this diary.")
