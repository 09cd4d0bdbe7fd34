"""Lengths said aloud, in millimetres: units, ranges, "two foot six", "an inch and a quarter".

Catches "between three and three and a half inches" (midpoint) and "call it a metre ten".
Leaves alone amounts of anything else ("a five litre pot" has no unit of length).
Ranges are reported as their midpoint (the extraction contract).
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from diary.reading.misheard.numbers import heard_as_number
from diary.reading.numerals import Quantity, fraction, quantity, whole
from diary.reading.vocabulary import Unit, Vocabulary

_FILLERS = frozenset("about around roughly nearly of maybe say um er uh good full just".split())
_BARE_LEADS = tuple((w,) for w in ("'s", "is", "'re", "about", "now", "at", "be", "was"))
_GROWN = frozenset(
    "gone went grown grew shot jumped risen rose stretched swollen swelled crept up doubled "
    "expanded widened lengthened come on along opened bulked filled "
    "thickened made progressed".split()
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Length:
    """A length at tokens start..end-1. `unit_said` is False where it is taken from before.

    `again` says that it is told in place of the length before it.
    """

    start: int
    end: int
    mm: float
    metric: bool
    singular: bool  # "a six inch ...": the unit in the singular after more than one
    unit_said: bool = True
    again: bool = False


def find_lengths(
    texts: Sequence[str], vocabulary: Vocabulary, closed: Sequence[bool] = ()
) -> tuple[Length, ...]:
    """All lengths with a unit, in order, not overlapping, none from within a closed token."""
    found: list[Length] = []
    at = 0
    while at < len(texts):
        inside = at < len(closed) and closed[at]
        length = None if inside else _length(texts, at, vocabulary)
        if length is None:
            at += 1
            continue
        length = _to_larger(texts, length, vocabulary)
        found.append(length)
        at = length.end
    return tuple(found)


def _to_larger(texts: Sequence[str], low: Length, vocabulary: Vocabulary) -> Length:
    """ "an inch and a half to two inches", "a foot to eighteen inches": the midpoint."""
    if low.end + 1 >= len(texts) or texts[low.end] not in ("to", "or"):
        return low
    high = _length(texts, low.end + 1, vocabulary)
    bare = quantity(texts, low.end + 1) if high is None else None
    unit = _unit(texts, low.end - 1, vocabulary)
    if bare is not None and unit is not None and low.mm < bare.value * unit[0].mm <= 2.5 * low.mm:
        middle = (low.mm + bare.value * unit[0].mm) / 2  # "an inch or two", "two inches to three"
        return replace(low, end=bare.end, mm=round(middle, 2))
    if high is None or high.metric != low.metric or not low.mm < high.mm <= 2.5 * low.mm:
        return low
    return replace(low, end=high.end, mm=round((low.mm + high.mm) / 2, 2), metric=high.metric)


def _length(texts: Sequence[str], at: int, vocabulary: Vocabulary) -> Length | None:
    if texts[at] == "between":
        return _range(texts, at, at + 1, ("and",), vocabulary)
    if texts[at] in ("a", "an") and (unit := _unit(texts, at + 1, vocabulary)):
        return _finish(texts, at, Quantity(at, at + 1, 1), unit[0], unit[1], vocabulary)
    if inch := _unit_first(texts, at, vocabulary):
        return inch
    if _has_grown(texts, at) and (now := _range(texts, at, at, ("to",), vocabulary, reached=True)):
        return now
    if spread := _range(texts, at, at, ("to", "or", "and"), vocabulary):
        return spread
    amount = _amount(texts, at)
    if amount is None:
        return _misheard(texts, at, vocabulary)
    unit = _unit(texts, _of_an(texts, amount.end), vocabulary)
    if unit is None:
        return None
    return _finish(texts, at, amount, unit[0], unit[1], vocabulary)


def _has_grown(texts: Sequence[str], at: int) -> bool:
    """ "it's gone from twenty centimetres to thirty-one": the last holds, not the midpoint."""
    return texts[at - 1 : at] == ("from",) and bool(_GROWN & set(texts[max(0, at - 5) : at - 1]))


def _misheard(texts: Sequence[str], at: int, vocabulary: Vocabulary) -> Length | None:
    """ "for inches high", "to and a half centimetres"; not "to an inch"."""
    amount = heard_as_number(texts, at)
    unit = _unit(texts, amount.end, vocabulary) if amount is not None else None
    if amount is None or unit is None:
        return None
    return _finish(texts, at, amount, unit[0], unit[1], vocabulary)


def _unit_first(texts: Sequence[str], at: int, vocabulary: Vocabulary) -> Length | None:
    """ "inch and three-quarter", "the inch and a quarter one": one and a fraction."""
    unit = _unit(texts, at, vocabulary)
    if unit is None or texts[at] in ("mm", "cm") or texts[at].endswith("s"):
        return None
    if unit[0].name in ("foot", "inch") and _measures_one(texts, at, unit[1]):
        return Length(start=at, end=unit[1], mm=unit[0].mm, metric=False, singular=True)
    if at and (texts[at - 1] in ("a", "an", "per", "every") or quantity(texts, at - 1)):
        return None
    if texts[unit[1] : unit[1] + 1] != ("and",):
        return None
    extra = fraction(texts, unit[1] + 1)
    if extra is None or extra.value >= 1 or _unit(texts, extra.end, vocabulary):
        return None
    return Length(
        start=at,
        end=extra.end,
        mm=round((1 + extra.value) * unit[0].mm, 2),
        metric=unit[0].metric,
        singular=True,
    )


def _measures_one(texts: Sequence[str], at: int, end: int) -> bool:
    """ "on foot-long stems", "inch-wide pips"; not "a square foot wide", "two foot long"."""
    before = texts[at - 1] if at else ""
    free = not quantity(texts, at - 1) if at else True
    return (
        free
        and before not in ("a", "an", "the", "square", "per", "half", "every", "own")
        and end < len(texts)
        and texts[end] in ("long", "wide", "high", "tall", "across")
    )


def _amount(texts: Sequence[str], at: int) -> Quantity | None:
    """An amount, or two with a dash in digits ("3-4"), as their midpoint."""
    if at < len(texts) and "-" in texts[at]:
        low, _, high = texts[at].partition("-")
        if (
            low.replace(".", "").isdecimal()
            and high.replace(".", "").isdecimal()
            and float(low) < float(high) < 100
        ):
            return Quantity(at, at + 1, (float(low) + float(high)) / 2)
    return quantity(texts, at)


def _of_an(texts: Sequence[str], at: int) -> int:
    """Past "of an" and "an" in "three quarters of an inch" and "half an inch"."""
    i = at + 1 if at < len(texts) and texts[at] == "of" else at
    return i + 1 if i < len(texts) and texts[i] in ("a", "an") else at


def _unit(texts: Sequence[str], at: int, vocabulary: Vocabulary) -> tuple[Unit, int] | None:
    found = vocabulary.units.at(texts, at)
    return (vocabulary.unit_table[found.label], found.end) if found else None


def _range(
    texts: Sequence[str],
    start: int,
    at: int,
    joins: tuple[str, ...],
    vocabulary: Vocabulary,
    *,
    reached: bool = False,
) -> Length | None:
    """A low and a high amount: their midpoint, or the high one where it was `reached`."""
    low = _amount(texts, at)
    if low is None:
        return None
    i = low.end
    low_unit = _unit(texts, i, vocabulary)
    if low_unit:
        i = low_unit[1]
    if i >= len(texts) or texts[i] not in joins:
        return None
    if texts[i] == "and" and start == at:
        return None
    i += 1
    while i < len(texts) and texts[i] in _FILLERS:
        i += 1
    high = _amount(texts, i)
    if high is None or high.value <= low.value:
        return None
    unit = _unit(texts, high.end, vocabulary) or low_unit
    if unit is None or (low_unit is not None and unit[0] != low_unit[0]):
        return None
    end = _unit(texts, high.end, vocabulary)
    value = high.value if reached else (low.value + high.value) / 2
    middle = Quantity(start, high.end, value)
    return _finish(texts, start, middle, unit[0], end[1] if end else high.end, vocabulary)


def _finish(
    texts: Sequence[str],
    start: int,
    amount: Quantity,
    unit: Unit,
    end: int,
    vocabulary: Vocabulary,
) -> Length:
    mm, i = amount.value * unit.mm, end
    extra = fraction(texts, i + 1) if i < len(texts) and texts[i] == "and" else None
    if extra is not None and extra.value < 1 and not _unit(texts, extra.end, vocabulary):
        mm, i = mm + extra.value * unit.mm, extra.end
    elif i < len(texts) and unit.name in ("foot", "metre"):
        a_thing = texts[i] == "one" and tuple(texts[start - 1 : start]) not in _BARE_LEADS
        rest = None if a_thing else quantity(texts, i)  # "a four-foot one"; but "it's one foot one"
        if rest is not None and unit.name == "foot" and 0 < rest.value < 12:
            inner = _unit(texts, rest.end, vocabulary)
            if inner is None or inner[0].name == "inch":
                mm += rest.value * vocabulary.unit_table["inch"].mm
                i = inner[1] if inner else rest.end
        elif rest is not None and unit.name == "metre" and 1 < rest.value < 100:
            inner = _unit(texts, rest.end, vocabulary)
            if inner is None or inner[0].name == "centimetre":
                mm += rest.value * vocabulary.unit_table["centimetre"].mm
                i = inner[1] if inner else rest.end
    said = texts[end - 1]
    singular = (
        amount.value > 1 and not said.endswith("s") and said not in ("feet", "mm", "cm", "mil")
    )
    return Length(start=start, end=i, mm=round(mm, 2), metric=unit.metric, singular=singular)


def bare_amount(texts: Sequence[str], at: int) -> Quantity | None:
    """An amount without a unit at the token, ranges as midpoints ("three to four")."""
    low = _amount(texts, at)
    if low is None:
        return None
    if low.end + 1 < len(texts) and texts[low.end] in ("to", "or"):
        high = _amount(texts, low.end + 1)
        if high is not None and high.value > low.value:
            return Quantity(at, high.end, (low.value + high.value) / 2)
    return low


def whole_number(texts: Sequence[str], at: int) -> Quantity | None:
    """A whole number at the token: what counts are made of."""
    for special in (quantity(texts, at), whole(texts, at)):
        if special is not None and special.value == int(special.value):
            return special
    return None
