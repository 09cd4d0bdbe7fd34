"""What the rules of parentage share: is it asserted, is it still to be made, whose words are they.

"I can't remember the pollen parent" and "next year I'll put A on it" tell no parent;
"it's not a huge flower, mum was A" does, although a denial stands before it.
"""

from itertools import pairwise

from diary.linking.operands import Operand
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_UNSAID = {Habit.WISH, Habit.QUESTION, Habit.NOT_RECALLED, Habit.DENIAL, Habit.HYPOTHETICAL}
PLANS = frozenset(
    "going want love will might could should 'll would plan hope like shall must tomorrow "
    "fancy idea".split()
)
_NEAR_DENIAL = 3


def asserted(mentions: Mentions, start: int, end: int) -> bool:
    for at in range(start, max(end, start + 1)):
        for scope in mentions.scopes.by_token[at]:
            if scope.habit not in _UNSAID:
                continue
            if scope.habit is Habit.DENIAL and start - scope.cue > _NEAR_DENIAL:
                continue  # "it's not a huge flower, mum was ..."
            if mentions.talk.texts[scope.cue] == "no" and start - scope.cue >= _NEAR_DENIAL:
                continue  # "that's no small flower, A was the mother"
            if mentions.talk.texts[scope.cue] == "unknown" and scope.cue < start:
                continue  # "mum unknown, dad A"
            return False
    return True


def parent(trait: str, operand: Operand, rule: str, score: float) -> Statement:
    return Statement(
        trait=trait,
        value=operand.title,
        start=operand.start,
        end=operand.end,
        rule=rule,
        score=round(score * min(1.0, operand.score + 0.05), 3),
    )


def known(operand: Operand | None) -> bool:
    return operand is not None and (operand.ref is None or operand.ref.cut is None)


def role_cues(mentions: Mentions, label: str) -> list[Found]:
    return [
        f for f in mentions.vocabulary.parent_cues.find(mentions.talk.texts) if f.label == label
    ]


def planned(mentions: Mentions, at: int) -> bool:
    """A cross still to be made: "I'll put A on it", "to be used next month, with A's pollen"."""
    start = mentions.talk.clause(at)[0]
    return plans(mentions.talk.texts, max(start, at - 8), at) or _to_be_used(mentions, at)


def plans(texts: tuple[str, ...], start: int, end: int) -> bool:
    """ "I'd like A on it"; not "like a pie crust", "a love child of A and B"."""
    return any(
        texts[i] in PLANS and (texts[i] not in _WISHED or texts[i - 1 : i] in _WISHING)
        for i in range(max(0, start), end)
    )


_WISHED = frozenset({"like", "love"})
_WISHING = (("'d",), ("would",), ("should",), ("i",))


def _to_be_used(mentions: Mentions, at: int) -> bool:
    """ "I'm using it as a mother next month, with A for the father"."""
    talk = mentions.talk
    low = talk.sentence(at)[0] if talk.punctuated else 0
    words = talk.texts[max(low, at - _USED_WITHIN) : at]
    if not _USE & set(words):
        return False
    later = any(a == "next" and b in _TIMES for a, b in pairwise(words))
    return later or bool((PLANS | {"gonna"}) & set(words))


_USED_WITHIN = 14
_USE = frozenset("use used using".split())
_TIMES = frozenset("week month year spring summer autumn winter season time".split())
