"""What a media file is: content hash, length, when it was recorded, picture and sound."""

import hashlib
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

from diary.media.clockface import local_moment, moment_in_name
from diary.media.opening import opened

_CHUNK = 1 << 20
# Pictures that are no film: the cover of an audio file.
_ATTACHED_PICTURE = 0x0400  # AV_DISPOSITION_ATTACHED_PIC


@dataclass(frozen=True, slots=True, kw_only=True)
class MediaInfo:
    """A media file as its container describes it.

    `hash` is the SHA-256 of the file's bytes in hex. `recorded` is in local time, without a
    zone: the container's creation time, else a date in the file's name (then at midnight, or
    at the time the name gives), else None. `container` is FFmpeg's name of the format;
    `video_codec`, `pixel_format` and `audio_codec` are its names of the first tracks', None
    without one.
    """

    hash: str
    duration_ms: int
    recorded: datetime | None
    has_picture: bool
    has_sound: bool
    container: str = ""
    video_codec: str | None = None
    audio_codec: str | None = None
    pixel_format: str | None = None


def probe(path: Path) -> MediaInfo:
    """Describe the media file at `path`. MediaError where it is none or cannot be read."""
    with opened(path) as container:
        pictures = [stream for stream in container.streams.video if not _is_cover(stream)]
        sounds = [stream for stream in container.streams.audio if stream.codec_context]
        recorded = _recorded(container) or moment_in_name(path.name)
        duration_ms = _duration_ms(container)
        name = container.format.name
        video_codec = pictures[0].codec_context.name if pictures else None
        pixel_format = pictures[0].codec_context.pix_fmt if pictures else None
        audio_codec = sounds[0].codec_context.name if sounds else None
    return MediaInfo(
        hash=content_hash(path),
        duration_ms=duration_ms,
        recorded=recorded,
        has_picture=bool(pictures),
        has_sound=bool(sounds),
        container=name,
        video_codec=video_codec,
        audio_codec=audio_codec,
        pixel_format=pixel_format,
    )


def content_hash(path: Path) -> str:
    """The SHA-256 of the file's bytes, in hex: what a recording is known by."""
    digest = hashlib.sha256()
    with path.open("rb") as source:
        while chunk := source.read(_CHUNK):
            digest.update(chunk)
    return digest.hexdigest()


def length_ms(path: Path) -> int:
    """How long the media file is by its container. MediaError as `probe`."""
    with opened(path) as container:
        return _duration_ms(container)


def _is_cover(stream: Any) -> bool:
    return not stream.codec_context or bool(int(stream.disposition) & _ATTACHED_PICTURE)


def _duration_ms(container: Any) -> int:
    """The container's length; where it gives none (browsers' recordings), the last packet's."""
    if container.duration:
        return int(container.duration) // 1000  # AV_TIME_BASE is a microsecond
    end = 0.0
    for packet in container.demux():
        if packet.pts is not None and packet.time_base:
            end = max(end, float((packet.pts + (packet.duration or 0)) * packet.time_base))
    return round(end * 1000)


def _recorded(container: Any) -> datetime | None:
    tags = {key.lower(): value for key, value in container.metadata.items()}
    for stream in container.streams:
        for key, value in stream.metadata.items():
            tags.setdefault(key.lower(), value)
    day, clock = tags.get("date", ""), tags.get("creation_time", "")
    said = (
        tags.get("com.apple.quicktime.creationdate", ""),  # with the zone it was filmed in
        clock,
        f"{day}T{clock}",  # Broadcast Wave (EBU Tech 3285) keeps day and time apart
        day,
    )
    return next((moment for text in said if (moment := local_moment(text))), None)
