"""What the breeder should now see: readings with the corrections laid over them. Pure values.

`heard / corrected / added` is kept with every record, and both values with a corrected one.
"""

from dataclasses import dataclass
from datetime import date
from enum import Enum
from typing import NewType

from diary.linking.document import Band, Evidence, PlantKind, Value

RecordingId = NewType("RecordingId", str)  # SHA-256 of the file's content, 64 hex digits


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A stretch of one recording, half-open, in whole milliseconds."""

    recording: RecordingId
    start_ms: int
    end_ms: int

    def overlap(self, start_ms: int, end_ms: int) -> int:
        """How many milliseconds it shares with start_ms..end_ms (0: none)."""
        return max(0, min(self.end_ms, end_ms) - max(self.start_ms, start_ms))


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """Where something was said, and the words: what every shown value can point at."""

    recording: RecordingId
    start_ms: int
    end_ms: int
    day: date | None
    text: str  # the words heard; "" for what was added by hand


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class PlantRef:
    """One plant throughout the diary.

    `key` is unique in the diary and fit for an address: the present number of a seedling,
    the name of a named plant, or "?HASH8/LABEL" for an unnumbered one of one recording.
    `title` is what to show; a seedling that got a name keeps its number as key.
    """

    kind: PlantKind
    key: str
    title: str


class Origin(Enum):
    """Where a record comes from."""

    HEARD = "heard"  # as the reader understood it
    CORRECTED = "corrected"  # heard, and changed or confirmed by the breeder
    ADDED = "added"  # the breeder's alone


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """What the reader had understood, before corrections."""

    trait: str
    value: Value
    part: str | None
    unit: str | None
    modifiers: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """One observation as it now stands. Lengths are mm, counts whole numbers.

    `heard` is None for what was added; `corrections` are the ids of the events applied, in
    order; `doubtful` tells that a correction fitted two observations nearly as well.
    """

    plant: PlantRef
    moment: Moment
    trait: str
    value: Value
    part: str | None = None
    unit: str | None = None
    modifiers: tuple[str, ...] = ()
    on: tuple[str, ...] = ()
    hedged: bool = False
    negated: bool = False
    confidence: float = 1.0
    band: Band = Band.SURE
    origin: Origin = Origin.HEARD
    heard: Heard | None = None
    evidence: Evidence | None = None
    corrections: tuple[str, ...] = ()
    doubtful: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordClip:
    """One clip as it now stands: an unbroken stretch about one plant.

    `heard_plant` is the title the reader gave, where a correction changed it. `proposals`
    are only for review and count nowhere else.
    """

    plant: PlantRef
    moment: Moment  # the whole clip and all words said in it
    confidence: float
    band: Band
    origin: Origin
    heard_plant: str | None = None
    evidence: Evidence | None = None
    corrections: tuple[str, ...] = ()
    records: tuple[Record, ...] = ()
    proposals: tuple[Record, ...] = ()
