"""The door to faster-whisper: a window of sound in, words with times and probabilities out.

Windows are decoded by themselves: no text of earlier windows is fed in, so an error cannot
spread, and two windows can be decoded side by side, each on half the cores: less waiting for
each other than all cores on one. Nothing is sampled: where a first
reading fails its checks, other readings are searched in a fixed order, so that the same sound
gives the same words.
"""

import os
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from diary.errors import ModelError
from diary.speech.heard import Heard, RawWord, repeats, skips
from diary.speech.settings import RATE, Effort, SpeechSettings

Sound = npt.NDArray[np.float32]

_FRAMES = 3000  # mel frames of one window, 10 ms each
_MOST_TOKENS = 448  # of prompt and text together: the decoder's own limit
_LEAST_LOGPROB = -1.0  # mean log probability of a token; same
_NO_SPEECH = 0.6  # probability that nobody speaks; same
# Measured with hints on six scripts: beam 5 WER .0414, beam 2 .0438, at 1.4 times the decoding.
_BEAM = {Effort.DRAFT: 1, Effort.NORMAL: 3, Effort.CAREFUL: 5}
_SIDE_BY_SIDE = 2  # windows heard at once; more would take 100 MB each


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


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Window:
    """What the encoder made of a window's sound, which lasted so many seconds."""

    encoded: Any
    seconds: float


class Engine:
    """A loaded model. `at_once` says how many threads gain by using it together."""

    at_once = _SIDE_BY_SIDE

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
                cpu_threads=max(1, settings.threads // _SIDE_BY_SIDE),
                num_workers=_SIDE_BY_SIDE,
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

    def count_tokens(self, text: str) -> int:
        """How many tokens the model's tokenizer makes of a text."""
        return len(self.tokenizer.encode(text))

    def encode(self, sound: Sound) -> Window:
        """A window of at most 30 s, made ready to be read several times."""
        from faster_whisper.audio import pad_or_trim

        trim: Any = pad_or_trim
        features = trim(self._model.feature_extractor(sound)[..., :_FRAMES])
        return Window(encoded=self._model.encode(features), seconds=len(sound) / RATE)

    def hear(self, window: Window, *, hint: str = "", quick: bool = False) -> Heard:
        """Read a window, with `hint` as text that may have come before.

        `quick` takes the likeliest word at each step: enough where only a name is looked for.
        """
        tokenizer = self._tokenizer_of(window)
        reading = self._read(window, tokenizer, hint, beam=1 if quick else self._beam)
        if reading.failed:
            reading = self._another(window, tokenizer, hint, reading)
        heard = self._timed(window, tokenizer, reading, hinted=bool(hint))
        if hint and not quick and skips(heard.words, length=window.seconds):
            return self._without_hint(window, tokenizer, heard)
        return heard

    def _without_hint(self, window: Window, tokenizer: Any, first: Heard) -> Heard:
        """The reading without the hint, if that has the words that the first left out."""
        reading = self._read(window, tokenizer, "", beam=self._beam)
        second = self._timed(window, tokenizer, reading, hinted=False)
        fuller = len(second.words) > len(first.words) and not second.repetitive
        return second if fuller and not skips(second.words, length=window.seconds) else first

    def _timed(self, window: Window, tokenizer: Any, reading: _Reading, *, hinted: bool) -> Heard:
        words: tuple[RawWord, ...] = ()
        if reading.tokens:
            frames = min(_FRAMES, max(2, round(window.seconds * 100)))
            (row,) = self._model.find_alignment(
                tokenizer, [reading.tokens], window.encoded, [frames]
            )
            words = _whole_words(row)
        return Heard(
            words=words,
            score=reading.score,
            no_speech=reading.no_speech,
            repetitive=reading.repetitive,
            hinted=hinted,
        )

    def _read(
        self, window: Window, tokenizer: Any, hint: str, *, beam: int, **options: Any
    ) -> _Reading:
        """The best text of a search; with time stamps where `options` limit them."""
        before = [tokenizer.sot_prev, *tokenizer.encode(" " + hint)] if hint else []
        timed = "max_initial_timestamp_index" in options
        end = () if timed else (tokenizer.no_timestamps,)
        (result,) = self._model.model.generate(
            window.encoded,
            [[*before, *tokenizer.sot_sequence, *end]],
            beam_size=beam,
            max_length=_MOST_TOKENS,
            return_scores=True,
            return_no_speech_prob=True,
            suppress_blank=True,
            suppress_tokens=self._suppressed,
            **options,
        )
        tokens = [token for token in result.sequences_ids[0] if token < tokenizer.eot]
        # The engine's score is already divided by the length (length_penalty 1).
        count = len(result.sequences_ids[0])
        return _Reading(
            tokens=tokens,
            score=result.scores[0] * count / (count + 1),
            no_speech=result.no_speech_prob,
            repetitive=repeats(tokenizer.decode(tokens).strip()),
        )

    def _another(self, window: Window, tokenizer: Any, hint: str, first: _Reading) -> _Reading:
        """Other readings of a window that failed, in a fixed order: the first good or the best."""
        readings = [first]
        for before, options in (
            (hint, {"max_initial_timestamp_index": 50}),  # time stamps break most loops
            ("", {"no_repeat_ngram_size": 5}),
        ):
            reading = self._read(window, tokenizer, before, beam=5, **options)
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

    def _tokenizer_of(self, window: Window) -> Any:
        """That of the language asked for, else of the one that the window seems to be in."""
        if self._language:
            return self.tokenizer
        best = self._model.model.detect_language(window.encoded)[0][0][0]
        return self._tokenizer_for(best.strip("<|>"))


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
