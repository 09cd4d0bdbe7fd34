"""Numbers that captions write as the word they sound like: "for inches", "to trusses out".

Only where nothing but a number can stand: "it's ate inches tall", "to and a half centimetres";
not "it goes to the glass", "from inches to centimetres", "from head to foot".
"""

from collections.abc import Sequence

from diary.reading.numerals import Quantity, fraction

HOMOPHONES = {
    "for": 4,
    "fore": 4,
    "to": 2,
    "too": 2,
    "ate": 8,
    "won": 1,
    "tree": 3,
    "sex": 6,
    "tin": 10,
}
_CHANGED = frozenset(
    "from convert converted converting change changed changing switch switched switching over "
    "back in into use using used translate turn turned go gone went going than head top".split()
)


def heard_as_number(texts: Sequence[str], at: int) -> Quantity | None:
    """ "for", "to and a half": the number that the word sounds like, with its fraction.

    The caller looks at what follows: only a unit, or a thing counted, makes it one.
    """
    if at >= len(texts) or texts[at] not in HOMOPHONES:
        return None
    if texts[at] in ("to", "too", "for") and _CHANGED & set(texts[max(0, at - 2) : at]):
        return None
    value = HOMOPHONES[texts[at]]
    part = fraction(texts, at + 2) if texts[at + 1 : at + 2] == ("and",) else None
    if part is not None and part.value < 1:
        return Quantity(at, part.end, value + part.value)
    return Quantity(at, at + 1, value)
