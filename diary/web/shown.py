"""Clips and records as templates show them: with the names of plants and recordings to link to."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from urllib.parse import quote

from diary.linking.document import Band, PlantKind
from diary.records.beliefs import Belief
from diary.records.record import Moment, PlantRef, Record, RecordClip, RecordingId
from diary.records.shelf import Shelved, shelf
from diary.records.store import Store
from diary.web.wording import ORDER


def plant_url(plant: PlantRef | str) -> str:
    """The address of a plant's page."""
    key = plant if isinstance(plant, str) else plant.key
    return f"/plants/{quote(key, safe='')}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """The recordings a page speaks of, by id."""

    found: Mapping[RecordingId, Shelved]

    def title(self, moment: Moment) -> str:
        """The title of the recording a moment lies in."""
        one = self.found.get(moment.recording)
        return one.title if one else "a removed recording"

    def kind(self, moment: Moment) -> str:
        """ "video", "audio", "captions" or "note"; "gone" if it is no longer there."""
        one = self.found.get(moment.recording)
        return one.kind if one else "gone"

    def playable(self, moment: Moment) -> bool:
        """Whether there is something to hear or see."""
        return self.kind(moment) in ("video", "audio")

    def url(self, moment: Moment) -> str:
        """The recording's page, at the moment."""
        return f"/recordings/{moment.recording}?t={moment.start_ms / 1000:g}"

    def still(self, moment: Moment) -> str | None:
        """The still of a stretch, None where nothing was filmed."""
        if self.kind(moment) != "video":
            return None
        return f"/still/{moment.recording}/{moment.start_ms}/{moment.end_ms}.jpg"


def shelf_of(store: Store, moments: Iterable[Moment | None]) -> Shelf:
    """The recordings of these moments."""
    return Shelf(found=shelf(store, [m.recording for m in moments if m is not None]))


def moments_of(clips: Iterable[RecordClip]) -> list[Moment]:
    """The moments of the clips."""
    return [clip.moment for clip in clips]


def uncertain(band: Band) -> bool:
    """Whether a thing is to look uncertain: outlined, with a question mark."""
    return band is not Band.SURE


@dataclass(frozen=True, slots=True, kw_only=True)
class TraitRow:
    """One row of a plant's description: what is believed, and all that was said, latest first."""

    trait: str
    part: str | None
    beliefs: tuple[Belief, ...]
    said: tuple[Record, ...]


def trait_rows(beliefs: Iterable[Belief], records: Iterable[Record]) -> tuple[TraitRow, ...]:
    """The description of a plant in the order of the page."""
    held: dict[tuple[str, str | None], list[Belief]] = {}
    for belief in beliefs:
        held.setdefault((belief.trait, belief.part), []).append(belief)
    said: dict[tuple[str, str | None], list[Record]] = {}
    for record in records:
        said.setdefault((record.trait, record.part), []).append(record)
    rows = [
        TraitRow(
            trait=trait,
            part=part,
            beliefs=tuple(found),
            said=tuple(reversed(said.get((trait, part), []))),
        )
        for (trait, part), found in held.items()
    ]
    return tuple(sorted(rows, key=lambda row: (_place(row.trait), row.part or "")))


def _place(trait: str) -> int:
    return ORDER.index(trait) if trait in ORDER else len(ORDER)


def unnamed(plant: PlantRef) -> bool:
    """Whether a plant was shown without a number."""
    return plant.kind is PlantKind.UNNAMED
