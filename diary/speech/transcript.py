"""Words with their times: what every later stage reads. Pure; no speech library, no files.

A transcript of a recording counts milliseconds from its start. A typed note has no clock:
there `clock` is "lines" and line N of the file stands for N * 1000 ms, so that the same
code serves both (the contract prints those as line numbers).
"""

from bisect import bisect_right
from dataclasses import dataclass
from datetime import date
from enum import Enum


class Clock(Enum):
    """What the times of a transcript count."""

    SECONDS = "seconds"
    LINES = "lines"


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """One word as heard, punctuation attached, without white space.

    Times are whole milliseconds, half-open. `confidence` is 0..1, or None where the
    source (captions, a note) gives none.
    """

    text: str
    start_ms: int
    end_ms: int
    confidence: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class DateMark:
    """From this moment on the talk is of this day (a dated paragraph of a note)."""

    at_ms: int
    day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Transcript:
    """Words in order of time, and where segments (cues, sentences, lines) begin.

    `segment_starts` holds indexes into `words`, rising, the first 0 when there are words.
    Rules may use segments, punctuation and pauses where they exist and must not need them.
    """

    words: tuple[Word, ...]
    segment_starts: tuple[int, ...] = ()
    duration_ms: int | None = None
    clock: Clock = Clock.SECONDS
    dates: tuple[DateMark, ...] = ()

    @property
    def text(self) -> str:
        """The words joined by single spaces: every quote is a part of this."""
        return " ".join(word.text for word in self.words)

    def quote(self, first: int, last: int) -> str:
        """The words from index `first` to `last`, both inside, verbatim."""
        return " ".join(word.text for word in self.words[first : last + 1])

    def segment_of(self, index: int) -> int:
        """Which segment the word at `index` belongs to, counted from 0."""
        return bisect_right(self.segment_starts, index) - 1
