"""A typed note to words: line numbers stand for time."""

from pathlib import Path

from diary.speech.transcript import Transcript


def read_note(path: Path) -> Transcript:
    """The words of a note (.txt, .md); dated paragraphs become DateMarks. MediaError."""
    raise NotImplementedError(path)
