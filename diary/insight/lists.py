"""The lists a breeder works from: keep, discard, cuttings to take, show bench and so on. Pure.

Each entry carries the moment that says so, or None where it comes from the register or from
nothing having been said.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta

from diary.errors import UsageError
from diary.insight.followups import promises
from diary.insight.overview import Overview
from diary.linking.document import PlantKind
from diary.records.pages import PlantSummary
from diary.records.record import Moment, PlantRef

WEEK = timedelta(days=7)


@dataclass(frozen=True, slots=True, kw_only=True)
class ListEntry:
    """One plant on a list (None: a promise outside every clip), why, and where it was said.

    `words` is the sentence around the moment.
    """

    plant: PlantRef | None
    why: str
    day: date | None
    moment: Moment | None
    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantList:
    """A list by its name, with a heading for the screen."""

    name: str
    heading: str
    entries: tuple[ListEntry, ...]


Maker = Callable[[Overview, date], Iterator[ListEntry]]


def _fated(fate: str, why: str) -> Maker:
    def make(overview: Overview, on: date) -> Iterator[ListEntry]:
        for plant in overview.plants:
            decision = overview.decisions[plant.plant.key].fate
            if decision is not None and decision.value == fate:
                source = why if decision.moment else f"{why} (register)"
                said = f"{source}, with reservations" if decision.hedged else source
                yield ListEntry(
                    plant=plant.plant, why=said, day=decision.day, moment=decision.moment
                )

    return make


def _tasked(task: str, why: str) -> Maker:
    def make(overview: Overview, on: date) -> Iterator[ListEntry]:
        for plant in overview.plants:
            decision = overview.decisions[plant.plant.key].task(task)
            if decision is None or (task == "propagate" and _taken(plant, decision.day)):
                continue
            said = f"{why}, with reservations" if decision.hedged else why
            yield ListEntry(plant=plant.plant, why=said, day=decision.day, moment=decision.moment)

    return make


def _taken(plant: PlantSummary, asked: date | None) -> bool:
    """Whether cuttings were counted on a later day than they were asked for."""
    return any(
        belief.day is not None and asked is not None and belief.day > asked
        for belief in plant.values("count_cuttings")
    )


def _unseen(overview: Overview, on: date) -> Iterator[ListEntry]:
    """Seedlings on record, not discarded, of which no clip is from the year of `on`."""
    for plant in overview.plants:
        fate = overview.decisions[plant.plant.key].fate
        gone = fate is not None and fate.value == "discard"
        if plant.seedling is None or gone:
            continue
        if plant.last_seen is None:
            # a clip without a day may be of this season
            why = "never seen" if plant.clips == 0 else "seen on no known day"
            yield ListEntry(plant=plant.plant, why=why, day=None, moment=None)
        elif plant.last_seen.year < on.year:
            moment = max(
                (record.moment for record in overview.records.get(plant.plant.key, ())),
                key=lambda found: (found.day or date.min, found.start_ms),
                default=None,
            )
            why = f"last seen on {plant.last_seen.isoformat()}"
            yield ListEntry(plant=plant.plant, why=why, day=plant.last_seen, moment=moment)


def _first_flowers(overview: Overview, on: date) -> Iterator[ListEntry]:
    """First flowers that were reported in the seven days up to `on`."""
    for plant in overview.plants:
        said = [
            belief
            for belief in plant.values("flowering")
            if belief.value == "first_flower"
            and belief.day is not None
            and on - WEEK < belief.day <= on
        ]
        if said:
            yield ListEntry(
                plant=plant.plant, why="first flower", day=said[0].day, moment=said[0].sources[0]
            )
        elif plant.seedling is not None and plant.seedling.first_flower is not None:
            day = _whole_day(plant.seedling.first_flower)
            if day is not None and on - WEEK < day <= on:
                yield ListEntry(
                    plant=plant.plant, why="first flower (register)", day=day, moment=None
                )


def _whole_day(text: str) -> date | None:
    """A day as far as known ("2031-06" is none)."""
    try:
        return date.fromisoformat(text) if len(text) == 10 else None
    except ValueError:
        return None


def _unlabelled(overview: Overview, on: date) -> Iterator[ListEntry]:
    """Plants shown without a number, at the first clip that shows them."""
    for walk in overview.walks:
        seen = set()
        for clip in walk.clips:
            if clip.plant.kind is PlantKind.UNNAMED and clip.plant.key not in seen:
                seen.add(clip.plant.key)
                yield ListEntry(
                    plant=clip.plant, why="shown without a number", day=clip.moment.day,
                    moment=clip.moment,
                )  # fmt: skip


def _promised(overview: Overview, on: date) -> Iterator[ListEntry]:
    for walk in overview.walks:
        for promise in promises(walk.recording.id, walk.transcript, walk.clips):
            yield ListEntry(
                plant=promise.plant,
                why="promised",
                day=promise.moment.day or walk.recording.recorded,
                moment=promise.moment,
            )


# name: heading, maker; in the order of `diary list --help`
_LISTS: dict[str, tuple[str, Maker]] = {
    "keep": ("To keep", _fated("keep", "keep")),
    "discard": ("To discard", _fated("discard", "discard")),
    "watch": ("To watch for another season", _fated("watch", "watch")),
    "cuttings": ("Cuttings to take", _tasked("propagate", "take cuttings")),
    "breeding": ("To breed from", _tasked("breed", "breed from")),
    "show": ("For the show bench", _tasked("show", "show bench")),
    "naming": ("To be named", _tasked("name", "name")),
    "repot": ("To be potted on", _tasked("repot", "pot on")),
    "unseen": ("Not seen this season", _unseen),
    "first-flower": ("First flowering this week", _first_flowers),
    "unlabelled": ("Unlabelled", _unlabelled),
    "promised": ("Promised follow-ups", _promised),
}
LIST_NAMES = tuple(_LISTS)


def plant_list(overview: Overview, name: str, *, on: date) -> PlantList:
    """A list by its name, as of the day `on`. Raises UsageError for an unknown name."""
    if name not in _LISTS:
        raise UsageError(f"There is no list {name!r}. There are: {', '.join(LIST_NAMES)}.")
    heading, make = _LISTS[name]
    entries = tuple(
        entry if entry.moment is None else replace(entry, words=overview.sentence(entry.moment))
        for entry in make(overview, on)
    )
    return PlantList(name=name, heading=heading, entries=entries)


def all_lists(overview: Overview, *, on: date) -> tuple[PlantList, ...]:
    """Every list, in the order of `LIST_NAMES`."""
    return tuple(plant_list(overview, name, on=on) for name in LIST_NAMES)


def reference_day(overview: Overview, today: date) -> date:
    """The day lists are made for: today, or the last walk's if the clock is behind it."""
    days = (walk.recording.recorded for walk in overview.walks)
    return max((day for day in days if day is not None and day > today), default=today)
