"""A transcript as a page shows it: lines of words, each marked with what was understood from it."""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass

from diary.records.record import Record, RecordClip
from diary.speech.transcript import Clock, Transcript


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedWord:
    """One word. `observation` is "CLIP-N" of what was understood from it; `sure` as told."""

    text: str
    start_ms: int
    end_ms: int
    observation: str | None = None
    sure: bool = True
    faint: bool = False  # the recogniser was not certain of the word


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedLine:
    """One segment. `clip` is the number of the clip it lies in, None outside; `at` its start."""

    start_ms: int
    clip: int | None
    at: str | None  # what to print for its place where it has no clock: "line 4"
    words: tuple[MarkedWord, ...]


FAINT = 0.5  # of the recogniser's own confidence in a word, where it gives one
LONGEST_LINE = 40  # words, where captions do not say where a sentence ends


def marked_lines(transcript: Transcript, clips: tuple[RecordClip, ...]) -> tuple[MarkedLine, ...]:
    """Every word once, in lines that begin with a segment, with a clip, or after forty words."""
    words = transcript.words
    starts = [word.start_ms for word in words]
    marks: dict[int, tuple[str, bool]] = {}
    for number, clip in enumerate(clips):
        for position, record in enumerate((*clip.records, *clip.proposals)):
            sure = record.band.value == "sure" and position < len(clip.records)
            for index in _words_of(transcript, starts, record):
                marks.setdefault(index, (f"{number}-{position}", sure))
    owners = [_clip_at(clips, word.start_ms) for word in words]
    breaks = set(transcript.segment_starts) | {0}
    lines: list[MarkedLine] = []
    line: list[MarkedWord] = []
    first = 0
    for index, word in enumerate(words):
        changed = index > 0 and owners[index] != owners[index - 1]
        if line and (index in breaks or changed or len(line) >= LONGEST_LINE):
            lines.append(_line(transcript, first, owners[first], line))
            line, first = [], index
        mark = marks.get(index)
        line.append(
            MarkedWord(
                text=word.text,
                start_ms=word.start_ms,
                end_ms=word.end_ms,
                observation=mark[0] if mark else None,
                sure=mark[1] if mark else True,
                faint=word.confidence is not None and word.confidence < FAINT,
            )
        )
    if line:
        lines.append(_line(transcript, first, owners[first], line))
    return tuple(lines)


def _line(
    transcript: Transcript, first: int, clip: int | None, words: list[MarkedWord]
) -> MarkedLine:
    start_ms = transcript.words[first].start_ms
    at = f"line {start_ms // 1000 + 1}" if transcript.clock is Clock.LINES else None
    return MarkedLine(start_ms=start_ms, clip=clip, at=at, words=tuple(words))


def _clip_at(clips: tuple[RecordClip, ...], ms: int) -> int | None:
    for number, clip in enumerate(clips):
        if clip.moment.start_ms <= ms < clip.moment.end_ms:
            return number
    return None


def _words_of(transcript: Transcript, starts: list[int], record: Record) -> range:
    """The words of a record's moment; its own text within them where it is found there."""
    moment = record.moment
    first = bisect_left(starts, moment.start_ms)
    last = bisect_right(starts, max(moment.start_ms, moment.end_ms - 1))
    wanted = moment.text.split()
    if not wanted:
        return range(0)
    for at in range(first, last - len(wanted) + 1):
        if all(transcript.words[at + n].text == text for n, text in enumerate(wanted)):
            return range(at, at + len(wanted))
    return range(first, last)
