"""The diary's folder and its database: the one way in. Everything else takes a `Store`.

A folder is one diary: `diary.sqlite` (WAL, foreign keys on, strict tables), `previews/` and
`stills/` beside it, `backups/` written before a migration. Recordings stay where they are.
"""

from dataclasses import dataclass
from pathlib import Path

import sqlite_utils

DATABASE_NAME = "diary.sqlite"


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
    raise NotImplementedError
