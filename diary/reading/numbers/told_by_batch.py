"""Numbers told by their batch: "number 14 of the 23s", "the 2023 sowing, number 14".

Also "eight of twenty-five" where numbers are place and year, "twelve of the same year" (cut
short), "cross eleven, plant two". Leaves alone "8 of the 20 seeds", "one of the twenty-threes".
"""

from collections.abc import Iterator

from diary.reading.numbers.batches import Batch, batch_at, lettered_at, letters_at, serial_at
from diary.reading.numbers.format import Shape
from diary.reading.numbers.system import NumberHeard, NumberSystem
from diary.reading.numbers.told_by_cross import cut_number, lettered, number_as_written, of_cross
from diary.reading.numbers.years_back import place_and_year
from diary.reading.tokens import COMMA, Talk

_COUNTED = frozenset(
    "seed seeds seedlings plants pots of buds heads cuttings flowers blooms in were was "
    "came come germinated survived left have had are did petals leaves to too pips "
    "plugs judges members people visitors entries tries ones weeks days years labels tickets "
    "votes points stems shoots trusses umbels florets pods cells corms bulbs tubers offsets crowns "
    "trays centimetre centimetres centimeter centimeters cm millimetre millimetres mil inch inches "
    "litre litres".split()
)
_MANY = frozenset("have had are were came died survived went got look show need want".split())
_LIKEWISE = frozenset({"also", "again", "still", "likewise", "too"})
_NUMBERED = frozenset({"number", "plant", "seedling", "no", "pot"})
_OUT_OF = (("of",), ("from",), ("out", "of"), ("in",), ("off",), ("among",), ("over",), ("for",))
_SPAN = frozenset({"year", "batch", "sowing", "lot", "cross", "crop", "vintage", "season"})
_PLACES = frozenset({"plant", "number", "seedling"})


