"""Words of looks that name a kind of plant, or another plant, and not the one in hand.

"I never could strike the bushy sort", "on all the doubles", "into the dwarf line", "the upright
one's over there". Leaves alone "it's the bushy sort", "they're doubles" and "the dwarf in the
red pot" brought in.
"""

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_KINDS = frozenset({"sort", "sorts", "kind", "kinds", "type", "types", "ones"})
_PLURALS = frozenset(
    "doubles singles semis spiders trumpets dwarfs trailers miniatures stellars rosebuds".split()
)
_LINES = frozenset(
    "line lines strain class classes section group cross crosses sorts breeding ones".split()
)
_OF_MANY = frozenset("the all my our your his good breeding for any other most".split())


def of_another(mentions: Mentions, s: Statement) -> bool:
    """Whether the words are of a kind of plant, or of a plant elsewhere."""
    return _of_a_kind(mentions, s) or _of_a_line(mentions, s) or _another_one(mentions, s)


def _of_a_line(mentions: Mentions, s: Statement) -> bool:
    """ "on all the doubles", "into the dwarf line", "your big blousy ones"; not "doubles, both"."""
    texts = mentions.talk.texts
    if s.trait not in ("bloom_form", "habit", "bloom_size"):
        return False
    before = texts[s.start - 1 : s.start]
    if texts[s.end - 1] in _PLURALS:
        return bool(before) and before[0] in _OF_MANY
    closes = bool(mentions.talk.tokens[s.end - 1].mark)
    led = bool(before) and before[0] in ("the", "my", "our", "your", "his")
    return led and not closes and texts[s.end : s.end + 1] != () and texts[s.end] in _LINES


def _of_a_kind(mentions: Mentions, s: Statement) -> bool:
    """ "I never could strike the bushy sort"; not "it's the bushy sort"."""
    texts = mentions.talk.texts
    if texts[s.end : s.end + 1] not in tuple((k,) for k in _KINDS):
        return False
    if texts[s.end + 1 : s.end + 2] == ("of",) or s.trait == "foliage":
        return False  # "the leaf smells sort of lemony"
    before = texts[max(0, s.start - 2) : s.start]
    return before[-1:] == ("the",) and before[:1] not in (("is",), ("'s",), ("of",), ("are",))


def _another_one(mentions: Mentions, s: Statement) -> bool:
    """ "the double one next to it is mine too", "a frilly one I had from a friend".

    Not "the double one in the red pot" brought in, nor "it's a frilly one I'm fond of".
    """
    texts = mentions.talk.texts
    if texts[s.end : s.end + 1] not in (("one",), ("ones",)) and texts[s.end - 1] not in _ONES:
        return False
    at = s.end + (texts[s.end : s.end + 1] in (("one",), ("ones",)))
    if texts[s.start - 1 : s.start] == ("the",) and texts[at : at + 3] in _THERE:
        return True  # "the upright one's over there"
    if texts[s.start - 1 : s.start] == ("the",) and texts[at : at + 2] == ("over", "there"):
        return True
    opened = mentions.talk.clause(s.start)[0] >= s.start - 1
    if opened and texts[at : at + 1] in (("i",), ("we",)) and texts[at + 1] in _ONCE_OWNED:
        return True
    after = texts[at : at + 3]
    return after[:1] in _BESIDE and bool({"it", "this", "him", "her"} & set(after[1:]))


_ONES = frozenset({"one", "ones"})
_ONCE_OWNED = frozenset("had saw bought grew lost used sold raised threw binned kept knew".split())
_THERE = (("'s", "over", "there"), ("is", "over", "there"), ("'s", "next", "door"))
_BESIDE = (("next",), ("beside",), ("behind",), ("by",), ("alongside",), ("under",), ("above",))
