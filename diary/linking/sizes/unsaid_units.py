"""Sizes said without a unit, which they take from the length before them or from the talk.

"and twenty-five across", "the head's about nine", "no, call it five and a half"; where the
speaker has said that sizes are in inches, "a good three, is that".
"""

from bisect import bisect_left
from collections.abc import Iterator

from diary.linking.mended import mends_in, told_otherwise
from diary.linking.sizes.beside_amounts import (
    broken,
    by_instrument,
    for_a_part,
    is_over,
    many_before,
    no_other_thing,
    noun_right_before,
    told_of_it,
)
from diary.linking.sizes.second_look import looked_again
from diary.linking.sizes.units_near import (
    UnitHeard,
    named_ahead,
    named_beside,
    of_a_pot,
    put_right_after,
    unit_of,
    units_heard,
)
from diary.reading.lengths import Length, bare_amount
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity
from diary.reading.vocabulary import Unit

_NEAR = 22
_REPAIR_REACH = 9
_SLIP_REACH = 16
_ANEW = frozenset({"'s", "is", "it", "nearer", "closer", "like", "was", "to", "at"})
_UNITS_BACK = 40  # sizes back, the unit a bare size may be meant in
_WEIGHTY = frozenset("good full bare scant clear nobbut barely strong".split())
_NEARER = frozenset({"nearer", "closer"})
# Millimetres between which a size can lie: across a flower or a plant, and tall.
_SPAN = {"across": (8.0, 2500.0), "tall": (20.0, 3500.0), "long": (5.0, 1500.0), "": (8.0, 320.0)}
_USUAL = {"across": (12.0, 300.0), "tall": (50.0, 2000.0), "long": (30.0, 900.0), "": (12.0, 260.0)}


def without_unit(mentions: Mentions, lengths: list[Length]) -> list[Length]:
    """The sizes whose unit is not said, in order."""
    taken = {i for x in lengths for i in range(x.start, x.end)}
    pots = [x for x in lengths if of_a_pot(mentions, x)]
    units = units_heard(mentions, taken, {i for x in pots for i in range(x.start, x.end)})
    potted = {x.start for x in pots}
    lengths = [x for x in lengths if x.start not in potted]
    found: list[Length] = []
    at = 0
    for amount in _amounts(mentions, taken):
        while at < len(lengths) and lengths[at].end <= amount.start:
            at += 1
        before = [*lengths[max(0, at - 1) : at], *found[-1:]]
        previous = max(before, key=lambda x: x.end, default=None)
        again = previous is not None and looked_again(mentions, amount, previous)
        unit = _unit_for(mentions, amount, previous, units, again=again)
        if unit is not None:
            found.append(
                Length(
                    start=amount.start,
                    end=amount.end,
                    mm=round(amount.value * unit.mm, 2),
                    metric=unit.metric,
                    singular=False,
                    unit_said=False,
                    again=again,
                )
            )
    return found


def _amounts(mentions: Mentions, taken: set[int]) -> Iterator[Quantity]:
    """Amounts that stand outside of lengths, names and numbers."""
    texts = mentions.talk.texts
    closed = taken | {i for i, masked in enumerate(mentions.masked) if masked}
    i = 0
    while i < len(texts):
        alone = texts[i] == "one" and texts[i + 1 : i + 2] != ("hundred",)
        amount = None if i in closed or alone else bare_amount(texts, i)
        if amount is None or any(j in closed for j in range(amount.start, amount.end)):
            i += 1
            continue
        yield amount
        i = amount.end


