"""What is believed now of a plant, from everything said of it over time, and why. Pure."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import Enum

from diary.linking.document import Band, Value
from diary.records.record import Moment, Record


class Why(Enum):
    """Which rule chose the value."""

    ONLY = "only"  # said once
    AGREED = "agreed"  # said more than once, always the same
    LATEST = "latest"  # the last thing said
    MEDIAN = "median"  # the median of several measurements
    CORRECTED = "corrected"  # the breeder's word


@dataclass(frozen=True, slots=True, kw_only=True)
class Belief:
    """One value held of a plant. Traits with several values at once give several beliefs.

    `because` is a sentence for the screen. `sources` are the moments it rests on, latest
    first. `conflict` says what speaks against it ("45 mm on 2 June, 80 mm on 3 June"), or
    None; `against` are the moments of that.
    """

    trait: str
    value: Value
    part: str | None
    unit: str | None
    modifiers: tuple[str, ...]
    band: Band
    why: Why
    because: str
    day: date | None
    sources: tuple[Moment, ...]
    conflict: str | None = None
    against: tuple[Moment, ...] = ()


def believe(records: Iterable[Record]) -> tuple[Belief, ...]:
    """Fold the records of one plant, in any order, into what is believed now."""
    raise NotImplementedError
