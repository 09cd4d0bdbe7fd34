"""Media files made on the spot with PyAV, so that what is in them is known exactly."""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import Any

import av
import numpy as np
import pytest

RATE = 48_000
Make = Callable[..., Path]


def beeps(length_s: float, at_s: tuple[float, ...], *, rate: int = RATE) -> np.ndarray:
    """Silence with a beep of .2 s at each of the given moments, float, one channel."""
    sound = np.zeros(round(length_s * rate), dtype=np.float32)
    tone = 0.5 * np.sin(2 * np.pi * 880 * np.arange(rate // 5) / rate)
    for at in at_s:
        first = round(at * rate)
        sound[first : first + len(tone)] += tone[: len(sound) - first]
    return sound


def found_beeps(samples: np.ndarray, *, rate: int = 16_000) -> list[float]:
    """The moments in seconds at which beeps start in decoded samples."""
    loud = np.abs(samples.astype(np.int32)).reshape(-1)
    loud = np.convolve(loud, np.ones(80) / 80, mode="same") > 1500
    starts = np.flatnonzero(np.diff(np.concatenate([[False], loud]).astype(np.int8)) == 1)
    kept: list[float] = []
    for start in starts / rate:
        if not kept or start - kept[-1] > 0.3:
            kept.append(round(float(start), 3))
    return kept


@pytest.fixture
def make_media(tmp_path: Path) -> Make:
    """Write a file: `sound` at `sound_at` s, with `film_s` seconds of grey film if asked."""

    def make(
        name: str,
        sound: np.ndarray | None = None,
        *,
        codec: str = "aac",
        rate: int = RATE,
        layout: str = "mono",
        sound_at: float = 0.0,
        hole: tuple[float, float] | None = None,
        film_s: float = 0.0,
        film_times: tuple[float, ...] | None = None,
        tags: dict[str, str] | None = None,
    ) -> Path:
        path = tmp_path / name
        with av.open(str(path), "w") as out:
            out.metadata.update(tags or {})
            video = audio = None
            if film_s or film_times:
                video = out.add_stream("libx264", rate=10, options={"preset": "ultrafast"})
                video.width, video.height, video.pix_fmt = 160, 120, "yuv420p"
                video.codec_context.time_base = Fraction(1, 1000)
            if sound is not None:
                audio = out.add_stream(codec, rate=rate, layout=layout)
            if video is not None:
                _film(out, video, film_times or tuple(n / 10 for n in range(int(film_s * 10))))
            if audio is not None and sound is not None:
                _sound(out, audio, sound, rate, layout, sound_at, hole)
        return path

    return make


def _film(out: Any, stream: Any, times: tuple[float, ...]) -> None:
    rng = np.random.default_rng(1)
    for number, second in enumerate(times):
        picture = np.full((120, 160, 3), 90, dtype=np.uint8)
        if number % 10 == 5:  # every tenth picture is full of edges: the sharpest
            picture = rng.integers(0, 255, (120, 160, 3), dtype=np.uint8)
        frame = av.VideoFrame.from_ndarray(picture, format="rgb24")
        frame.pts, frame.time_base = round(second * 1000), Fraction(1, 1000)
        for packet in stream.encode(frame):
            out.mux(packet)
    for packet in stream.encode(None):
        out.mux(packet)


def _sound(
    out: Any,
    stream: Any,
    sound: np.ndarray,
    rate: int,
    layout: str,
    sound_at: float,
    hole: tuple[float, float] | None,
) -> None:
    size = rate // 50
    channels = len(stream.codec_context.layout.channels)
    for first in range(0, len(sound), size):
        piece = (sound[first : first + size] * 32767).astype(np.int16)
        second = sound_at + first / rate
        if hole and hole[0] <= first / rate < hole[1]:
            continue
        packed = np.repeat(piece[:, None], channels, axis=1).reshape(1, -1)
        frame = av.AudioFrame.from_ndarray(packed, format="s16", layout=layout)
        frame.sample_rate = rate
        frame.pts, frame.time_base = round(second * rate), Fraction(1, rate)
        for packet in stream.encode(frame):
            out.mux(packet)
    for packet in stream.encode(None):
        out.mux(packet)
