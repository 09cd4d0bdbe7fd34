"""Talks to learn from, with all that they turn to: gold scripts, and sayings of the tests.

A gold script is a lesson as it is, and cut off after each of its turns, for many a memo is
short. Sayings (tests/gold/sayings.json) are talks of a few sentences, with their turns.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

import msgspec

from diary.evaluation.gold import GoldScript, captions, load_script, steady_times
from diary.linking.document import Plant, PlantKind
from diary.reading.known import Known, KnownName, KnownSeedling
from diary.speech.transcript import Transcript, Word

_OPENING = 1  # a plant may be told in the utterance after the one its clip begins with
_WORD_MS = 400
# A saying counts less than a script: it is chosen for being odd. Best of 0.01, 0.3 and 1.
_SAYING = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A plant that a talk turns to, told which among the words told[0]..told[1]-1."""

    plant: Plant
    begins: int  # the word its clip begins with
    told: tuple[int, int]


class Saying(msgspec.Struct, frozen=True, kw_only=True):
    """A few sentences; a turn is a plant, and the first and last word in which it is told."""

    utterances: tuple[str, ...]
    register: tuple[KnownSeedling, ...]
    cultivars: tuple[str, ...]
    turns: tuple[tuple[str, int, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """A talk with all that it turns to, in order; what lies before the word `since` is known."""

    talk: Transcript
    known: Known
    shown: tuple[Shown, ...]
    since: int = 0
    weight: float = 1.0


def lessons(path: Path) -> Iterator[Lesson]:
    """What a file holds: a gold script, or a list of sayings."""
    if path.read_bytes().lstrip().startswith(b"["):
        yield from map(_said, msgspec.json.decode(path.read_bytes(), type=list[Saying]))
    else:
        yield from _of_script(load_script(path))


def _of_script(script: GoldScript) -> Iterator[Lesson]:
    """A script as it is, and cut off after each turn, for many a memo is short."""
    last = len(script.utterances) - 1
    yield _lesson(script, 0, last, 0)
    for n, clip in enumerate(script.clips):
        begun = script.clips[n - 1].first if n else 0
        yield _lesson(script, begun, clip.first, clip.first)
        if n:
            yield _lesson(script, clip.first, clip.first, clip.first)


def _lesson(script: GoldScript, first: int, last: int, since: int) -> Lesson:
    """The utterances first..last of a script; to be learnt from is what `since` begins."""
    cut = replace(script, utterances=script.utterances[first : last + 1])
    starts = [0]
    for utterance in cut.utterances:
        spoken = [w for w in utterance.split() if any(c.isalnum() for c in w)]  # no lone dash
        starts.append(starts[-1] + len(spoken))
    shown = [
        Shown(
            plant=_plant(script.known, clip.plant),
            begins=starts[max(clip.first, first) - first],
            told=(
                starts[max(clip.first, first) - first],
                starts[max(0, min(clip.first + _OPENING, clip.last, last) + 1 - first)],
            ),
        )
        for clip in script.clips
        if clip.first <= last and clip.last >= first
    ]
    talk = captions(cut, steady_times(cut))
    return Lesson(talk=talk, known=script.known, shown=tuple(shown), since=starts[since - first])


def _said(saying: Saying) -> Lesson:
    known = Known(
        seedlings=saying.register, names=tuple(KnownName(name=name) for name in saying.cultivars)
    )
    shown = [
        Shown(
            plant=_plant(known, plant),
            begins=first,
            told=(first, last + 1),
        )
        for plant, first, last in saying.turns
    ]
    return Lesson(talk=spoken(saying.utterances), known=known, shown=tuple(shown), weight=_SAYING)


def spoken(utterances: tuple[str, ...]) -> Transcript:
    """The utterances, a segment each, with their words at even times."""
    texts = [text for utterance in utterances for text in utterance.split()]
    lengths = [len(utterance.split()) for utterance in utterances]
    starts = [sum(lengths[:n]) for n, length in enumerate(lengths) if length]
    words = tuple(
        Word(text=text, start_ms=n * _WORD_MS, end_ms=(n + 1) * _WORD_MS)
        for n, text in enumerate(texts)
    )
    return Transcript(words=words, segment_starts=tuple(starts), duration_ms=len(words) * _WORD_MS)


def _plant(known: Known, told: str) -> Plant:
    """The plant of a gold clip, under the title by which it is heard."""
    kind, _, name = told.rpartition(":")
    if kind == "cultivar":
        return Plant(kind=PlantKind.CULTIVAR, name=name.strip(), on_record=True)
    if kind:
        return Plant(kind=PlantKind.UNNAMED, label=told)
    number = next((s.number for s in known.seedlings if s.number.upper() == told.upper()), told)
    return Plant(kind=PlantKind.SEEDLING, number=number, on_record=True)
