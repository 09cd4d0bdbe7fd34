"""What a length is the length of: its subject, its dimension, and so its trait.

A pot, a cane or rain has no size here, and "a centimetre taller" is no measurement.
"""

from dataclasses import dataclass

from diary.reading.lengths import Length
from diary.reading.mentions import Mentions

_BY_THE_WAY = 8


_LONG = {
    "bloom": 320,
    "leaf": 600,
}  # beyond this a length is no bloom: 1.9 of the trade notes, widened for dahlias


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


_RAIN = frozenset({"rain", "rains", "rained", "snow", "snowed"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    length: Length
    subject: str
    dimension: str
    dimension_end: int
    trait: str


def measure(mentions: Mentions, length: Length, previous: "Measured | None") -> Measured | None:
    talk, vocabulary = mentions.talk, mentions.vocabulary
    texts = talk.texts
    low, _high = talk.sentence(length.start)
    after = texts[length.end] if length.end < len(texts) else ""
    if vocabulary.size_comparisons.at(texts, length.end) and not vocabulary.dimensions.at(
        texts, length.end
    ):
        return None
    if _RAIN & set(texts[max(0, length.start - 8) : length.end + 3]):
        return None
    if after == "too" or (
        after in ("of",)
        and texts[length.end + 1 : length.end + 2]
        in (("rain",), ("snow",), ("water",), ("compost",), ("space",), ("room",))
    ):
        return None
    near = _noun_after(mentions, length)
    dimension, dimension_end = _dimension(mentions, length)
    if near == "nothing" or _is_pot(mentions, length, near, dimension):
        return None
    subject = near or _subject(mentions, length, low, dimension)
    if (
        dimension == "across"
        and previous is not None
        and previous.trait == "plant_height"
        and length.start - previous.length.end <= _BY_THE_WAY
        and not _says_bloom(mentions, previous.length.end, length.start)
    ):
        subject = "plant"  # "thirty centimetres high by forty wide"
    if subject == "nothing":
        return None
    if dimension == "plant across":
        subject, dimension = "plant", "across"
    elif dimension == "across" and subject == "plant" and _says_bloom(mentions, low, length.start):
        subject = "bloom"
    if not subject and not dimension and length.mm > 260:
        return None
    if subject == "bloom" and dimension == "" and length.mm > _LONG["bloom"]:
        subject, dimension = "plant", "tall"
    if not subject and dimension == "across" and length.mm > 240:
        subject = "plant"
    trait = _TRAIT.get((subject, dimension), "")
    return Measured(
        length=length,
        subject=subject,
        dimension=dimension,
        dimension_end=dimension_end,
        trait=trait,
    )


def _says_bloom(mentions: Mentions, low: int, at: int) -> bool:
    found = [
        f
        for f in mentions.vocabulary.subjects.find(mentions.talk.texts, low, at)
        if f.label in ("bloom", "plant")
    ]
    return bool(found) and found[-1].label == "bloom"


def _noun_after(mentions: Mentions, length: Length) -> str:
    """The noun of "a fifteen-centimetre stem", "a two inch flower", "a nine-centimetre pot"."""
    texts = mentions.talk.texts
    if mentions.talk.tokens[length.end - 1].mark:
        return ""
    for skip in (0, 1):
        i = length.end + skip
        if mentions.talk.between(length.end - 1, i, (".", ",", "?")):
            break
        if skip and not (
            i - 1 < len(texts)
            and (
                texts[i - 1]
                in (
                    "long",
                    "clay",
                    "plastic",
                    "wide",
                    "tall",
                    "flower",
                    "across",
                    "square",
                    "of",
                    "deep",
                    "flowering",
                )
            )
        ):
            break
        found = mentions.vocabulary.subjects.at(texts, i)
        if found is not None and (length.singular or skip or found.label == "nothing"):
            return found.label
    return ""


def _is_pot(mentions: Mentions, length: Length, noun: str, dimension: str) -> bool:
    """ "it's only in a six inch", "still in a nine centimetre": the pot is not said."""
    texts = mentions.talk.texts
    before = texts[max(0, length.start - 3) : length.start]
    if noun or dimension or not length.singular:
        return bool(noun == "nothing")
    return (
        before[-1:] in (("a",), ("an",), ("its",))
        and len(before) > 1
        and before[-2] in ("in", "into", "to", "still", "on", "of", "out", "from")
    )


def _dimension(mentions: Mentions, length: Length) -> tuple[str, int]:
    """The dimension said after the length ("across"), else right before it ("height, ...")."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    i = length.end
    while (
        i < len(talk.texts)
        and i - length.end < 3
        and talk.texts[i]
        in (
            "or",
            "so",
            "at",
            "the",
            "most",
            "least",
            "roughly",
            "about",
            "right",
            "nearly",
            "and",
            "bit",
            "a",
            "in",
            "all",
            "good",
            "fully",
            "maybe",
            "thereabouts",
        )
    ):
        found = vocabulary.dimensions.at(talk.texts, i)
        if found is not None:
            break
        if talk.tokens[i].mark in (".", "?") or talk.tokens[i - 1].mark in (".", "?"):
            return _dimension_before(mentions, length)
        i += 1
    found = vocabulary.dimensions.at(talk.texts, i)
    if found is not None and not talk.between(length.end - 1, i, (".", "?")):
        whole = talk.texts[found.end : found.end + 3]
        if (
            found.label == "across"
            and not talk.tokens[found.end - 1].mark
            and (whole[:2] in (("the", "plant"), ("the", "whole")) or whole[:1] == ("plant",))
        ):
            return "plant across", found.end
        if not (
            talk.texts[found.start] in ("up", "height", "stands", "width", "span", "length")
            and talk.tokens[found.start - 1].mark
        ):
            return found.label, found.end
    return _dimension_before(mentions, length)


def _dimension_before(mentions: Mentions, length: Length) -> tuple[str, int]:
    talk = mentions.talk
    low = talk.sentence(length.start)[0]
    start = max(low, length.start - 9)
    found = list(mentions.vocabulary.dimensions.find(talk.texts, start, length.start))
    for f in reversed(found):
        words = talk.texts[f.start : f.end]
        if words[0] in (
            "height",
            "across",
            "diameter",
            "width",
            "spread",
            "stands",
            "span",
            "in",
            "length",
            "tall",
            "high",
        ) and not any(
            max(low, f.start - 5) < x.end <= f.start
            and not talk.between(x.end - 1, f.start, (",", "."))
            for x in mentions.lengths_in(low, f.start)
        ):
            return f.label, length.end
    return "", length.end


def _subject(mentions: Mentions, length: Length, low: int, dimension: str) -> str:
    """The nearest noun before in the sentence, else after; height is the plant's."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    if dimension == "plant across":
        return "plant"
    nouns = [
        f
        for f in vocabulary.subjects.find(talk.texts, low, length.start)
        if not mentions.masked[f.start]
    ]
    nouns = [
        f
        for f in nouns
        if not (f.label == "nothing" and talk.clause(f.start) != talk.clause(length.start))
    ]
    if nouns:
        nearest = nouns[-1]
        if nearest.label == "nothing" and dimension == "tall":
            return "plant"
        if nearest.label in ("leaf", "stem") and dimension == "tall":
            return "plant"
        if nearest.label == "bloom" and dimension == "tall":
            return "plant"
        if nearest.label == "nothing" and dimension == "across":
            others = [f for f in nouns if f.label != "nothing"]
            return others[-1].label if others else "nothing"
        return nearest.label
    if dimension == "tall":
        return "plant"
    high = talk.sentence(length.start)[1]
    later = list(vocabulary.subjects.find(talk.texts, length.end, min(high, length.end + 5)))
    if later and (
        talk.texts[length.end : length.end + 1] in (("for",), ("of",), ("on",), ("the",))
        or not dimension
    ):
        between = talk.texts[length.end : later[0].start]
        if set(between) <= {
            "for",
            "the",
            "of",
            "on",
            "a",
            "each",
            "its",
            "whole",
            "it",
            "that",
            "flower",
        }:
            return later[0].label
    if not talk.punctuated or low == length.start or dimension == "across":
        return _carried_over(mentions, low)
    return ""


def _carried_over(mentions: Mentions, low: int) -> str:
    """The subject of the clause right before, where this one has none of its own."""
    if low == 0:
        return ""
    start, stop = mentions.talk.sentence(low - 1)
    if mentions.talk.punctuated:
        return ""
    nouns = [
        f
        for f in mentions.vocabulary.subjects.find(mentions.talk.texts, start, stop)
        if f.label in ("head", "plant", "bloom", "leaf", "stem")
    ]
    return (
        nouns[-1].label
        if nouns and stop - nouns[-1].end <= 6 and nouns[-1].label in ("head", "bloom", "plant")
        else ""
    )
