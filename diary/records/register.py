"""The register: seedlings, crosses and named plants the breeder keeps on record."""

from dataclasses import dataclass
from datetime import date

from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class StatusChange:
    """The status from this day on, and why."""

    status: str
    day: date | None = None
    reason: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Seedling:
    """A numbered seedling. Parents are names or numbers; `cross` is a cross's code.

    `status` is the latest of `history`. `former` are numbers it went by before, and
    numbers merged into it. `extra` keeps columns of an imported file that we have no
    field for, so that the export gives them back.
    """

    number: str
    cross: str | None = None
    seed_parent: str | None = None
    pollen_parent: str | None = None
    sown: str | None = None  # ISO date as far as known: "2031", "2031-03" or "2031-03-02"
    pricked_out: str | None = None
    first_flower: str | None = None
    place: str | None = None
    status: str | None = None
    name: str | None = None
    note: str | None = None
    history: tuple[StatusChange, ...] = ()
    former: tuple[str, ...] = ()
    extra: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Cross:
    """One cross: seed parent first. `day` as far as known, like Seedling.sown."""

    code: str
    seed_parent: str | None = None
    pollen_parent: str | None = None
    day: str | None = None
    seeds_sown: int | None = None
    germinated: int | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedPlant:
    """A cultivar or a named seedling, what else it is called and how it is misheard."""

    name: str
    synonyms: tuple[str, ...] = ()
    mishearings: tuple[str, ...] = ()
    seed_parent: str | None = None
    pollen_parent: str | None = None
    note: str | None = None


def seedlings(store: Store) -> tuple[Seedling, ...]:
    """Every seedling on record, in natural order of number."""
    raise NotImplementedError


def seedling(store: Store, number: str) -> Seedling | None:
    """The seedling with this number, former number or name, or None."""
    raise NotImplementedError


def crosses(store: Store) -> tuple[Cross, ...]:
    """Every cross on record, by code."""
    raise NotImplementedError


def named_plants(store: Store) -> tuple[NamedPlant, ...]:
    """Every named plant on record, by name; learnt mishearings included."""
    raise NotImplementedError


def save_seedling(store: Store, row: Seedling) -> Seedling:
    """Write a seedling's fields (not number, name, history: see below); new if unknown."""
    raise NotImplementedError


def save_cross(store: Store, row: Cross) -> Cross:
    """Write a cross; new if its code is unknown."""
    raise NotImplementedError


def save_named_plant(store: Store, row: NamedPlant) -> NamedPlant:
    """Write a named plant; new if its name is unknown."""
    raise NotImplementedError


def set_status(
    store: Store, number: str, status: str, *, day: date | None = None, reason: str | None = None
) -> Seedling:
    """Add to a seedling's history; nothing of the past is changed. Raises NotFound."""
    raise NotImplementedError


def number_format(store: Store) -> str | None:
    """The number format by example, as the breeder set it ('23-04'), or None."""
    raise NotImplementedError


def set_number_format(store: Store, example: str | None) -> None:
    """Set or clear the format. Raises UsageError if the example holds no digit."""
    raise NotImplementedError
