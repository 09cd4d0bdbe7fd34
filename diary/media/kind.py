"""Which way a file goes in: recording, captions or typed note, told by its name."""

from enum import Enum
from pathlib import Path


class SourceKind(Enum):
    """The three sorts of input."""

    MEDIA = "media"
    CAPTIONS = "captions"
    NOTE = "note"


CAPTION_SUFFIXES = frozenset({".vtt", ".srt", ".json"})
NOTE_SUFFIXES = frozenset({".txt", ".md"})


def kind_of(path: Path) -> SourceKind:
    """How `path` is to be read; anything that is neither captions nor note may be media."""
    suffix = path.suffix.lower()
    if suffix in CAPTION_SUFFIXES:
        return SourceKind.CAPTIONS
    return SourceKind.NOTE if suffix in NOTE_SUFFIXES else SourceKind.MEDIA


def captions_beside(path: Path) -> Path | None:
    """The caption file of the same name in the same folder, WebVTT first; None without one."""
    for suffix in (".vtt", ".srt", ".json"):
        beside = path.with_suffix(suffix)
        if beside.is_file() and beside != path:
            return beside
    return None
