"""The order of the stages and nothing else: a file in, a recording read and stored."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from diary.records.record import RecordingId
from diary.records.recordings import Recording
from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a long step has come.

    `stage` is "looking", "listening", "reading" or "done". `share` is 0..1 of the audio's
    time; `speed` is seconds of audio a second of work; `left_s` is the time left. None
    where not known.
    """

    stage: str
    name: str
    share: float | None = None
    speed: float | None = None
    left_s: float | None = None


Report = Callable[[Progress], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Added:
    """What adding a file did. `new` is false if the same content was here already."""

    recording: Recording
    new: bool


def add(
    store: Store,
    path: Path,
    *,
    model: str = "base",
    recorded: date | None = None,
    title: str | None = None,
    group: str | None = None,
    use_captions: bool = False,
    report: Report | None = None,
) -> Added:
    """Add a recording, captions or a note; go on with one that was interrupted.

    Idempotent by content. `use_captions` takes captions of the same name beside a media
    file instead of recognition. Raises MediaError, ModelError, StoreError.
    """
    raise NotImplementedError


def read_again(
    store: Store, which: RecordingId | None = None, *, report: Report | None = None
) -> tuple[Recording, ...]:
    """Read the stored words anew (all recordings, or one); every correction is kept."""
    raise NotImplementedError
