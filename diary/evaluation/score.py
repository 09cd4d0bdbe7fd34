"""The score of a reading: precision, recall and F1 by family, links, days, modifiers."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from diary.evaluation.gold import GoldScript, Times
from diary.evaluation.matching import Matching, match
from diary.evaluation.measure import measure
from diary.evaluation.sides import AskedClip, ToldClip, asked_clips, told_clips
from diary.evaluation.stretches import Linked, link
from diary.linking.document import Reading

# So far outside its clip an observation may lie before the reading counts as broken.
_OUTSIDE_MS = 5000


@dataclass(frozen=True, slots=True)
class Tally:
    """So many right, of so many told and so many asked for."""

    right: float = 0
    told: float = 0
    asked: float = 0

    def __add__(self, other: "Tally") -> "Tally":
        return Tally(self.right + other.right, self.told + other.told, self.asked + other.asked)

    @property
    def precision(self) -> float:
        """The share right of what was told; 1 where nothing was."""
        return self.right / self.told if self.told else 1.0

    @property
    def recall(self) -> float:
        """The share told of what was asked for; 1 where nothing was."""
        return self.right / self.asked if self.asked else 1.0

    @property
    def f1(self) -> float:
        """The harmonic mean of precision and recall."""
        both = self.precision + self.recall
        return 2 * self.precision * self.recall / both if both else 0.0


@dataclass(frozen=True, slots=True)
class Share:
    """So many right of so many."""

    right: float = 0
    of: float = 0

    def __add__(self, other: "Share") -> "Share":
        return Share(self.right + other.right, self.of + other.of)

    @property
    def share(self) -> float | None:
        """None where there was nothing to get right."""
        return self.right / self.of if self.of else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    """The figures of one script, or of several added up."""

    families: dict[str, Tally] = field(default_factory=dict)
    link: Tally = Tally()
    jumps: Share = Share()
    days: Share = Share()
    modifiers: Share = Share()

    @property
    def all(self) -> Tally:
        """All families together."""
        return sum(self.families.values(), Tally())

    def __add__(self, other: "Score") -> "Score":
        names = [*self.families, *(n for n in other.families if n not in self.families)]
        return Score(
            families={
                n: self.families.get(n, Tally()) + other.families.get(n, Tally()) for n in names
            },
            link=self.link + other.link,
            jumps=self.jumps + other.jumps,
            days=self.days + other.days,
            modifiers=self.modifiers + other.modifiers,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Scored:
    """One script scored: its figures, and what they are made of."""

    script: str
    score: Score
    matching: Matching
    asked: tuple[AskedClip, ...]
    told: tuple[ToldClip, ...]
    problems: tuple[str, ...]  # where the reading is none: it then scores as an empty one


def score_reading(script: GoldScript, times: Times, reading: Reading) -> Scored:
    """Score what was understood of a script whose utterances lie at these times."""
    end_ms = max((end for _, end in times), default=0)
    problems = broken(reading, end_ms)
    asked = asked_clips(script, times)
    told = told_clips(Reading(clips=()) if problems else reading, asked)
    matching = match(asked, told)
    linked = link(asked, told, max([end_ms, *(clip.end_ms for clip in told)]))
    return Scored(
        script=script.id,
        score=_figures(matching, linked),
        matching=matching,
        asked=asked,
        told=told,
        problems=tuple(f"{script.id}: {problem}" for problem in problems),
    )


def total(scores: Iterable[Scored]) -> Score:
    """The figures of several scripts together."""
    return sum((one.score for one in scores), Score())


def broken(reading: Reading, length_ms: int) -> tuple[str, ...]:
    """Where a reading breaks its own promises: order of clips, times of observations."""
    found, last = [], -1000
    for n, clip in enumerate(reading.clips):
        if not last - 10 <= clip.start_ms <= clip.end_ms <= 2 * length_ms + 60_000:
            found.append(f"clip {n} runs from {clip.start_ms} to {clip.end_ms} ms, after {last}")
        last = clip.end_ms
        found += [
            f"clip {n}: {o.trait} at {o.start_ms} to {o.end_ms} ms lies outside it"
            for o in clip.observations
            if not clip.start_ms - _OUTSIDE_MS
            <= o.start_ms
            <= o.end_ms
            <= clip.end_ms + _OUTSIDE_MS
        ]
    return tuple(found)


def _figures(matching: Matching, linked: Linked) -> Score:
    scale = measure()
    families = {name: Tally() for name in scale.families}
    modifiers = Share()
    for hit in matching.hits:
        gold = hit.asked.gold
        if not gold.optional:
            families[scale.family[gold.trait]] += Tally(1, 1, 1)
        if gold.trait == "colour":
            said, meant = set(hit.told.observation.modifiers), set(gold.modifiers)
            both = said | meant
            modifiers += Share(len(said & meant) / len(both) if both else 1.0, 1)
    for miss in matching.misses:
        families[scale.family[miss.gold.trait]] += Tally(0, 0, 1)
    for false in matching.false:
        families[scale.family[false.observation.trait]] += Tally(0, 1, 0)
    return Score(
        families=families,
        link=Tally(linked.right, linked.told, linked.asked),
        jumps=Share(*linked.jumps),
        days=Share(*linked.days),
        modifiers=modifiers,
    )
