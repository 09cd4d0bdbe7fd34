"""Listen to a recording: media file in, words out, block by block, in a process of its own."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from diary.speech.block import Block, Dropped
from diary.speech.hints import NO_HINTS, Hints
from diary.speech.settings import SpeechSettings
from diary.speech.transcript import Transcript


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a stage has come. `stage` is "decode", "listen" or "done".

    `done_ms` of `total_ms` of audio time; `speed` is audio time by wall time (3.0 = three
    minutes a minute), None until measured; `left_s` the seconds still to wait.
    """

    stage: str
    done_ms: int
    total_ms: int
    speed: float | None = None
    left_s: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Recognised:
    """What was heard. `dropped` were not believed; `missing` are sentences for the user."""

    transcript: Transcript
    blocks: tuple[Block, ...]
    dropped: tuple[Dropped, ...] = ()
    missing: tuple[str, ...] = ()


def recognise(
    path: Path,
    *,
    settings: SpeechSettings | None = None,
    hints: Hints = NO_HINTS,
    done_blocks: Sequence[Block] = (),
    on_block: Callable[[Block], None] = lambda block: None,
    on_progress: Callable[[Progress], None] = lambda progress: None,
    cancelled: Callable[[], bool] = lambda: False,
) -> Recognised:
    """Hear what is said in the media file at `path`.

    `on_block` is called with each block as soon as it is heard, in order: store it. Handing
    the stored ones back as `done_blocks` goes on after the last; the outcome equals an
    uninterrupted run. Raises MediaError, ModelError, or Cancelled soon after `cancelled()`
    turns true (blocks reported until then stay good).
    """
    raise NotImplementedError(path)
