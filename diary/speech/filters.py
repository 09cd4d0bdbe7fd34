"""Words that were not said: loops, stock phrases, words out of silence, doubled borders. Pure.

Each filter takes the words of a stretch and gives back what it keeps and what it dropped, with
the reason. A speaker does repeat ("twelve, twelve"): only what no mouth could do is dropped.
"""

import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from importlib import resources

from diary.speech.block import Dropped
from diary.speech.transcript import Word

_MOST_TIMES = 4  # a group of words said so often in a row is a loop, unless it is one word
_MOST_TIMES_ONE = 6
_LONGEST_GROUP = 12  # words
_QUICKEST_MS = 60  # a word takes this long at least (fast speech: about 8 words a second)
_BELIEVED = 0.6  # mean probability from which a stock phrase is taken for said
_NO_SPEECH = 0.6  # the engine's own doubt that somebody speaks; Whisper's default
_BORDER_MS = 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Sifted:
    """What was kept of some words, and what was not."""

    words: tuple[Word, ...]
    dropped: tuple[Dropped, ...] = ()


def sift(words: Sequence[Word], *, no_speech: float, score: float) -> Sifted:
    """The words of one window that are believed.

    `no_speech` is the engine's probability that nobody speaks, `score` the mean log
    probability of its tokens.
    """
    if not words:
        return Sifted(words=())
    if no_speech > _NO_SPEECH and score < -1.0:
        return Sifted(words=(), dropped=(_drop(words, "no speech"),))
    kept: list[Word] = []
    dropped: list[Dropped] = []
    for segment in segments(words):
        if is_stock(segment) and _confidence(segment) < _BELIEVED:
            dropped.append(_drop(segment, "stock phrase"))
        else:
            kept.extend(segment)
    looped = without_loops(kept)
    return Sifted(words=looped.words, dropped=(*dropped, *looped.dropped))


def segments(words: Sequence[Word], *, pause_ms: int = 1000) -> Iterator[Sequence[Word]]:
    """The words in runs that end with a sentence or before a pause."""
    first = 0
    for index, word in enumerate(words):
        ends = index + 1 == len(words)
        if (
            ends
            or word.text.endswith((".", "?", "!"))
            or (words[index + 1].start_ms - word.end_ms >= pause_ms)
        ):
            yield words[first : index + 1]
            first = index + 1


def is_stock(words: Sequence[Word]) -> bool:
    """Whether the words are a phrase that models write into silence, and nothing else."""
    said = " ".join(_bare(word.text) for word in words)
    phrases, openings = _stock()
    return said in phrases or said.startswith(openings)


def without_loops(words: Sequence[Word]) -> Sifted:
    """Drop all but the first of a group of words that comes again and again without a break."""
    bare = [_bare(word.text) for word in words]
    kept: list[Word] = []
    dropped: list[Dropped] = []
    at = 0
    while at < len(words):
        size, times = _loop(bare, at)
        if times:
            kept.extend(words[at : at + size])
            dropped.append(_drop(words[at + size : at + size * times], "loop"))
            at += size * times
        else:
            kept.append(words[at])
            at += 1
    return Sifted(words=tuple(kept), dropped=tuple(dropped))


def _loop(bare: Sequence[str], at: int) -> tuple[int, int]:
    """(size, times) of the loop that starts at `at`, (0, 0) if none does."""
    for size in range(1, _LONGEST_GROUP + 1):
        group = bare[at : at + size]
        times = 1
        while bare[at + size * times : at + size * (times + 1)] == group:
            times += 1
        if len(group) == size and times >= (_MOST_TIMES_ONE if size == 1 else _MOST_TIMES):
            return size, times
    return 0, 0


def without_doubles(before: Sequence[Word], words: Sequence[Word]) -> Sifted:
    """Drop the first words of a window that say again what the window before ended with.

    Only where they come at once and too quickly to have been said twice.
    """
    for count in range(min(6, len(before), len(words)), 1, -1):
        tail, head = before[-count:], words[:count]
        if [_bare(word.text) for word in tail] != [_bare(word.text) for word in head]:
            continue
        length = head[-1].end_ms - head[0].start_ms
        close = head[0].start_ms - tail[-1].end_ms < _BORDER_MS
        if close and length < _QUICKEST_MS * count:
            return Sifted(words=tuple(words[count:]), dropped=(_drop(head, "said twice"),))
    return Sifted(words=tuple(words))


def _confidence(words: Sequence[Word]) -> float:
    return sum(word.confidence or 0.0 for word in words) / len(words)


def _drop(words: Sequence[Word], reason: str) -> Dropped:
    return Dropped(
        start_ms=words[0].start_ms,
        end_ms=words[-1].end_ms,
        text=" ".join(word.text for word in words),
        reason=reason,
    )


def _bare(text: str) -> str:
    return text.lower().strip(".,;:!?-\"'…()[]")


@cache
def _stock() -> tuple[frozenset[str], tuple[str, ...]]:
    text = resources.files("diary.data").joinpath("stock_phrases.toml").read_text("utf-8")
    data = tomllib.loads(text)
    return frozenset(data["phrases"]), tuple(data["openings"])
