"""What each event about an observation does to it; the last word per field wins. Pure."""

import re

from diary.records.corrections import (
    Add,
    Confirm,
    Correction,
    Reject,
    SetPart,
    SetTrait,
    SetUnit,
    SetValue,
)
from diary.records.drafts import ObservationDraft
from diary.records.placing import place
from diary.records.record import Origin, Span

# the international inch is 25.4 mm exactly (1959 yard and pound agreement), a foot 12 of them
MM_PER: dict[str, float] = {"mm": 1, "cm": 10, "m": 1000, "in": 25.4, "ft": 304.8}

_UNIT_WORDS = (
    ("mm", re.compile(r"\bmm\b|millimet", re.IGNORECASE)),
    ("cm", re.compile(r"\bcm\b|centimet|\bcentis?\b", re.IGNORECASE)),
    ("in", re.compile(r"\binch|\bin\b|[0-9]\"", re.IGNORECASE)),
    ("ft", re.compile(r"\bfoot\b|\bfeet\b|\bft\b", re.IGNORECASE)),
    ("m", re.compile(r"\bmet(?:re|er)s?\b", re.IGNORECASE)),
)


def change_observations(
    observations: list[ObservationDraft], correction: Correction, span: Span
) -> bool:
    """Lay one event about an observation over them. False: it fits nowhere."""
    change = correction.change
    if isinstance(change, Add):
        observations.append(_added(correction, span, change))
        return True
    placed = place(span.start_ms, span.end_ms, observations, lambda one: _likeness(one, correction))
    if placed is None:
        return _of_its_own(observations, correction, span)
    observation = placed.chosen
    if isinstance(change, SetUnit) and not _convert(observation, change):
        return False
    observation.corrected(correction.id, doubtful=placed.doubtful)
    match change:
        case SetTrait():
            observation.trait = change.trait
        case SetPart():
            observation.part = change.part
        case SetValue():
            observation.value = change.value
            if change.modifiers is not None:
                observation.modifiers = change.modifiers
        case Reject():
            observation.rejected = True
    return True


def _added(correction: Correction, span: Span, change: Add) -> ObservationDraft:
    return ObservationDraft(
        start_ms=span.start_ms,
        end_ms=span.end_ms,
        text="",
        trait=change.trait,
        value=change.value,
        part=change.part,
        unit=change.unit,
        modifiers=change.modifiers,
        origin=Origin.ADDED,
        corrections=[correction.id],
    )


def _of_its_own(observations: list[ObservationDraft], correction: Correction, span: Span) -> bool:
    """Nothing is read there any more: what the breeder said still stands, if it is whole."""
    change, seen = correction.change, correction.seen
    if seen.trait is None:
        return False
    if isinstance(change, SetValue):
        value, part = change.value, seen.part
    elif isinstance(change, Confirm) and seen.value is not None:
        value, part = seen.value, seen.part
    else:
        return False
    observations.append(
        _added(correction, span, Add(trait=seen.trait, value=value, part=part, unit=None))
    )
    return True


def _likeness(observation: ObservationDraft, correction: Correction) -> int:
    """How much of what the screen showed is the same: trait first, then part and value."""
    seen, heard = correction.seen, observation.heard
    if seen.trait is None:
        return 0
    shown = (observation.trait, observation.part, observation.value)
    read = (heard.trait, heard.part, heard.value) if heard else shown
    return max(
        4 * (trait == seen.trait) + 2 * (value == seen.value) + (part == seen.part)
        for trait, part, value in (shown, read)
    )


def _convert(observation: ObservationDraft, change: SetUnit) -> bool:
    if isinstance(observation.value, str) or change.unit not in MM_PER:
        return False
    was = change.was or next(
        (unit for unit, words in _UNIT_WORDS if words.search(observation.text)), None
    )
    if was not in MM_PER:
        return False
    millimetres = round(observation.value * MM_PER[change.unit] / MM_PER[was], 1)
    observation.value = int(millimetres) if millimetres == int(millimetres) else millimetres
    observation.unit = "mm"
    return True
