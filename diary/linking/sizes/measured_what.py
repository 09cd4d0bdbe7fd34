"""What a length is the length of: its subject, its dimension, and so its trait.

Decided by the dimension said, the noun in the clause, the topic of the clause before, what
was measured last, and how large such a thing can be.
"""

from dataclasses import dataclass

from diary.linking.sizes.beside_amounts import noun_right_before
from diary.linking.sizes.carried_nouns import carried_over, topic
from diary.linking.sizes.dimensions import dimension_of
from diary.linking.sizes.measured_nouns import (
    NOTHING,
    governed,
    named_after,
    named_before,
    named_last,
    titled,
    told_of,
)
from diary.linking.sizes.no_size import covers_ground, is_no_size
from diary.linking.sizes.pots_told_of import is_pot
from diary.reading.lengths import Length
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity

_BY_THE_WAY = 8
_FEW = 6

# Beyond this many millimetres it is no bloom, no leaf (the trade notes, widened for dahlias).
_LARGEST = {"bloom": 320, "leaf": 280, "head": 450}
_LARGEST_UNNAMED = 260
_UNNAMED_ACROSS = 240
_NO_PLANT_BELOW = 25
_PLANT_BY = 100
_IT_IS = frozenset(
    "it she he this that one 's is about around roughly measures and now so i make her him a "
    "good say well call just nearly only".split()
)

