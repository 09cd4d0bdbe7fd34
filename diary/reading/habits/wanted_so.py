"""What a plant is wanted to be, told after the plant: "I wanted it double", "I like them compact".

Leaves alone "I like it, it's double", "I wanted it badly" and "I like them all".
"""

from diary.reading.habits.scope import NEAR, Habit, Scope
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_WISHING = frozenset({"wish", "wished"})
_WISHED = frozenset({"it", "he", "she", "they", "this", "that"})
_WANTING = frozenset("want wanted prefer preferred need needed".split())
_LIKING = frozenset({"like", "liked", "love"})
_WANTERS = frozenset("i we you 'd always do really had people judges".split())
_OBJECTS = frozenset({"it", "them", "him", "her", "mine"})
_SEVERAL = frozenset({"them", "mine"})
_NOT_SO = frozenset(
    "a all for in on to out off and but so because that being very the too though anyway as at "
    "with when since from by of either badly".split()
)


def wanted_so(talk: Talk, _vocabulary: Vocabulary) -> list[Scope]:
    """ "I wanted it double", "wish it was early"; of what is liked only the plural is a wish."""
    found = []
    for at in range(len(talk.texts) - 2):
        it = at + 1
        if talk.tokens[at].mark or talk.tokens[it].mark or not _wants(talk.texts, at):
            continue
        stop = min(talk.clause(it)[1], it + 1 + NEAR)
        if talk.texts[it + 1] not in _NOT_SO and stop > it + 1:
            found.append(Scope(Habit.WISH, at, stop, at))
    return found


def _wants(texts: tuple[str, ...], at: int) -> bool:
    verb, it = texts[at], texts[at + 1]
    if verb in _WISHING:
        return it in _WISHED
    if at == 0 or texts[at - 1] not in _WANTERS:
        return False
    return it in _OBJECTS if verb in _WANTING else verb in _LIKING and it in _SEVERAL
