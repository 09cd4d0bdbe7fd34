"""Counts taken back: "ten cuttings, no, I'm telling you wrong, it was eight".

Also "twenty seeds, no, thirty, it says on the packet", "I told you four buds but it's five"; not
"three buds, no, three fat ones and it's ten inches tall".
"""

from dataclasses import replace

from diary.linking.mended import mends_in
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity
from diary.reading.spoken import amount_at

_REACH = 16
_TOLD_BACK = 6
_ANEW = frozenset(
    "'s is was it says said make call more like nearer were are 'm to so rather".split()
)
_TOLD = (("told", "you"), ("i", "said"), ("had", "down"), ("put", "down"), ("i", "wrote"))
_POINTS = frozenset({"that", "this", "the", "another", "each"})
_AFTER = frozenset(
    "because on in of i there so and but mind with one them now all altogether actually sorry "
    "not it they that".split()
)


def recounted(mentions: Mentions, counts: list[Statement], doubted: set[int]) -> list[Statement]:
    """The counts with later figures in place of those taken back.

    A count whose start is `doubted` ("did I sow forty") stands only where a figure follows.
    """
    kept: list[Statement] = []
    ordered = sorted(counts, key=lambda s: s.start)
    for n, count in enumerate(ordered):
        if any(k.trait == count.trait and k.start <= count.start < k.end for k in kept):
            continue
        following = ordered[n + 1] if n + 1 < len(ordered) else None
        stop = following.start if following is not None else len(mentions.talk.texts)
        again = _figure(mentions, count, min(stop, count.end + _REACH))
        if again is not None:
            kept.append(replace(count, value=int(again.value), start=again.start, end=again.end))
        elif count.start not in doubted and not _replaced(mentions, count, following):
            kept.append(count)
    return kept


def _replaced(mentions: Mentions, count: Statement, following: Statement | None) -> bool:
    """ "two heads, no, three heads": the same is counted again right after."""
    return (
        following is not None
        and following.trait == count.trait
        and (
            (
                following.start - count.end <= _REACH
                and bool(mends_in(mentions, count.start + 1, following.start))
            )
            or _was_once(mentions, count, following)
        )
    )


def _was_once(mentions: Mentions, count: Statement, following: Statement) -> bool:
    """ "there were nine heads but I knocked two off, so there's seven now"."""
    texts = mentions.talk.texts
    was = {"were", "was", "had"} & set(texts[max(0, count.start - 2) : count.start])
    now = {"now", "left", "today"} & set(texts[following.start - 3 : following.end + 2])
    return bool(was and now) and following.start - count.end <= 2 * _REACH


def _figure(mentions: Mentions, count: Statement, stop: int) -> Quantity | None:
    """The figure that takes the place of the count, if one does."""
    talk = mentions.talk
    told = talk.texts[max(0, count.start - _TOLD_BACK) : count.start]
    said_before = any(told[i : i + 2] in _TOLD for i in range(len(told)))
    further = _with_another(mentions, count)
    if further is not None:
        return further
    mends = mends_in(mentions, count.start + 1, stop)
    if not mends and not said_before:
        return None
    at = count.end if said_before else mends[0][1]
    while at < stop:
        amount = None if mentions.masked[at] else amount_at(talk, at)
        pointed = talk.texts[at] == "one" and talk.texts[at - 1] in _POINTS  # "done that one"
        if amount is None or pointed or talk.texts[at] in ("a", "half"):
            at += 1
            continue
        near = any(amount.start - m[1] <= 1 for m in mends)
        anew = talk.texts[at - 1] in _ANEW
        if (near or anew) and amount.value != count.value and _is_count(mentions, amount):
            return amount
        if (near or anew) and amount.value == count.value:
            at = amount.end
            continue
        return None
    return None


def _with_another(mentions: Mentions, count: Statement) -> Quantity | None:
    """ "Four shoots. Five, with that one."."""
    talk = mentions.talk
    at = talk.sentence(max(count.end - 1, count.start))[1]
    amount = amount_at(talk, at) if at < len(talk.texts) and not mentions.masked[at] else None
    if amount is None or not isinstance(count.value, int) or amount.value != count.value + 1:
        return None
    return amount if talk.texts[amount.end : amount.end + 1] in _WITH else None


_WITH = (("with",), ("counting",), ("including",))


def _is_count(mentions: Mentions, amount: Quantity) -> bool:
    talk, vocabulary = mentions.talk, mentions.vocabulary
    if amount.value != int(amount.value) or amount.value < 1:
        return False
    if any(x.start <= amount.start < x.end for x in mentions.lengths_in(amount.start - 4)[:2]):
        return False
    for book in (vocabulary.units, vocabulary.dimensions):
        if book.at(talk.texts, amount.end):
            return False
    rest = talk.texts[amount.end : amount.end + 1]
    return (
        not rest
        or bool(talk.tokens[amount.end - 1].mark)
        or rest[0] in _AFTER
        or talk.clause(amount.end)[0] == amount.end
    )
