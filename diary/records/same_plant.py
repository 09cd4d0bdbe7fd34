"""Unnumbered plants of different recordings that may be one: proposed, never assumed. Pure."""

from collections.abc import Sequence
from dataclasses import dataclass

from diary.linking.document import PlantKind
from diary.records.record import RecordClip

LEAST_SCORE = 3  # two shared traits and a shared neighbour, or three shared traits


@dataclass(frozen=True, slots=True, kw_only=True)
class SamePlant:
    """Two clips that may show one plant; the first was filmed earlier."""

    first: RecordClip
    second: RecordClip
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shown:
    """An unnumbered plant of one recording: what was said of it, and beside what it stands."""

    clip: RecordClip
    said: frozenset[tuple[str, str, str]]
    beside: frozenset[str]


def propose_same(clips: Sequence[RecordClip]) -> tuple[SamePlant, ...]:
    """Pairs of unnumbered plants of different recordings, alike and contradicting in nothing.

    `clips` are all those of the recordings at hand, each recording's in order of time. Each
    plant is proposed with the one it is most like.
    """
    shown = list(_shown(clips))
    pairs: list[tuple[int, SamePlant]] = []
    for index, first in enumerate(shown):
        for second in shown[index + 1 :]:
            if first.clip.moment.recording == second.clip.moment.recording:
                continue
            score, reasons = _likeness(first, second)
            if score >= LEAST_SCORE:
                pairs.append(
                    (score, SamePlant(first=first.clip, second=second.clip, reasons=reasons))
                )
    best: list[SamePlant] = []
    taken: set[tuple[str, str]] = set()
    for _, pair in sorted(pairs, key=lambda one: -one[0]):
        ends = {
            (pair.first.plant.key, pair.second.moment.recording),
            (pair.second.plant.key, pair.first.moment.recording),
        }
        if not ends & taken:
            best.append(pair)
            taken |= ends
    return tuple(best)


def _shown(clips: Sequence[RecordClip]) -> list[_Shown]:
    found: dict[str, _Shown] = {}
    for index, clip in enumerate(clips):
        if clip.plant.kind is not PlantKind.UNNAMED:
            continue
        around = [clips[near] for near in (index - 1, index + 1) if 0 <= near < len(clips)]
        beside = {
            other.plant.key
            for other in around
            if other.moment.recording == clip.moment.recording
            and other.plant.kind is PlantKind.SEEDLING
        }
        said = {
            (record.trait, record.part or "", str(record.value))
            for record in clip.records
            if record.trait in ("colour", "marking", "bloom_form") and not record.negated
        }
        before = found.get(clip.plant.key)
        found[clip.plant.key] = _Shown(
            clip=before.clip if before else clip,
            said=frozenset(said) | (before.said if before else frozenset()),
            beside=frozenset(beside) | (before.beside if before else frozenset()),
        )
    return list(found.values())


def _likeness(first: _Shown, second: _Shown) -> tuple[int, tuple[str, ...]]:
    if first.clip.plant.key == second.clip.plant.key:
        return 0, ()  # one plant already
    colours = [
        {part: value for trait, part, value in plant.said if trait == "colour"}
        for plant in (first, second)
    ]
    if any(colours[0][part] != colours[1][part] for part in colours[0].keys() & colours[1]):
        return 0, ()
    shared = sorted(first.said & second.said)
    neighbours = sorted(first.beside & second.beside)
    reasons = [
        f"both {part + ' ' if part else ''}{value}".replace("  ", " ") for _, part, value in shared
    ]
    reasons += [f"both beside {key}" for key in neighbours]
    return len(shared) + len(neighbours), tuple(reasons)
