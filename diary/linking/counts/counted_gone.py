"""Counts that are no longer there, or that are only asked for.

"two buds dropped in the heat", "I took four heads off for the vase", "two shoots to come off",
"you need eight trusses open to show it"; not "five buds to come", nor "nine cuttings taken".
"""

from diary.linking.sizes.no_size import SEASONS
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity
from diary.reading.phrases import Found

_BEFORE, _AFTER = 5, 5
_PLANT = (("it",), ("him",), ("her",), ("this",), ("that",), ("them",))
_PAST = frozenset(
    "want wants ask asks like likes for expect expects need needs say says open good only just "
    "about all to see have the of them at least a around some".split()
)
_ARE = frozenset("have has had are is 's 've were was got just already all of on it them".split())


def is_gone(mentions: Mentions, noun: Found, amount: Quantity) -> bool:
    """Whether the things counted were lost or cut, or are to be."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    end = max(noun.end, amount.end)
    for f in vocabulary.count_gone_after.find(talk.texts, end, min(len(talk.texts), end + _AFTER)):
        if set(talk.texts[end : f.start]) <= _ARE and not talk.between(
            end - 1, f.start, (".", ",", "?")
        ):
            return True
    low = max(talk.sentence(amount.start)[0], amount.start - _BEFORE)
    then = talk.texts[end : end + 3]
    if "had" in talk.texts[max(low, amount.start - 3) : amount.start] and (
        then[:1] in (("in",), ("at",), ("last",), ("by",)) and SEASONS & set(then[1:])
    ):
        return True  # "it had eleven heads in June"
    if {"had", "'d"} & set(talk.texts[max(low, amount.start - 4) : amount.start]) and (
        then[:1] in (("off",), ("from",)) and then[1:2] in _PLANT
    ):
        return True  # "I've had three trusses off it"; not "I've had five cuttings off it"
    return any(
        set(talk.texts[f.end : amount.start]) <= _PAST
        for f in vocabulary.count_gone_before.find(talk.texts, low, amount.start)
    )


def is_asked(mentions: Mentions, amount: Quantity) -> bool:
    """ "the class wants three heads", "you need at least eight trusses open"."""
    talk = mentions.talk
    low = max(talk.sentence(amount.start)[0], amount.start - _BEFORE)
    own = max(low, talk.clause(amount.start)[0])
    if {"each", "every", "per"} & set(talk.texts[own : amount.start]):
        return True  # "each truss has thirty buds in it"
    return any(
        set(talk.texts[f.end : amount.start]) <= _PAST
        for f in mentions.vocabulary.size_limits.find(talk.texts, low, amount.start)
    )
