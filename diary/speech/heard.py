"""One reading of a window of sound, and what shows that it cannot be right. Pure."""

import zlib
from collections.abc import Sequence
from dataclasses import dataclass

_MOST_REPETITIVE = 2.4  # zlib ratio of the text; Whisper paper (2212.04356), section 4.5
_STRETCH = 160  # characters looked at by themselves: a loop may follow half a window of good text
_LONGEST_WORD = 1.6  # s: a longer one stands for words that were left out (numbers apart)


@dataclass(frozen=True, slots=True, kw_only=True)
class RawWord:
    """A word as the engine gives it: seconds from the start of the window's sound."""

    text: str
    start: float
    end: float
    probability: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """One reading of a window. `score` is the mean log probability of its tokens.

    `hinted` is whether the hint was before it: it is left out where it made the model skip words.
    """

    words: tuple[RawWord, ...]
    score: float
    no_speech: float
    repetitive: bool
    hinted: bool


def repeats(text: str) -> bool:
    """Whether a text, or any stretch of it, goes round and round."""
    stretches = [text, *(text[at : at + _STRETCH] for at in range(0, len(text), _STRETCH // 2))]
    return any(
        len(raw) / len(zlib.compress(raw)) > _MOST_REPETITIVE
        for raw in (stretch.encode() for stretch in stretches)
        if raw
    )


def skips(words: Sequence[RawWord], *, length: float) -> bool:
    """Whether words seem to be left out: one drawn out over others, or none for the end.

    `length` is that of the window's sound in seconds. Numbers may take their time.
    """
    if not words:
        return False
    plain = (word for word in words if not any(map(str.isdigit, word.text)))
    drawn_out = max((word.end - word.start for word in plain), default=0.0)
    return max(drawn_out, length - words[-1].end) > _LONGEST_WORD
