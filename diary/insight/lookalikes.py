"""Look-alikes of a diary: the plants nearest to one, or groups of identical sisters. Pure."""

from dataclasses import dataclass

from diary.errors import NotFound
from diary.insight.growing import COUNTS, growth
from diary.insight.likeness import Neighbour, nearest
from diary.insight.overview import Overview
from diary.insight.sisters import NEAR_IDENTICAL, SisterGroup, near_identical
from diary.records.record import Moment, PlantRef


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidAlike:
    """The speaker's own word for it: `plant` was said to be like `other`."""

    plant: PlantRef
    other: str
    moment: Moment


@dataclass(frozen=True, slots=True, kw_only=True)
class LookAlikes:
    """The plants nearest to one, by its description; and what the speaker called alike."""

    plant: PlantRef
    nearest: tuple[Neighbour, ...]
    said: tuple[SaidAlike, ...]


def lookalikes(overview: Overview, which: str, *, limit: int = 5) -> LookAlikes:
    """The plants most like this one. Raises NotFound if it is unknown or was never described."""
    key = overview.key(which)
    descriptions = overview.descriptions()
    described = next((one for one in descriptions if one.plant.key == key), None)
    if described is None:
        known = any(plant.plant.key == key for plant in overview.plants)
        raise NotFound(
            f"Nothing was said of the looks of {which}: there is nothing to compare."
            if known
            else f"No plant {which!r} in this diary. `diary lookalikes` shows all groups."
        )
    own = overview.group(described.plant.key)
    # a dahlia is not compared with a pelargonium
    others = [
        one for one in descriptions if overview.group(one.plant.key) in (own, None) or not own
    ]
    said = tuple(
        SaidAlike(plant=record.plant, other=str(record.value), moment=record.moment)
        for records in overview.records.values()
        for record in records
        if record.trait == "similar_to"
        and key in (record.plant.key, overview.key(str(record.value)))
    )
    return LookAlikes(
        plant=described.plant, nearest=nearest(described, others, limit=limit), said=said
    )


def sister_groups(
    overview: Overview, *, within: float = NEAR_IDENTICAL, discarded: bool = False
) -> tuple[SisterGroup, ...]:
    """All groups of near-identical sisters, with the better grower; discarded ones if asked."""
    kept = {
        plant.plant.key: plant
        for plant in overview.plants
        if discarded
        or (fate := overview.decisions[plant.plant.key].fate) is None
        or fate.value != "discard"
    }
    counts = {
        key: {
            belief.trait: float(belief.value)
            for belief in plant.beliefs
            if belief.trait in COUNTS and isinstance(belief.value, int | float)
        }
        for key, plant in kept.items()
    }
    return near_identical(
        [one for one in overview.descriptions() if one.plant.key in kept],
        {key: growth(plant.plant, plant.beliefs) for key, plant in kept.items()},
        counts=counts,
        within=within,
    )