def _unit_for(
    mentions: Mentions,
    amount: Quantity,
    previous: Length | None,
    units: list[UnitHeard],
    *,
    again: bool,
) -> Unit | None:
    """The unit that the amount is meant in, if it is a size at all."""
    talk = mentions.talk
    heard = bisect_left(units, amount.start, key=lambda h: h.at)
    later, units = units[heard : heard + 4], units[:heard]
    if talk.texts[amount.end : amount.end + 1] == ("by",):
        second = [h for h in later if amount.end < h.at <= amount.end + 6]
        if second and any(x.start == amount.end + 1 for x in mentions.lengths):
            return second[0].unit  # "thirty by forty-five centimetres"
    if previous is not None and talk.texts[previous.end : amount.start] == ("by",):
        return unit_of(mentions, previous, units)  # "seventeen centimetres by twenty"
    closed = talk.tokens[amount.end - 1].mark in (".", "?")  # "the average of three. In height ..."
    after = None if closed else mentions.vocabulary.dimensions.at(talk.texts, amount.end)
    way = after.label.split()[-1] if after is not None else ""
    near = previous is not None and amount.start - previous.end < _NEAR
    ends = is_over(mentions, amount.end)
    headed = noun_right_before(mentions, amount.start) and ends
    mended = near and previous is not None and _mends(mentions, amount, previous)
    mended = again or (mended and (ends or bool(way) or no_other_thing(mentions, amount)))
    now = talk.texts[amount.end : amount.end + 1] in (("now",), ("today",))
    now = now or _otherwise(mentions, amount, previous)
    fraction = near and (broken(amount) or now) and ends and told_of_it(mentions, amount.start)
    if near and previous is not None and (after or headed or mended or fraction):
        unit = unit_of(mentions, previous, units)
        ratio = amount.value * unit.mm / max(previous.mm, 0.1) if unit is not None else 0.0
        like = (0.35 if again else 0.6) <= ratio <= (2.6 if again or now else 1.7)
        if (
            unit is not None
            and (like or not (mended or now))
            and 1 <= amount.value <= 400 / unit.mm * 10
        ):
            return unit
    placed = for_a_part(mentions, amount.end)
    if near and previous is not None and placed:
        return unit_of(mentions, previous, units)
    if (put_right := put_right_after(mentions, amount, later)) and (ends or bool(way)):
        return put_right
    ahead = named_ahead(mentions, amount, later) if after or headed else None
    if ahead is None and headed:
        ahead = named_beside(mentions, amount, units=later)
    if ahead is not None:
        return ahead
    declared = next((h.unit for h in reversed(units) if h.declared), None)
    weighty = ends and bool(_WEIGHTY & set(talk.texts[max(0, amount.start - 2) : amount.start]))
    sure = headed and (broken(amount) or not many_before(mentions, amount.start))
    if declared is not None and (after or sure or weighty):
        return declared if _in(_SPAN[way], amount.value * declared.mm) else None
    if not after and not (headed and broken(amount)) and not by_instrument(mentions, amount):
        return None
    used = [h.unit for h in units[: -_UNITS_BACK - 1 : -1]]
    if not used and by_instrument(mentions, amount):
        return _on_callipers(mentions, amount)
    return next((u for u in used if _in(_USUAL[way], amount.value * u.mm)), None)


def _otherwise(mentions: Mentions, amount: Quantity, previous: Length | None) -> bool:
    """ "last year they were four centimetres, this year they're five", "should be five, it's four".

    The one before is of another year, or only wanted.
    """
    talk = mentions.talk
    if previous is None:
        return False
    low = talk.sentence(previous.start)[0]
    then = talk.texts[previous.end : amount.start]
    if any(then[i : i + 2] in _THIS_YEAR for i in range(len(then))):
        return True
    if told_otherwise(mentions, previous, amount.start):
        return True
    turned = bool({"and", "but"} & set(then)) or talk.sentence(amount.start)[0] >= previous.end
    return turned and bool(mentions.vocabulary.size_limits.find(talk.texts, low, previous.start))


_THIS_YEAR = (("this", "year"), ("this", "time"), ("this", "season"), ("this", "morning"))


def _on_callipers(mentions: Mentions, amount: Quantity) -> Unit | None:
    """ "fifty-eight on the callipers", before any unit was said: they read in millimetres."""
    texts, table = mentions.talk.texts, mentions.vocabulary.unit_table
    near = set(texts[max(0, amount.start - 8) : amount.end + 4])
    if not near & _CALLIPERS or not _USUAL[""][0] < amount.value < _USUAL[""][1]:
        return None
    return next((u for u in table.values() if u.name == "millimetre"), None)


_CALLIPERS = frozenset({"callipers", "calipers", "calliper", "caliper", "gauge"})


def _in(span: tuple[float, float], mm: float) -> bool:
    return span[0] <= mm <= span[1]


def _mends(mentions: Mentions, amount: Quantity, previous: Length) -> bool:
    """ "no, call it five and a half": a second thought about the length before."""
    talk = mentions.talk
    if talk.between(previous.end, amount.start, ("?",)):
        return False
    if talk.texts[amount.end : amount.end + 1] in (("'s",), ("is",), ("was",)):
        return False  # "no, eighteen's the long way, it's fourteen wide"
    if mentions.vocabulary.counted.find(talk.texts, previous.end, amount.start):
        return False  # "count them buds, I make it twenty-three"
    further = talk.sentence_number(amount.start) - talk.sentence_number(previous.start)
    cut = any(
        r.start <= amount.start < r.end
        for r in mentions.refs_in(amount.start - 8, amount.start + 1)
        if r.cut is not None
    )
    if talk.texts[amount.start - 1] in _NEARER and further <= 1:
        return True
    fragment = talk.sentence(amount.start) == (amount.start, amount.end)
    cut = cut and not broken(amount)
    if talk.punctuated and further > (0 if cut else 2 if fragment else 1):
        return False
    if talk.texts[amount.start - 1] in _NEARER and further <= 1:
        return True
    if talk.texts[amount.end : amount.end + 1] in (("actually",), ("sorry",)) and further <= 1:
        return True  # "it's 2 inches it's 2 and a quarter actually"
    repairs = [r for r in mends_in(mentions, previous.end, amount.start) if r[1] <= amount.start]
    if not repairs:
        return False
    since = amount.start - repairs[-1][1]
    if since <= 1:
        return True
    low, high = talk.clause(amount.start)
    anew = amount.start - low <= 2 and (amount.end >= high - 1 or not talk.punctuated)
    if talk.texts[amount.start - 1] in _ANEW and anew:
        return since <= _SLIP_REACH  # "I'd got it on the pot rim, it's twelve"
    return since <= _REPAIR_REACH and (anew or not talk.punctuated)
