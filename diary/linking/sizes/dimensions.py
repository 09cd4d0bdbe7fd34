"""The dimension said of a length: right after it ("across"), or right before ("height, ...")."""

from diary.reading.lengths import Length
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity
from diary.reading.phrases import Found

_FILL = frozenset(
    "or so at the most least roughly about right nearly and bit a in all good fully maybe "
    "thereabouts i think reckon say suppose make it just exactly for the by way of "
    "terms its her his".split()
)
_MOST_FILL = 4
_OPENS = frozenset("up height hight stands width span length spread spreads".split())
_NAMES = frozenset("height hight width span length spread diameter".split())
_BEFORE = frozenset(
    "height hight across diameter width spread stands span in length tall high spreads wide from "
    "soil pot rim ground base top tip edge side leaf over round through up out".split()
)
_TELL = tuple(
    (w,) for w in "is 's about was let i um er uh we well now say around roughly hang".split()
)
_LOOK_BACK = 9


def dimension_of(mentions: Mentions, length: Length) -> tuple[str, int]:
    """The label of the dimension, or "", and where its words end."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    i = length.end
    while i < len(talk.texts) and i - length.end < _MOST_FILL and talk.texts[i] in _FILL:
        if vocabulary.dimensions.at(talk.texts, i) is not None:
            break
        if talk.tokens[i].mark in (".", "?") or talk.tokens[i - 1].mark in (".", "?"):
            return _before(mentions, length)
        i += 1
    found = vocabulary.dimensions.at(talk.texts, i) or _from_end_to_end(mentions, i)
    if found is None or talk.between(length.end - 1, i, (".", "?")):
        return _rises(mentions, length) or _before(mentions, length)
    if talk.texts[found.start - 1] == "and" and talk.texts[found.end : found.end + 1] == ("it",):
        return _before(mentions, length)  # "twenty-four centimetres, and outwards it's thirty"
    whole = talk.texts[found.end : found.end + 3]
    if (
        found.label == "across"
        and not talk.tokens[found.end - 1].mark
        and (whole[:2] in (("the", "plant"), ("the", "whole")) or whole[:1] == ("plant",))
        and not _of_the_whole_flower(mentions, found.end)
    ):
        return "plant across", found.end
    if talk.texts[found.start] in _OPENS and talk.tokens[found.start - 1].mark:
        return _before(mentions, length)
    next_told = talk.texts[found.end : found.end + 1] in _TELL or (
        quantity(talk.texts, found.end) is not None and found.start == length.end
    )
    if talk.texts[found.start] in _NAMES and next_told:
        return _before(mentions, length)  # "height is 40 centimetres width is 45"
    return found.label, found.end


def _from_end_to_end(mentions: Mentions, at: int) -> Found | None:
    """ "from wing to wing", "ear to ear": across, whatever the ends are called."""
    texts = mentions.talk.texts
    i = at + (texts[at : at + 1] == ("from",))
    twins = texts[i + 1 : i + 2] == ("to",) and texts[i : i + 1] == texts[i + 2 : i + 3]
    if not twins or quantity(texts, i) is not None:
        return None
    return Found(at, i + 3, "across")


def _of_the_whole_flower(mentions: Mentions, at: int) -> bool:
    """ "three and a half across the whole flower"; not "across the whole plant"."""
    noun = mentions.vocabulary.subjects.at(mentions.talk.texts, at + 2)
    return noun is not None and noun.label in ("bloom", "head", "leaf")


def _rises(mentions: Mentions, length: Length) -> tuple[str, int] | None:
    """ "ten inches up and a foot across"; not "up on last year"."""
    talk = mentions.talk
    if talk.texts[length.end : length.end + 1] != ("up",) or talk.tokens[length.end - 1].mark:
        return None
    end = length.end + 1
    if (
        end == len(talk.texts)
        or talk.tokens[end - 1].mark
        or talk.texts[end] in ("and", "but", "by", "so", "already", "now")
    ):
        return "tall", end
    return None


def _list_goes_on(mentions: Mentions, low: int, at: int) -> bool:
    """ "height fourteen centimetres | spread nineteen": a size with its name stands before."""
    before = [x for x in mentions.lengths_in(max(low, at - 6), at) if x.end == at]
    if not before:
        return False
    texts, start = mentions.talk.texts, before[0].start
    named = texts[start - 1 : start] + texts[start - 2 : start - 1]
    return bool(set(named) & _NAMES)


_THAN_IT = tuple(("than", it, be) for it in ("it", "she", "he") for be in ("is", "'s", "was"))
_COMPARATIVES = {
    "taller": "tall",
    "higher": "tall",
    "wider": "across",
    "broader": "across",
    "longer": "long",
}


def _told_by_a_question(mentions: Mentions, length: Length) -> str:
    """ "How tall? Well, the rule says twenty-one", "wider than that, call it thirty-one"."""
    texts = mentions.talk.texts
    low = max(0, length.start - _LOOK_BACK)
    low = max([low, *(x.end for x in mentions.lengths_in(low, length.start))])
    for i in range(length.start - 2, low - 1, -1):
        if texts[i] == "how" and texts[i + 1] in _ASKED:
            return _ASKED[texts[i + 1]]
        if texts[i] in _COMPARATIVES and texts[i + 1 : i + 3] == ("than", "that"):
            return _COMPARATIVES[texts[i]]
    return ""


_ASKED = {"tall": "tall", "high": "tall", "wide": "across", "broad": "across"}


def _before(mentions: Mentions, length: Length) -> tuple[str, int]:
    talk = mentions.talk
    for i in range(max(0, length.start - 4), length.start - 1):
        if talk.texts[i] in _COMPARATIVES and talk.texts[i + 1] == "than":
            return _COMPARATIVES[talk.texts[i]], length.end  # "no taller than twenty"
    if way := _told_by_a_question(mentions, length):
        return way, length.end
    low = talk.sentence(length.start)[0]
    start = max(low, length.start - _LOOK_BACK)
    found = mentions.vocabulary.dimensions.find(talk.texts, start, length.start)
    for f in reversed(found):
        if talk.texts[f.start - 3 : f.start] in _THAN_IT:
            continue  # "taller than it's wide, eighteen by twelve"
        named = talk.texts[f.start] in _NAMES
        told = named and talk.texts[f.end : f.end + 1] in _TELL
        own = (
            named
            and f.end == length.start
            and (
                talk.texts[f.start - 1] in ("the", "its", "and")
                or _list_goes_on(mentions, low, f.start)
                or mentions.vocabulary.subjects.at(talk.texts, f.start - 1) is not None
            )
        )
        if told or own:
            return f.label, length.end  # "height is 40 centimetres width is 45"
        if talk.texts[f.start] in _BEFORE and not any(
            max(low, f.start - 5) < x.end <= f.start
            and not talk.between(x.end - 1, f.start, (",", "."))
            for x in mentions.lengths_in(low, f.start)
        ):
            return f.label, length.end
    return "", length.end
