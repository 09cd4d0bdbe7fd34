"""Dates of the calendar as they are spoken: "the second of May", "June 9th", "Tuesday the 3rd"."""

import re
from datetime import date, timedelta

from diary.reading.numerals import ONES, TENS

_MONTHS = {
    m: n
    for n, m in enumerate(
        "january february march april may june july august september october november "
        "december".split(),
        1,
    )
}
_MONTHS |= {m[:3]: n for m, n in _MONTHS.items()} | {"sept": 9}
WEEKDAYS = {
    d: n for n, d in enumerate("monday tuesday wednesday thursday friday saturday sunday".split())
}
_ORDINALS = {
    w: n
    for n, w in enumerate(
        "first second third fourth fifth sixth seventh eighth ninth tenth eleventh "
        "twelfth thirteenth fourteenth "
        "fifteenth sixteenth seventeenth eighteenth nineteenth twentieth".split(),
        1,
    )
}
_ORDINALS["thirtieth"] = 30
_WRITTEN = re.compile(r"^(\d{1,2})(?:st|nd|rd|th)$")
_ISO = re.compile(r"^(\d{4})-(\d{2})-(\d{2})$")
_NOT_DATES = frozenset(
    "time flower one year season bloom week generation show day plant cross bench row "
    "of_all two three prize ever bud head pip truss shoot leaf pot seedling".split()
)
# After "it's the first": of a row of things, and no day.
_RANKED = frozenset(
    "out to up open in i we you that who he she it on opened flowering bloomed pick choice try "
    "attempt past off among best only real proper".split()
)


def date_at(texts: tuple[str, ...], at: int) -> tuple[int, int, int | None, int | None] | None:
    """End, day, month and year of a date that begins at the token."""
    if iso := _ISO.match(texts[at]):
        return at + 1, int(iso[3]), int(iso[2]), int(iso[1])
    if texts[at] in _MONTHS and at + 1 < len(texts):
        i = at + 2 if texts[at + 1] == "the" else at + 1
        ordinal = _ordinal(texts, i)
        if ordinal is None and i < len(texts) and texts[i].isdecimal() and 1 <= int(texts[i]) <= 31:
            ordinal = (i + 1, int(texts[i]))
        if ordinal is not None:
            return ordinal[0], ordinal[1], _MONTHS[texts[at]], _year(texts, ordinal[0])
        return None
    ordinal = _ordinal(texts, at)
    if ordinal is None:
        if (
            texts[at].isdecimal()
            and 1 <= int(texts[at]) <= 31
            and at + 1 < len(texts)
            and texts[at + 1] in _MONTHS
            and texts[at + 1] != "may"
        ):
            return at + 2, int(texts[at]), _MONTHS[texts[at + 1]], _year(texts, at + 2)
        return None
    end, number = ordinal
    i = end + 1 if end < len(texts) and texts[end] == "of" else end
    if i < len(texts) and texts[i] in _MONTHS and (texts[i] != "may" or i > end):
        return i + 1, number, _MONTHS[texts[i]], _year(texts, i + 1)
    if end < len(texts) and (texts[end] in _NOT_DATES or texts[end] == "of"):
        return None
    if number <= 3 and texts[end : end + 1] != () and texts[end] in _RANKED:
        return None  # "it's the first out in here every year"
    if at == 0 or texts[at - 1] not in ("the", *WEEKDAYS):
        return None
    return end, number, None, None


def _ordinal(texts: tuple[str, ...], at: int) -> tuple[int, int] | None:
    if at >= len(texts):
        return None
    if written := _WRITTEN.match(texts[at]):
        number = int(written[1])
        return (at + 1, number) if 1 <= number <= 31 else None
    if texts[at] in _ORDINALS:
        return at + 1, _ORDINALS[texts[at]]
    if texts[at] in ("twenty", "thirty") and at + 1 < len(texts) and texts[at + 1] in _ORDINALS:
        number = TENS[texts[at]] + _ORDINALS[texts[at + 1]]
        return (at + 2, number) if number <= 31 else None
    return None


def _year(texts: tuple[str, ...], at: int) -> int | None:
    if at < len(texts) and texts[at].isdecimal() and len(texts[at]) == 4:
        return int(texts[at])
    if at + 1 < len(texts) and texts[at] == "twenty" and texts[at + 1] in TENS:
        ones = ONES.get(texts[at + 2], 0) if at + 2 < len(texts) else 0
        return 2000 + TENS[texts[at + 1]] + (ones if ones < 10 else 0)
    return None


def day_of(number: int, month: int | None, year: int | None, current: date | None) -> date | None:
    if month is None or year is None:
        if current is None:
            return None
        year = year or current.year
        guessed = month is None
        month = month or current.month
        day = _safe(year, month, number)
        if day is not None and guessed and day < current - timedelta(days=15):
            day = _safe(year + (month == 12), month % 12 + 1, number)
        if day is not None and not guessed and (current - day).days > 200:
            day = _safe(year + 1, month, number)
        return day
    return _safe(year, month, number)


def _safe(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None
