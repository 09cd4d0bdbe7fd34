"""Files that a camera split one walk into: read as one talk, kept as they are. Pure.

The plant in hand goes on over the border, and so do the plants just seen.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from diary.linking.document import Clip, Observation, Reading
from diary.speech.transcript import DateMark, Transcript, Word


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Where one file lies in the joined talk: from this time and this word on."""

    start_ms: int
    end_ms: int
    first_word: int
    after_word: int  # the first word that is no longer its


def join(transcripts: Sequence[Transcript]) -> tuple[Transcript, tuple[Part, ...]]:
    """One transcript of all, and where each lies in it."""
    words: list[Word] = []
    starts: list[int] = []
    dates: list[DateMark] = []
    parts: list[Part] = []
    at_ms = 0
    for one in transcripts:
        first = len(words)
        starts.extend(first + start for start in one.segment_starts)
        words.extend(
            replace(word, start_ms=word.start_ms + at_ms, end_ms=word.end_ms + at_ms)
            for word in one.words
        )
        dates.extend(replace(mark, at_ms=mark.at_ms + at_ms) for mark in one.dates)
        spoken_ms = words[-1].end_ms if len(words) > first else at_ms
        end_ms = max(spoken_ms, at_ms + (one.duration_ms or 0))
        parts.append(Part(start_ms=at_ms, end_ms=end_ms, first_word=first, after_word=len(words)))
        at_ms = end_ms
    talk = Transcript(
        words=tuple(words),
        segment_starts=tuple(starts),
        duration_ms=at_ms,
        clock=transcripts[0].clock,
        dates=tuple(dates),
    )
    return talk, tuple(parts)


def part_of(reading: Reading, part: Part) -> Reading:
    """What of a joined reading lies in one file, in the file's own times and words.

    A clip that goes over the border becomes one in each file.
    """
    return Reading(
        clips=tuple(
            _clip(clip, part)
            for clip in reading.clips
            if clip.first_word < part.after_word and clip.last_word >= part.first_word
        ),
        suggestions=tuple(
            replace(one, start_ms=one.start_ms - part.start_ms, end_ms=one.end_ms - part.start_ms)
            for one in reading.suggestions
            if part.start_ms <= one.start_ms < part.end_ms
        ),
    )


def _clip(clip: Clip, part: Part) -> Clip:
    return replace(
        clip,
        start_ms=max(clip.start_ms, part.start_ms) - part.start_ms,
        end_ms=min(clip.end_ms, part.end_ms) - part.start_ms,
        first_word=max(clip.first_word, part.first_word) - part.first_word,
        last_word=min(clip.last_word, part.after_word - 1) - part.first_word,
        observations=_within(clip.observations, part),
        proposals=_within(clip.proposals, part),
    )


def _within(observations: tuple[Observation, ...], part: Part) -> tuple[Observation, ...]:
    return tuple(
        replace(
            one,
            start_ms=one.start_ms - part.start_ms,
            end_ms=min(one.end_ms, part.end_ms) - part.start_ms,
            first_word=one.first_word - part.first_word,
            last_word=min(one.last_word, part.after_word - 1) - part.first_word,
        )
        for one in observations
        if part.first_word <= one.first_word < part.after_word
    )
