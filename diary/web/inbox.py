"""The inbox: a folder that is watched; what is put there and lies still is added."""

import threading
from collections.abc import Callable
from pathlib import Path

EVERY_S = 3.0  # a copy from a card writes more often than this


class Inbox:
    """Watches one folder. `found` is called once for each file that has stopped growing."""

    def __init__(
        self, folder: Path, found: Callable[[Path], object], *, every_s: float = EVERY_S
    ) -> None:
        self._folder, self._found, self._every_s = folder, found, every_s
        self._stop = threading.Event()
        self._seen: dict[Path, tuple[int, int]] = {}
        self._done: set[Path] = set()
        self._thread = threading.Thread(target=self._watch, name="inbox", daemon=True)

    def start(self, already: frozenset[Path]) -> None:
        """Begin; files in `already` are in the diary."""
        self._folder.mkdir(parents=True, exist_ok=True)
        self._done |= already
        self._thread.start()

    def stop(self) -> None:
        """End the watch."""
        self._stop.set()
        if self._thread.is_alive():
            self._thread.join(timeout=5)

    def look(self) -> None:
        """One look: a file is added when two looks see it the same."""
        for path in sorted(self._folder.iterdir()):
            if path in self._done or path.name.startswith(".") or not path.is_file():
                continue
            now = path.stat()
            state = (now.st_size, now.st_mtime_ns)
            if now.st_size and self._seen.get(path) == state:
                self._done.add(path)
                self._found(path)
            self._seen[path] = state

    def _watch(self) -> None:
        while not self._stop.wait(self._every_s):
            try:
                self.look()
            except OSError:
                continue  # taken away while we looked; it will be seen next time if it comes back
