"""How well a plant grows, on the evidence of what was said: points with their reasons. Pure.

The points are ours (common practice, no published scale): they only put sisters that look
alike in order, and every point names the words it comes from.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from diary.records.beliefs import Belief
from diary.records.record import Moment, PlantRef

POINTS = {
    ("habit", "compact"): 1.0,
    ("habit", "bushy"): 1.0,
    ("habit", "branching"): 1.0,
    ("habit", "vigorous"): 1.0,
    ("habit", "leggy"): -1.0,
    ("habit", "weak"): -2.0,
    ("flowering", "free"): 1.5,
    ("flowering", "long"): 1.0,
    ("flowering", "shy"): -1.5,
    ("health", "clean"): 1.0,
    ("health", "rust"): -1.0,
    ("health", "mildew"): -1.0,
    ("health", "botrytis"): -1.0,
    ("health", "aphids"): -0.5,
    ("health", "whitefly"): -0.5,
    ("health", "thrips"): -0.5,
    ("health", "virus"): -3.0,
    ("health", "rot"): -2.0,
    ("health", "scorch"): -0.5,
}
# counts are only compared between sisters: the larger by a quarter or more takes the point
COUNTS = ("count_heads", "count_buds", "count_shoots")


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """One thing said for or against a plant, and where."""

    words: str
    points: float
    moments: tuple[Moment, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Growth:
    """A plant's points, best first. `known` is false when nothing of its growth was said."""

    plant: PlantRef
    total: float
    points: tuple[Point, ...]

    @property
    def known(self) -> bool:
        """Whether anything was said of how it grows."""
        return bool(self.points)


def growth(plant: PlantRef, beliefs: Iterable[Belief]) -> Growth:
    """Add up what was said of a plant's growth. What was decided about it is no evidence."""
    points = [
        Point(
            words=f"{belief.trait}: {belief.value}",
            points=POINTS[belief.trait, str(belief.value)],
            moments=belief.sources,
        )
        for belief in beliefs
        if (belief.trait, str(belief.value)) in POINTS
    ]
    points.sort(key=lambda point: (-abs(point.points), point.words))
    return Growth(plant=plant, total=sum(point.points for point in points), points=tuple(points))


def best_first(
    growths: Iterable[Growth], counts: dict[str, dict[str, float]] | None = None
) -> tuple[Growth, ...]:
    """The plants by points; `counts` are heads, buds and shoots by plant key and trait."""
    together = list(growths)
    for trait in COUNTS:
        counted = {
            entry.plant.key: (counts or {}).get(entry.plant.key, {}).get(trait)
            for entry in together
        }
        known = sorted((count for count in counted.values() if count is not None), reverse=True)
        if len(known) < 2 or known[0] < 1.25 * known[1]:
            continue
        together = [
            _with_point(entry, trait, known[0]) if counted[entry.plant.key] == known[0] else entry
            for entry in together
        ]
    return tuple(sorted(together, key=lambda entry: (-entry.total, entry.plant.key)))


def _with_point(entry: Growth, trait: str, count: float) -> Growth:
    words = f"most {trait.removeprefix('count_')}: {count:g}"
    point = Point(words=words, points=0.5, moments=())
    return Growth(plant=entry.plant, total=entry.total + 0.5, points=(*entry.points, point))
