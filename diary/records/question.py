"""What a search asks for: traits and sizes in the vocabulary's words, and the words themselves.

Pure. "white throat" is a colour of a part, "bloom over 50 mm" a range, "picotee" a marking.
"""

from collections.abc import Sequence
from dataclasses import dataclass

MOST_MM = 1_000_000.0
NEARLY = 0.1  # "about 50 mm" is within a tenth of it
EXACTLY = 0.02  # "50 mm" is within what a unit's rounding changes

_OVER = (("over",), ("above",), ("more", "than"), ("bigger", "than"), ("larger", "than"),
         ("at", "least"), ("from",), (">",), (">="))  # fmt: skip
_UNDER = (("under",), ("below",), ("less", "than"), ("smaller", "than"), ("at", "most"),
          ("up", "to"), ("<",), ("<="))  # fmt: skip
_ABOUT = (("about",), ("around",), ("roughly",))

# what is measured where the question names only the organ (and, for a plant, the direction)
_ORGANS = {
    "bloom": ("bloom_diameter",),
    "head": ("head_diameter",),
    "plant": ("plant_height", "plant_spread"),
    "stem": ("stem_length",),
    "leaf": ("leaf_width",),
}
_DIRECTIONS = {"tall": ("plant_height",)}
_ALL = ("bloom_diameter", "head_diameter", "plant_height", "plant_spread", "stem_length",
        "leaf_width")  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """One thing a plant must have. `told` says it in words. A range is in millimetres."""

    traits: tuple[str, ...]
    told: str
    value: str | None = None
    part: str | None = None
    least: float | None = None
    most: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """The conditions, and the words to look for in what was said (none where all is a size)."""

    conditions: tuple[Condition, ...]
    words: tuple[str, ...]


def understand(asked: str) -> Question:
    """Read a question in the words of the vocabulary."""
    # the vocabulary's phrases need a tokenizer, which is slow to import
    from diary.reading.lengths import find_lengths
    from diary.reading.tokens import pieces
    from diary.reading.vocabulary import load_vocabulary

    vocabulary = load_vocabulary()
    texts = [piece for word in asked.split() for piece in pieces(word)]
    conditions: list[Condition] = []
    taken: set[int] = set()
    for length in find_lengths(texts, vocabulary):
        taken.update(range(length.start, length.end))
        subjects = {found.label for found in vocabulary.subjects.find(texts)}
        ways = {found.label for found in vocabulary.dimensions.find(texts)}
        traits = next((_DIRECTIONS[way] for way in ways if way in _DIRECTIONS), None) or next(
            (_ORGANS[organ] for organ in sorted(subjects) if organ in _ORGANS), _ALL
        )
        conditions.append(_size(texts, length.start, length.mm, traits))
    if conditions:
        return Question(conditions=tuple(conditions), words=())
    parts = vocabulary.parts.find(texts)
    for colour in vocabulary.colours.find(texts):
        if taken.intersection(range(colour.start, colour.end)):
            continue
        taken.update(range(colour.start, colour.end))
        part = next((one for one in parts if one.start == colour.end), None)
        if part is not None:
            taken.update(range(part.start, part.end))
        conditions.append(_colour(colour.label, part.label if part else None))
    for label, book in (("", vocabulary.terms), ("decision.", vocabulary.decisions)):
        for found in book.find(texts):
            if not taken.intersection(range(found.start, found.end)):
                taken.update(range(found.start, found.end))
                trait, value = f"{label}{found.label}".split(".", 1)
                conditions.append(
                    Condition(
                        traits=(trait,), value=value, told=f"{trait.replace('_', ' ')}: {value}"
                    )
                )
    for part in parts:
        if not taken.intersection(range(part.start, part.end)):
            taken.update(range(part.start, part.end))
            conditions.append(_part(part.label))
    return Question(conditions=tuple(conditions), words=tuple(asked.split()))


def _size(texts: Sequence[str], start: int, mm: float, traits: tuple[str, ...]) -> Condition:
    before = tuple(texts[:start])
    names = " or ".join(trait.replace("_", " ") for trait in traits) if traits != _ALL else "size"
    if _ends_in(before, _OVER):
        return Condition(traits=traits, least=mm, most=MOST_MM, told=f"{names} over {mm:g} mm")
    if _ends_in(before, _UNDER):
        return Condition(traits=traits, least=0, most=mm, told=f"{names} under {mm:g} mm")
    slack = NEARLY if _ends_in(before, _ABOUT) else EXACTLY
    return Condition(
        traits=traits, least=mm * (1 - slack), most=mm * (1 + slack), told=f"{names}: {mm:g} mm"
    )


def _ends_in(texts: tuple[str, ...], phrases: Sequence[tuple[str, ...] | str]) -> bool:
    return any(texts[-len(phrase) :] == tuple(phrase) for phrase in phrases if texts)


def _colour(colour: str, part: str | None) -> Condition:
    told = f"colour of {part}: {colour}" if part else f"colour: {colour}"
    return Condition(traits=("colour",), value=colour, part=part, told=told)


def _part(part: str) -> Condition:
    """A part alone: a marking of that name, of whatever colour."""
    return Condition(traits=("colour", "marking"), part=part, told=f"{part}, of any colour")
