"""Which answers were told, which are missing, and what was told that nobody said."""

from dataclasses import dataclass

from diary.evaluation.measure import Measure, measure, plain
from diary.evaluation.sides import Asked, AskedClip, PlantKey, ToldClip
from diary.linking.document import Observation

SLACK_MS = 3000  # so far beside its utterance a report may lie


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A report that is scored, and the plant it was told of."""

    plant: PlantKey
    title: str
    observation: Observation


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """An answer and the report that gives it."""

    asked: Asked
    told: Told


@dataclass(frozen=True, slots=True, kw_only=True)
class Matching:
    """Every answer and every report of one script, sorted out.

    `repeated` are reports of something right that was told before; `false` are those that
    fit no answer.
    """

    hits: tuple[Hit, ...]
    misses: tuple[Asked, ...]
    false: tuple[Told, ...]
    repeated: tuple[Told, ...]


def match(asked: tuple[AskedClip, ...], told: tuple[ToldClip, ...]) -> Matching:
    """Give each answer the best report, the answers that leave least choice first."""
    scale = measure()
    answers = [answer for clip in asked for answer in clip.answers]
    reports = scored(told, scale)
    used: set[int] = set()
    hits, misses = [], []
    for answer in sorted(answers, key=_freedom):
        fitting = [
            n
            for n, report in enumerate(reports)
            if n not in used
            and report.plant == answer.plant
            and report.observation.trait == answer.gold.trait
            and fits(report.observation, answer, scale)
        ]
        if not fitting:
            misses.append(answer)
            continue
        best = min(fitting, key=lambda n: _distance(reports[n].observation, answer, scale))
        used.add(best)
        hits.append(Hit(asked=answer, told=reports[best]))
    rest = [report for n, report in enumerate(reports) if n not in used]
    right = [
        any(a.plant == r.plant and fits(r.observation, a, scale) for a in answers) for r in rest
    ]
    return Matching(
        hits=tuple(hits),
        misses=tuple(miss for miss in misses if not miss.gold.optional),
        false=tuple(r for r, fine in zip(rest, right, strict=True) if not fine),
        repeated=tuple(r for r, fine in zip(rest, right, strict=True) if fine),
    )


def scored(told: tuple[ToldClip, ...], scale: Measure) -> list[Told]:
    """The reports that count, each value of a trait once a clip."""
    reports: list[Told] = []
    for clip in told:
        seen: set[tuple[str, str | None, object]] = set()
        for o in clip.observations:
            value = o.value if isinstance(o.value, int | float) else plain(o.value)
            if scale.counts(o.trait, o.value) and (o.trait, o.part, value) not in seen:
                seen.add((o.trait, o.part, value))
                reports.append(Told(plant=clip.plant, title=clip.title, observation=o))
    return reports


def fits(told: Observation, asked: Asked, scale: Measure) -> bool:
    """Whether a report, of whichever plant, gives the answer."""
    gold = asked.gold
    if told.end_ms < asked.start_ms - SLACK_MS or told.start_ms > asked.end_ms + SLACK_MS:
        return False
    if told.trait == gold.trait:
        if gold.trait == "colour" and told.part not in (gold.part, *gold.accept_part):
            return False
        return any(scale.fits(gold.trait, told.value, v) for v in (gold.value, *gold.accept))
    # a marking told beside its coloured part is neither an error nor a gain
    return (
        told.trait == "marking" and gold.trait == "colour" and plain(told.value) == plain(gold.part)
    )


def _freedom(asked: Asked) -> tuple[bool, int]:
    return asked.gold.optional, len(asked.gold.accept) + len(asked.gold.accept_part)


def _distance(told: Observation, asked: Asked, scale: Measure) -> tuple[bool, int]:
    exact = scale.fits(asked.gold.trait, told.value, asked.gold.value)
    return not exact, abs(told.start_ms - asked.start_ms)
