"""What was asked and what was told, in one form, so that they can be compared."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from diary.evaluation.gold import GoldObservation, GoldScript, Times
from diary.evaluation.measure import plain, plain_number
from diary.linking.document import Band, Clip, Observation, Plant, PlantKind, Reading

PlantKey = tuple[str, str]  # kind, and number or name written plainly


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """An answer: what is to be understood, of which plant, between which moments (ms)."""

    plant: PlantKey
    title: str
    start_ms: int
    end_ms: int
    gold: GoldObservation


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedClip:
    """A clip that is to be found."""

    plant: PlantKey
    title: str
    start_ms: int
    end_ms: int
    day: date
    answers: tuple[Asked, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldClip:
    """A clip that was found, in hundredths of a second as the extraction document has it."""

    plant: PlantKey
    title: str
    start_ms: int
    end_ms: int
    day: date | None
    band: Band
    rule: str
    observations: tuple[Observation, ...]
    proposals: tuple[Observation, ...]


def asked_clips(script: GoldScript, times: Times) -> tuple[AskedClip, ...]:
    """The clips and answers of a script, with its times."""
    clips = []
    for clip in script.clips:
        kind, _, name = clip.plant.partition(":")
        if kind == PlantKind.UNNAMED.value:
            plant, title = (kind, name), f"unnamed {name}"
        elif kind == PlantKind.CULTIVAR.value:
            plant, title = (kind, plain(name)), name
        else:
            plant, title = (PlantKind.SEEDLING.value, plain_number(clip.plant)), clip.plant
        clips.append(
            AskedClip(
                plant=plant,
                title=title,
                start_ms=times[clip.first][0],
                end_ms=times[clip.last][1],
                day=date.fromisoformat(clip.date) if clip.date else script.recorded,
                answers=tuple(
                    Asked(
                        plant=plant,
                        title=title,
                        start_ms=times[one.u][0],
                        end_ms=times[one.u][1],
                        gold=one,
                    )
                    for one in clip.observations
                ),
            )
        )
    return tuple(clips)


def told_clips(reading: Reading, asked: tuple[AskedClip, ...]) -> tuple[ToldClip, ...]:
    """The clips of a reading; unnamed plants under the name of the asked one they overlap most."""
    told = tuple(_told(n, clip) for n, clip in enumerate(reading.clips))
    names = _unnamed_pairs(asked, told)
    return tuple(
        replace(clip, plant=names.get(clip.plant, (clip.plant[0], f"extra {clip.plant[1]}")))
        if clip.plant[0] == PlantKind.UNNAMED.value
        else clip
        for clip in told
    )


def _told(n: int, clip: Clip) -> ToldClip:
    return ToldClip(
        plant=_key(clip.plant, n),
        title=clip.plant.title,
        start_ms=_shown(clip.start_ms),
        end_ms=_shown(clip.end_ms),
        day=clip.day,
        band=clip.band,
        rule=clip.evidence.rule,
        observations=tuple(_timed(o) for o in clip.observations if not o.negated),
        proposals=tuple(_timed(o) for o in clip.proposals if not o.negated),
    )


def _key(plant: Plant, n: int) -> PlantKey:
    if plant.kind is PlantKind.SEEDLING:
        return plant.kind.value, plain_number(plant.number or "")
    if plant.kind is PlantKind.CULTIVAR:
        return plant.kind.value, plain(plant.name)
    return plant.kind.value, plant.label or f"clip {n}"


def _timed(observation: Observation) -> Observation:
    return replace(
        observation,
        start_ms=_shown(observation.start_ms),
        end_ms=_shown(observation.end_ms),
    )


def _shown(ms: int) -> int:
    return round(1000 * round(ms / 1000, 2))


def _unnamed_pairs(
    asked: tuple[AskedClip, ...], told: tuple[ToldClip, ...]
) -> dict[PlantKey, PlantKey]:
    """For each told unnamed plant the asked one that it overlaps most, each taken once."""
    overlaps: dict[tuple[PlantKey, PlantKey], int] = {}
    for a, t, common in _overlapping(asked, told):
        if a.plant[0] == t.plant[0] == PlantKind.UNNAMED.value:
            key = (t.plant, a.plant)
            overlaps[key] = overlaps.get(key, 0) + common
    chosen: dict[PlantKey, PlantKey] = {}
    for (t_plant, a_plant), _ in sorted(overlaps.items(), key=lambda item: -item[1]):
        if t_plant not in chosen and a_plant not in chosen.values():
            chosen[t_plant] = a_plant
    return chosen


def _overlapping(
    asked: tuple[AskedClip, ...], told: tuple[ToldClip, ...]
) -> Iterator[tuple[AskedClip, ToldClip, int]]:
    for a in asked:
        for t in told:
            common = min(a.end_ms, t.end_ms) - max(a.start_ms, t.start_ms)
            if common > 0:
                yield a, t, common
