"""How long listening will take: the speed measured here, remembered beside the models."""

import json
import os
from pathlib import Path

from diary.speech.models import models_folder
from diary.speech.settings import Effort, SpeechSettings

# Seconds of audio a second on two cores, base model, with names on record (tests/benchmarks); only
# used until this machine has been measured.
_GUESSED = {Effort.DRAFT: 20.0, Effort.NORMAL: 15.0, Effort.CAREFUL: 11.0}
_QUICKER = {"tiny.en": 1.8, "tiny": 1.8, "base": 1.0, "base.en": 1.0}  # larger ones: a quarter
_NEW_SHARE = 0.5  # of the newest measurement in what is remembered


def expected_s(duration_ms: int, settings: SpeechSettings) -> float:
    """The seconds that listening to a recording of this length will take, about."""
    return duration_ms / 1000 / speed_of(settings)


def speed_of(settings: SpeechSettings, *, folder: Path | None = None) -> float:
    """Seconds of audio heard in a second: as measured here, else a guess from the cores."""
    measured = _remembered(folder).get(_key(settings))
    if measured:
        return measured
    cores = min(settings.threads, 4) / 2
    return _GUESSED[settings.effort] * _QUICKER.get(settings.model, 0.25) * cores


def is_measured(settings: SpeechSettings, *, folder: Path | None = None) -> bool:
    """Whether `speed_of` rests on a run on this machine."""
    return _key(settings) in _remembered(folder)


def remember(settings: SpeechSettings, speed: float, *, folder: Path | None = None) -> None:
    """Keep the speed of a run. A folder that cannot be written is no reason to fail."""
    speeds = _remembered(folder)
    old = speeds.get(_key(settings), speed)
    speeds[_key(settings)] = round(old + _NEW_SHARE * (speed - old), 2)
    path = (folder or models_folder()) / "speed.json"
    partial = path.with_name(f"speed.{os.getpid()}.partial")
    try:
        partial.write_text(json.dumps(speeds, indent=1), encoding="utf-8")
        partial.replace(path)
    except OSError:
        return


def _key(settings: SpeechSettings) -> str:
    return f"{settings.model} {settings.effort.value} {settings.threads}"


def _remembered(folder: Path | None) -> dict[str, float]:
    try:
        text = ((folder or models_folder()) / "speed.json").read_text(encoding="utf-8")
        return {str(key): float(value) for key, value in json.loads(text).items() if value > 0}
    except (OSError, ValueError, AttributeError, TypeError):
        return {}
