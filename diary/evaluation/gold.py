"""A gold script: a walk-round written down, with all that is to be understood of it."""

from dataclasses import dataclass
from datetime import date
from html import escape
from pathlib import Path
from typing import Any

import msgspec

from diary.errors import UsageError
from diary.linking.document import Value
from diary.reading.known import Known, KnownName, KnownSeedling
from diary.speech.transcript import Transcript
from diary.speech.words_in_cues import Cue, transcript_of

# A steady rate of speech: 2.6 words a second, half a second between utterances.
_WORDS_PER_SECOND, _PAUSE_S, _FIRST_S = 2.6, 0.5, 1.0
_WORDS_IN_A_CUE = 7

Times = tuple[tuple[int, int], ...]  # of each utterance: start and end, milliseconds


@dataclass(frozen=True, slots=True, kw_only=True)
class GoldObservation:
    """One thing said: `quote` stands in utterance `u`; `accept` and `accept_part` are as good."""

    u: int
    quote: str
    trait: str
    value: Value
    part: str | None = None
    modifiers: tuple[str, ...] = ()
    accept: tuple[Value, ...] = ()
    accept_part: tuple[str, ...] = ()
    optional: bool = False
    hedged: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class GoldClip:
    """Utterances `first` to `last` are of `plant`: a number, "cultivar:NAME", "unnamed:1"."""

    first: int
    last: int
    plant: str
    observations: tuple[GoldObservation, ...]
    date: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class GoldSeedling:
    """A seedling on record in the script."""

    number: str
    seed_parent: str | None = None
    pollen_parent: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class GoldScript:
    """The file. `kind` is "punctuated" (a cue an utterance) or "captions" (runs of words)."""

    id: str
    kind: str
    group: str
    recorded: date
    register: tuple[GoldSeedling, ...]
    cultivars: tuple[str, ...]
    utterances: tuple[str, ...]
    clips: tuple[GoldClip, ...]

    @property
    def known(self) -> Known:
        """What the breeder of the script has on record."""
        return Known(
            seedlings=tuple(
                KnownSeedling(
                    number=one.number.strip(),
                    seed_parent=(one.seed_parent or "").strip() or None,
                    pollen_parent=(one.pollen_parent or "").strip() or None,
                )
                for one in self.register
            ),
            names=tuple(KnownName(name=name.strip()) for name in self.cultivars if name.strip()),
        )


def load_script(path: Path) -> GoldScript:
    """The script in a file. UsageError names the file, and the place in it that is wrong."""
    try:
        script = msgspec.json.decode(path.read_bytes(), type=GoldScript)
    except OSError as fault:
        raise UsageError(f"{path}: cannot be read ({fault.strerror}).") from fault
    except (msgspec.DecodeError, UnicodeDecodeError) as fault:
        raise UsageError(f"{path}: is no gold script: {fault}.") from fault
    for clip in script.clips:
        last = len(script.utterances)
        if not 0 <= clip.first <= clip.last < last:
            raise UsageError(
                f"{path}: a clip runs from utterance {clip.first} to {clip.last}, of {last}."
            )
        if any(not 0 <= one.u < last for one in clip.observations):
            raise UsageError(f"{path}: an answer of {clip.plant} points at no utterance.")
    return script


def steady_times(script: GoldScript) -> Times:
    """Start and end of each utterance at a steady rate of speech."""
    times, now = [], _FIRST_S
    for text in script.utterances:
        end = now + max(len(text.split()), 1) / _WORDS_PER_SECOND
        times.append((_hundredths(now), _hundredths(end)))
        now = end + _PAUSE_S
    return tuple(times)


def spoken_times(path: Path) -> Times:
    """The times beside a spoken script: a JSON list of pairs of seconds."""
    try:
        pairs: list[Any] = msgspec.json.decode(path.read_bytes())
        return tuple((round(1000 * float(a)), round(1000 * float(b))) for a, b in pairs)
    except (OSError, ValueError, TypeError) as fault:
        raise UsageError(f"{path}: holds no times of utterances ({fault}).") from fault


def captions(script: GoldScript, times: Times) -> Transcript:
    """The script as captions would give it: a cue an utterance, or runs of seven words."""
    if script.kind == "punctuated":
        cues = [(a, b, text) for (a, b), text in zip(times, script.utterances, strict=True)]
    else:
        words: list[tuple[float, float, str]] = []
        for (a, b), text in zip(times, script.utterances, strict=True):
            parts = text.split()
            step = (b - a) / max(len(parts), 1)
            words += [(a + n * step, a + (n + 1) * step, word) for n, word in enumerate(parts)]
        runs = [words[n : n + _WORDS_IN_A_CUE] for n in range(0, len(words), _WORDS_IN_A_CUE)]
        cues = [
            (round(run[0][0]), round(run[-1][1]), " ".join(word for _, _, word in run))
            for run in runs
        ]
    return transcript_of(
        Cue(start_ms=a, end_ms=b, text=escape(text, quote=False)) for a, b, text in cues
    )


def _hundredths(seconds: float) -> int:
    return round(1000 * round(seconds, 2))
