"""What a screen needs of plants: one page a plant, one row a plant for the list."""

from dataclasses import dataclass
from datetime import date

from diary.records.beliefs import Belief
from diary.records.record import PlantRef, Record, RecordClip
from diary.records.register import Cross, NamedPlant, Seedling
from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantPage:
    """All that is known of one plant.

    `seedling` is None for a named plant, an unnumbered one, and a number not on record.
    `clips` are in order of day and time, each with the words said and its records;
    `records` are those of all clips, proposals left out. `conflicts` are the beliefs that
    something speaks against. `also` are other plants that may be the same one.
    """

    plant: PlantRef
    seedling: Seedling | None
    named: NamedPlant | None
    cross: Cross | None
    clips: tuple[RecordClip, ...]
    records: tuple[Record, ...]
    beliefs: tuple[Belief, ...]
    conflicts: tuple[Belief, ...]
    also: tuple[PlantRef, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantSummary:
    """One row of the list of plants: its register entry, what is believed, when it was seen.

    Plants on record that were never seen have no clips; plants seen and not on record have
    no `seedling`. Parents are those of the register, else those heard.
    """

    plant: PlantRef
    seedling: Seedling | None
    seed_parent: str | None
    pollen_parent: str | None
    beliefs: tuple[Belief, ...]
    clips: int
    first_seen: date | None
    last_seen: date | None

    def values(self, trait: str, part: str | None = None) -> tuple[Belief, ...]:
        """The beliefs about one trait (of one part, where given)."""
        return tuple(
            belief
            for belief in self.beliefs
            if belief.trait == trait and (part is None or belief.part == part)
        )


def plants(store: Store) -> tuple[PlantSummary, ...]:
    """Every plant of the diary (seedlings, named plants seen, unnumbered ones), by kind, key.

    A fixed number of queries however many plants there are.
    """
    raise NotImplementedError


def plant_page(store: Store, which: str) -> PlantPage:
    """The page of a number, former number, name or key. Raises NotFound with near numbers."""
    raise NotImplementedError
