"""Cuttings counted without the word: "four of it rooting under the mist", "I've struck six of it".

Not "I want six of it", nor "two of it in the front bed".
"""

from collections.abc import Iterator

from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity, quantity

_OF, _IT = frozenset({"of", "off", "from"}), frozenset({"it", "her", "him", "this", "that"})
_MORE = frozenset({"more", "others", "rooted", "good"})
_BEFORE, _AFTER = 4, 7
_WANTED = frozenset("want wants need needs 'll will like would please going could should".split())


def cuttings_of_it(mentions: Mentions) -> Iterator[Quantity]:
    """The figures of plants struck from the one in hand."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    texts = talk.texts
    for at in range(1, len(texts) - 1):
        if texts[at] not in _OF or texts[at + 1] not in _IT:
            continue
        i = at - 1 if texts[at - 1] in _MORE else at
        amount = next(
            (q for s in range(max(0, i - 3), i) if (q := quantity(texts, s)) and q.end == i), None
        )
        if amount is None or mentions.masked[amount.start] or amount.value != int(amount.value):
            continue
        low, high = talk.sentence(amount.start)
        low, high = max(low, amount.start - _BEFORE), min(high, at + _AFTER)
        if _WANTED & set(texts[low : amount.start]):
            continue
        struck = vocabulary.struck_before.find(texts, low, amount.start)
        rooting = vocabulary.struck_after.find(texts, at + 2, high)
        if struck or rooting:
            yield amount
