"""Flowering for a long time, told by a span: "in flower since the second week of April".

Leaves alone "I've had it since the spring", which is how long it has been owned, and "two
since June", which is how few flowers there were.
"""

from collections.abc import Iterator
from itertools import pairwise

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity
from diary.reading.phrases import Found

_BEFORE, _AFTER = 10, 6
_APART_AT_MOST = 14


def long_flowering(mentions: Mentions) -> Iterator[Statement]:
    """A span of time beside a word of flowering, and no word of owning between."""
    talk = mentions.talk
    yield from _then_and_now(mentions)
    yield from _for_weeks(mentions)
    yield from _ever_since(mentions)
    for span in mentions.cue("flowering_span"):
        low, high = talk.sentence(span.start)
        if not talk.punctuated:
            low, high = max(0, span.start - _BEFORE), min(len(talk.texts), span.end + _AFTER)
        acts = [c for c in mentions.cue("flowering_act", low, high) if c.end <= high]
        acts = [c for c in acts if c.end <= span.start or c.start >= span.end]
        acts = [c for c in acts if not _counted(mentions, c.start)]
        if not acts or _counted(mentions, span.start) or _apart(mentions, span.end):
            continue
        near = min(acts, key=lambda c: (_gap(c, span), c.start))
        start, end = min(near.start, span.start), max(near.end, span.end)
        start = _never_without(mentions, start)
        if any(c.start < end for c in mentions.cue("owning", max(low, start - 3), end)):
            continue
        yield Statement(
            trait="flowering",
            value="long",
            start=start,
            end=end,
            rule="a span of flowering",
            score=0.88,
        )


def _then_and_now(mentions: Mentions) -> Iterator[Statement]:
    """ "it was in flower in May and it's still in flower", "it was out at Whitsun and is out now".

    Not "it was out when I looked, and I'm still at it".
    """
    talk = mentions.talk
    acts = mentions.cue("flowering_act")
    for then, now in pairwise(acts):
        low, high = max(talk.sentence(then.start)[0], then.start - 3), talk.sentence(then.start)[1]
        if now.start - then.end > _APART_AT_MOST or now.end > high:
            continue
        was = bool({"was", "were", "came", "had"} & set(talk.texts[low : then.end]))
        still = "still" in talk.texts[then.end : now.end]
        again = "now" in talk.texts[now.end : now.end + 2]
        if was and (still or again):
            yield Statement(
                trait="flowering",
                value="long",
                start=then.start,
                end=now.end,
                rule="flowering then and now",
                score=0.86,
            )


def _never_without(mentions: Mentions, start: int) -> int:
    """ "never a day without | a flower from March to November": both denials are its own."""
    texts = mentions.talk.texts
    low = max(mentions.talk.clause(start)[0], start - _APART_AT_MOST // 2)
    for i in range(low, start):
        if texts[i] in ("never", "no", "not", "hardly") and {"without", "out"} & set(
            texts[i:start]
        ):
            return i
    return start


def _for_weeks(mentions: Mentions) -> Iterator[Statement]:
    """ "it has been in bloom ten weeks without remission"; not "out two weeks before the rest"."""
    talk = mentions.talk
    for act in mentions.cue("flowering_act"):
        at = act.end
        while at < len(talk.texts) - 2 and talk.texts[at] in _FULLY and at - act.end < 3:
            at += 1
        amount = quantity(talk.texts, at)
        if amount is None or talk.between(act.start, at, (",", ".", "?")) or amount.value < 2:
            continue
        after = talk.texts[amount.end : amount.end + 2]
        been = {"been", "kept", "stayed"} & set(talk.texts[max(0, act.start - 2) : act.end])
        if after[:1] not in (("weeks",), ("months",)) or after[1:2] in _APART or not been:
            continue
        yield Statement(
            trait="flowering",
            value="long",
            start=act.start,
            end=amount.end + 1,
            rule="weeks of flowering",
            score=0.87,
        )


_FULLY = frozenset("now a good full fully nearly about all of some well over these for".split())


def _ever_since(mentions: Mentions) -> Iterator[Statement]:
    """ "in flower since the cup final", "been out since the wedding"; not "two out since then"."""
    texts = mentions.talk.texts
    for act in mentions.cue("flowering_act"):
        since = texts[act.end : act.end + 1] == ("since",)
        told = {"in", "been", "out", "flowering", "blooming"} & set(texts[act.start : act.end])
        if since and told and not _counted(mentions, act.start):
            yield Statement(
                trait="flowering",
                value="long",
                start=act.start,
                end=min(act.end + 3, len(texts)),
                rule="flowering since",
                score=0.86,
            )


def _gap(act: Found, span: Found) -> int:
    return span.start - act.end if act.end <= span.start else act.start - span.end


def _apart(mentions: Mentions, end: int) -> bool:
    """ "into flower a good three weeks before the others": how far apart, not how long."""
    return mentions.talk.texts[end : end + 1] in _APART or (
        mentions.talk.texts[end - 1 : end] in _APART[:-4]
    )


_APART = tuple(
    (w,) for w in "before behind ahead after late later early earlier since ago away old".split()
)


def _counted(mentions: Mentions, at: int) -> bool:
    """ "two since June", "three flowers all year": few flowers, no long time."""
    texts = mentions.talk.texts
    return any(
        quantity(texts, i) is not None
        and not mentions.masked[i]
        and texts[i] not in ("a", "an", "second", "first", "third")
        for i in range(max(0, at - 2), at)
    )
