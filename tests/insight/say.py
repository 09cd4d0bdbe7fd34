"""Beliefs and plants for these tests, written down as they would come from the records."""

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from diary.insight.description import LENGTHS
from diary.insight.overview import Overview, Walk, assemble
from diary.linking.document import Band, PlantKind, Value
from diary.records.beliefs import Belief, Why, believe
from diary.records.pages import PlantSummary
from diary.records.record import Moment, Origin, PlantRef, Record, RecordClip, RecordingId
from diary.records.recordings import Recording
from diary.records.register import Cross, NamedPlant, Seedling
from diary.speech.transcript import Transcript, Word

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A clip: the plant shown, what was said, and what was understood."""

    plant: str
    said: str = ""
    day: date | None = None
    rows: tuple[tuple[str, ...], ...] = ()


def shown(plant: str, *rows: str, said: str = "", day: date | None = None) -> Shown:
    """Rows such as "colour throat white", "habit - compact", "decision - keep"."""
    return Shown(plant=plant, said=said, day=day, rows=tuple(tuple(row.split()) for row in rows))


def season(
    *clips: Shown,
    seedlings: tuple[Seedling, ...] = (),
    crosses: tuple[Cross, ...] = (),
    named: tuple[NamedPlant, ...] = (),
) -> Overview:
    """An overview of one walk, a clip every ten seconds, and of the register given."""
    made = tuple(_clip(index, one) for index, one in enumerate(clips))
    words = tuple(
        Word(
            text=word,
            start_ms=index * 10_000 + place * 100,
            end_ms=index * 10_000 + place * 100 + 90,
        )
        for index, one in enumerate(clips)
        for place, word in enumerate(one.said.split())
    )
    walk = Walk(recording=_recording(len(clips)), transcript=Transcript(words=words), clips=made)
    return assemble(_summaries(made, seedlings), (walk,), crosses, named)


def _recording(clips: int) -> Recording:
    return Recording(
        id=WALK,
        name="walk",
        title="Walk",
        path=Path("walk.mp4"),
        kind="video",
        duration_ms=clips * 10_000,
        recorded=date(2031, 5, 18),
        recorded_from="given",
        group="pelargonium",
        joins=None,
        added_at="2031-05-18T20:00:00Z",
        words_from="base",
        done_ms=clips * 10_000,
        complete=True,
        reader="1",
        removed=False,
        clips=clips,
        plants=clips,
    )


def _clip(index: int, one: Shown) -> RecordClip:
    place = Moment(
        recording=WALK,
        start_ms=index * 10_000,
        end_ms=index * 10_000 + 9_000,
        day=one.day or date(2031, 5, 18),
        text=one.said,
    )
    ref = plant(one.plant)
    records = []
    for row, (trait, part, value, *modifiers) in enumerate(one.rows):
        number = float(value) if trait in LENGTHS or trait.startswith("count_") else value
        records.append(
            Record(
                plant=ref,
                moment=replace(place, start_ms=place.start_ms + row, text=one.said or value),
                trait=trait,
                value=number,
                part=None if part == "-" else part.replace("_", " "),
                modifiers=tuple(modifiers),
            )
        )
    return RecordClip(
        plant=ref,
        moment=place,
        confidence=0.9,
        band=Band.SURE,
        origin=Origin.HEARD,
        records=tuple(records),
    )


def _summaries(
    clips: tuple[RecordClip, ...], seedlings: tuple[Seedling, ...]
) -> tuple[PlantSummary, ...]:
    refs = {clip.plant.key: clip.plant for clip in clips}
    entries = {one.number: one for one in seedlings}
    refs.update({number: plant(number) for number in entries if number not in refs})
    found = []
    for key, ref in sorted(refs.items()):
        own = [clip for clip in clips if clip.plant.key == key]
        beliefs = believe(record for clip in own for record in clip.records)
        heard = {belief.trait: str(belief.value) for belief in beliefs}
        entry = entries.get(key)
        days = [clip.moment.day for clip in own if clip.moment.day]
        found.append(
            PlantSummary(
                plant=ref,
                seedling=entry,
                seed_parent=(entry and entry.seed_parent) or heard.get("seed_parent"),
                pollen_parent=(entry and entry.pollen_parent) or heard.get("pollen_parent"),
                beliefs=beliefs,
                clips=len(own),
                first_seen=min(days, default=None),
                last_seen=max(days, default=None),
            )
        )
    return tuple(found)
