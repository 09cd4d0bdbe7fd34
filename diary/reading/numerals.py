"""Spoken quantities: "four and a half", "half a dozen", "forty-one", "3 ½", "an inch and ...".

Only amounts; the parts of a seedling number are read in seedling_numbers.py, because
"twenty-three oh four" is two numbers and no sum.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

ONES = {
    word: n
    for n, word in enumerate(
        "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen "
        "fifteen sixteen seventeen eighteen nineteen".split()
    )
}
TENS = {
    word: 10 * n
    for n, word in enumerate("twenty thirty forty fifty sixty seventy eighty ninety".split(), 2)
} | {"fourty": 40}
_DENOMINATORS = {
    "half": 2,
    "halves": 2,
    "third": 3,
    "thirds": 3,
    "quarter": 4,
    "quarters": 4,
    "fifth": 5,
    "fifths": 5,
    "eighth": 8,
    "eighths": 8,
    "sixteenth": 16,
    "sixteenths": 16,
}
_DECIMAL = re.compile(r"^\d+(?:\.\d+)?$")
_POINTS = frozenset({"point", "comma", "dot"})  # "three comma four", as many a language has it
_FRACTION = re.compile(r"^(\d+)/(\d+)$")


@dataclass(frozen=True, slots=True)
class Quantity:
    """An amount said at tokens start..end-1."""

    start: int
    end: int
    value: float


def whole(texts: Sequence[str], at: int) -> Quantity | None:
    """A whole number in digits or words that begins at the token."""
    if at >= len(texts):
        return None
    text = texts[at]
    if text.isdecimal() and len(text) <= 6:
        return Quantity(at, at + 1, int(text))
    value, i = _below_hundred(texts, at)
    if i == at:
        if text != "a" or at + 1 >= len(texts) or texts[at + 1] not in ("hundred", "thousand"):
            return None
        value, i = 1, at + 1
    if i < len(texts) and texts[i] == "hundred":
        value, i = value * 100, i + 1
        after = i + 1 if i < len(texts) and texts[i] == "and" else i
        rest, end = _below_hundred(texts, after)
        if end > after:
            value, i = value + rest, end
    elif i < len(texts) and texts[i] == "thousand":
        value, i = value * 1000, i + 1
        after = i + 1 if i < len(texts) and texts[i] == "and" else i
        rest, end = _below_hundred(texts, after)
        if end > after and texts[end : end + 1] in (("hundred",), ["hundred"]):
            hundreds = whole(texts, after)  # "two thousand three hundred and twelve"
            assert hundreds is not None
            rest, end = int(hundreds.value), hundreds.end
        if end > after:
            value, i = value + rest, end
    return Quantity(at, i, value)


def _below_hundred(texts: Sequence[str], at: int) -> tuple[int, int]:
    if at < len(texts) and texts[at] in TENS:
        value = TENS[texts[at]]
        if at + 1 < len(texts) and 0 < ONES.get(texts[at + 1], 0) < 10:
            return value + ONES[texts[at + 1]], at + 2
        return value, at + 1
    if at < len(texts) and texts[at] in ONES:
        return ONES[texts[at]], at + 1
    return 0, at


def fraction(texts: Sequence[str], at: int) -> Quantity | None:
    """ "a half", "three quarters", "five eighths", "1/2" at the token."""
    if at >= len(texts):
        return None
    if written := _FRACTION.match(texts[at]):
        if int(written[2]):
            return Quantity(at, at + 1, int(written[1]) / int(written[2]))
        return None
    if texts[at] in ("half", "quarter", "third"):
        return Quantity(at, at + 1, 1 / _DENOMINATORS[texts[at]])
    top, i = 1, at
    if texts[at] in ("a", "an", "one"):
        i = at + 1
    elif texts[at] in ONES or texts[at].isdecimal():
        top, i = int(texts[at]) if texts[at].isdecimal() else ONES[texts[at]], at + 1
    if i > at and i < len(texts) and texts[i] in _DENOMINATORS:
        return Quantity(at, i + 1, top / _DENOMINATORS[texts[i]])
    return None


def quantity(texts: Sequence[str], at: int) -> Quantity | None:
    """The longest amount that begins at the token, fractions and dozens included."""
    if at >= len(texts):
        return None
    if tuple(texts[at : at + 3]) == ("half", "a", "dozen"):
        return Quantity(at, at + 3, 6)
    if tuple(texts[at : at + 2]) == ("half", "dozen"):
        return Quantity(at, at + 2, 6)
    if tuple(texts[at : at + 4]) == ("a", "baker", "'s", "dozen"):
        return Quantity(at, at + 4, 13)
    if tuple(texts[at : at + 3]) == ("a", "score", "of"):
        return Quantity(at, at + 3, 20)
    if tuple(texts[at : at + 2]) == ("a", "dozen"):
        return Quantity(at, at + 2, 12)
    if texts[at] == "dozen":
        return Quantity(at, at + 1, 12)
    if tuple(texts[at : at + 3]) == ("a", "pair", "of"):
        return Quantity(at, at + 3, 2)
    if tuple(texts[at : at + 2]) == ("a", "couple"):
        end = at + 3 if at + 2 < len(texts) and texts[at + 2] == "of" else at + 2
        return Quantity(at, end, 2)
    if _DECIMAL.match(texts[at]) and "." in texts[at]:
        return Quantity(at, at + 1, float(texts[at]))
    base = whole(texts, at)
    if base is None:
        return fraction(texts, at)
    i = base.end
    if i < len(texts) and texts[i] == "dozen":
        return Quantity(at, i + 1, base.value * 12)
    if i < len(texts) and texts[i] == "odd" and base.value >= 10:
        return Quantity(at, i + 1, base.value)  # "thirty odd centimetres"
    if i < len(texts) and texts[i] in _POINTS:
        digits, j = "", i + 1
        while j < len(texts) and (ONES.get(texts[j], 10) < 10 or texts[j] in ("oh", "nought")):
            digits += str(ONES.get(texts[j], 0))
            j += 1
        if not digits and j < len(texts) and texts[j].isdecimal():
            digits, j = texts[j], j + 1
        if digits:
            return Quantity(at, j, float(f"{int(base.value)}.{digits}"))
    extra = fraction(texts, i + 1) if i < len(texts) and texts[i] == "and" else None
    if extra is None and i < len(texts):
        near = fraction(texts, i)
        extra = near if (near and near.end - near.start > 1) or _is_written(texts, i) else None
    if extra is not None and extra.value < 1:
        return Quantity(at, extra.end, base.value + extra.value)
    top = fraction(texts, at)
    return top if top is not None and top.end > base.end else base


def _is_written(texts: Sequence[str], at: int) -> bool:
    return bool(_FRACTION.match(texts[at]))
