"""Sisters so alike that one is enough, and which of them grows best. Pure.

A group holds seedlings of one cross of which every two are alike, so that a chain of small
steps does not put the two ends of it together.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from diary.insight.description import Description
from diary.insight.growing import Growth, best_first
from diary.insight.likeness import Likeness, compare, ranges
from diary.records.record import Moment, PlantRef

# in the development scripts a sister called "the spitting image" lies at 0.15, "a dead ringer"
# at 0.18 and "very close" at 0.30
NEAR_IDENTICAL = 0.2
# the weight of what both were described by: less is too little to call them the same
LEAST_WEIGHT = 2.5


@dataclass(frozen=True, slots=True, kw_only=True)
class SisterGroup:
    """Near-identical sisters. `likenesses` are all pairs, most alike first.

    `growths` are best first; `best` is the first of them if it has more points than the next,
    else None. `moments` are, for each plant, the clips to compare.
    """

    parents: tuple[str, str]
    plants: tuple[PlantRef, ...]
    likenesses: tuple[Likeness, ...]
    growths: tuple[Growth, ...]
    best: Growth | None
    moments: Mapping[str, tuple[Moment, ...]]


def near_identical(
    descriptions: Sequence[Description],
    growths: Mapping[str, Growth],
    *,
    counts: Mapping[str, Mapping[str, float]] | None = None,
    within: float = NEAR_IDENTICAL,
) -> tuple[SisterGroup, ...]:
    """Groups of sisters that look the same, the most alike first.

    `growths` and `counts` (heads, buds, shoots) are by plant key.
    """
    over = ranges(descriptions)
    families: dict[tuple[str, str], list[Description]] = {}
    for description in descriptions:
        if description.parents is not None and not description.empty:
            seed, pollen = sorted(description.parents)
            families.setdefault((seed, pollen), []).append(description)
    groups = []
    for sisters in families.values():
        for members in _linked(sisters, over, within):
            groups.append(_group(members, over, growths, counts or {}))
    groups.sort(key=lambda group: (group.likenesses[0].distance, group.plants[0].key))
    return tuple(groups)


def _linked(
    sisters: Sequence[Description], over: Mapping[str, float], within: float
) -> list[list[Description]]:
    """Join groups along the pairs that are near enough, nearest first, if all pairs are."""
    near: dict[frozenset[str], float] = {}
    for index, one in enumerate(sisters):
        for other in sisters[index + 1 :]:
            likeness = compare(one, other, over=over)
            if likeness.weight >= LEAST_WEIGHT and likeness.distance <= within:
                near[frozenset((one.plant.key, other.plant.key))] = likeness.distance
    group_of = {sister.plant.key: [sister] for sister in sisters}
    for pair in sorted(near, key=lambda pair: (near[pair], sorted(pair))):
        left, right = (group_of[key] for key in sorted(pair))
        if left is right or not all(
            frozenset((one.plant.key, other.plant.key)) in near for one in left for other in right
        ):
            continue
        left += right
        for member in right:
            group_of[member.plant.key] = left
    groups = {id(group): group for group in group_of.values() if len(group) > 1}
    return list(groups.values())


def _group(
    members: list[Description],
    over: Mapping[str, float],
    growths: Mapping[str, Growth],
    counts: Mapping[str, Mapping[str, float]],
) -> SisterGroup:
    members = sorted(members, key=lambda member: member.plant.key)
    pairs = [
        compare(one, other, over=over)
        for index, one in enumerate(members)
        for other in members[index + 1 :]
    ]
    ordered = best_first(
        (growths[member.plant.key] for member in members if member.plant.key in growths),
        {key: dict(counted) for key, counted in counts.items()},
    )
    clear = len(ordered) > 1 and ordered[0].known and ordered[0].total > ordered[1].total
    parents = members[0].parents
    assert parents is not None  # families hold only plants with both parents
    return SisterGroup(
        parents=parents,
        plants=tuple(member.plant for member in members),
        likenesses=tuple(sorted(pairs, key=lambda pair: pair.distance)),
        growths=ordered,
        best=ordered[0] if clear else None,
        moments={member.plant.key: _moments(member) for member in members},
    )


def _moments(description: Description) -> tuple[Moment, ...]:
    found = {moment for belief in description.beliefs for moment in belief.sources}
    return tuple(sorted(found, key=lambda moment: (moment.recording, moment.start_ms)))
