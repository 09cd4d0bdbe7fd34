"""Numbers told by their batch: "number 14 of the 23s", "cross eleven, plant two"."""

import re
from collections.abc import Sequence

from diary.reading.number_format import Shape
from diary.reading.number_system import NEAR_RECORD, ON_RECORD, PLAUSIBLE, NumberHeard, NumberSystem
from diary.reading.numerals import ONES, TENS, whole
from diary.reading.tokens import Talk

_COUNTED = frozenset(
    "seed seeds seedlings plants pots of buds heads cuttings flowers blooms in were was"
    " came".split()
)


def number_of(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "number 14 of the 23s", "number 24 of 23", "plant three of cross six"."""
    texts = talk.texts
    if texts[at] == "cross" and (cross := whole(texts, at + 1)) is not None:
        j = (
            cross.end + 1
            if texts[cross.end : cross.end + 1] in (("plant",), ("number",), ("seedling",))
            else cross.end
        )
        plant = whole(texts, j) if j > cross.end else None
        if plant is not None:
            return NumberHeard(
                start=at,
                end=plant.end,
                number="",
                score=PLAUSIBLE,
                on_record=False,
                explicit=True,
                cut=((str(int(cross.value)), str(int(plant.value))), ""),
            )
    i = at + 1 if texts[at] in ("number", "plant", "seedling") else at
    serial = whole(texts, i)
    if serial is None or serial.end >= len(texts) or texts[serial.end] != "of":
        return None
    j = serial.end + 1
    if texts[j : j + 2] == ("the", "same") and i > at:
        return NumberHeard(
            start=at,
            end=j + 2,
            number="",
            score=PLAUSIBLE,
            on_record=False,
            explicit=True,
            cut=((str(int(serial.value)),), ""),
        )
    if j < len(texts) and texts[j] == "the":
        j += 1
    if j < len(texts) and any(texts[j].upper() in shape.prefixes for shape in system.shapes):
        j += 1
    lead, end = _batch(texts, j)
    if lead is None or (serial.value == 1 and i == at):
        return None
    if i == at and texts[end : end + 1] and texts[end] in _COUNTED:
        return None  # "8 of the 20 seeds"
    best: NumberHeard | None = None
    for shape in system.shapes:
        if shape.groups != 2 or shape.suffixed:
            continue
        year_first = year_column(shape) == 0
        year = lead if (shape.widths[0 if year_first else 1][1] == len(lead)) else f"20{lead}"
        groups = (year, str(int(serial.value))) if year_first else (str(int(serial.value)), year)
        prefix = min(shape.prefixes) if len(shape.prefixes) == 1 else ""
        number = shape.write(prefix, groups, "")
        known = system.seedling(number) is not None
        score = ON_RECORD if known else NEAR_RECORD
        if best is None or score > best.score:
            best = NumberHeard(
                start=at, end=end, number=number, score=score, on_record=known, explicit=True
            )
    if best is not None and i == at and texts[j - 1] != "the" and not best.on_record:
        return None
    return best


def _batch(texts: Sequence[str], at: int) -> tuple[str | None, int]:
    """A year's batch ("23s", "twenty-threes", "23", "twenty three") and its end."""
    if at >= len(texts):
        return None, at
    if re.fullmatch(r"'?\d{2}(\d{2})?s?", texts[at]):
        end = at + 2 if texts[at + 1 : at + 2] == ("'s",) else at + 1
        return texts[at].strip("'s"), end
    if texts[at] in TENS:
        tens = TENS[texts[at]]
        ones = ONES.get(texts[at + 1].removesuffix("s")) if at + 1 < len(texts) else None
        if ones is None and at + 1 < len(texts) and texts[at + 1] == "sixes":
            ones = 6
        if ones is not None and 0 < ones < 10:
            return str(tens + ones), at + 2
        return str(tens), at + 1
    return None, at


def year_column(shape: Shape) -> int:
    """Which group is the year: the one with fewer different values; the first if even."""
    return 0 if len(shape.leads) <= len(shape.lasts) else 1
