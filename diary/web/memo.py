"""Views of the whole diary, kept until something is written: what is dear is made once."""

import threading
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

from diary.records.changes import ChangeWatch

T = TypeVar("T")


class Memo:
    """Values by name, each good for one state of the diary. Safe from any thread."""

    def __init__(self, folder: Path) -> None:
        self._watch = ChangeWatch(folder)
        self._lock = threading.Lock()
        self._making: dict[str, threading.Lock] = {}
        self._values: dict[str, tuple[int, Any]] = {}

    def get(self, name: str, make: Callable[[], T]) -> T:
        """The value, made now if the diary has changed; only one thread makes it."""
        with self._lock:
            making = self._making.setdefault(name, threading.Lock())
        with making:
            version = self._watch.version()
            kept = self._values.get(name)
            if kept is not None and kept[0] == version:
                return kept[1]  # type: ignore[no-any-return]
            value = make()
            self._values[name] = (version, value)
            return value

    def peek(self, name: str) -> Any:
        """The value if it is at hand, however old, else None: for what may lag behind."""
        kept = self._values.get(name)
        return None if kept is None else kept[1]

    def close(self) -> None:
        """Let go of the database."""
        self._watch.close()
