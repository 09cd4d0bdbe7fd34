"""Spoken sound for tests: two sentences at an invented bench, synthetic voice, fan noise."""

from pathlib import Path

import numpy as np
import pytest

from diary.media.decode import RATE, Sound

# "First on the left is twenty-three oh four, which is Tansy Wharf crossed with Wexholt Plum.
# The upper petals are a deep burgundy, and the lower petals are a soft pink."
BENCH = Path(__file__).parent / "clips" / "bench.opus"


@pytest.fixture(scope="session")
def bench() -> np.ndarray:
    """The two sentences as 16 kHz samples, 11 s."""
    return np.concatenate(list(Sound(BENCH)))


@pytest.fixture(scope="session")
def long_walk(bench: np.ndarray, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Eleven minutes with the sentences at 5 s, 330 s and 640 s: three blocks."""
    import av

    samples = np.zeros(655 * RATE, dtype=np.int16)
    for second in (5, 330, 640):
        samples[second * RATE : second * RATE + len(bench)] = bench
    path = tmp_path_factory.mktemp("walk") / "walk.flac"
    with av.open(str(path), "w") as out:
        stream = out.add_stream("flac", rate=RATE, layout="mono")
        for first in range(0, len(samples), RATE):
            piece = samples[first : first + RATE][None, :]
            frame = av.AudioFrame.from_ndarray(piece, format="s16", layout="mono")
            frame.sample_rate, frame.pts = RATE, first
            out.mux(stream.encode(frame))
        out.mux(stream.encode(None))
    return path
