"""A colour given to a part, and by what words."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Attached:
    """The part a colour belongs to, the words that say so, and how sure that is."""

    part: str
    rule: str
    score: float
    start: int
    end: int
    on: tuple[str, ...] = ()
