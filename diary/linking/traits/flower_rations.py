"""Shy, told by the few flowers of a long time: "three trusses off it in as many months".

Leaves alone "two heads in the last week", "three blooms in a vase" and "I've had five off it".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity

_FEW = 5
_NOUN_WITHIN, _SPAN_WITHIN = 3, 8
_SPANS = frozenset("month months year years season seasons summer twelvemonth life".split())
_MANY = frozenset("as many a all the whole its his her entire last past".split())
_LOT = (("that", "'s", "all"), ("that", "'s", "it"), ("that", "'s", "your"), ("and", "no", "more"))
_HAD = frozenset({"had", "given", "gave", "seen", "produced", "managed", "got", "opened"})


def flower_rations(mentions: Mentions) -> Iterator[Statement]:
    """A small number of flowers, and all the time they took."""
    texts, classes = mentions.talk.texts, mentions.vocabulary.classes
    nouns = classes["bloom"] | {"head", "heads"}
    for at in range(len(texts)):
        if texts[at] not in nouns or mentions.masked[at]:
            continue
        few = _few_before(mentions, at)
        end = _all_it_gave(mentions, at) if few is not None else None
        if few is not None and end is not None:
            yield Statement(
                trait="flowering",
                value="shy",
                start=few,
                end=end,
                rule="few flowers in a long time",
                score=0.87,
            )


def _few_before(mentions: Mentions, at: int) -> int | None:
    """Where "three", "one solitary", "a couple of" begins before the noun."""
    low = max(mentions.talk.clause(at)[0], at - _NOUN_WITHIN)
    for i in range(low, at):
        amount = quantity(mentions.talk.texts, i)
        if amount is not None and 1 <= amount.value <= _FEW and amount.end <= at:
            return i
    return None


def _all_it_gave(mentions: Mentions, at: int) -> int | None:
    """The end of "in as many months", "all season", "in her whole life", "that's all I've had"."""
    talk = mentions.talk
    low, high = talk.sentence(at)
    high = min(high, at + 1 + _SPAN_WITHIN)
    for i in range(at + 1, high):
        if talk.texts[i : i + 3] in _LOT:
            return i + 3 if _HAD & set(talk.texts[low : high + 3]) or i == at + 1 else None
        if talk.texts[i] not in _LEADING:
            continue
        for k in range(i + 1, min(high, i + 5)):
            if talk.texts[k] in _SPANS:
                whole = talk.texts[i] != "in" or bool(_WHOLE & set(talk.texts[i:k]))
                whole = whole or not set(talk.texts[at + 1 : i]) - _HERE
                told = whole or _HAD & set(talk.texts[max(low, at - _SPAN_WITHIN) : i])
                return k + 1 if told else None
            if talk.texts[k] not in _MANY and quantity(talk.texts, k) is None:
                break
    return None


_LEADING = frozenset({"in", "all", "the"})
_WHOLE = frozenset({"whole", "all", "many", "entire"})
_HERE = frozenset("on in it her him this out off open had".split())
