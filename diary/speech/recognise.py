"""Listen to a recording: media file in, words out, block by block, in a process of its own."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from diary.errors import ModelError
from diary.speech.block import Block, Dropped, block_from_json, join_blocks
from diary.speech.child import Child, Pace
from diary.speech.hints import NO_HINTS, Hints
from diary.speech.job import Job
from diary.speech.models import find_model
from diary.speech.prompting import SAID_BEFORE
from diary.speech.settings import SpeechSettings
from diary.speech.speed import remember, speed_of
from diary.speech.transcript import Transcript
from diary.speech.worker import raised


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a stage has come. `stage` is "decode", "listen" or "done".

    `done_ms` of `total_ms` of audio time; `speed` is audio time by wall time (3.0 = three
    minutes a minute), None until measured; `left_s` the seconds still to wait, from the start
    on: before anything is heard, by the speed that earlier runs had on this machine.
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
    settings = settings or SpeechSettings()
    folder = find_model(settings.model)
    usable = _usable(done_blocks, settings)
    run = _Run(path, folder, settings, hints, list(usable), on_block, on_progress, cancelled)
    return run.to_the_end()


def _usable(blocks: Sequence[Block], settings: SpeechSettings) -> Iterator[Block]:
    """The blocks from the first on that follow each other and were heard with these settings."""
    at_ms = 0
    for index, block in enumerate(blocks):
        fits = block.settings == settings.fingerprint
        if block.index != index or block.start_ms != at_ms or not fits:
            return
        at_ms = block.end_ms
        yield block


class _Run:
    """One call of `recognise`: starts the child, and starts it again after a crash."""

    def __init__(
        self,
        path: Path,
        folder: Path,
        settings: SpeechSettings,
        hints: Hints,
        blocks: list[Block],
        on_block: Callable[[Block], None],
        on_progress: Callable[[Progress], None],
        cancelled: Callable[[], bool],
    ) -> None:
        self._path, self._folder, self._settings, self._hints = path, folder, settings, hints
        self._blocks = blocks
        self._on_block, self._on_progress, self._cancelled = on_block, on_progress, cancelled
        self._total_ms = 0
        self._pace = Pace(start_ms=self._at_ms)
        self._ended: dict[str, Any] | None = None
        self._planned: dict[str, Any] | None = None

    @property
    def _at_ms(self) -> int:
        return self._blocks[-1].end_ms if self._blocks else 0

    def to_the_end(self) -> Recognised:
        crashes = 0
        while self._ended is None:
            before = len(self._blocks)
            with Child(self._job()) as child:
                for message in child.messages(self._cancelled):
                    self._take(message)
                said = child.last_words
            crashes = 0 if len(self._blocks) > before else crashes
            if self._ended is None:
                crashes += 1
                self._crashed(crashes, said)
        heard = self._pace.speed(self._at_ms)
        if heard and self._at_ms - self._pace.start_ms > 60_000:
            remember(self._settings, heard)
        self._tell("done", max(self._total_ms, self._at_ms))
        return self._outcome(self._ended)

    def _job(self) -> Job:
        said = " ".join(word.text for block in self._blocks for word in block.words)
        return Job(
            path=str(self._path),
            model_folder=str(self._folder),
            settings=self._settings,
            hints=self._hints,
            first_index=len(self._blocks),
            start_ms=self._at_ms,
            said_before=said[-SAID_BEFORE:],
        )

    def _take(self, message: dict[str, Any]) -> None:
        match message["say"]:
            case "open":
                self._total_ms = message["total_ms"]
                self._tell("decode", self._at_ms)
            case "plan":
                self._planned = message
                self._tell("listen", message["start_ms"])
            case "at":
                self._tell("listen", message["ms"])
            case "block":
                self._store(block_from_json(message["block"]))
            case "end":
                self._ended = message
            case "error":
                raise raised(message["sort"], message["text"])

    def _store(self, block: Block) -> None:
        block = replace(block, settings=self._settings.fingerprint, hints=self._hints.fingerprint)
        self._planned = None
        self._blocks.append(block)
        self._on_block(block)
        self._tell("listen", block.end_ms)

    def _crashed(self, times: int, said: str) -> None:
        """Once: try again. Twice at the same place: that block is lost, and the user is told."""
        if times < 2:
            return
        if self._planned is None:
            raise ModelError(
                f"The speech engine stopped while reading {self._path} at "
                f"{self._at_ms / 1000:.0f} s ({said})."
            )
        self._store(
            Block(
                index=self._planned["index"],
                start_ms=self._planned["start_ms"],
                end_ms=self._planned["end_ms"],
                lost=f"the speech engine stopped here twice ({said})",
            )
        )

    def _tell(self, stage: str, at_ms: int) -> None:
        total_ms = max(self._total_ms, at_ms)
        speed = self._pace.speed(at_ms)
        expected = speed or speed_of(self._settings)  # before the first window: as remembered
        self._on_progress(
            Progress(
                stage=stage,
                done_ms=at_ms,
                total_ms=total_ms,
                speed=speed,
                left_s=(total_ms - at_ms) / 1000 / expected,
            )
        )

    def _outcome(self, ended: dict[str, Any]) -> Recognised:
        missing = list(ended["missing"])
        missing.extend(
            f"Nothing could be heard from {block.start_ms // 1000} s to "
            f"{block.end_ms // 1000} s: {block.lost}."
            for block in self._blocks
            if block.lost
        )
        transcript = join_blocks(self._blocks, duration_ms=ended["duration_ms"])
        if not transcript.words:
            missing.append("No speech was found.")
        return Recognised(
            transcript=transcript,
            blocks=tuple(self._blocks),
            dropped=tuple(drop for block in self._blocks for drop in block.dropped),
            missing=tuple(missing),
        )
