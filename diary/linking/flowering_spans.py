"""Flowering for a long time, told by a span: "in flower since the second week of April".

Leaves alone "I've had it since the spring", which is how long it has been owned, and "two
since June", which is how few flowers there were.
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity

_BEFORE, _AFTER = 10, 6


def long_flowering(mentions: Mentions) -> Iterator[Statement]:
    """A span of time beside a word of flowering, and no word of owning between."""
    talk = mentions.talk
    for span in mentions.cue("flowering_span"):
        low, high = talk.sentence(span.start)
        if not talk.punctuated:
            low, high = max(0, span.start - _BEFORE), min(len(talk.texts), span.end + _AFTER)
        acts = [c for c in mentions.cue("flowering_act", low, high) if c.end <= high]
        acts = [c for c in acts if c.end <= span.start or c.start >= span.end]
        if not acts or _counted(mentions, span.start):
            continue
        near = min(acts, key=lambda c: abs(c.start - span.start))
        start, end = min(near.start, span.start), max(near.end, span.end)
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


def _counted(mentions: Mentions, at: int) -> bool:
    """ "two since June", "three flowers all year": few flowers, no long time."""
    texts = mentions.talk.texts
    return any(
        quantity(texts, i) is not None and texts[i] not in ("a", "an", "second", "first", "third")
        for i in range(max(0, at - 2), at)
    )
