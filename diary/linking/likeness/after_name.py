"""Likeness told after the other plant: "A all over again", "A to the life", "A to look at".

Leaves alone "it's A again" and "everything went bar A".
"""

from collections.abc import Iterator

from diary.linking.likeness.asserted import unsaid
from diary.linking.likeness.likened import Likeness
from diary.linking.operands import before
from diary.reading.mentions import Mentions


def over_again(mentions: Mentions) -> Iterator[Likeness]:
    """ "A all over again", "A to the life"."""
    cues = mentions.vocabulary.parent_cues.find(mentions.talk.texts)
    for cue in [f for f in cues if f.label == "similar after"]:
        operand = before(mentions, cue.start)
        if operand is None or (
            mentions.talk.texts[cue.start : cue.end] == ("again",)
            and not _nothing_but(mentions, operand.start)
        ):
            continue
        qualified = mentions.talk.texts[cue.start] in _QUALIFIERS
        qualified |= mentions.talk.texts[cue.start : cue.end] == ("to", "look", "at")
        if qualified and not _said_to_be(mentions, operand.start):
            continue
        dressed = mentions.talk.texts[cue.start : cue.start + 2] == ("in", "a")
        if dressed and operand.ref is not None and operand.ref.is_number:
            continue  # "in eighty-seven, in a green hat"
        yield Likeness(
            start=operand.start,
            end=cue.end,
            operand=operand,
            asserted=not unsaid(mentions, operand.start, cue.end, cue.end),
            score=0.9,
        )


_QUALIFIERS = frozenset("but except save apart aside bar minus plus less give by".split())
_BEING = frozenset({"'s", "is", "just", "only", "simply", "really", "pure", "basically"})


def _said_to_be(mentions: Mentions, at: int) -> bool:
    """ "It's A to look at"; not "next we've A to look at", "everything went bar A"."""
    return bool(at) and mentions.talk.texts[at - 1] in _BEING


def _nothing_but(mentions: Mentions, at: int) -> bool:
    """ "basically A again", "pure A again"; "it's A again" turns back to A."""
    return bool(
        {"basically", "practically", "virtually", "pure", "essentially", "but"}
        & set(mentions.talk.texts[max(0, at - 1) : at])
    )
