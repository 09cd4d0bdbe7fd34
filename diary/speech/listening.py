"""Sound in, blocks out: cut at silences, hear each window, keep what is believed.

Runs in the child process (worker.py). What comes out depends on the sound, the settings and the
hints alone, so that a run that goes on at a block equals one that was never interrupted.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise

import numpy as np
import numpy.typing as npt

from diary.speech.block import Block, Dropped, Swap
from diary.speech.cutting import BLOCK, Span, Window, block_end, clamp, windows
from diary.speech.engine import Engine
from diary.speech.filters import segments, sift, without_doubles
from diary.speech.heard import Heard
from diary.speech.hints import NO_HINTS, Hints
from diary.speech.prompting import SAID_BEFORE, prompt_text
from diary.speech.second_look import candidates, suspects, weigh
from diary.speech.settings import RATE
from diary.speech.transcript import Word
from diary.speech.vad import speech_spans

Samples = npt.NDArray[np.int16]
_PER_MS = RATE // 1000
# Stretches of speech have at least .25 s of room at either end (vad.py): a word keeps .1 s of it.
_SLACK = -RATE * 15 // 100


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """The sound of one block, and where somebody speaks in it."""

    start_ms: int
    samples: Samples
    speech: tuple[Span, ...]

    @property
    def end_ms(self) -> int:
        """Where the next block starts."""
        return self.start_ms + -(-len(self.samples) // _PER_MS)


def stretches(sound: Iterable[Samples], *, start_ms: int = 0) -> Iterator[Stretch]:
    """Cut the sound from `start_ms` on into blocks, each at a silence, one at a time."""
    waiting: list[Samples] = []
    length, skip = 0, start_ms * _PER_MS
    for chunk in sound:
        if skip >= len(chunk):
            skip -= len(chunk)
            continue
        waiting.append(chunk[skip:])
        length += len(chunk) - skip
        skip = 0
        while length > BLOCK:
            samples = np.concatenate(waiting)
            speech = speech_spans(samples[:BLOCK])
            end = block_end(speech, BLOCK)
            inside = tuple(
                Span(span.start, min(span.end, end)) for span in speech if span.start < end
            )
            stretch = Stretch(start_ms=start_ms, samples=samples[:end], speech=inside)
            yield stretch
            start_ms = stretch.end_ms
            waiting, length = [samples[end:].copy()], len(samples) - end
            del samples, stretch
    if length:
        samples = np.concatenate(waiting)
        yield Stretch(start_ms=start_ms, samples=samples, speech=speech_spans(samples))


def listen(
    engine: Engine,
    stretch: Stretch,
    *,
    index: int,
    hints: Hints = NO_HINTS,
    said_before: str = "",
    on_window: Callable[[int], None] = lambda at_ms: None,
) -> Block:
    """Hear one block. `on_window` is told the moment up to which it has been heard.

    `said_before` is what was heard in the blocks before: names said there are likely here.
    """
    words: list[Word] = []
    starts: list[int] = []
    dropped: list[Dropped] = []
    swaps: list[Swap] = []
    looks = windows(stretch.speech)
    with ThreadPoolExecutor(engine.at_once) as side_by_side:
        for first in range(0, len(looks), engine.at_once):
            few = looks[first : first + engine.at_once]
            said = said_so_far(said_before, words)
            hint = prompt_text(hints, said_before=said, count=engine.count_tokens)
            hear = partial(hear_window, engine, stretch, hints=hints, hint=hint)
            for result in side_by_side.map(hear, few):
                fresh = without_doubles(words, result.words)
                dropped.extend((*result.dropped, *fresh.dropped))
                swaps.extend(result.swaps)
                for segment in segments(fresh.words):
                    starts.append(len(words))
                    words.extend(segment)
            on_window(stretch.start_ms + few[-1].spans[-1].end // _PER_MS)
    return Block(
        index=index,
        start_ms=stretch.start_ms,
        end_ms=stretch.end_ms,
        words=tuple(words),
        segment_starts=tuple(starts),
        dropped=tuple(dropped),
        swaps=tuple(swaps),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class HeardWindow:
    """What is believed of one window, and what was put aside."""

    words: tuple[Word, ...]
    dropped: tuple[Dropped, ...]
    swaps: tuple[Swap, ...]


def hear_window(
    engine: Engine,
    stretch: Stretch,
    window: Window,
    *,
    hints: Hints,
    hint: tuple[str, tuple[str, ...]],
) -> HeardWindow:
    """Hear a window with `hint` (text, names in it); once more where a name may be hidden."""
    text, given = hint
    encoded = engine.encode(window_sound(stretch.samples, window))
    reading = engine.hear(encoded, hint=text)
    words = place(reading, window, stretch)
    swaps: tuple[Swap, ...] = ()
    told = given if reading.hinted else ()
    if names := candidates(suspects(words, hints, given=told)):
        few, _ = prompt_text(replace(hints, names=names), said_before="", count=engine.count_tokens)
        again = engine.hear(encoded, hint=few, quick=True)
        words, swaps = weigh(words, place(again, window, stretch), names)
    sifted = sift(words, no_speech=reading.no_speech, score=reading.score)
    return HeardWindow(words=sifted.words, dropped=sifted.dropped, swaps=swaps)


def said_so_far(before: str, words: Iterable[Word]) -> str:
    """The end of all that was said, as long as it is looked at."""
    return " ".join(filter(None, [before, *(word.text for word in words)]))[-SAID_BEFORE:]


def window_sound(samples: Samples, window: Window) -> npt.NDArray[np.float32]:
    """The samples of a window as the engine takes them."""
    parts = [samples[span.start : span.end] for span in window.spans]
    return np.concatenate(parts).astype(np.float32) / 32768.0


def place(heard: Heard, window: Window, stretch: Stretch) -> tuple[Word, ...]:
    """The words of a window at their times in the recording, drawn into speech, in order."""
    inside: Sequence[Span] = [
        span
        for span in stretch.speech
        if span.end > window.spans[0].start and span.start < window.spans[-1].end
    ]
    words: list[Word] = []
    floor = stretch.start_ms
    for raw in heard.words:
        start, end = clamp(window.place(raw.start), window.place(raw.end), inside, slack=_SLACK)
        start_ms = max(floor, stretch.start_ms + start // _PER_MS)
        end_ms = max(start_ms + 20, stretch.start_ms + end // _PER_MS)
        words.append(
            Word(
                text=raw.text,
                start_ms=start_ms,
                end_ms=end_ms,
                confidence=round(min(1.0, max(0.0, raw.probability)), 3),
            )
        )
        floor = start_ms
    return tuple(
        replace(word, end_ms=max(word.start_ms + 1, min(word.end_ms, after.start_ms)))
        for word, after in pairwise(words)
    ) + tuple(words[-1:])
