"""One line of progress on standard error: redrawn in a terminal, now and then elsewhere."""

import sys
import time
from dataclasses import replace
from types import TracebackType
from typing import TYPE_CHECKING

import click

from diary.cli.output import clock
from diary.speech.settings import Effort, SpeechSettings
from diary.speech.speed import expected_s

if TYPE_CHECKING:
    from diary.pipeline import Progress

_STAGES = {
    "looking": "looking at the file",
    "listening": "listening",
    "reading": "reading what was said",
    "done": "done",
}
_EVERY_S = 0.2
_LONG_MS = 10 * 60_000  # of sound: the time that listening will take is told beforehand
_STEP = 0.1  # of the audio's time, where the line cannot be redrawn


class ProgressLine:
    """Shows what a long step is at; leaves nothing behind in a terminal."""

    def __init__(self, name: str, speech: SpeechSettings | None = None) -> None:
        self._name, self._speech = name, speech or SpeechSettings()
        self._redraw = sys.stderr.isatty()
        self._shown_at = 0.0
        self._last: tuple[str, int] | None = None

    def __enter__(self) -> "ProgressLine":
        return self

    def show(self, progress: "Progress") -> None:
        """Show this, unless the line was drawn a moment ago."""
        share = progress.share or 0.0
        step = (progress.stage, int(share / _STEP))
        fresh = self._last is None or step[0] != self._last[0]
        if progress.stage == "done":
            return
        if self._redraw:
            if not fresh and time.monotonic() - self._shown_at < _EVERY_S:
                return
        elif step == self._last:
            return
        if fresh and progress.stage == "listening" and (progress.length_ms or 0) >= _LONG_MS:
            click.echo(self._expected(progress.length_ms or 0), err=True)
        self._last, self._shown_at = step, time.monotonic()
        parts = [f"{self._name}: {_STAGES.get(progress.stage, progress.stage)}"]
        if progress.share is not None:
            parts.append(f"{100 * share:.0f} %")
        if progress.speed:
            parts.append(f"{progress.speed:.1f} x real time")
        if progress.left_s is not None:
            parts.append(f"{clock(int(progress.left_s * 1000))} left")
        line = ", ".join(parts)
        click.echo(f"\r\x1b[K{line}" if self._redraw else line, err=True, nl=not self._redraw)

    def _expected(self, length_ms: int) -> str:
        """How long a long recording takes to listen to, told before it starts."""
        chosen = self._speech.effort
        takes = {
            effort: clock(round(expected_s(length_ms, replace(self._speech, effort=effort)) * 1000))
            for effort in Effort
        }
        others = ", ".join(f"{one.value} {took}" for one, took in takes.items() if one != chosen)
        return (
            f"{self._name}: {clock(length_ms)} of sound, about {takes[chosen]} of listening at "
            f"--effort {chosen.value} ({others})"
        )

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._redraw and self._last is not None:
            click.echo("\r\x1b[K", err=True, nl=False)
