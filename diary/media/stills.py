"""Stills: the sharpest picture of a stretch of film, as JPEG."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

import numpy as np

from diary.errors import MediaError
from diary.media.opening import opened
from diary.media.upright import upright

_LOOKED_AT = 12  # pictures compared in a stretch
_FEW = 4
# The camera comes from the neighbour when a plant is named, and leaves before its clip ends.
_ARRIVING, _LEAVING = 0.35, 0.1
_QUALITY = 3  # of mjpeg: 2 (best) to 31


@dataclass(frozen=True, slots=True, kw_only=True)
class Still:
    """A picture of a film: JPEG bytes, and its moment."""

    at_ms: int
    width: int
    height: int
    jpeg: bytes


def sharpest_still(path: Path, start_ms: int, end_ms: int, *, width: int = 640) -> Still | None:
    """The sharpest of a dozen pictures of a clip, its ends left out; None without a picture.

    Sharp means a large variance of the Laplacian (Pech-Pacheco and others, ICPR 2000): a
    camera that moves or hunts for focus gives a small one. MediaError where unreadable.
    Key pictures are looked at, thirty times as quick; all of a stretch that has few of them.
    """
    lasts = end_ms - start_ms
    start_ms, end_ms = start_ms + round(lasts * _ARRIVING), end_ms - round(lasts * _LEAVING)
    keys = list(frames(path, start_ms, end_ms, most=_LOOKED_AT, keys=True))
    best = _sharpest(keys if len(keys) >= _FEW else frames(path, start_ms, end_ms, most=_LOOKED_AT))
    if best is None:
        return None
    at_ms, frame = best[1], upright(best[2])
    height = max(2, round(frame.height * width / frame.width / 2) * 2)
    return Still(at_ms=at_ms, width=width, height=height, jpeg=_jpeg(frame, width, height))


def _sharpest(pictures: Iterable[tuple[int, Any]]) -> tuple[float, int, Any] | None:
    """The sharpness of the sharpest, its moment, and itself."""
    best: tuple[float, int, Any] | None = None
    for at_ms, frame in pictures:
        sharp = _sharpness(frame)
        if best is None or sharp > best[0]:
            best = (sharp, at_ms, frame)
    return best


def frames(
    path: Path, start_ms: int, end_ms: int, *, most: int, keys: bool = False
) -> Iterator[tuple[int, Any]]:
    """At most `most` decoded pictures evenly spread over the stretch, each with its moment.

    With `keys` only those that stand by themselves, a second or so apart. Damaged pictures are
    passed over. Nothing where the file has no film.
    """
    import av

    with opened(path) as container:
        if not container.streams.video:
            return
        stream = container.streams.video[0]
        if keys:
            stream.codec_context.skip_frame = "NONKEY"
        step = max(1, (end_ms - start_ms) // most)
        due = start_ms
        try:
            container.seek(max(0, start_ms) * 1000, backward=True)
        except av.error.FFmpegError as error:
            raise MediaError(f"{path} cannot be wound to {start_ms / 1000:.1f} s.") from error
        try:
            for packet in container.demux(stream):
                for frame in _decoded(packet):
                    at_ms = round((frame.time or 0.0) * 1000)
                    if at_ms >= end_ms:
                        return
                    if at_ms >= due:
                        due = max(due + step, at_ms + 1)
                        yield at_ms, frame
        except av.error.FFmpegError:
            return  # the file is cut off here: what was seen is all there is


def _decoded(packet: Any) -> list[Any]:
    import av

    try:
        return list(packet.decode())
    except av.error.FFmpegError:
        return []


def _sharpness(frame: Any) -> float:
    height = max(2, round(frame.height * 320 / frame.width))
    grey = frame.reformat(width=320, height=height, format="gray").to_ndarray().astype(np.int32)
    inner = grey[1:-1, 1:-1]
    laplacian = grey[:-2, 1:-1] + grey[2:, 1:-1] + grey[1:-1, :-2] + grey[1:-1, 2:] - 4 * inner
    return float(laplacian.var())


def _jpeg(frame: Any, width: int, height: int) -> bytes:
    import av

    scaled = frame.reformat(width=width, height=height, format="yuvj420p")
    codec: Any = av.CodecContext.create("mjpeg", "w")
    codec.width, codec.height = width, height
    codec.pix_fmt = "yuvj420p"
    codec.time_base = Fraction(1, 25)
    codec.qmin = codec.qmax = _QUALITY
    scaled.pts = 0
    return b"".join(bytes(packet) for packet in (*codec.encode(scaled), *codec.encode(None)))
