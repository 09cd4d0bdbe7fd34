"""Whether each moment was given to the right plant: time, starts of clips, days."""

from dataclasses import dataclass

from diary.evaluation.matching import SLACK_MS
from diary.evaluation.sides import AskedClip, ToldClip

_STEP_MS = 500
_PAUSE_MS = 1500  # the pause beside a clip may be counted to it


@dataclass(frozen=True, slots=True, kw_only=True)
class Linked:
    """Moments given to a plant, rightly, at all, and of how many; found starts; right days."""

    right: int
    told: int
    asked: int
    jumps: tuple[int, int]  # found, of
    days: tuple[int, int]  # right, of


def link(asked: tuple[AskedClip, ...], told: tuple[ToldClip, ...], end_ms: int) -> Linked:
    """Compare the clips, moment by moment until `end_ms` and clip by clip."""
    right = both = wanted = 0
    for at in range(0, end_ms + 1, _STEP_MS):
        a = next((clip.plant for clip in asked if clip.start_ms <= at < clip.end_ms), None)
        t = next((clip.plant for clip in told if clip.start_ms <= at < clip.end_ms), None)
        beside = {
            clip.plant
            for clip in asked
            if clip.start_ms - _PAUSE_MS <= at <= clip.end_ms + _PAUSE_MS
        }
        wanted += a is not None
        both += t is not None and (a is not None or t not in beside)
        right += a is not None and a == t
    jumps = [
        any(t.plant == a.plant and abs(t.start_ms - a.start_ms) <= SLACK_MS for t in told)
        for a in asked
    ]
    met = [(a, [t for t in told if t.plant == a.plant and _meet(a, t)]) for a in asked]
    days = [any(t.day == a.day for t in found) for a, found in met if found]
    return Linked(
        right=right,
        told=both,
        asked=wanted,
        jumps=(sum(jumps), len(jumps)),
        days=(sum(days), len(days)),
    )


def rightly_linked(clip: ToldClip, asked: tuple[AskedClip, ...]) -> bool:
    """Whether the plant told is the one that most of the clip is about.

    A clip that lies in none of those asked for is wrong, whatever its plant.
    """
    shares: dict[tuple[str, str], int] = {}
    for a in asked:
        if _meet(a, clip):
            common = min(a.end_ms, clip.end_ms) - max(a.start_ms, clip.start_ms)
            shares[a.plant] = shares.get(a.plant, 0) + common
    return bool(shares) and max(shares, key=lambda plant: shares[plant]) == clip.plant


def _meet(asked: AskedClip, told: ToldClip) -> bool:
    return told.start_ms < asked.end_ms and told.end_ms > asked.start_ms
