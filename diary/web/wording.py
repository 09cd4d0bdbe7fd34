"""How values are put into words on a page: the trade's terms, units, days and clock times."""

import re
import zlib
from datetime import date

from diary.linking.document import Value

# traits whose name alone would read badly; others read well with spaces for underscores
_TRAITS = {
    "bloom_form": "form",
    "bloom_size": "size of bloom",
    "bloom_diameter": "bloom across",
    "head_diameter": "head across",
    "plant_height": "height",
    "plant_spread": "spread",
    "leaf_width": "leaf across",
    "count_heads": "heads",
    "count_buds": "buds",
    "count_seeds_sown": "seeds sown",
    "count_germinated": "germinated",
    "count_cuttings": "cuttings",
    "count_shoots": "shoots",
    "similar_to": "like",
    "sport_of": "sport of",
}
# the order in which a plant is described on its page (from common practice: flower first)
ORDER = (
    "decision",
    "colour",
    "marking",
    "bloom_form",
    "bloom_size",
    "bloom_diameter",
    "head_diameter",
    "flowering",
    "scent",
    "habit",
    "plant_height",
    "plant_spread",
    "stem_length",
    "foliage",
    "leaf_width",
    "health",
)
_LAST_NUMBER = re.compile(r"^(.*?)([0-9]{1,9})[^0-9]*$", re.DOTALL)
_VALUES = {
    "discard": "discard",
    "first_flower": "first flower",
    "breed": "breed from",
    "propagate": "take cuttings",
    "repot": "pot on",
    "show": "show bench",
}
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
# what kinds of uncertain thing the review list asks about, as said on its cards
REVIEW_KINDS = {
    "plant": "Which plant?",
    "number": "Number not on record",
    "same": "One plant or two?",
    "decision": "Decision",
    "conflict": "Two things said",
    "register": "For the register",
    "value": "What was said?",
    "unplaced": "Correction without a place",
}


def trait_name(trait: str) -> str:
    """ "bloom_diameter" -> "bloom across"."""
    return _TRAITS.get(trait, trait.replace("_", " "))


def about(trait: str, part: str | None) -> str:
    """What is described: "throat" for the colour of the throat, else the trait."""
    if trait == "colour":
        return part or "colour"
    return trait_name(trait) + (f" of {part}" if part else "")


def said_value(value: Value, unit: str | None = None, modifiers: tuple[str, ...] = ()) -> str:
    """A value with its modifiers and its unit: "deep salmon", "45 mm", "3"."""
    if isinstance(value, float | int):
        number = f"{value:.1f}".rstrip("0").rstrip(".")
        return f"{number} {unit}" if unit and unit != "count" else number
    word = _VALUES.get(value, value)
    return " ".join((*modifiers, word))


def day_text(day: date | str | None) -> str:
    """ "2 Jun 2031"; what is only partly known ("2031-06", "2031") as far as it goes."""
    if day is None:
        return "no date"
    if isinstance(day, date):
        return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"
    pieces = day.split("-")
    if not all(piece.isdigit() for piece in pieces) or len(pieces) > 3:
        return day
    if len(pieces) > 1 and not 1 <= int(pieces[1]) <= 12:
        return day
    named = [pieces[0]] if len(pieces) == 1 else [_MONTHS[int(pieces[1]) - 1], pieces[0]]
    return " ".join([str(int(pieces[2])), *named] if len(pieces) == 3 else named)


def clock_text(ms: int | None) -> str:
    """ "1:02:03", "4:05"."""
    if ms is None:
        return ""
    minutes, seconds = divmod(ms // 1000, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02d}:{seconds:02d}" if hours else f"{minutes}:{seconds:02d}"


def length_text(ms: int | None) -> str:
    """A stretch of time in words: "12 min", "45 s"."""
    if ms is None:
        return ""
    if ms < 100_000:
        return f"{max(1, round(ms / 1000))} s"
    return f"{round(ms / 60_000)} min" if ms < 7_200_000 else f"{ms / 3_600_000:.1f} h"


def hue(key: str) -> int:
    """The hue in degrees of a plant's bands: the same plant, the same colour, on every page.

    The last number in the key steps by the golden angle, so that neighbours on a bench, whose
    numbers follow each other, are far apart; what stands before it only turns the start.
    """
    found = _LAST_NUMBER.search(key)
    before, last = (found[1], int(found[2])) if found else (key, 0)
    return round(zlib.crc32(before.encode()) % 360 + last % 100_000 * 137.508) % 360
