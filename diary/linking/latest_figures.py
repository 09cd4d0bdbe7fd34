"""Of one size of a plant told twice in a breath, the later: nobody measures a thing twice in vain.

"an inch, no, a bit more, an inch and a quarter across", "two inches, less, an inch and three
quarters"; leaves alone what was measured long before, and sizes that are far apart.
"""

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

SIZES = frozenset(
    "bloom_diameter head_diameter plant_height plant_spread stem_length leaf_width".split()
)
_REACH = 20
_LEAST, _MOST = 0.55, 1.8


def latest_figures(mentions: Mentions, statements: list[Statement]) -> list[Statement]:
    """The statements, which are in order, without sizes that are told anew right after."""
    later: dict[str, Statement] = {}
    kept: list[Statement] = []
    for s in reversed(statements):
        if s.trait in SIZES and not s.negated:
            following = later.get(s.trait)
            later[s.trait] = s
            if following is not None and _told_anew(mentions, s, following):
                continue
        kept.append(s)
    return kept[::-1]


def _told_anew(mentions: Mentions, first: Statement, second: Statement) -> bool:
    if not isinstance(first.value, float) or not isinstance(second.value, float):
        return False
    return (
        second.start - first.end <= _REACH
        and _LEAST <= second.value / max(first.value, 0.1) <= _MOST
        and not any(r.cut is None for r in mentions.refs_in(first.end, second.start))
    )
