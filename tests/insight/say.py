"""Beliefs and plants for these tests, written down as they would come from the records."""

from datetime import date

from diary.linking.document import Band, PlantKind, Value
from diary.records.beliefs import Belief, Why
from diary.records.record import Moment, PlantRef, RecordingId

WALK = RecordingId("a" * 64)


def plant(title: str) -> PlantRef:
    """A seedling of this number, a named plant, or an unnumbered one ("?...")."""
    kind = PlantKind.SEEDLING
    if title.startswith("?"):
        kind = PlantKind.UNNAMED
    elif not any(letter.isdigit() for letter in title):
        kind = PlantKind.CULTIVAR
    return PlantRef(kind=kind, key=title, title=title)


def moment(text: str = "", start_ms: int = 0, day: date | None = None) -> Moment:
    """A place in the walk."""
    return Moment(recording=WALK, start_ms=start_ms, end_ms=start_ms + 1000, day=day, text=text)


def belief(
    trait: str,
    value: Value,
    part: str | None = None,
    *modifiers: str,
    text: str = "",
    start_ms: int = 0,
    day: date | None = None,
) -> Belief:
    """One thing believed of a plant, said once."""
    return Belief(
        trait=trait,
        value=value,
        part=part,
        unit=None,
        modifiers=modifiers,
        band=Band.SURE,
        why=Why.ONLY,
        because="said once",
        day=day,
        sources=(moment(text or f"{value}", start_ms, day),),
    )
