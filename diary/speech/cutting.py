"""Where to cut: blocks at silences, and speech packed into windows for the model. Pure.

Positions are samples at 16 kHz from the start of the block's audio.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from diary.speech.settings import RATE

BLOCK = 300 * RATE  # a block is at most this long
_EARLIEST_CUT = 0.6  # and at least this share of it, unless the recording ends
_LONGEST_WINDOW = 29 * RATE  # Whisper's window is 30 s
_EARLIEST_BREAK = 22 * RATE  # a window is broken at the longest pause after this much speech
_KEPT_PAUSE = RATE * 8 // 10  # of a longer pause inside a window, this much is kept


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A half-open stretch of samples."""

    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """Speech for one look of the model: the `spans` of the block, pauses shortened between."""

    spans: tuple[Span, ...]

    @property
    def length(self) -> int:
        """Samples of the window's own audio."""
        return sum(span.end - span.start for span in self.spans)

    def place(self, second: float) -> int:
        """The sample of the block that lies `second` seconds into the window's own audio."""
        at = round(second * RATE)
        for span in self.spans:
            if at < span.end - span.start:
                return span.start + at
            at -= span.end - span.start
        return self.spans[-1].end


def block_end(speech: Sequence[Span], length: int) -> int:
    """Where to end a block of `length` samples when more follow: in its last long pause.

    The longest pause in the last two fifths; without any, the end itself. Always a whole
    millisecond.
    """
    earliest = int(length * _EARLIEST_CUT)
    edges = [0, *(edge for span in speech for edge in (span.start, span.end)), length]
    best, cut = 0, length
    for start, end in zip(edges[::2], edges[1::2], strict=True):
        start = max(start, earliest)
        if end - start > best:
            best, cut = end - start, (start + end) // 2
    return cut - cut % (RATE // 1000)


def windows(speech: Sequence[Span]) -> tuple[Window, ...]:
    """Pack spans of speech, each at most a window long, into as few windows as their pauses allow.

    Every encoder pass costs the same however short its speech, so windows are filled; they
    are broken at the longest pause that leaves them well filled, which is where a sentence
    ends most often.
    """
    packed: list[Window] = []
    rest = list(speech)
    while rest:
        count = _fitting(rest)
        if count < len(rest):
            count = _break(rest, count)
        packed.append(Window(spans=_joined(rest[:count])))
        rest = rest[count:]
    return tuple(packed)


def _joined(spans: Sequence[Span]) -> tuple[Span, ...]:
    """The spans with short pauses between them kept whole and of long ones the two ends."""
    joined = [spans[0]]
    for span in spans[1:]:
        last = joined[-1]
        pause = span.start - last.end
        if pause <= _KEPT_PAUSE:
            joined[-1] = Span(last.start, span.end)
        else:
            half = _KEPT_PAUSE // 2
            joined[-1] = Span(last.start, last.end + half)
            joined.append(Span(span.start - half, span.end))
    return tuple(joined)


def _length(spans: Sequence[Span]) -> int:
    return sum(span.end - span.start for span in _joined(spans))


def _fitting(spans: Sequence[Span]) -> int:
    count = 1
    while count < len(spans) and _length(spans[: count + 1]) <= _LONGEST_WINDOW:
        count += 1
    return count


def _break(spans: Sequence[Span], most: int) -> int:
    """How many spans to take, 1 to `most`: up to the longest pause after enough speech."""
    enough = [n for n in range(1, most + 1) if _length(spans[:n]) >= _EARLIEST_BREAK] or [most]
    return max(enough, key=lambda n: (spans[n].start - spans[n - 1].end, n))


def clamp(start: int, end: int, speech: Sequence[Span], *, slack: int) -> tuple[int, int]:
    """A word's samples drawn into the stretch of speech in which its middle lies.

    A word in a pause goes to the nearer stretch. `slack` is how far it may stick out.
    """
    if not speech:
        return start, end
    middle = (start + end) // 2
    after = bisect_right(speech, middle, key=lambda span: span.start)
    near = [speech[index] for index in (after - 1, after) if 0 <= index < len(speech)]
    home = min(near, key=lambda span: max(span.start - middle, middle - span.end, 0))
    low, high = home.start - slack, home.end + slack
    start, end = min(max(start, low), high), max(min(end, high), low)
    return start, max(end, start + RATE // 50)
