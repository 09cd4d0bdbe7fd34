"""Choosing and sorting plants for the bench view: cross, colour, form, decision, season. Pure."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from diary.records.pages import PlantSummary
from diary.records.register import natural

# parts whose colour is no colour of the flower
_NOT_FLOWER = frozenset({"leaf", "zone", "stem", "bud"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What the plants shown must have; None: anything. `season` is a year they were seen in.

    `kind` is "seedling", "cultivar" or "unnamed". `least_mm` and `most_mm` bound the bloom.
    """

    kind: str | None = None
    cross: str | None = None
    colour: str | None = None
    form: str | None = None
    decision: str | None = None
    season: int | None = None
    least_mm: float | None = None
    most_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """What there is to choose from, each in the order to show it."""

    crosses: tuple[str, ...]
    colours: tuple[str, ...]
    forms: tuple[str, ...]
    decisions: tuple[str, ...]
    seasons: tuple[int, ...]


def cross_of(plant: PlantSummary) -> str | None:
    """The cross a plant belongs to: the register's code, else its parents as one text."""
    if plant.seedling is not None and plant.seedling.cross:
        return plant.seedling.cross
    if plant.seed_parent or plant.pollen_parent:
        # seed parent first, by the multiplication sign (ICNCP 2016, Appendix)
        return f"{plant.seed_parent or '?'} \N{MULTIPLICATION SIGN} {plant.pollen_parent or '?'}"
    return None


def shades_of(plant: PlantSummary) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """The colours of its flower with their modifiers, the ground first, a word once."""
    found = [b for b in plant.beliefs if b.trait == "colour" and b.part not in _NOT_FLOWER]
    first = {"bloom": 0, "base": 0, "lower petals": 1, "upper petals": 2}
    found.sort(key=lambda belief: first.get(belief.part or "bloom", 3))
    shades: dict[str, tuple[str, ...]] = {}
    for belief in found:
        shades.setdefault(str(belief.value), belief.modifiers)
    return tuple(shades.items())


def colours_of(plant: PlantSummary) -> tuple[str, ...]:
    """The colours of its flower as words, the ground first."""
    return tuple(word for word, _ in shades_of(plant))


def decision_of(plant: PlantSummary) -> str | None:
    """What was decided last, else the register's status."""
    said = plant.values("decision")
    if said:
        return str(said[0].value)
    return plant.seedling.status if plant.seedling is not None else None


def bloom_mm(plant: PlantSummary) -> float | None:
    """The bloom's diameter in mm, if measured."""
    said = plant.values("bloom_diameter")
    return float(said[0].value) if said else None


def _seasons(plant: PlantSummary) -> set[int]:
    days = (plant.first_seen, plant.last_seen)
    return {day.year for day in days if day is not None}


def choose(plants: Iterable[PlantSummary], wish: Wish) -> tuple[PlantSummary, ...]:
    """Those that have all that is wished for, in the order given."""
    return tuple(plant for plant in plants if _fits(plant, wish))


def _fits(plant: PlantSummary, wish: Wish) -> bool:
    if wish.kind and plant.plant.kind.value != wish.kind:
        return False
    if wish.cross and cross_of(plant) != wish.cross:
        return False
    if wish.colour and wish.colour not in colours_of(plant):
        return False
    if wish.form and wish.form not in {str(b.value) for b in plant.values("bloom_form")}:
        return False
    if wish.decision and decision_of(plant) != wish.decision:
        return False
    if wish.season and wish.season not in _seasons(plant):
        return False
    if wish.least_mm is None and wish.most_mm is None:
        return True
    across = bloom_mm(plant)
    return across is not None and (wish.least_mm or 0) <= across <= (wish.most_mm or 1e9)


def _seen_last(plant: PlantSummary) -> tuple[object, ...]:
    day = plant.last_seen or date.min
    return (-day.toordinal(), natural(plant.plant.key))


def _largest(plant: PlantSummary) -> tuple[object, ...]:
    return (-(bloom_mm(plant) or 0.0), natural(plant.plant.key))


def _decided(plant: PlantSummary) -> tuple[object, ...]:
    return (decision_of(plant) or "~", natural(plant.plant.key))


def _number(plant: PlantSummary) -> tuple[object, ...]:
    return (plant.plant.kind.value == "unnamed", natural(plant.plant.key))


# name in an address: words on the page, key
ORDERS: dict[str, tuple[str, Callable[[PlantSummary], tuple[object, ...]]]] = {
    "number": ("number", _number),
    "seen": ("last seen", _seen_last),
    "size": ("largest bloom", _largest),
    "decision": ("decision", _decided),
}


def arrange(plants: Sequence[PlantSummary], order: str) -> tuple[PlantSummary, ...]:
    """Sorted by one of `ORDERS`; by number where unknown."""
    key = ORDERS.get(order, ORDERS["number"])[1]
    return tuple(sorted(plants, key=key))


def offered(plants: Sequence[PlantSummary]) -> Offered:
    """What the plants have, to be chosen from."""
    seasons = {year for plant in plants for year in _seasons(plant)}
    return Offered(
        crosses=tuple(sorted({cross for one in plants if (cross := cross_of(one))})),
        colours=tuple(sorted({colour for one in plants for colour in colours_of(one)})),
        forms=tuple(sorted({str(b.value) for one in plants for b in one.values("bloom_form")})),
        decisions=tuple(sorted({said for one in plants if (said := decision_of(one))})),
        seasons=tuple(sorted(seasons, reverse=True)),
    )
