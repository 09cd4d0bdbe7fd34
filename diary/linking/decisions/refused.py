"""Decisions told by what is refused: "I couldn't do without it", "there's no room for that".

What one will not do with a plant decides the other way, and people refuse in many more
words than they decide in: they cannot, nobody shall, there is no question of it, they
would be fools to. "He isn't going on the heap yet" puts off and decides nothing.
"""

from collections.abc import Iterable

from diary.linking.decisions.answered import Answer, answer
from diary.linking.decisions.decided_of import is_of_the_plant
from diary.linking.decisions.undecided import somebody_elses
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_REACH, _YET_REACH = 6, 5
_UNMEANT = {Habit.REPORTED, Habit.HISTORY, Habit.HYPOTHETICAL}
_PUT_OFF = frozenset("yet till until before unless just when if because while today".split())
_TURNED = frozenset({"but", "so", "because"})


def find_refused(mentions: Mentions, decided: Iterable[Statement]) -> list[Statement]:
    """What is refused, where no way of deciding was found beside it."""
    taken = {i for s in decided for i in range(s.start, s.end)}
    found: list[Statement] = []
    vocabulary = mentions.vocabulary
    for deed in mentions.phrases(vocabulary.decisions_refused, vocabulary.decisions_never):
        cue = _refusal(mentions, deed)
        if cue is None or taken & set(range(cue, deed.end)):
            continue
        if _UNMEANT & mentions.scopes.habits(deed.start, deed.end) or _wished(mentions, deed):
            continue
        if answer(mentions, deed) is not Answer.NOT_ASKED or _put_off(mentions, deed):
            continue
        if not is_of_the_plant(mentions, deed) or somebody_elses(mentions, deed):
            continue
        taken |= set(range(cue, deed.end))
        found.append(
            Statement(
                trait="decision",
                value=deed.label,
                start=cue,
                end=deed.end,
                rule="what is refused",
                score=0.78,
            )
        )
    return found


def _refusal(mentions: Mentions, deed: Found) -> int | None:
    """Where the refusal begins: "no question of", "couldn't", "a fool to", "nobody's"."""
    talk = mentions.talk
    low = max(talk.clause(deed.start)[0], deed.start - _REACH)
    denied = [
        scope.cue
        for scope in mentions.scopes.by_token[deed.start]
        if scope.habit is Habit.DENIAL and scope.cue >= low
    ]
    cues = [c.start for c in mentions.cue("refusal", low, deed.start) if c.end <= deed.start]
    cues += [
        c.start
        for c in mentions.cue("folly", low, deed.start)
        if deed.label == "keep"
        and talk.texts[c.end : c.end + 1] == ("to",)
        and {"i", "we"} & set(talk.texts[low : c.start])
    ]
    starts = [s for s in denied + cues if not _TURNED & set(talk.texts[s : deed.start])]
    return max(starts, default=None)


def _wished(mentions: Mentions, deed: Found) -> bool:
    """ "I wish I'd never let it go"; not "I should not dream of letting it go"."""
    return any(
        scope.habit is Habit.WISH
        and not {"not", "never"} & set(mentions.talk.texts[max(0, scope.cue - 2) : scope.cue])
        for scope in mentions.scopes.by_token[deed.start]
    )


def _put_off(mentions: Mentions, deed: Found) -> bool:
    """ "she's not going out yet", "I won't lose it till it's flowered"."""
    after = mentions.talk.texts[deed.end : deed.end + _YET_REACH]
    return deed.label == "keep" and bool(_PUT_OFF & set(after))
