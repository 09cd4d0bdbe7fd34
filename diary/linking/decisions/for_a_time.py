"""What is kept only for a time is watched: "it can stay where it is for now, till it's flowered".

"Keep it for good" and "a keeper for now and always" keep.
"""

from dataclasses import replace

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_FOR_NOW = tuple(
    tuple(said.split())
    for said in (
        "for now",
        "for the moment",
        "for the minute",
        "for the present",
        "for the time",
        "for another year",
        "for one more",
        "meantime",
        "in the meantime",
        "pro tem",
    )
)


_SPAN = 4


def for_a_time(mentions: Mentions, kept: list[Statement]) -> list[Statement]:
    """Keepings told with patience right after them are the patience."""
    timed = (_timed(mentions, one) for one in kept)
    return [one for one in timed if not _patience_told(mentions, one, kept)]


def _timed(mentions: Mentions, one: Statement) -> Statement:
    """ "it can stop where it is for now", "I'll hang on to it one more summer"."""
    after = mentions.talk.texts[one.end : one.end + 4]
    patience = mentions.vocabulary.decisions_last.find(
        mentions.talk.texts, one.end - 1, one.end + _SPAN
    )
    timed = any(f.label == "watch" and f.start <= one.end for f in patience)
    timed = timed or any(after[: len(words)] == words for words in _FOR_NOW)
    if one.value != "keep" or not timed:
        return one
    return replace(one, value="watch", rule="kept for a time")


def _patience_told(mentions: Mentions, one: Statement, kept: list[Statement]) -> bool:
    """ "I'll give it house room | one more winter": patience, and no keeping."""
    stop = mentions.talk.clause(one.end - 1)[1]
    return one.value == "keep" and any(
        s.value == "watch" and one.end <= s.start < min(stop, one.end + 2) for s in kept
    )
