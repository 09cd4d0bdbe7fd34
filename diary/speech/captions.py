"""Captions to words: WebVTT, SRT and JSON captions."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from diary.errors import MediaError
from diary.speech.transcript import Transcript, Word
from diary.speech.words_in_cues import Cue, clock_ms, plain, transcript_of

_TIMES = re.compile(
    r"^\s*((?:\d+:)?\d{1,2}:\d{2}[.,]\d{1,3})\s*-->\s*((?:\d+:)?\d{1,2}:\d{2}[.,]\d{1,3})(?:\s.*)?$"
)
_VOICE = re.compile(r"<v(?:\.[^ >]*)?[ ][^>]*>")


def read_captions(path: Path) -> Transcript:
    """The words of a caption file (.vtt, .srt, .json) with their times.

    Where the file times whole cues only, word times are interpolated inside each cue.
    MediaError names the file, and the line where one is at fault.
    """
    text = read_text(path)
    if path.suffix.lower() == ".json":
        return _from_json(path, text)
    cues = list(_cues(path, text))
    if not cues and text.strip().removeprefix("WEBVTT").strip():
        raise MediaError(f"{path} holds no captions: no line of the form 0:01.000 --> 0:02.000.")
    return transcript_of(cues)


def read_text(path: Path) -> str:
    """The text of a file in UTF-8 (with or without mark), UTF-16 with mark, or Windows Latin."""
    try:
        raw = path.read_bytes()
    except FileNotFoundError as error:
        raise MediaError(f"There is no file {path}.") from error
    except OSError as error:
        raise MediaError(f"{path} cannot be read: {error.strerror}.") from error
    if raw[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return raw.decode("utf-16", errors="replace").replace("\r\n", "\n")
    if b"\x00" in raw:
        raise MediaError(f"{path} is no text file.")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = raw.decode("cp1252", errors="replace")
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _cues(path: Path, text: str) -> Iterator[Cue]:
    lines = text.split("\n")
    at = 0
    while at < len(lines):
        if lines[at].startswith(("NOTE", "STYLE", "REGION")) and "-->" not in lines[at]:
            while at < len(lines) and lines[at].strip():
                at += 1
        elif found := _TIMES.match(lines[at]):
            start_ms, end_ms = clock_ms(found[1]), clock_ms(found[2])
            if end_ms < start_ms:
                raise MediaError(f"{path}, line {at + 1}: the cue ends before it starts.")
            said = []
            at += 1
            while at < len(lines) and lines[at].strip() and not _TIMES.match(lines[at]):
                said.append(lines[at])
                at += 1
            if at < len(lines) and _TIMES.match(lines[at]) and said and said[-1].strip().isdigit():
                said.pop()  # a cue number, where the blank line before it is missing
            if body := _VOICE.sub("", " ".join(said)).strip():
                yield Cue(start_ms=start_ms, end_ms=end_ms, text=body)
        else:
            if "-->" in lines[at]:
                raise MediaError(f"{path}, line {at + 1}: these times cannot be read: {lines[at]}")
            at += 1


def _from_json(path: Path, text: str) -> Transcript:
    try:
        document = json.loads(text)
        cues = [_json_cue(segment) for segment in document["segments"]]
        duration = document.get("duration")
        duration_ms = None if duration is None else round(float(duration) * 1000)
    except json.JSONDecodeError as error:
        raise MediaError(f"{path}, line {error.lineno}: this is not JSON ({error.msg}).") from error
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        raise MediaError(
            f"{path} holds no captions of the form "
            '{"segments": [{"start": 0.0, "end": 4.2, "text": "..."}]} '
            f"({type(error).__name__}: {error})."
        ) from error
    return transcript_of(cues, duration_ms=duration_ms)


def _json_cue(segment: dict[str, Any]) -> Cue:
    words = tuple(word for row in segment.get("words") or () for word in _json_words(row))
    text = plain(str(segment.get("text", "")))
    start_ms, end_ms = round(float(segment["start"]) * 1000), round(float(segment["end"]) * 1000)
    return Cue(start_ms=start_ms, end_ms=end_ms, text=text, words=words)


def _json_words(row: dict[str, Any]) -> Iterator[Word]:
    """The words of one entry; most hold one, and some leave an empty or a double one."""
    start_ms, end_ms = round(float(row["start"]) * 1000), round(float(row["end"]) * 1000)
    confidence = row.get("confidence", row.get("probability"))
    for text in str(row.get("text", row.get("word", ""))).split():
        yield Word(
            text=text,
            start_ms=start_ms,
            end_ms=max(end_ms, start_ms + 1),
            confidence=None if confidence is None else float(confidence),
        )
