"""The kinds of correction: small events, each one thing the breeder said is so. Pure.

An event points at a recording's content hash and milliseconds, or at an entry of the
register, never at anything derived. Nothing is edited or deleted: undo is `Withdraw`.
"""

from dataclasses import dataclass
from datetime import date

from diary.linking.document import PlantKind, Value
from diary.records.record import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class SetSeedling:
    """This clip was about that plant. `title`: a number or a name."""

    kind: PlantKind
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SetTrait:
    """It was this trait that was spoken of."""

    trait: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SetPart:
    """It was this part of the plant (None: no part)."""

    part: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUnit:
    """The number was right and the unit wrong: "cm", "in" and so on; stored as mm."""

    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SetValue:
    """The value was this (lengths in mm). `modifiers` None: leave as heard."""

    value: Value
    modifiers: tuple[str, ...] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SetSpan:
    """The clip at this place runs from start_ms to end_ms."""

    start_ms: int
    end_ms: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Reject:
    """The observation at this place is none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Confirm:
    """The observation (or proposal) at this place is right; with no `seen.trait`, the clip is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Add:
    """This was said, or is to be noted, here (lengths in mm)."""

    trait: str
    value: Value
    part: str | None = None
    unit: str | None = None
    modifiers: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Split:
    """The clip at this place is two: the second starts at at_ms and is about `title`."""

    at_ms: int
    kind: PlantKind
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Join:
    """The clips touched by the span are one, about the plant of the first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AddClip:
    """The span is a clip about `title`."""

    kind: PlantKind
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RemoveClip:
    """The clip at this place is about no plant."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetDate:
    """The clip at this place is of this day."""

    day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class NamePlant:
    """The unnumbered plant shown at this place is that one: all its clips go with it."""

    kind: PlantKind
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MergePlants:
    """One plant: the unnumbered one shown here and the one shown at `other`, or, with no
    place, seedling `number` of the register is the same as `into`."""

    other: Span | None = None
    number: str | None = None
    into: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mishearing:
    """It heard `heard`, the breeder said `meant`; learnt for the next reading."""

    heard: str
    meant: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Renumber:
    """The seedling `number` of the register is now called `to`."""

    number: str
    to: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GiveName:
    """The seedling `number` of the register now has this name."""

    number: str
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Dismiss:
    """The question `question` of the review list needs no answer."""

    question: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Withdraw:
    """The event `of` no longer holds. Withdrawing a Withdraw brings it back."""

    of: str


Change = (
    SetSeedling
    | SetTrait
    | SetPart
    | SetUnit
    | SetValue
    | SetSpan
    | Reject
    | Confirm
    | Add
    | Split
    | Join
    | AddClip
    | RemoveClip
    | SetDate
    | NamePlant
    | MergePlants
    | Mishearing
    | Renumber
    | GiveName
    | Dismiss
    | Withdraw
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What the screen showed when the breeder corrected it."""

    trait: str | None = None
    value: Value | None = None
    part: str | None = None
    plant: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Correction:
    """One event. `id` sorts by time; `span` is None for events about the register."""

    id: str
    made_at: str  # ISO 8601, UTC
    made_by: str
    span: Span | None
    change: Change
    seen: Seen = Seen()
