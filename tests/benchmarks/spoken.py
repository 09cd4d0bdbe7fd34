"""A folder of spoken scripts: sound, what was said when, and scores for what was heard.

A folder holds `<id>.json` scripts (utterances, cultivars, register) in `dev/` or beside the
sound, and `<id>.opus` (or .wav, .m4a) with `<id>.times.json` in `audio/` or beside the scripts.
"""

import json
import re
from dataclasses import dataclass
from pathlib import Path

import jiwer
import numpy as np
from whisper_normalizer.english import EnglishTextNormalizer

from diary.media.decode import RATE, Sound
from diary.speech.hints import Hints
from diary.speech.transcript import Word

_NORMAL = EnglishTextNormalizer()
_LABEL = re.compile(
    r"(?<![\w.£$])(?:[A-Z]{1,2}-?\d{1,3}(?:[-/.]\d{1,3})*|\d{1,2}(?:[-/]\d{1,3}){1,2}|\d{4})[A-Z]?(?!\w)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """One script with its sound; times in seconds, an utterance each."""

    name: str
    sound: Path
    utterances: tuple[str, ...]
    times: tuple[tuple[float, float], ...]
    names: tuple[str, ...]
    numbers: tuple[str, ...]

    @property
    def hints(self) -> Hints:
        return Hints(names=self.names, numbers=self.numbers)

    @property
    def text(self) -> str:
        return " ".join(self.utterances)


@dataclass(slots=True)
class Score:
    """Sums over recordings; `false_names` are names heard that are in no utterance near."""

    reference: list[str]
    heard: list[str]
    names: int = 0
    names_heard: int = 0
    false_names: int = 0
    numbers: int = 0
    numbers_heard: int = 0

    @property
    def wer(self) -> float:
        return float(jiwer.wer(self.reference, self.heard))


def spoken_scripts(folder: Path, only: tuple[str, ...] = ()) -> list[Spoken]:
    """Every script of the folder that has sound, in the order of their names."""
    scripts = sorted([*folder.glob("*.json"), *folder.glob("dev/*.json")])
    found = []
    for path in scripts:
        if path.name.endswith(".times.json") or (only and path.stem not in only):
            continue
        sounds = [
            sound
            for place in (path.parent, folder, folder / "audio")
            for suffix in (".opus", ".wav", ".m4a", ".mp4", ".webm")
            if (sound := place / f"{path.stem}{suffix}").is_file()
        ]
        times = sounds[0].with_name(f"{path.stem}.times.json") if sounds else None
        if times and times.is_file():
            found.append(_spoken(path, sounds[0], times))
    return found


def _spoken(path: Path, sound: Path, times: Path) -> Spoken:
    script = json.loads(path.read_text(encoding="utf-8"))
    rows = script.get("register", [])
    parents = [row.get(key) for row in rows for key in ("seed_parent", "pollen_parent")]
    named = [name for name in parents if name and not re.search(r"\d", name) and name != "open"]
    return Spoken(
        name=path.stem,
        sound=sound,
        utterances=tuple(script["utterances"]),
        times=tuple((start, end) for start, end in json.loads(times.read_text())),
        names=tuple(dict.fromkeys([*script.get("cultivars", []), *named])),
        numbers=tuple(row["number"] for row in rows),
    )


def score(pairs: list[tuple[Spoken, tuple[Word, ...]]], *, others: tuple[str, ...] = ()) -> Score:
    """How well what was heard fits what was said. `others` are names that nobody said."""
    total = Score(reference=[], heard=[])
    for spoken, words in pairs:
        total.reference.append(normal(spoken.text))
        total.heard.append(normal(" ".join(word.text for word in words)))
        for utterance, (start, end) in zip(spoken.utterances, spoken.times, strict=True):
            heard = " ".join(
                word.text
                for word in words
                if start * 1000 - 350 <= (word.start_ms + word.end_ms) / 2 <= end * 1000 + 350
            )
            for name in spoken.names:
                said, got = _times(name, utterance), _times(name, heard)
                total.names += said
                total.names_heard += min(said, got)
            digits = normal(heard).replace(" ", "")
            for label in _LABEL.findall(utterance):
                total.numbers += 1
                bare = re.sub(r"\W", "", label).lower()
                total.numbers_heard += bare in digits or bare in re.sub(r"\W", "", heard.lower())
        all_heard = " ".join(word.text for word in words)
        total.false_names += sum(
            max(0, _times(name, all_heard) - _times(name, spoken.text))
            for name in others
            if name not in spoken.names
        )
    return total


def normal(text: str) -> str:
    """Whisper's English normaliser; the digits of a number together, units in their short form."""
    text = re.sub(r"(?<=\d)[-/.](?=\d)", "", text)
    text = re.sub(r"\boh\b", "0", _NORMAL(text))
    text = re.sub(r"\bcentimet(?:er|re)s?\b", "cm", text)
    text = re.sub(r"\bmillimet(?:er|re)s?\b", "mm", text)
    while (joined := re.sub(r"(?<=\d) (?=\d)", "", text)) != text:
        text = joined
    return text


def _times(name: str, text: str) -> int:
    return len(re.findall(rf"\b{re.escape(_bare(name))}s?\b", _bare(text)))


def _bare(text: str) -> str:
    return re.sub(r"[^a-z0-9 ]", "", text.lower())


def with_fan(samples: np.ndarray, decibels: float | None, *, seed: int) -> np.ndarray:
    """The samples with a fan so many dB under the voice: brown noise, mains hum, harmonics."""
    if decibels is None:
        return samples
    rng = np.random.default_rng(seed)
    voice = samples.astype(np.float64)
    brown = np.cumsum(rng.standard_normal(len(voice)))
    brown -= np.convolve(brown, np.ones(1600) / 1600, mode="same")
    at = np.arange(len(voice)) / RATE
    hum = sum(np.sin(2 * np.pi * 50 * n * at) / n for n in (1, 2, 4))
    noise = brown / brown.std() + 0.5 * hum
    loud = voice[np.abs(voice) > 0.02 * np.abs(voice).max()]
    level = np.sqrt(np.mean(loud**2)) * 10 ** (-decibels / 20)
    mixed = voice + level * noise / noise.std()
    return np.clip(mixed, -32768, 32767).astype(np.int16)


def samples_of(path: Path) -> np.ndarray:
    """All samples of a short recording."""
    return np.concatenate(list(Sound(path)))
