"""Numbers told by their cross: "cross eleven, plant two", "cross B of 24, number eleven".

Crosses are told by a number in formats of three groups, by a letter where it stands between
year and place (24B07). Leaves alone "cross it with 23-04".
"""

from diary.reading.numbers.batches import batch_at, serial_at
from diary.reading.numbers.format import Shape, parse
from diary.reading.numbers.system import (
    NEAR_RECORD,
    ON_RECORD,
    PLAUSIBLE,
    NumberHeard,
    NumberSystem,
)
from diary.reading.numerals import whole
from diary.reading.tokens import Talk

_PLACES = frozenset({"plant", "number", "seedling", "pot"})
_CROSSES = frozenset({"cross", "family", "batch", "line"})


def of_cross(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "cross eleven, plant two", "year 24, cross 3", "plant four of cross B"."""
    return (
        _by_number(talk, at, system)
        or _letter_then_place(talk, at, system)
        or _place_then_letter(talk, at, system)
    )


def _by_number(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "cross eleven, plant two", "cross seven of twenty-five, plant two", "year 24, cross 3"."""
    texts = talk.texts
    first = batch_at(texts, at) if texts[at] == "year" else None
    at_cross = first.end if first else at
    named = texts[at_cross : at_cross + 1] == ("cross",)
    cross = whole(texts, at_cross + 1) if named else None
    if cross is None:
        return None
    j, year = cross.end, first.year[-2:] if first else None
    if texts[j : j + 1] == ("of",) and (batch := batch_at(texts, j + 1)):
        j, year = batch.end, batch.year[-2:]
    plant = whole(texts, j + (texts[j : j + 1] != () and texts[j] in _PLACES))
    if plant is None:
        return None
    groups = (str(int(cross.value)), str(int(plant.value)))
    if year is not None:
        shape = next((s for s in system.shapes if s.groups == 3 and not s.suffixed), None)
        return number_as_written(system, shape, (year, *groups), at, plant.end) if shape else None
    return cut_number(at, plant.end, groups)


def _letter_then_place(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "cross B of the same year, plant eleven", "24B, number eleven"; not "cross B is red"."""
    told = _letter_of_cross(talk, at, system)
    if told is None:
        return None
    letters, year, j = told
    if talk.texts[j : j + 3] == ("of", "the", "same"):
        j += 4  # "of the same year"
    elif talk.texts[j : j + 1] == ("of",) and (batch := batch_at(talk.texts, j + 1)):
        year, j = batch.year, batch.end
    if j >= len(talk.texts) or talk.texts[j] not in _PLACES:
        return None
    serial = serial_at(talk.texts, j + 1)
    return lettered(system, letters, serial[0], at, serial[1], year=year) if serial else None


def _place_then_letter(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "plant four of cross B", "number seventeen of the 24As"; not "two of the As"."""
    if talk.texts[at] not in _PLACES or (serial := serial_at(talk.texts, at + 1)) is None:
        return None
    digits, j = serial
    if j >= len(talk.texts) or talk.texts[j] not in ("of", "from", "in"):
        return None
    j += 1 + (talk.texts[j + 1 : j + 2] == ("the",))
    told = _letter_of_cross(talk, j, system)
    return lettered(system, told[0], digits, at, told[2], year=told[1]) if told else None


def _letter_of_cross(
    talk: Talk, at: int, system: NumberSystem
) -> tuple[str, str | None, int] | None:
    """Letters, year if told, and end of "cross B", "24B", "twenty-four A's", "24As"."""
    texts = talk.texts
    if at >= len(texts) or not any(shape.letter_between for shape in system.shapes):
        return None
    for shape in (s for s in system.shapes if s.letter_between):
        for lead in shape.leads:
            rest = texts[at].removeprefix(lead).rstrip("s")
            if texts[at].startswith(lead) and rest in system.prefixes:
                return rest.upper(), lead, at + 1
    year, j = None, at
    if texts[at] in _CROSSES:
        j = at + 1
    elif batch := batch_at(texts, at):
        year, j = batch.year, batch.end
    else:
        return None
    if j >= len(texts) or texts[j].rstrip("s") not in system.prefixes:
        return None
    return texts[j].rstrip("s").upper(), year, j + 1 + (texts[j + 1 : j + 2] == ("'s",))


def lettered(
    system: NumberSystem,
    letters: str,
    digits: str,
    start: int,
    end: int,
    *,
    year: str | None = None,
) -> NumberHeard | None:
    """The number of the batch of a letter: the one on record, else of that letter's last year."""
    tried: list[NumberHeard] = []
    for shape in system.shapes:
        if letters not in shape.prefixes or shape.suffixed or shape.groups > 2:
            continue
        leads = {
            parsed.groups[0]
            for number in system.seedlings
            if (parsed := parse(number)) and parsed.prefix == letters and len(parsed.groups) == 2
        }
        leads = {year} if year else leads
        fronts = [(lead,) for lead in sorted(leads)] if shape.groups == 2 else [()]
        tried += [
            number_as_written(system, shape, (*front, digits), start, end, prefix=letters)
            for front in fronts
        ]
    return next((n for n in tried if n.on_record), tried[-1] if tried else None)


def number_as_written(
    system: NumberSystem,
    shape: Shape,
    groups: tuple[str, ...],
    start: int,
    end: int,
    *,
    prefix: str = "",
) -> NumberHeard:
    number = shape.write(prefix, groups, "")
    known = system.seedling(number)
    return NumberHeard(
        start=start,
        end=end,
        number=known.number if known else number,
        score=ON_RECORD if known else NEAR_RECORD,
        on_record=known is not None,
        explicit=True,
    )


def cut_number(start: int, end: int, groups: tuple[str, ...]) -> NumberHeard:
    return NumberHeard(
        start=start,
        end=end,
        number="",
        score=PLAUSIBLE,
        on_record=False,
        explicit=True,
        cut=(groups, ""),
    )