_TRAIT = {
    ("bloom", "across"): "bloom_diameter",
    ("bloom", ""): "bloom_diameter",
    ("bloom", "long"): "",
    ("bloom", "tall"): "plant_height",
    ("head", "across"): "head_diameter",
    ("head", ""): "head_diameter",
    ("head", "tall"): "head_diameter",
    ("head", "long"): "",
    ("plant", "across"): "plant_spread",
    ("plant", "tall"): "plant_height",
    ("plant", ""): "plant_height",
    ("plant", "long"): "",
    ("stem", ""): "stem_length",
    ("stem", "long"): "stem_length",
    ("stem", "tall"): "stem_length",
    ("stem", "across"): "",
    ("leaf", "across"): "leaf_width",
    ("leaf", ""): "leaf_width",
    ("leaf", "long"): "",
    ("leaf", "tall"): "",
    ("", "across"): "bloom_diameter",
    ("", "tall"): "plant_height",
    ("", "long"): "",
    ("", ""): "bloom_diameter",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """A length with what it measures; `trait` is empty where no trait holds it."""

    length: Length
    subject: str
    dimension: str
    dimension_end: int
    trait: str


def measure(mentions: Mentions, length: Length, previous: Measured | None) -> Measured | None:
    """What the length measures; None where it is no size of a plant at all."""
    if is_no_size(mentions, length):
        return None
    low = mentions.talk.sentence(length.start)[0]
    dimension, end = dimension_of(mentions, length)
    near = "plant" if covers_ground(mentions, length) else governed(mentions, length)
    dimension = "across" if covers_ground(mentions, length) else dimension
    if near == NOTHING or (not near and not dimension and is_pot(mentions, length)):
        return None
    subject, dimension = _subject(mentions, length, low, near, dimension, end)
    if subject == NOTHING:
        return None
    if not subject and not dimension and _plant_by(mentions, length, low):
        subject = "plant"
    if subject == "plant" and not dimension and _by_another(mentions, length):
        dimension = "tall"  # "the plant is thirty by forty-five centimetres"
    if _second_side(mentions, length, dimension, previous):
        subject, dimension = "plant", "across"  # "thirty centimetres high by forty wide"
    elif dimension == "across" and subject == "plant" and _says_bloom(mentions, low, length.start):
        subject = "bloom"
    subject, dimension = _plausible(mentions, length, low, subject, dimension)
    return Measured(
        length=length,
        subject=subject,
        dimension=dimension,
        dimension_end=end,
        trait=_TRAIT.get((subject, dimension), ""),
    )


def _plausible(
    mentions: Mentions, length: Length, low: int, subject: str, dimension: str
) -> tuple[str, str]:
    """Too large for a bloom, it is the plant: across its spread, else, told of "it", its height."""
    if subject == "bloom" and dimension == "" and length.mm > _LARGEST["bloom"]:
        return "plant", "tall"
    if dimension == "across" and length.mm > _LARGEST.get(subject or "bloom", 1e9):
        return "plant", "across"
    if not subject and dimension == "across" and length.mm > _UNNAMED_ACROSS:
        return "plant", "across"
    if not subject and not dimension and length.mm > _LARGEST_UNNAMED:
        before = mentions.talk.texts[max(low, length.start - 6) : length.start]
        led = mentions.talk.texts[length.start - 1 : length.start] in (("a",), ("an",))
        of_a_thing = length.singular and (led or not _closes(mentions, length.end))
        told = {"it", "she", "he", "this"} & set(before) and not of_a_thing
        return ("plant", "tall") if told else ("", "unknown")
    return subject, dimension


def _closes(mentions: Mentions, end: int) -> bool:
    """Not the "twelve-inch" of "a twelve-inch stick"."""
    talk = mentions.talk
    return (
        end >= len(talk.texts)
        or bool(talk.tokens[end - 1].mark)
        or talk.clause(end)[0] == end
        or talk.texts[end] in ("and", "but", "so", "now", "already", "or", "if", "at", "with")
    )


def _second_side(
    mentions: Mentions, length: Length, dimension: str, previous: Measured | None
) -> bool:
    by = mentions.talk.texts[length.start - 1 : length.start] == ("by",)
    return (
        (dimension == "across" or (by and not dimension))
        and previous is not None
        and previous.trait == "plant_height"
        and length.start - previous.length.end <= _BY_THE_WAY
        and not _says_bloom(mentions, previous.length.end, length.start)
    )


def _by_another(mentions: Mentions, length: Length) -> bool:
    texts = mentions.talk.texts
    return (
        texts[length.end : length.end + 1] == ("by",)
        and quantity(texts, length.end + 1) is not None
    )


def _of_the_thing_before(mentions: Mentions, low: int, at: int) -> bool:
    """ "The vent's stuck. It only opens two inches", "four canes. Each is sixty centimetres"."""
    texts, vocabulary = mentions.talk.texts, mentions.vocabulary
    if not low or not mentions.talk.punctuated or texts[low] not in ("it", "each", "they", "both"):
        return False
    start = mentions.talk.sentence(low - 1)[0]
    found = vocabulary.subjects.find(texts, start, low)
    if not found or any(f.label != NOTHING for f in found):
        return False
    i = start + (texts[start] in ("the", "that", "this", "my", "our"))
    heads = found[0].start == i and vocabulary.parts.at(texts, i) is None
    return heads or (texts[low] in ("each", "both") and found[-1].label == NOTHING)


def _plant_by(mentions: Mentions, length: Length, low: int) -> bool:
    """ "It's eleven inches by fourteen": with no noun, so large a thing is the plant."""
    return (
        _by_another(mentions, length)
        and length.mm >= _PLANT_BY
        and set(mentions.talk.texts[low : length.start]) <= _IT_IS
    )


def _says_bloom(mentions: Mentions, low: int, at: int) -> bool:
    found = [f for f in named_before(mentions, low, at) if f.label in ("bloom", "plant")]
    return bool(found) and found[-1].label == "bloom"


def _subject(
    mentions: Mentions, length: Length, low: int, near: str, dimension: str, end: int
) -> tuple[str, str]:
    """The noun and the dimension, the nearest evidence first."""
    if dimension == "plant across":
        return "plant", "across"
    after = "" if near else named_after(mentions, end) or named_after(mentions, length.end)
    at = max(end, length.end)
    if mentions.talk.texts[at : at + 1] == ("on",) and noun_right_before(mentions, length.start):
        after = ""  # "stalks about twenty centimetres on the flowers"
    if near or after:
        return near or after, dimension
    heading = titled(mentions, low, length.start)
    if heading:
        return heading, "" if dimension == "tall" else dimension
    nouns = named_before(mentions, low, length.start)
    if _thing_is(mentions, low, length.start) or (
        not nouns and _of_the_thing_before(mentions, low, length.start)
    ):
        return NOTHING, dimension
    if nouns and nouns[-1].label == NOTHING and told_of(mentions, nouns[-1], length.start):
        return NOTHING, dimension
    if nouns:
        named = _of_nouns([f.label for f in nouns], dimension)
        told, way = topic(mentions, low, length.start) if not dimension else ("", "")
        return (told, way) if told == named else (named, dimension)
    last = named_last(mentions, max(end, length.end))
    if last:
        return last, dimension
    if dimension == "tall":
        return "plant", dimension
    if "diameter" in mentions.talk.texts[max(low, length.start - 3) : end]:
        return "bloom", dimension
    large = not dimension and length.mm >= _NO_PLANT_BELOW
    told, way = topic(mentions, low, length.start) if large else ("", "")
    if told:
        return told, way
    carried = carried_over(mentions, low, length.start)
    if large and low and carried in ("", "plant") and length.start - low <= _FEW:
        told, way = topic(mentions, mentions.talk.sentence(low - 1)[0], low)
    return (told, way) if told else (carried, dimension)


def _thing_is(mentions: Mentions, low: int, at: int) -> bool:
    """ "the bench is waist high, about ninety centimetres": it begins with what is no plant."""
    texts = mentions.talk.texts
    i = low + (texts[low : low + 1] in (("and",), ("but",), ("so",), ("now",)))
    i += texts[i : i + 1] in (("the",), ("that",), ("this",), ("my",), ("our",))
    noun = mentions.vocabulary.subjects.at(texts, i)
    return (
        noun is not None
        and noun.label == NOTHING
        and mentions.vocabulary.parts.at(texts, i) is None
        and noun.start > low
        and noun.end < at
        and texts[noun.end] in ("is", "'s", "are", "was", "stands")
        and not any(
            f.label != NOTHING for f in mentions.vocabulary.subjects.find(texts, noun.end, at)
        )
        and not {"it", "she", "he", "this"} & set(texts[noun.end : at])
    )


def _of_nouns(labels: list[str], dimension: str) -> str:
    """Which of the nouns before is measured: the nearest, but only a plant or a stem is tall."""
    nearest = labels[-1]
    if dimension == "tall" and nearest in (NOTHING, "leaf", "bloom", "stem"):
        return "plant"
    if nearest == NOTHING and dimension == "across":
        others = [label for label in labels if label != NOTHING]
        return others[-1] if others else NOTHING
    return nearest
