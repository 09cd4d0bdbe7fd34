"""Where somebody speaks: Silero's voice activity detection as faster-whisper ships it."""

import numpy as np
import numpy.typing as npt

from diary.speech.cutting import Span
from diary.speech.settings import RATE

# Threshold .5 is Silero's own. A pause of half a second parts two stretches; .3 s of room on
# either side keeps soft first and last sounds. 28 s: a stretch must fit one window of Whisper.
_OPTIONS = {
    "threshold": 0.5,
    "min_silence_duration_ms": 500,
    "speech_pad_ms": 300,
    "max_speech_duration_s": 28.0,
}
_SHORTEST = RATE // 5  # the engine has died on slices of a few milliseconds


def speech_spans(samples: npt.NDArray[np.int16]) -> tuple[Span, ...]:
    """The stretches of speech in a block's samples, in order, none longer than 28.6 s."""
    from faster_whisper.vad import VadOptions, get_speech_timestamps

    if len(samples) < _SHORTEST or not samples.any():
        return ()
    sound = samples.astype(np.float32) / 32768.0
    found = get_speech_timestamps(sound, VadOptions(**_OPTIONS))
    spans = (Span(int(row["start"]), min(int(row["end"]), len(samples))) for row in found)
    return tuple(span for span in spans if span.end - span.start >= _SHORTEST)
