"""All stretches of a talk that do not assert, by every habit of speech.

Each habit is one function of the same form: talk in, scopes out. Nothing is decided about
plants; later stages ask whether a word lies in a scope.
"""

from collections.abc import Callable

from diary.reading.habits.denials import denials, gone
from diary.reading.habits.questions import questions
from diary.reading.habits.scope import Scope, Scopes
from diary.reading.habits.told_of import hearsay, history, hypotheticals, not_recalled, wishes
from diary.reading.habits.wanted_so import wanted_so
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

HABITS: tuple[Callable[[Talk, Vocabulary], list[Scope]], ...] = (
    denials,
    gone,
    wishes,
    wanted_so,
    hearsay,
    questions,
    history,
    hypotheticals,
    not_recalled,
)


def find_scopes(talk: Talk, vocabulary: Vocabulary) -> Scopes:
    """Every scope of the talk, by the habits in the order listed below."""
    by_token: list[list[Scope]] = [[] for _ in talk.texts]
    for habit in HABITS:
        for scope in habit(talk, vocabulary):
            for i in range(scope.start, min(scope.end, len(by_token))):
                by_token[i].append(scope)
    return Scopes(tuple(tuple(scopes) for scopes in by_token))
