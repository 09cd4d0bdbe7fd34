"""What a media file is: content hash, length, when it was recorded, picture and sound."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path


@dataclass(frozen=True, slots=True, kw_only=True)
class MediaInfo:
    """A media file as its container describes it.

    `hash` is the SHA-256 of the file's bytes in hex. `recorded` is in local time, without a
    zone: the container's creation time, else a date in the file's name (then at midnight, or
    at the time the name gives), else None.
    """

    hash: str
    duration_ms: int
    recorded: datetime | None
    has_picture: bool
    has_sound: bool


def probe(path: Path) -> MediaInfo:
    """Describe the media file at `path`. MediaError where it is none or cannot be read."""
    raise NotImplementedError(path)
