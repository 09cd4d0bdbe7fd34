"""Numbers told by how long ago they were sown: "fourteen of last year", "nine o twenty-nine".

The day of the recording says which year is meant; "o" is "of" where a year in use follows.
Leaves alone amounts ("two of last year's cuttings died", "six from last year"): what is not
told as a number has to be on record.
"""

from diary.reading.numbers.batches import Batch, batch_at, serial_at
from diary.reading.numbers.pieces import ZERO
from diary.reading.numbers.system import NumberSystem
from diary.reading.numerals import whole
from diary.reading.tokens import Talk

_LONGEST_PLACE = 4
_OF = frozenset({"of", "o", "from"})
_HEARD = {"for": "four", "fore": "four", "to": "two", "too": "two", "ate": "eight", "won": "one"}
_SEASONS = frozenset("year season summer spring autumn sowing batch lot crop".split())


def place_and_year(talk: Talk, at: int, system: NumberSystem) -> tuple[Batch, str] | None:
    """The batch and the place of "fourteen of last year", "eleven o twenty-seven"."""
    texts = talk.texts
    for j in range(at + 1, min(at + _LONGEST_PLACE, len(texts))):
        if texts[j] not in _OF:
            continue
        place = _place(texts[at:j])
        if place is None or talk.between(at, j, (".", "?", ",")):
            continue
        back = _years_back(texts, j + 1)
        if back is not None and system.year is not None:
            return Batch(at, back[1], str(system.year - back[0]), False), place
        batch = batch_at(texts, j + 1) if texts[j] == "o" else None
        if batch is not None and batch.year[-2:] in system.years and place[-2:] not in system.years:
            return Batch(at, batch.end, batch.year, False), place
    return None


def _place(words: tuple[str, ...]) -> str | None:
    """ "fourteen", "oh for": the digits of all the words."""
    first = words[:1] and words[0] in ZERO
    heard = tuple(_HEARD.get(w, w) if n and first else w for n, w in enumerate(words))
    serial = serial_at(heard, 0)
    return serial[0] if serial is not None and serial[1] == len(heard) else None


def _years_back(texts: tuple[str, ...], at: int) -> tuple[int, int] | None:
    """How many years "last year", "three year back", "the year before last" are, and the end."""
    at += texts[at : at + 1] == ("the",)
    if texts[at : at + 3] == ("year", "before", "last"):
        return 2, at + 3
    if texts[at : at + 1] in (("last",), ("this",)):
        if texts[at + 1 : at + 2] == () or texts[at + 1] not in _SEASONS:
            return None
        return int(texts[at] == "last"), at + 2
    many = whole(texts, at)
    if many is None or texts[many.end : many.end + 1] not in (("year",), ("years",)):
        return None
    ended = texts[many.end + 1 : many.end + 2] in (("back",), ("ago",), ("since",))
    return (int(many.value), many.end + 2) if ended else None
