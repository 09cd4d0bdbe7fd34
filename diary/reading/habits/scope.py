"""Stretches of talk that do not assert, and the cues that open them.

The habits themselves are in denials, questions and told_of; scopes gathers all of them.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

from diary.reading.phrases import Found
from diary.reading.tokens import QUERY, STOP, Talk
from diary.reading.vocabulary import Vocabulary

# How far, in words, a scope reaches where no mark ends it.
FAR, NEAR = 14, 4


class Habit(Enum):
    """Why words do not assert what they say."""

    DENIAL = "denial"
    WISH = "wish"
    QUESTION = "question"
    REPORTED = "reported"
    HISTORY = "history"
    HYPOTHETICAL = "hypothetical"
    NOT_RECALLED = "not_recalled"


@dataclass(frozen=True, slots=True)
class Scope:
    """Tokens start..end-1 are under a habit of speech; `cue` is where its words begin."""

    habit: Habit
    start: int
    end: int
    cue: int


@dataclass(frozen=True, slots=True)
class Scopes:
    """All scopes of one talk, asked by token."""

    by_token: tuple[tuple[Scope, ...], ...]

    def habits(self, start: int, end: int | None = None) -> frozenset[Habit]:
        """The habits that hold over the token, or over any token of start..end-1."""
        stop = start + 1 if end is None else end
        return frozenset(s.habit for i in range(start, stop) for s in self.by_token[i])


def cues(talk: Talk, vocabulary: Vocabulary, habit: str) -> list[Found]:
    """The longest cue of the habit at each place, without those that are exceptions."""
    exceptions = vocabulary.never_cues[habit].find(talk.texts)
    covered = {i for found in exceptions for i in range(found.start, found.end)}
    found = [
        cue
        for cue in vocabulary.cues[habit].find(talk.texts)
        if cue.start not in covered and not talk.between(cue.start, cue.end - 1, (STOP, QUERY))
    ]
    return _outermost(found)


def _outermost(found: Iterable[Found]) -> list[Found]:
    kept: list[Found] = []
    for cue in sorted(found, key=lambda f: (f.start, -f.end)):
        if not kept or cue.end > kept[-1].end:
            kept.append(cue)
    return kept
