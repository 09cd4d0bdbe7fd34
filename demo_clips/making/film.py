"""Sound and frames into the files a camera or a phone would leave: H.264 and AAC, dated."""

from collections.abc import Iterable
from datetime import datetime
from pathlib import Path

import av
import numpy as np
from numpy.typing import NDArray

from making.voice import SAMPLE_RATE, Speech

_SOUND_BITS = 40_000  # a second
_PICTURE_QUALITY = "30"  # x264's constant rate factor


def save_film(
    path: Path,
    frames: Iterable[NDArray[np.uint8]],
    speech: Speech,
    *,
    size: tuple[int, int],
    rate: int,
    made: datetime,
) -> None:
    """Write an mp4 with picture and sound, its container dated `made` (with a time zone)."""
    with av.open(str(path), "w", options={"movflags": "+faststart"}) as out:
        out.metadata["creation_time"] = made.isoformat()
        picture = out.add_stream("libx264", rate=rate)
        picture.width, picture.height = size
        picture.pix_fmt = "yuv420p"
        picture.options = {"crf": _PICTURE_QUALITY, "preset": "medium", "profile": "main"}
        sound = _sound_stream(out)
        for pixels in frames:
            out.mux(picture.encode(av.VideoFrame.from_ndarray(pixels, format="rgb24")))
        out.mux(picture.encode(None))
        _encode_sound(out, sound, speech)


def save_memo(path: Path, speech: Speech, *, made: datetime) -> None:
    """Write an m4a, its container dated `made` (with a time zone)."""
    with av.open(str(path), "w", format="ipod", options={"movflags": "+faststart"}) as out:
        out.metadata["creation_time"] = made.isoformat()
        _encode_sound(out, _sound_stream(out), speech)


def _sound_stream(out: av.container.OutputContainer) -> av.AudioStream:
    stream = out.add_stream("aac", rate=SAMPLE_RATE, layout="mono")
    stream.bit_rate = _SOUND_BITS
    return stream


def _encode_sound(
    out: av.container.OutputContainer, stream: av.AudioStream, speech: Speech
) -> None:
    step = 1024
    for start in range(0, len(speech.samples), step):
        part = speech.samples[start : start + step].astype(np.float32)[None, :]
        frame = av.AudioFrame.from_ndarray(part, format="fltp", layout="mono")
        frame.sample_rate, frame.pts = SAMPLE_RATE, start
        out.mux(stream.encode(frame))
    out.mux(stream.encode(None))
