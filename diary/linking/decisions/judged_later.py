"""A judging that is for another time watches: "we'll have it flower again and then we'll talk".

Told by what is to be judged or waited for and by the time of it, apart in one sentence.
"We'll see you next week" and "the light's better, I'll see when the sun's round" tell of
no plant.
"""

from collections.abc import Iterable

from diary.linking.decisions.decided_of import is_of_the_plant
from diary.linking.decisions.undecided import does_not_hold, under_condition
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_REACH = 9
_GOES_ON = (("and",), ("then",), ("till",), ("until",), ("when",), ("before",))
_UNMEANT = {Habit.WISH, Habit.REPORTED, Habit.HISTORY}
_NO_JUDGES = frozenset({"you", "they", "them", "people", "everybody", "me"})


def find_judged_later(mentions: Mentions, decided: Iterable[Statement]) -> list[Statement]:
    """The judgings with a later time beside them, where nothing is decided in the sentence."""
    taken = {i for s in decided for i in range(s.start, s.end)}
    found: list[Statement] = []
    for judged in mentions.phrases(mentions.vocabulary.decisions_judged):
        low, high = _reach(mentions, judged)
        if taken & set(range(low, high)) or not _later(mentions, judged, low, high):
            continue
        if _UNMEANT & mentions.scopes.habits(judged.start, judged.end):
            continue
        texts = mentions.talk.texts
        if _NO_JUDGES & {*texts[judged.end : judged.end + 1], texts[judged.start - 1]}:
            continue  # "when you look at it straight", "we'll see you"
        if not is_of_the_plant(mentions, judged) or does_not_hold(mentions, judged):
            continue
        taken |= set(range(low, high))
        found.append(
            Statement(
                trait="decision",
                value=judged.label,
                start=judged.start,
                end=judged.end,
                rule="judged another time",
                score=0.72,
                firm=not under_condition(mentions, judged),
            )
        )
    return found


def _reach(mentions: Mentions, judged: Found) -> tuple[int, int]:
    """Its sentence, and the next one that goes on from it: "it can sit there | and we'll see"."""
    talk = mentions.talk
    low, high = talk.sentence(judged.start)
    if talk.texts[high : high + 1] in _GOES_ON:
        high = talk.sentence(high)[1]
    return max(low, judged.start - _REACH), min(high, judged.end + _REACH)


def _later(mentions: Mentions, judged: Found, low: int, high: int) -> bool:
    return any(
        cue.end <= judged.start or cue.end > judged.end
        for cue in mentions.cue("later_on", low, high)
        if cue.end <= high
    )
