"""Scorch, told by the sun and by what became of the leaves.

"the sun got it through the glass, all the top leaves are crisp", "browned where it stood too near
the glass". Leaves alone "a burnt orange", "it loves the sun" and "the sun's bleached the label".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_SUN = frozenset({"sun", "sunshine", "glass", "heat", "heatwave", "hot", "noon", "midday", "sunny"})
_WITHIN = 12
_NO_LEAF = frozenset({"label", "labels", "tag", "ink", "writing", "number", "paint", "cane"})
_NOT_SO = frozenset({"not", "never", "no", "without", "against", "shade", "shaded", "away"})


def sun_burnt(mentions: Mentions) -> Iterator[Statement]:
    """A burnt look near a word of the sun, in one sentence, said of leaves, petals or "it"."""
    talk, classes = mentions.talk, mentions.vocabulary.classes
    for at, text in enumerate(talk.texts):
        if text not in classes["burnt"] or mentions.masked[at]:
            continue
        low, high = talk.sentence(at)
        low, high = max(low, at - _WITHIN), min(high, at + _WITHIN)
        suns = [
            i
            for i in range(low, high)
            if talk.texts[i] in _SUN and not mentions.colours_in(i, i + 2)
        ]
        if not suns or mentions.colours_in(at, at + 2):
            continue
        near = min(suns, key=lambda i: abs(i - at))
        start, end = min(near, at), max(near, at) + 1
        words = set(talk.texts[low:high])
        if words & _NO_LEAF or set(talk.texts[max(low, start - 3) : end]) & _NOT_SO:
            continue
        if words & (classes["foliage"] | {"petals", "petal", "edges", "tips", "it", "flowers"}):
            yield Statement(
                trait="health",
                value="scorch",
                start=start,
                end=end,
                rule="burnt by the sun",
                score=0.86,
            )
