"""What came of each cross and each parent: counts, shares with intervals, traits. Pure."""

from collections.abc import Sequence
from dataclasses import dataclass

from diary.insight.description import NOT_FLOWER
from diary.insight.interval import Share, wilson
from diary.insight.names import formula
from diary.insight.overview import Overview
from diary.insight.spread import SizeSpread, Spread, size_spreads, spreads
from diary.insight.wanted import Wanted, has
from diary.records.pages import PlantSummary
from diary.records.record import PlantRef
from diary.records.register import Cross

# traits that only a plant in flower shows
_FLOWER = frozenset({"bloom_form", "bloom_size", "bloom_diameter", "head_diameter", "count_heads"})


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossProgeny:
    """One cross and its seedlings.

    `code` is the register's, None for parents that were only named. `sown` and `germinated`
    are the register's or, failing that, as said; None where neither. `germination` is of the
    seeds sown; `flowered` and `kept` are shares of the seedlings known.
    """

    code: str | None
    seed_parent: str | None
    pollen_parent: str | None
    formula: str
    sown: int | None
    germinated: int | None
    germination: Share | None
    plants: tuple[PlantRef, ...]
    flowered: Share
    kept: Share
    discarded: Share
    spreads: tuple[Spread, ...]
    sizes: tuple[SizeSpread, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ParentProgeny:
    """What the children of one parent show, whichever side it was used on."""

    parent: str
    title: str
    as_seed_parent: int
    as_pollen_parent: int
    partners: tuple[str, ...]
    flowered: Share
    kept: Share
    spreads: tuple[Spread, ...]
    sizes: tuple[SizeSpread, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossWith:
    """How many of a cross's seedlings, of those described in it, have a wanted trait."""

    progeny: CrossProgeny
    share: Share
    plants: tuple[PlantRef, ...]


def flowered(plant: PlantSummary) -> bool:
    """Whether a plant has been seen in flower, or its first flower is on record."""
    if plant.seedling is not None and plant.seedling.first_flower:
        return True
    return any(
        belief.trait in _FLOWER
        or (belief.trait == "colour" and belief.part not in NOT_FLOWER)
        or belief.trait in ("marking", "flowering")
        for belief in plant.beliefs
    )


Family = tuple[str | None, str | None, str | None]  # code, seed parent, pollen parent


def families(overview: Overview) -> dict[Family, list[PlantSummary]]:
    """Seedlings by (code, seed parent, pollen parent); crosses without a seedling too.

    A seedling whose entry names no cross belongs to the only one on record with its parents.
    """
    by_parents: dict[tuple[str | None, str | None], list[Cross]] = {}
    found: dict[Family, list[PlantSummary]] = {}
    by_code: dict[str | None, Family] = {}
    for cross in overview.crosses:
        parents = (overview.key(cross.seed_parent), overview.key(cross.pollen_parent))
        by_parents.setdefault(parents, []).append(cross)
        by_code[cross.code] = (cross.code, *parents)
        found[by_code[cross.code]] = []
    for plant in overview.plants:
        parents = overview.parents(plant)
        code = plant.seedling.cross if plant.seedling else None
        if code in by_code:
            found[by_code[code]].append(plant)
            continue
        if parents == (None, None):
            continue
        made = by_parents.get(parents, [])
        code = made[0].code if len(made) == 1 else code
        found.setdefault((code, *parents), []).append(plant)
    return found


def progeny(overview: Overview) -> tuple[CrossProgeny, ...]:
    """Every cross with what came of it, in order of code and parents."""
    on_record = {cross.code: cross for cross in overview.crosses}
    return tuple(
        _cross(overview, code, seed, pollen, plants, on_record.get(code or ""))
        for (code, seed, pollen), plants in sorted(
            families(overview).items(), key=lambda entry: tuple(part or "~" for part in entry[0])
        )
    )


def _cross(
    overview: Overview,
    code: str | None,
    seed: str | None,
    pollen: str | None,
    plants: Sequence[PlantSummary],
    entry: Cross | None,
) -> CrossProgeny:
    sown = entry.seeds_sown if entry and entry.seeds_sown is not None else _said(plants, "sown")
    came_up = (
        entry.germinated if entry and entry.germinated is not None else _said(plants, "germinated")
    )
    return CrossProgeny(
        code=code,
        seed_parent=seed,
        pollen_parent=pollen,
        formula=formula(_written(overview, seed), _written(overview, pollen)),
        sown=sown,
        germinated=came_up,
        germination=(
            wilson(came_up, sown)
            if sown is not None and came_up is not None and came_up <= sown
            else None
        ),
        plants=tuple(plant.plant for plant in plants),
        flowered=wilson(sum(map(flowered, plants)), len(plants)),
        kept=_fated(overview, plants, "keep"),
        discarded=_fated(overview, plants, "discard"),
        spreads=spreads(plants),
        sizes=size_spreads(plants),
    )


def _written(overview: Overview, key: str | None) -> str | None:
    return None if key is None else overview.title(key)


def _said(plants: Sequence[PlantSummary], what: str) -> int | None:
    """A count said while one of the seedlings was shown ("I sowed sixty of that cross")."""
    trait = "count_seeds_sown" if what == "sown" else "count_germinated"
    counts = [
        int(belief.value)
        for plant in plants
        for belief in plant.values(trait)
        if isinstance(belief.value, int | float)
    ]
    return max(counts, default=None)


def _fated(overview: Overview, plants: Sequence[PlantSummary], fate: str) -> Share:
    found = [overview.decisions[plant.plant.key].fate for plant in plants]
    return wilson(sum(one is not None and one.value == fate for one in found), len(plants))


def parents(overview: Overview) -> tuple[ParentProgeny, ...]:
    """Every plant used as a parent, those with most children first."""
    children: dict[str, list[PlantSummary]] = {}
    sides: dict[str, list[int]] = {}
    partners: dict[str, set[str]] = {}
    for plant in overview.plants:
        seed, pollen = overview.parents(plant)
        for parent in dict.fromkeys(one for one in (seed, pollen) if one is not None):
            children.setdefault(parent, []).append(plant)
            counts = sides.setdefault(parent, [0, 0])
            counts[0] += parent == seed
            counts[1] += parent == pollen
            other = pollen if parent == seed else seed
            if other is not None:
                partners.setdefault(parent, set()).add(other)
    return tuple(
        ParentProgeny(
            parent=parent,
            title=overview.title(parent),
            as_seed_parent=sides[parent][0],
            as_pollen_parent=sides[parent][1],
            partners=tuple(sorted(partners.get(parent, ()))),
            flowered=wilson(sum(map(flowered, plants)), len(plants)),
            kept=_fated(overview, plants, "keep"),
            spreads=spreads(plants),
            sizes=size_spreads(plants),
        )
        for parent, plants in sorted(children.items(), key=lambda entry: (-len(entry[1]), entry[0]))
    )


def crosses_with(overview: Overview, want: Wanted) -> tuple[CrossWith, ...]:
    """The crosses that gave a wanted trait, the surest first (by the interval's lower bound)."""
    by_key = {plant.plant.key: plant for plant in overview.plants}
    found = []
    for cross in progeny(overview):
        answers = {one: has(by_key[one.key].beliefs, want) for one in cross.plants}
        described = [answer for answer in answers.values() if answer is not None]
        holders = tuple(one for one, answer in answers.items() if answer)
        if holders:
            share = wilson(len(holders), len(described))
            found.append(CrossWith(progeny=cross, share=share, plants=holders))
    return tuple(sorted(found, key=lambda one: (-one.share.low, one.progeny.formula)))
