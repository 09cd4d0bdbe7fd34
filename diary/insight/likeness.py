"""How alike two plants are, feature by feature, with the reasons. Pure.

Gower's coefficient (J. C. Gower, Biometrics 27, 1971, 857-871): each feature that both plants
have gives a distance 0..1, and the whole is their weighted mean; what was said of one plant
only is left out. Two plants with little in common to compare would then come out as alike by
luck, so one more feature of weight `IGNORANCE` stands for all that was not said: 1/2 between
strangers, less between sisters of one cross, and parent and child, who share half their genes.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from diary.insight.description import MARKINGS, Description, Shade
from diary.insight.swatches import colour_distance
from diary.records.record import PlantRef

# CIEDE2000 at which two colours are as different as can be: about crimson against pink
FAR_APART = 50.0
# what was not said: its weight, and the distance expected of strangers and of near kin
IGNORANCE = 1.0
STRANGERS = 0.5
KIN = 0.25
# Gower divides a difference of lengths by their range; with few plants, by no less than this
LEAST_RANGE_MM = {"bloom_diameter": 30.0, "head_diameter": 60.0, "leaf_width": 60.0}
LEAST_RANGE = 200.0  # mm: height, spread, stem

WEIGHTS = {
    "ground": 1.5,
    "upper petals": 1.0,
    "throat": 1.0,
    "markings": 1.0,
    "petals": 0.75,
    "shape": 0.75,
    "bloom_diameter": 1.0,
    "size": 0.5,
    "habit": 0.5,
    "foliage": 0.5,
    "head_diameter": 0.5,
    "plant_height": 0.5,
    "plant_spread": 0.5,
    "scent": 0.25,
    "stem_length": 0.25,
    "leaf_width": 0.25,
}
MARKING_COLOUR = 0.75  # the weight of the colour of one marking
OTHER_COLOUR = 0.5  # of leaf, stem, bud, reverse
_SIZES = {"small": 0.0, "medium": 0.5, "large": 1.0}
# how full a flower is, apart from its shape: a flower may be semi-double and rounded
_PETALS = {"single": 0.0, "semi-double": 0.5, "double": 1.0, "rosebud": 1.0}
# feathering and veins are one characteristic to those who describe varieties (US Plant Patents
# 7467 and 7620 say "feathering" where the Canadian descriptions have veins in the marking)
_SAME_MARKING = {"feathering": "veins"}
_GROUND_PARTS = ("base", "bloom", "lower petals", "upper petals")


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """One feature compared: what each has, how far apart (0 same .. 1), what it weighs."""

    feature: str
    first: str
    second: str
    distance: float
    weight: float

    def __str__(self) -> str:
        if self.first == self.second:
            return f"{self.feature}: both {self.first}"
        return f"{self.feature}: {self.first} and {self.second}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Likeness:
    """Two plants compared: distance 0..1, the weight it rests on, reasons by weight of evidence."""

    first: PlantRef
    second: PlantRef
    distance: float
    weight: float
    reasons: tuple[Reason, ...]

    @property
    def alike(self) -> tuple[Reason, ...]:
        """What makes them alike, strongest first."""
        return tuple(reason for reason in self.reasons if reason.distance <= 0.25)

    @property
    def different(self) -> tuple[Reason, ...]:
        """What tells them apart, strongest first."""
        apart = [reason for reason in self.reasons if reason.distance > 0.25]
        return tuple(sorted(apart, key=lambda reason: -reason.distance * reason.weight))


@dataclass(frozen=True, slots=True, kw_only=True)
class Neighbour:
    """A plant and how near it is."""

    plant: PlantRef
    likeness: Likeness


def ranges(descriptions: Iterable[Description]) -> dict[str, float]:
    """The range of each length over all plants compared, mm (Gower's denominators)."""
    seen: dict[str, list[float]] = {}
    for description in descriptions:
        for trait, length in description.lengths.items():
            seen.setdefault(trait, []).append(length)
    return {
        trait: max(max(found) - min(found), LEAST_RANGE_MM.get(trait, LEAST_RANGE))
        for trait, found in seen.items()
    }


def compare(
    first: Description, second: Description, *, over: Mapping[str, float] | None = None
) -> Likeness:
    """How alike two plants are. `over` are the `ranges` of all plants compared."""
    spread = ranges((first, second)) if over is None else over
    reasons = tuple(
        sorted(_reasons(first, second, spread), key=lambda reason: (-reason.weight, reason.feature))
    )
    unsaid = KIN if first.kin_of(second) else STRANGERS
    weight = sum(reason.weight for reason in reasons)
    total = sum(reason.weight * reason.distance for reason in reasons)
    return Likeness(
        first=first.plant,
        second=second.plant,
        distance=(total + IGNORANCE * unsaid) / (weight + IGNORANCE),
        weight=weight,
        reasons=reasons,
    )


def nearest(
    description: Description, others: Sequence[Description], *, limit: int | None = None
) -> tuple[Neighbour, ...]:
    """The other plants by likeness, nearest first; those with nothing to compare left out."""
    over = ranges((description, *others))
    found = [
        Neighbour(plant=other.plant, likeness=compare(description, other, over=over))
        for other in others
        if other.plant != description.plant
    ]
    found = [neighbour for neighbour in found if neighbour.likeness.reasons]
    found.sort(key=lambda neighbour: (neighbour.likeness.distance, neighbour.plant.key))
    return tuple(found[:limit])


def _reasons(
    first: Description, second: Description, over: Mapping[str, float]
) -> Iterator[Reason]:
    yield from _ground(first, second)
    yield from _upper_petals(first, second)
    for part in sorted(set(first.colours) & set(second.colours)):
        if part in _GROUND_PARTS:
            continue
        weight = WEIGHTS.get(part, MARKING_COLOUR if part in MARKINGS else OTHER_COLOUR)
        yield from _colour(part, first.colours[part], second.colours[part], weight)
    if first.markings and second.markings:
        yield _markings(first.markings, second.markings)
    yield from _form(first.words.get("bloom_form"), second.words.get("bloom_form"))
    for trait in sorted(set(first.words) & set(second.words) - {"bloom_form"}):
        yield _overlap(trait, first.words[trait], second.words[trait], WEIGHTS[trait])
    for trait in sorted(set(first.lengths) & set(second.lengths)):
        one, other = first.lengths[trait], second.lengths[trait]
        yield Reason(
            feature=trait,
            first=f"{one:g} mm",
            second=f"{other:g} mm",
            distance=min(1.0, abs(one - other) / over.get(trait, LEAST_RANGE)),
            weight=WEIGHTS[trait],
        )
    if first.size in _SIZES and second.size in _SIZES:
        yield Reason(
            feature="size",
            first=str(first.size),
            second=str(second.size),
            distance=abs(_SIZES[str(first.size)] - _SIZES[str(second.size)]),
            weight=WEIGHTS["size"],
        )


def _ground(first: Description, second: Description) -> Iterator[Reason]:
    """The ground colour, like with like where both speak of the same part."""
    for part in _GROUND_PARTS[:3]:
        if part in first.colours and part in second.colours:
            yield from _colour(part, first.colours[part], second.colours[part], WEIGHTS["ground"])
            return
    one, other = first.ground, second.ground
    if one is not None and other is not None:
        # said of two different parts: half the weight, as for the upper petals below
        yield from _colour("ground", one[1], other[1], WEIGHTS["ground"] / 2)


def _upper_petals(first: Description, second: Description) -> Iterator[Reason]:
    """The upper petals; where one flower was called by one colour, that stands for them too."""
    ones, others = first.colours.get("upper petals"), second.colours.get("upper petals")
    if ones and others:
        yield from _colour("upper petals", ones, others, WEIGHTS["upper petals"])
    elif ones and "bloom" in second.colours:
        whole = second.colours["bloom"]
        yield from _colour("upper petals", ones, whole, WEIGHTS["upper petals"] / 2)
    elif others and "bloom" in first.colours:
        whole = first.colours["bloom"]
        yield from _colour("upper petals", whole, others, WEIGHTS["upper petals"] / 2)


def _colour(
    part: str, ones: tuple[Shade, ...], others: tuple[Shade, ...], weight: float
) -> Iterator[Reason]:
    """Two sets of colours of one part: each to its nearest in the other set, on average."""
    nearest_ones = [_closest(one, others) for one in ones]
    nearest_others = [_closest(other, ones) for other in others]
    known = [step for step in (*nearest_ones, *nearest_others) if step is not None]
    if not known:
        return
    yield Reason(
        feature=part if part == "ground" else f"colour of {part}",
        first=" and ".join(map(str, ones)),
        second=" and ".join(map(str, others)),
        distance=sum(known) / len(known),
        weight=weight,
    )


def _closest(shade: Shade, others: tuple[Shade, ...]) -> float | None:
    steps = [_shade_distance(shade, other) for other in others]
    return min((step for step in steps if step is not None), default=None)


def _shade_distance(one: Shade, other: Shade) -> float | None:
    if one == other:
        return 0.0
    apart = colour_distance(one.word, other.word, one.modifiers, other.modifiers)
    return None if apart is None else min(1.0, apart / FAR_APART)


def _markings(ones: frozenset[str], others: frozenset[str]) -> Reason:
    alike = [frozenset(_SAME_MARKING.get(said, said) for said in marks) for marks in (ones, others)]
    return Reason(
        feature="markings",
        first=", ".join(sorted(ones)),
        second=", ".join(sorted(others)),
        distance=_jaccard(*alike),
        weight=WEIGHTS["markings"],
    )


def _form(ones: frozenset[str] | None, others: frozenset[str] | None) -> Iterator[Reason]:
    """How full the flower is on a scale, and its shape by the words that are shared."""
    if not ones or not others:
        return
    one, other = (
        sorted(words & _PETALS.keys(), key=_PETALS.__getitem__) for words in (ones, others)
    )
    if one and other:
        yield Reason(
            feature="petals",
            first=", ".join(one),
            second=", ".join(other),
            distance=abs(_PETALS[one[-1]] - _PETALS[other[-1]]),
            weight=WEIGHTS["petals"],
        )
    if ones - _PETALS.keys() and others - _PETALS.keys():
        yield _overlap("shape", ones - _PETALS.keys(), others - _PETALS.keys(), WEIGHTS["shape"])


def _jaccard(ones: frozenset[str], others: frozenset[str]) -> float:
    return 1 - len(ones & others) / len(ones | others)


def _overlap(feature: str, ones: frozenset[str], others: frozenset[str], weight: float) -> Reason:
    """Two sets of words: Jaccard's distance, 1 less the share that both have."""
    return Reason(
        feature=feature,
        first=", ".join(sorted(ones)),
        second=", ".join(sorted(others)),
        distance=_jaccard(ones, others),
        weight=weight,
    )
