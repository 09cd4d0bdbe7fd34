"""Pairs of parents not yet crossed, and crosses made of which no seedling has flowered. Pure."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations

from diary.insight.interval import Share
from diary.insight.overview import Overview
from diary.insight.pedigree import Kinship
from diary.insight.progeny import CrossProgeny, crosses_with, parents, progeny
from diary.insight.wanted import Wanted, has


@dataclass(frozen=True, slots=True, kw_only=True)
class Combination:
    """Two plants never crossed either way, and why they might be.

    `inbreeding` is the coefficient F that their seedlings would have. `reasons` say what each
    brings: it has the wanted trait, or so many of its children have.
    """

    first: str
    second: str
    inbreeding: float
    reasons: tuple[str, ...]


def untested(overview: Overview) -> tuple[CrossProgeny, ...]:
    """Crosses on record of which no seedling has flowered yet."""
    return tuple(cross for cross in progeny(overview) if cross.flowered.count == 0)


def unused(
    overview: Overview, want: Wanted | None = None, *, limit: int = 20
) -> tuple[Combination, ...]:
    """Pairs of breeding plants not crossed yet, most reasons and least inbred first.

    Breeding plants are those used as a parent already and those meant to be. With `want`,
    kept plants that have the trait count too, and only pairs of which one brings it.
    """
    made = {
        frozenset(one for one in (cross.seed_parent, cross.pollen_parent) if one is not None)
        for cross in progeny(overview)
    }
    kinship = Kinship(overview.pedigree())
    brings = _brings(overview, want)
    found = []
    for first, second in combinations(sorted(_breeding_plants(overview, want)), 2):
        if frozenset((first, second)) in made:
            continue
        reasons = tuple(
            f"{overview.title(one)}: {reason}"
            for one in (first, second)
            for reason in brings.get(one, ())
        )
        if want is not None and not reasons:
            continue
        found.append(
            Combination(
                first=first,
                second=second,
                inbreeding=kinship.between(first, second),
                reasons=reasons,
            )
        )
    found.sort(key=lambda one: (-len(one.reasons), one.inbreeding, one.first, one.second))
    return tuple(found[:limit])


def _breeding_plants(overview: Overview, want: Wanted | None) -> Iterable[str]:
    found = {parent.parent for parent in parents(overview)}
    for plant in overview.plants:
        decisions = overview.decisions[plant.plant.key]
        fate = decisions.fate.value if decisions.fate else None
        if fate == "discard":
            found.discard(plant.plant.key)
        elif decisions.task("breed") is not None or (
            want is not None and fate == "keep" and has(plant.beliefs, want)
        ):
            found.add(plant.plant.key)
    return found


def _brings(overview: Overview, want: Wanted | None) -> dict[str, list[str]]:
    """What each plant has to offer, as sentences; only about the wanted trait if there is one."""
    brings: dict[str, list[str]] = {}
    if want is None:
        for parent in parents(overview):
            if parent.kept.count:
                brings[parent.parent] = [f"{_of(parent.kept)} children kept"]
        return brings
    for plant in overview.plants:
        if has(plant.beliefs, want):
            brings.setdefault(plant.plant.key, []).append(f"has {want.text}")
    for cross in crosses_with(overview, want):
        for one in {cross.progeny.seed_parent, cross.progeny.pollen_parent} - {None}:
            brings.setdefault(str(one), []).append(
                f"{_of(cross.share)} seedlings of {cross.progeny.formula} have {want.text}"
            )
    return brings


def _of(share: Share) -> str:
    return f"{share.count} of {share.total}"
