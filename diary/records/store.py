"""The diary's folder and its database: the one way in. Everything else takes a `Store`.

A folder is one diary: `diary.sqlite` (WAL, foreign keys on, strict tables), `previews/` and
`stills/` beside it, `backups/` written before a migration. Recordings stay where they are.
"""

import sqlite3
import time
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import cache
from pathlib import Path

import sqlite_utils

from diary.errors import StoreError
from diary.records.migrations import MIGRATIONS

DATABASE_NAME = "diary.sqlite"
BUSY_MS = 20_000  # how long one program waits for another that is writing
_RACE = ("database is locked", "already exists", "UNIQUE constraint failed: _sqlite_migrations")


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
    give_up_at = time.monotonic() + BUSY_MS / 1000
    while True:
        try:
            folder.mkdir(parents=True, exist_ok=True)
            return Store(folder=folder, db=_opened(path))
        except (OSError, sqlite3.Error) as error:
            # two programs may begin or migrate one diary at once: the later waits
            if any(sign in str(error) for sign in _RACE) and time.monotonic() < give_up_at:
                time.sleep(0.05)
                continue
            raise StoreError(
                f"{path}: the diary cannot be opened ({error}). "
                "Check that the folder may be written to, or choose another with --diary FOLDER."
            ) from error


def _opened(path: Path) -> sqlite_utils.Database:
    connection = sqlite3.connect(path, timeout=BUSY_MS / 1000)
    try:
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA journal_mode = WAL")
        # WAL with FULL: a commit survives the loss of power, not only of the program
        connection.execute("PRAGMA synchronous = FULL")
        db = sqlite_utils.Database(connection)
        _migrate(db, path.parent)
    except BaseException:
        connection.close()
        raise
    return db


@cache
def _known_migrations() -> frozenset[str]:
    # on an empty database every migration we know is pending
    return frozenset(step.name for step in MIGRATIONS.pending(sqlite_utils.Database(memory=True)))


def _migrate(db: sqlite_utils.Database, folder: Path) -> None:
    applied = {migration.name for migration in MIGRATIONS.applied(db)}
    known = _known_migrations()
    if applied - known:
        raise StoreError(
            f"{folder / DATABASE_NAME}: written by a newer version of this program "
            f"({', '.join(sorted(applied - known))}). Install that version to open it."
        )
    if applied == known:
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
