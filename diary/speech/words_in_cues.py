"""Text of a cue with its times to words with theirs. Pure."""

import html
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from diary.speech.transcript import Transcript, Word

_TAG = re.compile(r"<[^>]*>")
# The inline time stamp of WebVTT (W3C WebVTT, 4.2.2 "cue timestamp"): <00:01:02.345>
_STAMP = re.compile(r"<((?:\d+:)?\d{1,2}:\d{2}[.,]\d{3})>")


@dataclass(frozen=True, slots=True, kw_only=True)
class Cue:
    """A piece of text on screen between two moments; `words` where the file times each."""

    start_ms: int
    end_ms: int
    text: str
    words: tuple[Word, ...] = ()


def clock_ms(text: str) -> int:
    """'1:02:03.456', '02:03.456' or with a comma, in milliseconds. ValueError otherwise."""
    *hours, minutes, seconds = text.replace(",", ".").split(":")
    whole = int(minutes) * 60_000 + round(float(seconds) * 1000)
    return whole + (int(hours[0]) * 3_600_000 if hours else 0)


def spread(text: str, start_ms: int, end_ms: int) -> tuple[Word, ...]:
    """The words of `text` from `start_ms` to `end_ms`, each with time by its length.

    A word's share grows with its letters plus two, which is nearer to speech than equal
    shares (a short word takes about a third of the time of a long one).
    """
    said = text.split()
    weights = [len(word) + 2 for word in said]
    total, passed = sum(weights), 0
    words = []
    for word, weight in zip(said, weights, strict=True):
        first = start_ms + (end_ms - start_ms) * passed // total
        passed += weight
        last = start_ms + (end_ms - start_ms) * passed // total
        words.append(Word(text=word, start_ms=first, end_ms=max(last, first + 1)))
    return tuple(words)


def timed(text: str, start_ms: int, end_ms: int, *, skip: int = 0) -> tuple[Word, ...]:
    """The words of a cue with inline time stamps and tags; times between stamps interpolated.

    The first `skip` words are left out, and take no time.
    """
    pieces = _STAMP.split(text)
    moments = [start_ms, *(clock_ms(stamp) for stamp in pieces[1::2]), end_ms]
    words: list[Word] = []
    for piece, first, last in zip(pieces[::2], moments, moments[1:], strict=False):
        said = plain(piece).split()
        left_out = min(skip, len(said))
        skip -= left_out
        words.extend(spread(" ".join(said[left_out:]), first, max(first, last)))
    return tuple(words)


def plain(text: str) -> str:
    """Text without tags, entities resolved, white space single."""
    return " ".join(html.unescape(_TAG.sub("", text)).split())


def transcript_of(cues: Iterable[Cue], *, duration_ms: int | None = None) -> Transcript:
    """The transcript of cues in order of time, a segment each; rolled-up repeats taken out."""
    words: list[Word] = []
    starts: list[int] = []
    for cue in sorted(cues, key=lambda cue: cue.start_ms):
        texts = [word.text for word in cue.words] or plain(cue.text).split()
        repeated = _repeated(words, texts, cue.start_ms)
        fresh = (
            cue.words[repeated:]
            if cue.words
            else timed(cue.text, cue.start_ms, cue.end_ms, skip=repeated)
        )
        if fresh:
            starts.append(len(words))
            floor = words[-1].start_ms if words else 0
            words.extend(_not_before(fresh, floor))
    end = max((word.end_ms for word in words), default=0)
    return Transcript(
        words=tuple(words),
        segment_starts=tuple(starts),
        duration_ms=duration_ms if duration_ms is not None else end,
    )


def _repeated(before: Sequence[Word], said: Sequence[str], start_ms: int) -> int:
    """How many of the first words of `said` stand at the end of `before` already.

    Automatic captions roll: a cue repeats the line above it. Only words still on screen (or
    just gone) count, so that a speaker may say the same line twice.
    """
    for count in range(min(len(before), len(said)), 0, -1):
        tail = before[-count:]
        if tail[-1].end_ms < start_ms - 50:
            return 0
        if [word.text for word in tail] == list(said[:count]):
            one_word_said_twice = count == 1 and len(said) == 1 and tail[0].end_ms <= start_ms
            return 0 if one_word_said_twice else count
    return 0


def _not_before(words: Iterable[Word], floor_ms: int) -> Iterable[Word]:
    """The words with starts that never fall (overlapping cues of two speakers)."""
    for word in words:
        floor_ms = max(floor_ms, word.start_ms)
        yield Word(
            text=word.text,
            start_ms=floor_ms,
            end_ms=max(word.end_ms, floor_ms + 1),
            confidence=word.confidence,
        )
