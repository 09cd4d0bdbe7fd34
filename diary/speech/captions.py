"""Captions to words: WebVTT, SRT and JSON captions."""

from pathlib import Path

from diary.speech.transcript import Transcript


def read_captions(path: Path) -> Transcript:
    """The words of a caption file (.vtt, .srt, .json) with their times. MediaError."""
    raise NotImplementedError(path)
