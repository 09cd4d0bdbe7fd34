"""What a plant looks like, as far as it was said: beliefs sorted into features to compare. Pure.

What others said it is like (`similar_to`) is left out on purpose: a likeness found here is
found from the plant's own description.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from diary.records.beliefs import Belief
from diary.records.record import PlantRef

# parts of a flower that are markings lying on the petals (the reading contract's list)
MARKINGS = ("blotch", "feathering", "stripe", "veins", "edge", "eye", "spots", "flush", "star")
# parts that a plant shows without a flower
NOT_FLOWER = frozenset({"leaf", "zone", "stem", "bud"})
LENGTHS = (
    "bloom_diameter",
    "head_diameter",
    "plant_height",
    "plant_spread",
    "stem_length",
    "leaf_width",
)
# traits that hold several words of a plant at once
WORD_TRAITS = ("bloom_form", "habit", "foliage", "scent")


@dataclass(frozen=True, slots=True, kw_only=True)
class Shade:
    """One colour as said: the word and its modifiers."""

    word: str
    modifiers: tuple[str, ...] = ()

    def __str__(self) -> str:
        return " ".join((*self.modifiers, self.word))


@dataclass(frozen=True, slots=True, kw_only=True)
class Description:
    """The features of one plant. What was not said is not there; nothing stands for absent.

    `colours` by part, `words` by trait (bloom_form, habit, foliage, scent), `lengths` in mm by
    trait; `size` is "small", "medium" or "large". `parents` are both parents' names or numbers,
    where both are known. `beliefs` are those it was made from.
    """

    plant: PlantRef
    colours: Mapping[str, tuple[Shade, ...]]
    markings: frozenset[str]
    words: Mapping[str, frozenset[str]]
    lengths: Mapping[str, float]
    size: str | None
    parents: tuple[str, str] | None
    beliefs: tuple[Belief, ...]

    def kin_of(self, other: "Description") -> bool:
        """Whether they are sisters, or one is a parent of the other."""
        return (
            self.sister_of(other)
            or (self.parents is not None and other.plant.key in self.parents)
            or (other.parents is not None and self.plant.key in other.parents)
        )

    def sister_of(self, other: "Description") -> bool:
        """Whether both come from the same two parents, whichever way the cross was made."""
        if self.parents is None or other.parents is None:
            return False
        return sorted(self.parents) == sorted(other.parents)

    @property
    def empty(self) -> bool:
        """Whether nothing of its looks was said."""
        return not (self.colours or self.markings or self.words or self.lengths or self.size)

    @property
    def ground(self) -> tuple[str, tuple[Shade, ...]] | None:
        """The colour under the markings, and the part it was said of; None if not said.

        The ground itself, else the flower as a whole, else the lower petals, which carry the
        ground colour of most bicoloured pelargoniums (common practice).
        """
        for part in ("base", "bloom", "lower petals"):
            if part in self.colours:
                return part, self.colours[part]
        return None


def describe(
    plant: PlantRef,
    beliefs: Iterable[Belief],
    *,
    parents: tuple[str | None, str | None] = (None, None),
) -> Description:
    """Sort what is believed of a plant into its features. `parents`: seed parent first."""
    seed, pollen = parents
    colours: dict[str, list[Shade]] = {}
    words: dict[str, set[str]] = {}
    markings: set[str] = set()
    lengths: dict[str, float] = {}
    size: str | None = None
    used: list[Belief] = []
    for belief in beliefs:
        value = belief.value
        if belief.trait == "colour":
            part = belief.part or "bloom"
            shade = Shade(word=str(value), modifiers=tuple(sorted(belief.modifiers)))
            if shade not in colours.setdefault(part, []):
                colours[part].append(shade)
            if part in MARKINGS:
                markings.add(part)
        elif belief.trait == "marking":
            markings.add(str(value))
        elif belief.trait in WORD_TRAITS:
            words.setdefault(belief.trait, set()).add(str(value))
        elif belief.trait in LENGTHS and isinstance(value, int | float):
            lengths[belief.trait] = float(value)
        elif belief.trait == "bloom_size":
            size = str(value)
        else:
            continue
        used.append(belief)
    return Description(
        plant=plant,
        colours={part: tuple(shades) for part, shades in colours.items()},
        markings=frozenset(markings),
        words={trait: frozenset(said) for trait, said in words.items()},
        lengths=lengths,
        size=size,
        parents=None if seed is None or pollen is None else (seed, pollen),
        beliefs=tuple(used),
    )
