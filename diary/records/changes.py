"""Telling whether a diary was changed since one last looked, by whatever program."""

import sqlite3
import threading
from pathlib import Path

from diary.records.store import DATABASE_NAME


class ChangeWatch:
    """A connection of its own that only asks for SQLite's data_version. Safe from any thread.

    `version` differs after every commit of another connection
    (https://www.sqlite.org/pragma.html#pragma_data_version).
    """

    def __init__(self, folder: Path) -> None:
        self._lock = threading.Lock()
        self._connection = sqlite3.connect(folder / DATABASE_NAME, check_same_thread=False)

    def version(self) -> int:
        """A number that is the same as long as nothing was written."""
        with self._lock:
            return int(self._connection.execute("PRAGMA data_version").fetchone()[0])

    def close(self) -> None:
        """Let go of the database."""
        with self._lock:
            self._connection.close()
