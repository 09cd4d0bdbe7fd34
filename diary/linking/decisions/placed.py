"""Decisions told by a place just named: "club show, yes, it's going in", "there's the bin, in it
goes".

The place says what is decided, and the clause after it that the plant goes there. "It's
going pink" and "she's going up like a rocket" go to no place.
"""

from collections.abc import Iterable

from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_WASTE = frozenset({"bin", "heap", "skip", "bonfire", "bucket", "compost", "midden", "dustbin"})
_SHOW = frozenset({"show", "exhibition", "fair"})
_REACH = 14
_UNMEANT = {Habit.DENIAL, Habit.WISH, Habit.REPORTED, Habit.QUESTION, Habit.HYPOTHETICAL}
_THERE = frozenset({"there", "belongs", "belong", "it", "entered"})
# "it's going up like a rocket": how, and not where.
_HOW = frozenset(
    "like to well over back pink white a an the into onto with off mad strong great for".split()
)


def bound_for_it(mentions: Mentions, decided: Iterable[Statement]) -> list[Statement]:
    """The clauses that send the plant to a place just named, where nothing was decided there."""
    talk = mentions.talk
    taken = {i for s in decided for i in range(s.start, s.end)}
    found = []
    for cue in mentions.cue("goes_there"):
        low = max(0, cue.start - _REACH)
        at = next((i for i in range(cue.start - 1, low - 1, -1) if _is_place(mentions, i)), None)
        if at is None or taken & set(range(at, cue.end)) or not _ends(mentions, cue):
            continue
        if _UNMEANT & mentions.scopes.habits(cue.start, cue.end) or _changed(mentions, at, cue):
            continue
        found.append(
            Statement(
                trait="decision",
                value="discard" if talk.texts[at] in _WASTE else "show",
                start=cue.start,
                end=cue.end,
                rule="bound for a place just named",
                score=0.76,
            )
        )
    return found


def _is_place(mentions: Mentions, at: int) -> bool:
    return mentions.talk.texts[at] in _WASTE | _SHOW and not mentions.masked[at]


def _ends(mentions: Mentions, cue: Found) -> bool:
    after = mentions.talk.texts[cue.end : cue.end + 1]
    if mentions.talk.texts[cue.end - 1] in _THERE:
        return True
    return not after or bool(mentions.talk.tokens[cue.end - 1].mark) or after[0] not in _HOW


def _changed(mentions: Mentions, at: int, cue: Found) -> bool:
    """Whether another plant is named in between."""
    return bool(mentions.refs_in(at, cue.start))
