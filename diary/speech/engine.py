"""The door to faster-whisper: a window of sound in, words with times and probabilities out.

Windows are decoded by themselves: no text of earlier windows is fed in, so an error cannot
spread, and the windows of a block can be decoded in pairs. Nothing is sampled: where a first
reading fails its checks, other readings are searched in a fixed order, so that the same sound
gives the same words.
"""

import os
import zlib
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from diary.errors import ModelError
from diary.speech.settings import Effort, SpeechSettings

Sound = npt.NDArray[np.float32]

_FRAMES = 3000  # mel frames of one window, 10 ms each
_MOST_REPETITIVE = 2.4  # zlib ratio of the text; Whisper paper (2212.04356), section 4.5
_LEAST_LOGPROB = -1.0  # mean log probability of a token; same
_NO_SPEECH = 0.6  # probability that nobody speaks; same
# Measured with hints on six scripts: beam 5 WER .0414, beam 2 .0438, at 1.4 times the decoding.
_BEAM = {Effort.DRAFT: 1, Effort.NORMAL: 3, Effort.CAREFUL: 5}
_BATCH = 2  # windows decoded together: 4 is no quicker on two cores and takes 180 MB more


@dataclass(frozen=True, slots=True, kw_only=True)
class RawWord:
    """A word as the engine gives it: seconds from the start of the window's sound."""

    text: str
    start: float
    end: float
    probability: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """One reading of a window. `score` is the mean log probability of its tokens."""

    words: tuple[RawWord, ...]
    score: float
    no_speech: float
    repetitive: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class _Reading:
    """Tokens of one search, before they have times."""

    tokens: list[int]
    score: float
    no_speech: float
    repetitive: bool

    @property
    def failed(self) -> bool:
        """Whether to look for another reading; not where it is likely that nobody speaks."""
        return self.repetitive or (self.score < _LEAST_LOGPROB and self.no_speech <= _NO_SPEECH)


