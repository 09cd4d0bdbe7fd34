"""The kinds of correction: small events, each one thing the breeder said is so. Pure.

An event points at a recording's content hash and milliseconds, or at an entry of the
register, never at anything derived. Nothing is edited or deleted: undo is `Withdraw`.
"""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import get_args

from diary.linking.document import PlantKind, Value
from diary.records.codec import from_plain, to_plain
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
    """The number was right and the unit wrong: `was` one of mm, cm, m, in, ft; is `unit`.

    Values are kept in mm, so the one heard is needed; None: the unit among the words heard.
    """

    unit: str
    was: str | None = None


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


KINDS: dict[str, type] = {kind.__name__: kind for kind in get_args(Change)}

# what concerns the register or the journal itself: needs no place in a recording
PLACELESS = (Mishearing, Renumber, GiveName, Dismiss, Withdraw)


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


def live(corrections: Iterable[Correction]) -> tuple[Correction, ...]:
    """Those that still hold, in order of id: the last Withdraw of an event decides."""
    withdrawn: set[str] = set()
    standing: list[Correction] = []
    for correction in sorted(corrections, key=lambda one: one.id, reverse=True):
        if correction.id in withdrawn:
            continue
        standing.append(correction)
        if isinstance(correction.change, Withdraw):
            withdrawn.add(correction.change.of)
    return tuple(reversed(standing))


def to_line(correction: Correction) -> str:
    """One event as a line of JSON, fields in a fixed order."""
    return json.dumps(
        {
            "id": correction.id,
            "made_at": correction.made_at,
            "made_by": correction.made_by,
            "span": to_plain(correction.span),
            "kind": type(correction.change).__name__,
            "change": to_plain(correction.change),
            "seen": to_plain(correction.seen),
        },
        ensure_ascii=False,
    )


def from_line(line: str) -> Correction:
    """The event that `to_line` wrote. ValueError says what is wrong with it."""
    row = json.loads(line)
    if not isinstance(row, dict):
        raise ValueError("not an event")
    kind = KINDS.get(str(row.get("kind")))
    if kind is None:
        raise ValueError(f"unknown kind of correction: {row.get('kind')!r}")
    event = {key: row[key] for key in row if key not in ("kind", "change", "seen", "span")}
    plain = from_plain(event, dict[str, str])
    missing = {"id", "made_at", "made_by"} - set(plain)
    if missing:
        raise ValueError(f"field {sorted(missing)[0]!r} is missing")
    return Correction(
        id=plain["id"],
        made_at=plain["made_at"],
        made_by=plain["made_by"],
        span=None if row.get("span") is None else from_plain(row["span"], Span),
        change=from_plain(row.get("change", {}), kind),
        seen=from_plain(row.get("seen", {}), Seen),
    )


def told(correction: Correction) -> str:
    """The event in a few words, for a list: "value 45 mm (was 80 mm)"."""
    change, seen = correction.change, correction.seen
    was = seen.plant if isinstance(change, SetSeedling | NamePlant) else seen.value
    before = f" (was {was})" if was is not None else ""
    about = f"{seen.trait.replace('_', ' ')}: " if seen.trait else ""
    match change:
        case SetSeedling(title=title) | NamePlant(title=title):
            return f"this is {title}{before}"
        case SetTrait(trait=trait):
            return f"{about}is {trait.replace('_', ' ')}"
        case SetPart(part=part):
            return f"{about}of {part or 'no part'}"
        case SetUnit(unit=unit):
            return f"{about}in {unit}"
        case SetValue(value=value, modifiers=modifiers):
            return f"{about}{' '.join((*(modifiers or ()), str(value)))}{before}"
        case SetSpan() | RemoveClip() | Join():
            return {"SetSpan": "clip moved", "RemoveClip": "no clip", "Join": "one clip"}[
                type(change).__name__
            ]
        case Reject():
            return f"{about}not so{before}"
        case Confirm():
            return f"{about}right"
        case Add(trait=trait, value=value):
            return f"added: {trait.replace('_', ' ')} {value}"
        case Split(title=title) | AddClip(title=title):
            return f"a clip of {title}"
        case SetDate(day=day):
            return f"filmed on {day.isoformat()}"
        case MergePlants(number=number, into=into):
            return f"{number} is {into}" if number else "the same plant"
        case Mishearing(heard=heard, meant=meant):
            return f"heard {heard!r}, meant {meant!r}"
        case Renumber(number=number, to=to):
            return f"{number} is now {to}"
        case GiveName(number=number, name=name):
            return f"{number} is named {name}"
        case Dismiss():
            return "question dismissed"
        case Withdraw(of=of):
            return f"undo of {of}"
