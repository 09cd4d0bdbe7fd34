"""The second colour of a variegated leaf: "it's variegated, green with a cream border"."""

from collections.abc import Sequence
from dataclasses import replace

from diary.linking.colours.attached import Attached
from diary.linking.colours.plant_parts import is_of_plant
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.tokens import COMMA, STOP

_TWO_COLOURED = frozenset(
    "variegated variegation marbled mottled splashed tricolour tricolor marbling".split()
)
_OF_LEAVES = frozenset(
    "green gold bronze chartreuse silver grey yellow cream white lemon ivory black brown".split()
)
_BORDERS = frozenset({"edge", "centre", "bloom"})
_REACH = 12


def of_variegated_leaf(
    mentions: Mentions,
    colour: ColourHeard,
    attached: Attached,
    told: Sequence[tuple[ColourHeard, Attached]],
) -> Attached:
    """ "the leaf's yellow with a green middle", "it's variegated, cream round the outside".

    Not "the leaf's variegated and the flower's cream", "gold leaf, white edge to the flower".
    """
    if attached.part not in _BORDERS:
        return attached
    bordered = _border_of_leaf(mentions, colour, attached)
    if colour.value not in _OF_LEAVES and not bordered:
        return attached
    if attached.part == "bloom" and attached.start < colour.start:
        return attached  # its own words say that it is the flower
    if attached.part == "bloom" and mentions.parts_in(colour.start, attached.end):
        return attached
    if (
        bordered
        or _goes_on_from_leaf(mentions, colour, attached, told)
        or _variegated(mentions, colour, max(colour.end, attached.end))
    ):
        return replace(attached, part="leaf", rule="a second colour of the leaf", score=0.8)
    return attached


def _border_of_leaf(mentions: Mentions, colour: ColourHeard, attached: Attached) -> bool:
    """ "every leaf is edged in white", "a thin yellow edge to each leaf": the leaf's own.

    Not "nice leaf, and a white edge to the flower".
    """
    if attached.part == "bloom":
        return False
    talk = mentions.talk
    end = max(colour.end, attached.end)
    owner = next(iter(mentions.parts_in(end, end + 4)), None)
    held = owner is not None and talk.texts[end] in ("to", "on", "of", "round", "around", "in")
    if owner is not None and held and not talk.between(end - 1, owner.start, (COMMA, STOP)):
        return owner.label == "leaf"
    start = min(colour.start, attached.start)
    before = [p for p in mentions.parts_in(start - 8, start) if p.label != attached.part]
    if not before or before[-1].label != "leaf" or talk.between(before[-1].end, start, (STOP,)):
        return False
    return set(talk.texts[before[-1].end : start]) <= _OWNING


_OWNING = frozenset(
    "which that it has have got 's is are with a an the its in by finely thinly lightly neatly "
    "broadly nicely very thin fine narrow broad little nice sort of this".split()
)


def _goes_on_from_leaf(
    mentions: Mentions,
    colour: ColourHeard,
    attached: Attached,
    told: Sequence[tuple[ColourHeard, Attached]],
) -> bool:
    """ "the leaf's yellow with a | green middle": the border is the leaf's own."""
    if not told or told[-1][1].part != "leaf" or attached.part == "bloom":
        return False
    before, where = told[-1]
    end = max(before.end, where.end)
    between = mentions.talk.texts[end : colour.start]
    same = mentions.talk.sentence_number(before.start) == mentions.talk.sentence_number(
        colour.start
    )
    plain = (w for w in between if not w.endswith("ly"))
    return same and len(between) <= 3 and set(plain) <= {"with", "and", "a", "an", "its", "just"}


def _variegated(mentions: Mentions, colour: ColourHeard, end: int) -> bool:
    """ "the leaf is the thing there, it's variegated, | green": no other part between."""
    talk = mentions.talk
    low = max(0, colour.start - _REACH)
    spoken = [i for i in range(low, colour.start) if talk.texts[i] in _TWO_COLOURED]
    if not spoken:
        return False
    parts = [p for p in mentions.parts_in(spoken[-1], colour.start) if is_of_plant(mentions, p)]
    if any(p.label not in ("leaf", "edge", "centre") for p in parts):
        return False
    if {"flower", "flowers", "bloom", "blooms", "opens"} & set(talk.texts[spoken[-1] : end]):
        return False
    return talk.sentence_number(colour.start) - talk.sentence_number(spoken[-1]) <= 1