def number_of(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """A number told with its batch that begins at the token, if any."""
    return (
        of_cross(talk, at, system)
        or _of_same(talk, at)
        or _of_letter(talk, at, system)
        or _of_years_back(talk, at, system)
        or _of_batch(talk, at, system)
        or _batch_first(talk, at, system)
    )


def _of_same(talk: Talk, at: int) -> NumberHeard | None:
    """ "twelve of the same year", "number nine of the same", "07, same year"."""
    texts = talk.texts
    i = at + (texts[at] in _NUMBERED)
    serial = serial_at(texts, i)
    if serial is None:
        return None
    digits, j = serial
    of = texts[j : j + 1] in (("of",), ("from",), ("in",))
    if not of and not (talk.tokens[j - 1].mark == COMMA and texts[j : j + 1] == ("same",)):
        return None
    j += of
    the = texts[j : j + 1] == ("the",)
    j += the
    if texts[j : j + 2] in (("that", "same"), ("this", "same"), ("the", "same")):
        j += 1  # "plant five of that same sowing"
    if texts[j : j + 1] != ("same",) and not (
        i > at and texts[j : j + 1] in (("that",), ("this",))
    ):
        return None  # "I sowed sixteen of that cross"
    spanned = texts[j + 1 : j + 2] != () and texts[j + 1] in _SPAN
    ends = the and texts[j] == "same" and (i > at or bool(talk.tokens[j].mark))
    if not spanned and not ends:
        return None
    return cut_number(at, j + 1 + spanned, (digits,)) if digits != "1" or i > at else None


def _of_letter(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "number 114 of the tees", "twelve of the Ks", where numbers begin with that letter.

    Not "two of the tees died".
    """
    texts = talk.texts
    numbered = texts[at] in _NUMBERED
    serial = serial_at(texts, at + numbered)
    if serial is None or texts[serial[1] : serial[1] + 1] == ():
        return None
    digits, j = serial
    if texts[j] not in ("of", "in", "from", "among"):
        return None
    told = letters_at(texts, j + 1 + (texts[j + 1 : j + 2] in (("the",), ("my",), ("our",))))
    if told is None or not any(told[0].upper() in s.prefixes for s in system.shapes):
        return None
    letters, end = told[0].upper(), told[1]
    ended = end >= len(texts) or bool(talk.tokens[end - 1].mark) or texts[end] not in _MANY
    if not numbered and (len(digits) < 2 or not ended):
        return None
    return lettered(system, letters, digits, at, end)


def _of_years_back(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "fourteen of last year"; off the record only "number fourteen of last year"."""
    numbered = talk.texts[at] in _NUMBERED
    told = place_and_year(talk, at + numbered, system)
    if told is None:
        return None
    batch, digits = told
    heard = _best(system, batch, digits, "", at, need_record=False)
    owned = talk.texts[batch.end : batch.end + 1] == ("'s",)
    of = talk.texts[batch.end - 3 : batch.end - 1]
    sure = numbered or (heard is not None and heard.on_record) or "o" in of
    return heard if sure and not owned else None


def _of_batch(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "number 14 of the 23s", "eight of twenty-five", "plant 9 from the 2024 sowing"."""
    texts = talk.texts
    i = at + (texts[at] in _NUMBERED)
    serial = serial_at(texts, i)
    if serial is None:
        return None
    digits, j = serial
    of = next((words for words in _OUT_OF if texts[j : j + len(words)] == words), None)
    if of is None and texts[j : j + 1] != () and texts[j] in _LIKEWISE:
        j += 1  # "five, also of twenty-four"
        of = next((words for words in _OUT_OF if texts[j : j + len(words)] == words), None)
    if of is None or talk.between(at, j + len(of), (".", "?")):
        return None
    j += len(of)
    prefix = _prefix(
        texts[j + (texts[j : j + 1] == ("the",))] if j + 1 < len(texts) else "", system
    )
    batch = batch_at(texts, j + (1 + (texts[j] == "the") if prefix else 0))
    if batch is None or (digits == "1" and i == at):
        return None
    likewise = texts[batch.end : batch.end + 1] in (("too",), ("again",), ("also",)) or (
        texts[batch.end : batch.end + 2] == ("as", "well")
    )
    named = i > at or likewise or (not batch.plain and of in (("of",), ("from",), ("in",)))
    if not named and of not in (("of",), ("over",)):
        return None
    ended = bool(talk.tokens[batch.end - 1].mark) or batch.end >= len(texts)
    if i == at and not ended and texts[batch.end] in _MANY:
        return None  # "seventeen of the twenty-threes had mildew"
    if batch.plain and not ended and texts[batch.end] in _COUNTED:
        return None  # "8 of the 20 seeds"
    return _best(system, batch, digits, prefix, at, need_record=not named)


def _batch_first(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "twenty-four, number eleven", "the twenty-fours: nineteen", "a P24, number nine"."""
    lead = next((len(w) for w in _OUT_OF if talk.texts[at : at + len(w)] == w), 0)
    lettered = lettered_at(talk.texts, at)
    prefix = _prefix(lettered[0], system) if lettered else ""
    batch = lettered[1] if lettered and prefix else batch_at(talk.texts, at + lead)
    if lead and batch is not None and batch.plain:
        return None
    if batch is None or batch.end >= len(talk.texts) or talk.between(at, batch.end, (".", "?")):
        return None
    if talk.tokens[batch.end - 1].mark == "." and batch.plain:
        return None
    numbered = talk.texts[batch.end] in _PLACES
    if not numbered and (batch.plain or not talk.tokens[batch.end - 1].mark):
        return None
    if batch.plain and at and talk.texts[at - 1] in ("in", "since", "number", "plant"):
        return None
    tried = [
        heard
        for digits, end in _serials(talk, batch.end + numbered)
        if numbered or _stands_alone(talk, end)
        if (heard := _best(system, batch, digits, prefix, at, need_record=False, end=end))
    ]
    return next((n for n in tried if n.on_record), tried[0] if tried else None)


def _serials(talk: Talk, at: int) -> list[tuple[str, int]]:
    """The place at the token, longest first: "plant twelve, one of the last" is no 121."""
    stop = next((i + 1 for i in range(at, len(talk.texts)) if talk.tokens[i].mark), None)
    found: list[tuple[str, int]] = []
    while serial := serial_at(talk.texts[at:stop], 0):
        digits, stop = serial[0], at + serial[1]
        found.append((digits, stop))
        stop -= 1
        if stop <= at:
            break
    return found


def _stands_alone(talk: Talk, end: int) -> bool:
    return bool(talk.tokens[end - 1].mark) or talk.texts[end : end + 1] in (("is",), ("'s",))


def _prefix(text: str, system: NumberSystem) -> str:
    """Letters in use that stand before the year: "one-one-nine of the R twenty-twos"."""
    return next((p for s in system.shapes for p in s.prefixes if p and p == text.upper()), "")


def _best(
    system: NumberSystem,
    batch: Batch,
    digits: str,
    prefix: str,
    start: int,
    *,
    need_record: bool,
    end: int | None = None,
) -> NumberHeard | None:
    found = [
        heard
        for shape, groups, letters in _in_batch(system, batch.year, digits)
        if (
            heard := number_as_written(
                system, shape, groups, start, end or batch.end, prefix=prefix or letters
            )
        )
    ]
    best = max(found, key=lambda heard: heard.score, default=None)
    if best is not None and need_record and not best.on_record and batch.plain:
        place_first = any(s.place_first and batch.year[-2:] in s.lasts for s in system.shapes)
        return best if place_first else None
    return best


def _in_batch(
    system: NumberSystem, year: str, digits: str
) -> Iterator[tuple[Shape, tuple[str, ...], str]]:
    """The groups that a place in a year's batch makes in each shape of two groups."""
    for shape in system.shapes:
        if shape.groups != 2 or shape.suffixed:
            continue
        column = shape.year_column
        width = shape.widths[column][1]
        full = year if width == len(year) else year[-2:] if width == 2 else f"20{year}"
        groups = (full, digits) if column == 0 else (digits.lstrip("0") or "0", full)
        for letters in sorted(shape.prefixes) or [""]:
            yield shape, groups, letters


def placed(system: NumberSystem, year: str, digits: str) -> str | None:
    """The number at a place in a year's batch, in the shape where it is on record if any."""
    found = [shape.write(p, groups, "") for shape, groups, p in _in_batch(system, year, digits)]
    return next((n for n in found if system.seedling(n)), found[0] if found else None)
