"""The outline of the sound, for drawing a waveform."""

from pathlib import Path

import numpy as np

from diary.media.decode import RATE, Sound


def waveform_peaks(path: Path, *, per_second: int = 10) -> bytes:
    """The loudest sample of each stretch as one byte, 0 (silent) to 255 (full), in order.

    MediaError where the file has no sound. An hour at ten a second is 36 kB.
    """
    size = RATE // per_second
    peaks = bytearray()
    rest = np.zeros(0, dtype=np.int16)
    for chunk in Sound(path):
        samples = np.concatenate([rest, chunk])
        whole = len(samples) // size
        if whole:
            loud = np.abs(samples[: whole * size].reshape(whole, size).astype(np.int32)).max(axis=1)
            peaks.extend(np.minimum(255, loud * 255 // 32767).astype(np.uint8).tobytes())
        rest = samples[whole * size :]
    if len(rest):
        peaks.append(min(255, int(np.abs(rest.astype(np.int32)).max()) * 255 // 32767))
    return bytes(peaks)
