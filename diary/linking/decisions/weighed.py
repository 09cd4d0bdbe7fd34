"""Decisions weighed: the rules have one voice, the words of the sentence another.

What a rule takes for a decision and the words speak against is only proposed.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import replace

from diary.linking.decisions.signs import DecisionSigns
from diary.linking.statement import Statement
from diary.linking.weights import chances
from diary.reading.mentions import Mentions

# Of thresholds tried on 25 scripts that no rule was written from: 15 of the 26 wrong decisions
# were doubted so, and 2 of the 168 right ones. Turning to what only the words speak for was
# tried too, and was wrong as often as right.
_DOUBTED = 0.05
_TELLING = 5  # fewer words speak neither for nor against


def weighed(mentions: Mentions, by_rule: Sequence[Statement]) -> list[Statement]:
    """The decisions of the rules, in order; not firm where the words speak against them."""
    if not by_rule:
        return []
    signs = DecisionSigns(mentions)
    sentences = list(signs.sentences())
    starts = [start for start, _ in sentences]
    heard: dict[int, dict[str, float]] = {}  # chances of each decision, by sentence
    kept = []
    for s in sorted(by_rule, key=lambda s: s.start):
        n = bisect_right(starts, s.start) - 1
        if sentences[n][1] - sentences[n][0] < _TELLING:
            kept.append(s)
            continue
        if n not in heard:
            heard[n] = chances(mentions.vocabulary.decision_signs, signs.of(*sentences[n]))
        doubted = heard[n][str(s.value)] < _DOUBTED
        kept.append(replace(s, firm=False) if doubted else s)
    return kept
