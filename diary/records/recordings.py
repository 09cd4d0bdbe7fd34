"""The recordings of a diary: what they are, when they were made, where they lie now."""

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from diary.linking.document import Suggestion
from diary.records.record import RecordClip, RecordingId
from diary.records.store import Store
from diary.speech.transcript import Transcript


@dataclass(frozen=True, slots=True, kw_only=True)
class Recording:
    """One file added to the diary. `name` is short and unique: what commands take.

    `kind` is "video", "audio", "captions" or "note". `recorded_from` says who told the day:
    "given", "container", "file name" or "corrected". `words_from` is "captions", "note" or
    the model's name. `done_ms` is how far recognition has come; it is read when `complete`.
    `reader` is the reader's version, None before it was read.
    """

    id: RecordingId
    name: str
    title: str
    path: Path
    kind: str
    duration_ms: int | None
    recorded: date | None
    recorded_from: str | None
    group: str | None
    joins: RecordingId | None  # this file goes on where that one ended
    added_at: str  # ISO 8601, UTC
    words_from: str | None
    done_ms: int
    complete: bool
    reader: str | None
    removed: bool
    clips: int
    plants: int


def recordings(store: Store, *, removed: bool = False) -> tuple[Recording, ...]:
    """All recordings, oldest walk first; those without a date last."""
    raise NotImplementedError


def recording(store: Store, which: str) -> Recording:
    """The recording with this name, title, file name, or start of its id. Raises NotFound."""
    raise NotImplementedError


def change_recording(
    store: Store,
    recording_id: RecordingId,
    *,
    recorded: date | None = None,
    title: str | None = None,
    group: str | None = None,
    joins: RecordingId | None = None,
) -> Recording:
    """Set what is given, leave the rest. Read it again afterwards if the day changed."""
    raise NotImplementedError


def remove_recording(store: Store, recording_id: RecordingId) -> None:
    """Take a recording out of the diary. Its corrections are kept, as is the file itself."""
    raise NotImplementedError


def locate(store: Store, recording_id: RecordingId) -> Path:
    """Where the file is now; a moved one is looked for by its content. Raises NotFound."""
    raise NotImplementedError


def transcript(store: Store, recording_id: RecordingId) -> Transcript:
    """All words of a recording (empty before recognition)."""
    raise NotImplementedError


def clips(store: Store, recording_id: RecordingId) -> tuple[RecordClip, ...]:
    """The clips of a recording with corrections applied, in order of time."""
    raise NotImplementedError


def suggestions_heard(store: Store, recording_id: RecordingId) -> tuple[Suggestion, ...]:
    """What the reader heard in this recording that belongs into the register."""
    raise NotImplementedError


def media_fragment(path: Path, start_ms: int, end_ms: int) -> str:
    """`file#t=start,end` in seconds (W3C Media Fragments URI 1.0, 4.2.1, npt)."""
    raise NotImplementedError
