"""Clean colours and unmarked petals, which say nothing of health.

"a clean pale rose", "soft mauve all over, not a mark on it", "a star, white, very clean". Leaves
alone "clean leaf", "pink, and the plant's clean" and "not a mark on it anywhere".
"""

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.tokens import STOP

_WITHIN = 8


def clean_of_a_colour(mentions: Mentions, s: Statement) -> bool:
    """Whether "clean" or "not a mark" tells how a colour or a marking lies."""
    return s.value == "clean" and (
        _clean_colour(mentions, s) or _unmarked_colour(mentions, s) or _clean_marking(mentions, s)
    )


def _clean_marking(mentions: Mentions, s: Statement) -> bool:
    """ "in the middle there's a star, white, very clean", "the top petals are clean"."""
    talk = mentions.talk
    if talk.texts[s.end - 1] != "clean":
        return False
    low = max(talk.sentence(s.start)[0], s.start - _WITHIN)
    if talk.punctuated and s.start - low <= 4 and low and talk.tokens[low - 1].mark == STOP:
        low = max(talk.sentence(low - 1)[0], s.start - _WITHIN)
    nouns = mentions.parts_in(low, s.start)
    if not nouns or nouns[-1].label in ("leaf", "stem", "bud", "zone"):
        return False
    if talk.texts[nouns[-1].start] in ("flower", "flowers", "bloom", "blooms", "face"):
        return False
    between = set(talk.texts[nouns[-1].end : s.start])
    whole = mentions.vocabulary.classes["plantlike"] | mentions.vocabulary.classes["foliage"]
    return not between & (whole | {"it", "she", "he", "all", "otherwise", "this"})


def _clean_colour(mentions: Mentions, s: Statement) -> bool:
    """ "a clean pale rose", "clean bright edges", "a clean cut": no health of a plant."""
    if s.value != "clean" or mentions.talk.texts[s.end - 1] != "clean":
        return False
    talk = mentions.talk
    if talk.tokens[s.end - 1].mark or s.end >= len(talk.texts):
        return False
    articles = set(talk.texts[max(0, s.end - 4) : s.end - 1]) & {"a", "the", "some", "an"}
    if articles and talk.clause(s.start)[1] > s.end and talk.texts[s.end] not in _CLEAN_ONES:
        return True  # "a nice clean cutting", "a clean line between"
    at = s.end + (talk.texts[s.end : s.end + 1] in _SHADES)
    if mentions.colours_in(s.end, at + 1):
        return True
    return any(p.label not in ("leaf", "stem", "bud") for p in mentions.parts_in(at, at + 1))


_CLEAN_ONES = frozenset(
    "plant plants leaf leaves foliage growth bill grower healthy little one thing and as stem "
    "stems but all right underneath on to from with top too mind so clean stock specimen old young "
    "through throughout".split()
)
_SHADES = tuple(
    (w,) for w in "pale deep soft bright rich dark light clear cool warm fresh strong crisp".split()
)


def _unmarked_colour(mentions: Mentions, s: Statement) -> bool:
    """ "soft mauve all over, not a mark on it": the colour is without markings."""
    talk = mentions.talk
    if s.value != "clean" or not set(talk.texts[s.start : s.end + 1]) & _MARKS:
        return False
    low = max(talk.sentence(s.start)[0], s.start - _WITHIN)
    if any(p.label == "leaf" for p in mentions.parts_in(low, s.start)):
        return False
    if mentions.vocabulary.classes["flaw"] & set(talk.texts[s.start : s.end + 3]):
        return False
    pure = talk.texts[s.end : s.end + 1] in _PURE or talk.texts[s.end + 2 : s.end + 3] in _PURE
    return bool(mentions.colours_in(low, s.start)) or (
        pure and bool(mentions.colours_in(s.end, s.end + 4))
    )


_PURE = (("pure",), ("plain",), ("solid",), ("clear",))
_MARKS = frozenset({"mark", "marks", "spot", "spots", "speck", "specks", "dot", "line"})
