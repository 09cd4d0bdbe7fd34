"""Try a model: load it and listen to a second of silence, in this process."""

import time
from dataclasses import dataclass

import numpy as np

from diary.speech.models import find_model
from diary.speech.settings import RATE, SpeechSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """How long the model took to load and to hear a window, in seconds."""

    load_s: float
    window_s: float
    threads: int


def trial(settings: SpeechSettings) -> Trial:
    """Load the model of `settings` and hear one window. ModelError where it cannot be used."""
    from diary.speech.engine import Engine

    folder = find_model(settings.model)
    began = time.monotonic()
    engine = Engine(folder, settings)
    loaded = time.monotonic()
    engine.hear(engine.encode(np.zeros(RATE, dtype=np.float32)))
    return Trial(
        load_s=loaded - began, window_s=time.monotonic() - loaded, threads=settings.threads
    )
