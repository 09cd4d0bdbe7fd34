"""The demo's scripts as answer sheets: who is spoken of when, and what is said of them."""

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from diary.linking.document import PlantKind
from diary.records.record import PlantRef, RecordClip

CLIPS = Path(__file__).parents[2] / "demo_clips"
MAY, JUNE, MEMO = NAMES = ("bench-walk-2031-05-24", "bench-walk-2031-06-14", "memo-2031-06-15")

Fact = tuple[str, str, str | None, object]  # plant, trait, part, value
_STEP_S, _BESIDE_S = 0.5, 1.5  # the pause beside a clip may be counted to it


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """One clip of a script: plant ("unnumbered" without a number), seconds, what is said."""

    plant: str
    start: float
    end: float
    facts: frozenset[Fact]  # asked for
    allowed: frozenset[Fact]  # as good, or optional


@dataclass(frozen=True, slots=True, kw_only=True)
class Answers:
    """One demo recording as its script has it."""

    name: str
    path: Path
    day: date
    script: dict[str, Any]
    times: tuple[tuple[float, float], ...]
    clips: tuple[Spoken, ...]

    def first_spoken_of(self, plant: str) -> float:
        """The second at which the plant is first spoken of."""
        return next(clip.start for clip in self.clips if clip.plant == plant)


def answers(name: str) -> Answers:
    """The answer sheet of one demo recording."""
    script = json.loads((CLIPS / f"{name}.script.json").read_text(encoding="utf-8"))
    times = tuple(
        (start, end) for start, end in json.loads((CLIPS / f"{name}.times.json").read_text())
    )
    return Answers(
        name=name,
        path=next(one for one in CLIPS.glob(f"{name}.m*")),
        day=date.fromisoformat(script["recorded"]),
        script=script,
        times=times,
        clips=tuple(_spoken(clip, times) for clip in script["clips"]),
    )


def _spoken(clip: dict[str, Any], times: Sequence[tuple[float, float]]) -> Spoken:
    kind, _, name = clip["plant"].partition(":")
    plant = "unnumbered" if kind == "unnamed" else name or kind
    asked: set[Fact] = set()
    allowed: set[Fact] = set()
    for told in clip["observations"]:
        part = told.get("part")
        fact = (plant, told["trait"], part, told["value"])
        (allowed if told.get("optional") else asked).add(fact)
        allowed |= {(plant, told["trait"], p, told["value"]) for p in told.get("accept_part", [])}
        if told["trait"] == "colour":
            allowed.add((plant, "marking", None, part))
    return Spoken(
        plant=plant,
        start=times[clip["first"]][0],
        end=times[clip["last"]][1],
        facts=frozenset(asked),
        allowed=frozenset(allowed),
    )


def titled(plant: PlantRef) -> str:
    """A plant of the diary as the answer sheet calls it."""
    return "unnumbered" if plant.kind is PlantKind.UNNAMED else plant.title


def facts(clips: Iterable[RecordClip]) -> frozenset[Fact]:
    """What the diary holds of these clips, denials left out."""
    return frozenset(
        (titled(clip.plant), record.trait, record.part, record.value)
        for clip in clips
        for record in clip.records
        if not record.negated
    )


def right_facts(sheet: Answers, told: frozenset[Fact]) -> tuple[frozenset[Fact], frozenset[Fact]]:
    """What was asked for and is missing, and what was told and is wrong."""
    asked = frozenset(fact for clip in sheet.clips for fact in clip.facts)
    allowed = frozenset(fact for clip in sheet.clips for fact in clip.allowed)
    missing = frozenset(one for one in asked if not _among(one, told | _as_good(one, told)))
    wrong = frozenset(one for one in told if not _among(one, asked | allowed))
    return missing, wrong


def f1_of_facts(sheet: Answers, told: frozenset[Fact]) -> float:
    """The harmonic mean of how much of what is told is right and how much is told at all."""
    missing, wrong = right_facts(sheet, told)
    asked = {fact for clip in sheet.clips for fact in clip.facts}
    right = len(asked) - len(missing)
    return 2 * right / (2 * right + len(missing) + len(wrong))


def f1_of_links(sheet: Answers, clips: Sequence[RecordClip]) -> float:
    """The same for time: half seconds that are linked to the right plant."""
    told = [(titled(c.plant), c.moment.start_ms / 1000, c.moment.end_ms / 1000) for c in clips]
    asked = [(c.plant, c.start, c.end) for c in sheet.clips]
    right = missed = wrong = 0
    for step in range(int(sheet.times[-1][1] / _STEP_S) + 1):
        at = step * _STEP_S
        wanted = next((plant for plant, start, end in asked if start <= at < end), None)
        given = next((plant for plant, start, end in told if start <= at < end), None)
        beside = {p for p, start, end in asked if start - _BESIDE_S <= at <= end + _BESIDE_S}
        right += wanted is not None and given == wanted
        missed += wanted is not None and given != wanted
        wrong += (
            given is not None and given != wanted and (wanted is not None or given not in beside)
        )
    return 2 * right / (2 * right + missed + wrong)


def _as_good(fact: Fact, told: frozenset[Fact]) -> frozenset[Fact]:
    """A colour of the ground counts as one of the bloom."""
    plant, trait, part, value = fact
    if (trait, part) == ("colour", "bloom") and (plant, trait, "base", value) in told:
        return frozenset({fact})
    return frozenset()


def _among(fact: Fact, facts: frozenset[Fact]) -> bool:
    if fact in facts:
        return True
    plant, trait, part, value = fact
    return isinstance(value, float | int) and any(
        (plant, trait, part) == other[:3]
        and isinstance(other[3], float | int)
        and abs(other[3] - value) <= max(1.0, 0.02 * value)
        for other in facts
    )
