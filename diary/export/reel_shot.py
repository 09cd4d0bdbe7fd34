"""One shot of a reel."""

from dataclasses import dataclass
from pathlib import Path

from diary.export.captions import Cue


@dataclass(frozen=True, slots=True, kw_only=True)
class Shot:
    """One stretch of one recording, what it shows, and its captions on the shot's own clock."""

    path: Path
    start_ms: int
    end_ms: int
    title: str
    captions: tuple[Cue, ...] = ()

    @property
    def length_ms(self) -> int:
        """How long it lasts."""
        return self.end_ms - self.start_ms