class Engine:
    """A loaded model. Not for use by several threads at once."""

    def __init__(self, folder: Path, settings: SpeechSettings) -> None:
        os.environ["HF_HUB_OFFLINE"] = "1"  # before the import: nothing may ask the network
        from faster_whisper import WhisperModel
        from faster_whisper.tokenizer import Tokenizer
        from faster_whisper.transcribe import get_suppressed_tokens

        try:
            self._model: Any = WhisperModel(
                str(folder),
                device="cpu",
                compute_type="int8",
                cpu_threads=settings.threads,
                local_files_only=True,
            )
        except Exception as error:  # the engine raises RuntimeError, ValueError and OSError
            raise ModelError(
                f"The speech model in {folder} cannot be loaded: {error} "
                "Check it with `diary models verify`."
            ) from error
        self._language = settings.language
        self._new_tokenizer: Any = Tokenizer
        self.tokenizer = self._tokenizer_for(settings.language or "en")
        suppressed: Any = get_suppressed_tokens
        self._suppressed = suppressed(self.tokenizer, [-1])
        self._beam = _BEAM[settings.effort]

    @property
    def batch(self) -> int:
        """How many windows to hand in at once."""
        return _BATCH

    def count_tokens(self, text: str) -> int:
        """How many tokens the model's tokenizer makes of a text."""
        return len(self.tokenizer.encode(text))

    def hear(self, sounds: Sequence[Sound], *, hint: str = "") -> tuple[Heard, ...]:
        """Read each window of at most 30 s, with `hint` as text that may have come before."""
        encoded = self.encode(sounds)
        if self._language is None:
            self._guess_language(encoded)
        prompt = self._prompt(hint)
        results = self._generate(encoded, [prompt] * len(sounds), beam=self._beam)
        readings = []
        for number, result in enumerate(results):
            reading = self._reading(result)
            if reading.failed:
                reading = self._another(sounds[number], hint, reading)
            readings.append(reading)
        aligned = self.align(
            encoded, [reading.tokens for reading in readings], [len(sound) for sound in sounds]
        )
        return tuple(
            Heard(
                words=words,
                score=reading.score,
                no_speech=reading.no_speech,
                repetitive=reading.repetitive,
            )
            for words, reading in zip(aligned, readings, strict=True)
        )

    def encode(self, sounds: Sequence[Sound]) -> Any:
        """The encoder's output for the windows, to be read or scored several times."""
        from ctranslate2 import StorageView
        from faster_whisper.audio import pad_or_trim

        trim: Any = pad_or_trim
        # One at a time: the encoder's scratch space for two is 70 MB more, and no quicker.
        outputs = [
            np.array(self._model.encode(trim(self._model.feature_extractor(sound)[..., :_FRAMES])))
            for sound in sounds
        ]
        return StorageView.from_array(np.concatenate(outputs))

    def align(
        self, encoded: Any, tokens: Sequence[Sequence[int]], lengths: Sequence[int]
    ) -> tuple[tuple[RawWord, ...], ...]:
        """Times and probabilities for given texts of the windows (`lengths` in samples)."""
        frames = [min(_FRAMES, max(2, length // 160)) for length in lengths]
        found: list[tuple[RawWord, ...]] = []
        if not any(tokens):
            return tuple(() for _ in tokens)
        rows = self._model.find_alignment(
            self.tokenizer, [list(text) for text in tokens], encoded, frames
        )
        for row in rows:
            found.append(_whole_words(row))
        return tuple(found)

    def _prompt(self, hint: str) -> list[int]:
        tokenizer = self.tokenizer
        before = [tokenizer.sot_prev, *tokenizer.encode(" " + hint)] if hint else []
        return [*before, *tokenizer.sot_sequence, tokenizer.no_timestamps]

    def _generate(
        self, encoded: Any, prompts: list[list[int]], *, beam: int, **options: Any
    ) -> Any:
        return self._model.model.generate(
            encoded,
            prompts,
            beam_size=beam,
            max_length=448,
            return_scores=True,
            return_no_speech_prob=True,
            suppress_blank=True,
            suppress_tokens=self._suppressed,
            **options,
        )

    def _reading(self, result: Any) -> _Reading:
        tokens = [token for token in result.sequences_ids[0] if token < self.tokenizer.eot]
        # The engine's score is already divided by the length (length_penalty 1).
        count = len(result.sequences_ids[0])
        text = self.tokenizer.decode(tokens).strip().encode()
        return _Reading(
            tokens=tokens,
            score=result.scores[0] * count / (count + 1),
            no_speech=result.no_speech_prob,
            repetitive=bool(text) and len(text) / len(zlib.compress(text)) > _MOST_REPETITIVE,
        )

    def _another(self, sound: Sound, hint: str, first: _Reading) -> _Reading:
        """Other readings of a window that failed, in a fixed order: the first good or the best."""
        encoded = self.encode([sound])
        timed = self._prompt(hint)[:-1]  # with time stamps: breaks most loops
        readings = [first]
        for prompt, options in (
            (timed, {"max_initial_timestamp_index": 50}),
            (self._prompt(""), {"no_repeat_ngram_size": 5}),
        ):
            result = self._generate(encoded, [prompt], beam=5, **options)[0]
            reading = self._reading(result)
            if not reading.failed:
                return reading
            readings.append(reading)
        return max(readings, key=lambda reading: (not reading.repetitive, reading.score))

    def _tokenizer_for(self, language: str) -> Any:
        return self._new_tokenizer(
            self._model.hf_tokenizer,
            self._model.model.is_multilingual,
            task="transcribe",
            language=language,
        )

    def _guess_language(self, encoded: Any) -> None:
        best = self._model.model.detect_language(encoded)[0][0][0]
        self.tokenizer = self._tokenizer_for(best.strip("<|>"))


def _whole_words(row: Sequence[dict[str, Any]]) -> tuple[RawWord, ...]:
    """The engine's pieces joined to words: what has no space before it belongs to the last.

    Punctuation lends no time: it is where the engine puts pauses.
    """
    words: list[RawWord] = []
    for piece in row:
        text = str(piece["word"])
        if not text.strip():
            continue
        start, end = float(piece["start"]), float(piece["end"])
        probability = float(piece["probability"])
        if words and not text.startswith(" "):
            last = words[-1]
            sounds = any(letter.isalnum() for letter in text)
            words[-1] = RawWord(
                text=last.text + text,
                start=last.start,
                end=end if sounds else last.end,
                probability=min(last.probability, probability) if sounds else last.probability,
            )
        else:
            words.append(RawWord(text=text.strip(), start=start, end=end, probability=probability))
    return tuple(words)
