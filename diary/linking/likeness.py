"""Likeness to another plant, where it is asserted.

"very like twenty-three oh six", "a dead ringer for C", "Candle Wharf all over again".
Leaves alone "nothing like it", what other people say, and "bigger than that one".
"""

from dataclasses import dataclass

from diary.linking.operands import Operand, after, before
from diary.reading.mentions import Mentions
from diary.reading.scope import Habit

_UNSAID = {Habit.WISH, Habit.QUESTION, Habit.DENIAL, Habit.REPORTED, Habit.HYPOTHETICAL}


@dataclass(frozen=True, slots=True, kw_only=True)
class Likeness:
    """At tokens start..end-1 the plant in hand is said to be like `operand`."""

    start: int
    end: int
    operand: Operand
    asserted: bool
    score: float


def find_likenesses(mentions: Mentions) -> tuple[Likeness, ...]:
    """Every likeness spoken of, asserted or not, in order."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    weak = {
        (f.start, f.end)
        for f in vocabulary.parent_cues.find(talk.texts)
        if f.label == "similar weak"
    }
    denied = {
        i
        for f in vocabulary.never_cues["similar"].find(talk.texts)
        for i in range(f.start, f.end)
        if f.end - f.start > 1
        and talk.texts[f.start]
        in ("not", "nothing", "unlike", "no", "do", "does", "n't", "is", "'s", "nowhere", "never")
    }
    found: list[Likeness] = []
    for cue in vocabulary.cues["similar"].find(talk.texts):
        opens = (
            talk.texts[cue.start : cue.end] == ("like",) and talk.clause(cue.start)[0] == cue.start
        )
        if any(mentions.masked[cue.start : cue.end]):
            continue
        if (cue.start, cue.end) in weak and not (opens and talk.punctuated):
            continue
        operand = after(mentions, cue.end)
        if operand is None or operand.start - cue.end > 2:
            continue
        asserted = (
            not mentions.scopes.habits(cue.start, cue.end) & _UNSAID
            and cue.start not in denied
            and cue.end - 1 not in denied
        )
        found.append(
            Likeness(
                start=cue.start, end=operand.end, operand=operand, asserted=asserted, score=0.95
            )
        )
    for cue in [f for f in vocabulary.parent_cues.find(talk.texts) if f.label == "similar after"]:
        operand = before(mentions, cue.start)
        if operand is None or cue.end - cue.start < 2:
            continue
        asserted = not mentions.scopes.habits(operand.start, cue.end) & _UNSAID
        found.append(
            Likeness(
                start=operand.start, end=cue.end, operand=operand, asserted=asserted, score=0.9
            )
        )
    kept: dict[int, Likeness] = {}
    for likeness in sorted(found, key=lambda x: x.start):
        kept.setdefault(likeness.operand.start, likeness)
    return tuple(sorted(kept.values(), key=lambda x: x.start))
