"""The diary's folder and its database: the one way in. Everything else takes a `Store`.

A folder is one diary: `diary.sqlite` (WAL, foreign keys on, strict tables), `previews/` and
`stills/` beside it, `backups/` written before a migration. Recordings stay where they are.
"""

import sqlite3
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import sqlite_utils

from diary.errors import StoreError
from diary.records.migrations import MIGRATIONS

DATABASE_NAME = "diary.sqlite"
BUSY_MS = 20_000  # how long one program waits for another that is writing


@dataclass(frozen=True, slots=True, kw_only=True)
class Store:
    """An open diary. Bound to the thread that opened it: the web opens one a request."""

    folder: Path
    db: sqlite_utils.Database

    @property
    def previews(self) -> Path:
        """Where small playable copies are kept."""
        return self.folder / "previews"

    @property
    def stills(self) -> Path:
        """Where still pictures are kept."""
        return self.folder / "stills"

    def close(self) -> None:
        """Close the database; the store cannot be used afterwards."""
        self.db.close()


def open_store(folder: Path, *, create: bool = True) -> Store:
    """Open the diary in `folder`, making or migrating it where needed.

    Raises StoreError if the folder cannot be used, is newer than this program, or does not
    exist and `create` is false.
    """
    folder = folder.expanduser().absolute()
    path = folder / DATABASE_NAME
    if not create and not path.is_file():
        raise StoreError(f"{folder}: no diary here yet. Add a recording first: diary add FILE")
    connection: sqlite3.Connection | None = None
    try:
        folder.mkdir(parents=True, exist_ok=True)
        connection = sqlite3.connect(path, timeout=BUSY_MS / 1000)
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA journal_mode = WAL")
        # WAL with FULL: a commit survives the loss of power, not only of the program
        connection.execute("PRAGMA synchronous = FULL")
        db = sqlite_utils.Database(connection)
        _migrate(db, folder)
    except (OSError, sqlite3.Error) as error:
        if connection is not None:
            connection.close()
        raise StoreError(
            f"{path}: the diary cannot be opened ({error}). "
            "Check that the folder may be written to, or choose another with --diary FOLDER."
        ) from error
    except StoreError:
        if connection is not None:
            connection.close()
        raise
    return Store(folder=folder, db=db)


def _migrate(db: sqlite_utils.Database, folder: Path) -> None:
    applied = {migration.name for migration in MIGRATIONS.applied(db)}
    # on an empty database every migration we know is pending
    known = {step.name for step in MIGRATIONS.pending(sqlite_utils.Database(memory=True))}
    if applied - known:
        raise StoreError(
            f"{folder / DATABASE_NAME}: written by a newer version of this program "
            f"({', '.join(sorted(applied - known))}). Install that version to open it."
        )
    if not MIGRATIONS.pending(db):
        return
    if applied:
        backup(db, folder)
    MIGRATIONS.apply(db)


def backup(db: sqlite_utils.Database, folder: Path) -> Path:
    """Copy the database into `backups/`, whole or not at all; returns the copy."""
    backups = folder / "backups"
    backups.mkdir(exist_ok=True)
    stamp = datetime.now(UTC).strftime("%Y%m%dT%H%M%S%fZ")
    unfinished, finished = backups / f"{stamp}.partial", backups / f"diary-{stamp}.sqlite"
    copy = sqlite3.connect(unfinished)
    try:
        db.conn.backup(copy)
    finally:
        copy.close()
    return unfinished.rename(finished)


def now() -> str:
    """This moment, ISO 8601 in UTC, to the millisecond."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")
