"""Signs and their weights: how likely something is, by all that speaks for and against it."""

from collections.abc import Iterable, Mapping
from math import exp

ALWAYS = "always"  # the key of what is weighed in whatever the signs are
_FAR = 30.0


def chance(weights: Mapping[str, float], signs: Iterable[str]) -> float:
    """The chance, 0..1, of what the weights are for: the logistic function of their sum."""
    return _logistic(weights[ALWAYS] + sum(weights.get(sign, 0.0) for sign in set(signs)))


def chances(weights: Mapping[str, Mapping[str, float]], signs: Iterable[str]) -> dict[str, float]:
    """The chance, 0..1, of each thing that may be; `weights` are by sign, then by thing."""
    totals = dict(weights[ALWAYS])
    for sign in set(signs):
        for thing, weight in weights.get(sign, {}).items():
            totals[thing] += weight
    return {thing: _logistic(total) for thing, total in totals.items()}


def _logistic(total: float) -> float:
    return 1 / (1 + exp(-max(-_FAR, min(_FAR, total))))
