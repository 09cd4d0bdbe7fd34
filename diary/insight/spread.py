"""How a trait is spread among the plants of which it was described: counts and intervals. Pure."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from statistics import median

from diary.insight.description import LENGTHS, MARKINGS, NOT_FLOWER
from diary.insight.interval import Share, wilson
from diary.records.pages import PlantSummary
from diary.records.record import PlantRef

# what of the flower and plant is worth counting in a progeny
WORDS = ("colour", "marking", "bloom_form", "bloom_size", "habit", "foliage", "scent", "flowering")


@dataclass(frozen=True, slots=True, kw_only=True)
class ValueCount:
    """How many of the plants described in this trait have the value, and which."""

    value: str
    share: Share
    plants: tuple[PlantRef, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """The values of one trait (of one part) among `described` plants, commonest first."""

    trait: str
    part: str | None
    described: int
    values: tuple[ValueCount, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeSpread:
    """The sizes of `measured` plants in mm."""

    trait: str
    measured: int
    least: float
    middle: float
    most: float


def spreads(plants: Sequence[PlantSummary]) -> tuple[Spread, ...]:
    """The spread of every trait in words. A plant counts once for each value it has."""
    found: dict[tuple[str, str | None], dict[str, dict[str, PlantRef]]] = {}
    described: dict[tuple[str, str | None], set[str]] = {}
    for plant in plants:
        for trait, value in _features(plant):
            described.setdefault(trait, set()).add(plant.plant.key)
            if value is not None:
                found.setdefault(trait, {}).setdefault(value, {})[plant.plant.key] = plant.plant
    return tuple(
        Spread(
            trait=trait,
            part=part,
            described=len(described[trait, part]),
            values=tuple(
                ValueCount(
                    value=value,
                    share=wilson(len(holders), len(described[trait, part])),
                    plants=tuple(holders.values()),
                )
                for value, holders in sorted(
                    values.items(), key=lambda entry: (-len(entry[1]), entry[0])
                )
            ),
        )
        for (trait, part), values in sorted(
            found.items(), key=lambda entry: (WORDS.index(entry[0][0]), entry[0][1] or "")
        )
    )


def _features(plant: PlantSummary) -> Iterator[tuple[tuple[str, str | None], str | None]]:
    """Each trait (and part) that was spoken of, with a value the plant has in it.

    A marking with a colour of its own is a marking too. Whoever described the colours of a
    flower would have spoken of its markings, so such a flower counts as described in them
    (value None) though none was named.
    """
    for belief in plant.beliefs:
        if belief.trait == "colour":
            yield ("colour", belief.part), str(belief.value)
            if belief.part in MARKINGS:
                yield ("marking", None), belief.part
            elif belief.part not in NOT_FLOWER:
                yield ("marking", None), None
        elif belief.trait in WORDS:
            yield (belief.trait, None), str(belief.value)


def size_spreads(plants: Sequence[PlantSummary]) -> tuple[SizeSpread, ...]:
    """The range and median of every length."""
    measured: dict[str, list[float]] = {}
    for plant in plants:
        for belief in plant.beliefs:
            if belief.trait in LENGTHS and isinstance(belief.value, int | float):
                measured.setdefault(belief.trait, []).append(float(belief.value))
    return tuple(
        SizeSpread(
            trait=trait,
            measured=len(found),
            least=min(found),
            middle=median(found),
            most=max(found),
        )
        for trait, found in sorted(measured.items(), key=lambda entry: LENGTHS.index(entry[0]))
    )
