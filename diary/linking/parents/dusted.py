"""The mother told first, and then what she was dusted with: "A is the mother, I dusted it with B".

Leaves alone "I dusted it with B this morning", where no mother is told.
"""

from collections.abc import Iterator

from diary.linking.operands import after
from diary.linking.parents.origin import asserted, known, parent, planned
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_MOTHER_WITHIN = 16
_TOLD = frozenset({"seed", "pod", "took", "used", "had", "from", "off", "parent"})


def dusted_with(mentions: Mentions) -> Iterator[Statement]:
    """ "I had A for the seed side, and I dusted it with B": B gave the pollen."""
    talk, classes = mentions.talk, mentions.vocabulary.classes
    for cue in mentions.cue("dusted"):
        operand = after(mentions, cue.end)
        if operand is None or not known(operand) or planned(mentions, cue.start):
            continue
        low = max(talk.sentence(cue.start)[0], cue.start - _MOTHER_WITHIN)
        told = set(talk.texts[low : cue.start]) & (classes["mother"] | _TOLD)
        named = any(r.cut is None for r in mentions.refs_in(low, cue.start))
        if named and told and asserted(mentions, cue.start, operand.end):
            yield parent("pollen_parent", operand, "a plant put on the mother", 0.93)
