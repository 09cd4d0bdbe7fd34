"""Small films and sound files made on the spot, with pictures that differ from clip to clip."""

from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path

import av
import numpy as np

WIDTH, HEIGHT, FPS = 480, 270, 5
SOUND = 16_000

Colour = tuple[int, int, int]


def flower(petal: Colour, heart: Colour) -> np.ndarray:
    """A picture of one bloom on green."""
    y, x = np.mgrid[0:HEIGHT, 0:WIDTH].astype(np.float32)
    x, y = x - WIDTH / 2, y - HEIGHT / 2
    picture = np.empty((HEIGHT, WIDTH, 3), np.uint8)
    leaf = 70 + 18 * np.sin(x / 23) * np.cos(y / 17)
    picture[..., 0], picture[..., 1], picture[..., 2] = leaf * 0.55, leaf, leaf * 0.6
    far, turn = np.hypot(x, y), np.arctan2(y, x)
    edge = 92 + 26 * np.cos(5 * turn + 0.4)
    shade = (1 - 0.35 * (far / 130) + 0.06 * np.cos(40 * turn))[..., None]
    picture[far < edge] = np.clip(np.array(petal) * shade, 0, 255)[far < edge]
    picture[far < 22] = heart
    return picture


def film(
    path: Path, blooms: Sequence[tuple[Colour, Colour, int]], *, codec: str = "libx264"
) -> Path:
    """An MP4 (or what the name says): each bloom for so many seconds, with a soft tone."""
    with av.open(str(path), "w") as container:
        video = container.add_stream(codec, rate=FPS)
        video.width, video.height, video.pix_fmt = WIDTH, HEIGHT, "yuv420p"
        if codec == "libx264":
            video.options = {"preset": "ultrafast"}
        video.gop_size = FPS
        audio = container.add_stream("aac", rate=SOUND, layout="mono")
        at = 0
        for petal, heart, seconds in blooms:
            picture = flower(petal, heart)
            for _ in range(seconds * FPS):
                swaying = np.roll(picture, round(12 * np.sin(at / 4)), axis=1)
                frame = av.VideoFrame.from_ndarray(swaying, format="rgb24")
                frame.pts, frame.time_base = at, Fraction(1, FPS)
                container.mux(video.encode(frame))
                at += 1
        container.mux(video.encode(None))
        _tone(container, audio, at / FPS)
    return path


def sound(path: Path, seconds: int) -> Path:
    """A voice memo's container with a tone that comes and goes."""
    with av.open(str(path), "w", format="mp4") as container:
        _tone(container, container.add_stream("aac", rate=SOUND, layout="mono"), seconds)
    return path


def _tone(container: av.container.OutputContainer, stream: av.AudioStream, seconds: float) -> None:
    clock = np.arange(int(seconds * SOUND)) / SOUND
    loud = 0.12 + 0.1 * np.sin(2 * np.pi * clock / 3)
    samples = (np.sin(2 * np.pi * 220 * clock) * loud * 32767).astype(np.int16)
    for first in range(0, len(samples), 1024):
        piece = samples[first : first + 1024]
        frame = av.AudioFrame.from_ndarray(piece[None, :], format="s16", layout="mono")
        frame.sample_rate, frame.pts = SOUND, first
        frame.time_base = Fraction(1, SOUND)
        container.mux(stream.encode(frame))
    container.mux(stream.encode(None))
