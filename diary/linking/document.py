"""What a recording says: clips about plants, each with its observations. Pure values.

`diary extract --json` prints a `Reading` by the contract; records/ stores it.
"""

from dataclasses import dataclass
from datetime import date
from enum import Enum


class Band(Enum):
    """How far a thing is to be believed."""

    SURE = "sure"  # used
    LIKELY = "likely"  # used, and marked as uncertain
    UNSURE = "unsure"  # only proposed, for the review list


class PlantKind(Enum):
    """What kind of plant a clip is about."""

    SEEDLING = "seedling"  # `number` is set
    CULTIVAR = "cultivar"  # `name` is set: a named plant is the subject
    UNNAMED = "unnamed"  # `label` is set: shown without a number


@dataclass(frozen=True, slots=True, kw_only=True)
class Plant:
    """The plant a clip is about. Exactly one of number, name and label is set.

    `label` is ours, unique within one recording; two clips of the same unnamed plant share
    it. `on_record` says whether the number or name is in the register.
    """

    kind: PlantKind
    number: str | None = None
    name: str | None = None
    label: str | None = None
    on_record: bool = False

    @property
    def title(self) -> str:
        """What to call it on a screen: its number, its name, or its label."""
        return self.number or self.name or self.label or "?"


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """Why something was understood: the words, the rule, its score, the runner-up."""

    rule: str
    words: str
    score: float
    runner_up: str | None = None
    runner_up_score: float | None = None


Value = str | float | int


@dataclass(frozen=True, slots=True, kw_only=True)
class Observation:
    """One thing said of one plant: `value` of `trait` (of `part`, for a colour).

    Lengths are millimetres with unit "mm"; counts are whole numbers with unit "count";
    other values are terms of the vocabulary, or a name or number of a plant.
    `text` is verbatim from the transcript, first_word..last_word are its word indexes.
    """

    trait: str
    value: Value
    part: str | None = None
    unit: str | None = None
    modifiers: tuple[str, ...] = ()
    on: tuple[str, ...] = ()  # the petals on which a marking lies
    text: str
    first_word: int
    last_word: int
    start_ms: int
    end_ms: int
    hedged: bool = False
    negated: bool = False
    confidence: float
    band: Band
    evidence: Evidence


@dataclass(frozen=True, slots=True, kw_only=True)
class Clip:
    """One unbroken stretch of a recording about one plant. Clips do not overlap."""

    start_ms: int
    end_ms: int
    first_word: int
    last_word: int
    day: date | None
    plant: Plant
    confidence: float
    band: Band
    observations: tuple[Observation, ...]  # sure or likely
    proposals: tuple[Observation, ...] = ()  # only for review
    evidence: Evidence


@dataclass(frozen=True, slots=True, kw_only=True)
class Suggestion:
    """Something said that belongs into the register, for the breeder to confirm.

    `kind` is one of "unknown_name" (a name heard, not on record), "unknown_number",
    "sown", "pricked_out", "first_flower", "crossed" (pollen of `value` put on the plant).
    """

    kind: str
    value: str
    plant: Plant | None
    day: date | None
    text: str
    start_ms: int
    end_ms: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """All that was understood of one transcript."""

    clips: tuple[Clip, ...]
    suggestions: tuple[Suggestion, ...] = ()
