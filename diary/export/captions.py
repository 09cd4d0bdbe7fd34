"""The words of a recording as captions: WebVTT and SubRip. Pure.

WebVTT by the W3C's WebVTT specification (editor's copy of 14 May 2026); SubRip has no formal
standard and follows common practice.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from diary.speech.transcript import Transcript, Word

# common practice for captions: two lines of about 42 letters, no longer than 7 s
_LETTERS = 84
_LINE = 42
_LONGEST_MS = 7000
_PAUSE_MS = 1200  # a pause of this length starts a new caption
_SENTENCE_END = re.compile(r"[.!?][\"')\]]*$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Cue:
    """One caption: a stretch and its text, lines parted by a newline."""

    start_ms: int
    end_ms: int
    text: str


def cues(transcript: Transcript) -> tuple[Cue, ...]:
    """Cut the words into captions at sentences, pauses and what fits on the screen."""
    starts = frozenset(transcript.segment_starts)
    found: list[list[Word]] = []
    for index, word in enumerate(transcript.words):
        if not found or _begins(found[-1], word, index in starts):
            found.append([])
        found[-1].append(word)
    return tuple(_tidy([_cue(words) for words in found]))


def _begins(words: list[Word], word: Word, segment: bool) -> bool:
    """Whether `word` starts a new caption after `words`."""
    letters = sum(len(one.text) + 1 for one in words)
    full = letters + len(word.text) > _LETTERS or word.end_ms - words[0].start_ms > _LONGEST_MS
    ended = bool(_SENTENCE_END.search(words[-1].text)) and letters > _LINE // 2
    return full or ended or segment or word.start_ms - words[-1].end_ms > _PAUSE_MS


def _cue(words: list[Word]) -> Cue:
    return Cue(
        start_ms=words[0].start_ms,
        end_ms=max(word.end_ms for word in words),
        text=_lines(" ".join(word.text for word in words)),
    )


def _lines(text: str) -> str:
    """One line, or two of about the same length."""
    if len(text) <= _LINE:
        return text
    gaps = [match.start() for match in re.finditer(" ", text)]
    if not gaps:
        return text
    middle = min(gaps, key=lambda gap: abs(gap - len(text) / 2))
    return text[:middle] + "\n" + text[middle + 1 :]


def _tidy(found: list[Cue]) -> Iterator[Cue]:
    """Starts never fall, every cue lasts, and none runs into the next."""
    at = 0
    for index, cue in enumerate(found):
        start = max(at, cue.start_ms)
        end = max(cue.end_ms, start + 1)
        if index + 1 < len(found):
            end = max(start + 1, min(end, found[index + 1].start_ms))
        at = end if end <= start + 1 else start
        yield Cue(start_ms=start, end_ms=end, text=cue.text)


def webvtt(captions: Iterable[Cue], *, header: str = "") -> str:
    """A WebVTT file. `header` is a note for the first line."""
    blocks = ["WEBVTT" + (f" {_one_line(header)}" if header else "")]
    for number, cue in enumerate(captions, start=1):
        timing = f"{vtt_time(cue.start_ms)} --> {vtt_time(cue.end_ms)}"
        blocks.append(f"{number}\n{timing}\n{vtt_text(cue.text)}")
    return "\n\n".join(blocks) + "\n"


def subrip(captions: Iterable[Cue]) -> str:
    """A SubRip file: counted from 1, a comma before the milliseconds."""
    return "".join(
        f"{number}\n{_srt_time(cue.start_ms)} --> {_srt_time(cue.end_ms)}\n"
        f"{_no_blank_lines(cue.text)}\n\n"
        for number, cue in enumerate(captions, start=1)
    )


def vtt_time(milliseconds: int) -> str:
    """hh:mm:ss.ttt, hours with two digits or more."""
    seconds, rest = divmod(milliseconds, 1000)
    return f"{seconds // 3600:02d}:{seconds // 60 % 60:02d}:{seconds % 60:02d}.{rest:03d}"


def _srt_time(milliseconds: int) -> str:
    return vtt_time(milliseconds).replace(".", ",")


def vtt_text(text: str) -> str:
    """Text as it may stand in a cue: & < > escaped (so no -->), no blank line."""
    escaped = text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return _no_blank_lines(escaped)


def _no_blank_lines(text: str) -> str:
    lines = [line.rstrip() for line in re.split(r"[\r\n]+", text)]
    return "\n".join(line for line in lines if line) or "-"


def _one_line(text: str) -> str:
    return " ".join(text.replace("-->", "->").split())
