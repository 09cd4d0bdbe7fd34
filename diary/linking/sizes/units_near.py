"""Which unit a size said without one takes: from beside it, from after it, or from before.

"height thirty, spread twenty-five centimetres", "I read thirty-eight, no, thirty-six centimetres";
the unit of a pot ("in a seven-inch pot") is nobody else's.
"""

from bisect import bisect_left
from dataclasses import dataclass

from diary.linking.mended import mends_in
from diary.linking.sizes.pots_told_of import is_pot
from diary.reading.lengths import Length, bare_amount
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity
from diary.reading.vocabulary import Unit

_PUT_RIGHT_WITHIN = 14
_HEADING = frozenset("height spread width stem stems head truss flower leaf".split())
_UNIT_AHEAD = 6
_SIZING = frozenset(
    "size sizes sized measure measures measuring measurement measurements figure figures "
    "everything diameters lengths numbers give giving work working it all dimensions".split()
)


@dataclass(frozen=True, slots=True)
class UnitHeard:
    """A unit heard at a token, in a length or by itself."""

    at: int
    unit: Unit
    declared: bool


def of_a_pot(mentions: Mentions, length: Length) -> bool:
    """ "in a seven-inch pot": pots have units of their own."""
    if mentions.talk.texts[length.end : length.end + 1] in (("pot",), ("pots",)):
        return True
    return length.singular and is_pot(mentions, length)


def units_heard(mentions: Mentions, taken: set[int], pots: set[int]) -> list[UnitHeard]:
    """Every unit of the talk but of pots: of lengths, declared, or named by itself."""
    talk, table = mentions.talk, mentions.vocabulary.unit_table
    heard = []
    for f in mentions.vocabulary.units.find(talk.texts):
        if f.start in pots:
            continue
        low = max(talk.sentence(f.start)[0], f.start - 8)
        alone = f.start not in taken
        declared = alone and bool(_SIZING & set(talk.texts[low : f.start]))
        heard.append(
            UnitHeard(f.start, table[f.label], declared and "in" in talk.texts[low : f.start])
        )
    return heard


def unit_of(mentions: Mentions, length: Length, units: list[UnitHeard]) -> Unit | None:
    """The unit that the length was said in, or took."""
    heard = bisect_left(units, length.end, key=lambda h: h.at)
    return units[heard - 1].unit if heard else None


def put_right_after(mentions: Mentions, amount: Quantity, later: list[UnitHeard]) -> Unit | None:
    """ "I read thirty-eight, no, that was the wrong edge, thirty-six centimetres": its unit."""
    following = mentions.lengths_in(amount.end, amount.end + _PUT_RIGHT_WITHIN)
    if not following or mentions.vocabulary.counted.find(
        mentions.talk.texts, amount.end, following[0].start
    ):
        return None
    right = following[0]
    unit = next((h.unit for h in later if right.start < h.at < right.end), None)
    if unit is None or not 0.5 * right.mm <= amount.value * unit.mm <= 2 * right.mm:
        return None
    return unit if mends_in(mentions, amount.end, right.start) else None


def named_beside(mentions: Mentions, amount: Quantity, units: list[UnitHeard]) -> Unit | None:
    """ "height thirty, spread twenty-five centimetres": the unit of the size beside it."""
    near = mentions.lengths_in(amount.end, amount.end + 4)
    between = mentions.talk.texts[amount.end : near[0].start] if near else ()
    if not between or not _HEADING & set(between):
        return None
    return next((h.unit for h in units if near[0].start < h.at < near[0].end), None)


def named_ahead(mentions: Mentions, amount: Quantity, units: list[UnitHeard]) -> Unit | None:
    """ "a hundred and fifty-two across, and that's millimetres", "forty by fifty, in inches"."""
    talk = mentions.talk
    stop = talk.sentence(amount.start)[1]
    stop += mentions.vocabulary.units.at(talk.texts, stop) is not None  # "forty. Centimetres."
    stop = min(stop, amount.end + _UNIT_AHEAD + 4)
    return next(
        (
            h.unit
            for h in units
            if amount.end <= h.at < stop and bare_amount(talk.texts, h.at - 1) is None
        ),
        None,
    )
