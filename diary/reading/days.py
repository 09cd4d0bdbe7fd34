"""Days said aloud: "it's the second of May", "so this is the ninth now", "Tuesday the thirteenth".

Only what the speaker says of the day it is moves the date of the clips after it; "the show
on the sixteenth" and "out by the tenth of July" do not.
"""

import re
from dataclasses import dataclass
from datetime import date, timedelta

from diary.reading.numerals import ONES, TENS
from diary.reading.tokens import Talk

_MONTHS = {
    m: n
    for n, m in enumerate(
        "january february march april may june july august september october november "
        "december".split(),
        1,
    )
}
_MONTHS |= {m[:3]: n for m, n in _MONTHS.items()} | {"sept": 9}
_WEEKDAYS = {
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
_DEICTIC = (
    ("it", "'s"),
    ("it", "is"),
    ("this", "is"),
    ("today", "is"),
    ("today", "'s"),
    ("now", "it"),
    ("date", "is"),
    ("we", "'re"),
    ("we", "are"),
    ("date", "'s"),
    ("makes", "it"),
    ("'s", "me"),
    ("'s", "us"),
)
_BETWEEN = frozenset(
    "now the on today of , so um uh er already actually and still morning afternoon "
    "evening here at then".split()
)
_NOT_DATES = frozenset(
    "time flower one year season bloom week generation show day plant cross bench row "
    "of_all two three prize ever".split()
)
# After "it's the first": of a row of things, and no day.
_RANKED = frozenset(
    "out to up open in i we you that who he she it on opened flowering bloomed pick choice try "
    "attempt past off among best only real proper".split()
)


@dataclass(frozen=True, slots=True, kw_only=True)
class DayHeard:
    """A day said at tokens start..end-1.

    `holds` is True where it is the day of what follows, False where it is told only of the
    clip it is said in ("this was on the first").
    """

    start: int
    end: int
    day: date
    holds: bool


def find_days(talk: Talk, recorded: date | None) -> tuple[DayHeard, ...]:
    """Days that date the talk, in order. Without a recording's date only full dates count."""
    found: list[DayHeard] = []
    current = recorded
    for at in range(len(talk.texts)):
        if found and at < found[-1].end:
            continue
        spelt = _date_at(talk.texts, at)
        if spelt is None:
            continue
        end, number, month, year = spelt
        lead = _deictic_before(talk, at) or _visit_on(talk, at)
        alone = talk.transcript.clock.value == "lines" and talk.sentence(at)[0] == at
        past = _written_then(talk, at)
        if not lead and not alone and not past and not _dateline(talk, at, end):
            continue
        day = _day(number, month, year, current)
        if day is None:
            continue
        found.append(DayHeard(start=at, end=end, day=day, holds=not past or lead))
        current = day if not past else current
    found += _weekdays(talk, recorded, found)
    return tuple(sorted(found, key=lambda d: d.start))


_VISITS = frozenset(
    "visit look walk round session recording video film morning afternoon evening day instalment "
    "part go entry page".split()
)
_THE_VISIT = frozenset("second third another next new fresh later further follow up".split())


def _visit_on(talk: Talk, at: int) -> bool:
    """ "Now this is a second visit, on Thursday the twenty-ninth"; not "the visit on the ninth"."""
    i = at
    while i > 0 and talk.texts[i - 1] in _BEFORE_DATE:
        i -= 1
    before = talk.texts[max(0, i - 7) : i]
    if before[-1:] == () or before[-1] not in _VISITS:
        return False
    shown = any(before[n : n + 2] in _DEICTIC for n in range(len(before) - 1))
    return shown and bool(_THE_VISIT & set(before))


_SET_DOWN = frozenset(
    "was were filmed recorded taken written noted measured photographed down this that "
    "these".split()
)
_SEEN = (("looked", "at"), ("seen", "last"), ("written", "up"), ("last", "seen"), ("was", "seen"))
_BEFORE_DATE = frozenset({"on", "the", *_WEEKDAYS})


def _written_then(talk: Talk, at: int) -> bool:
    """ "this was filmed on the first", "what follows I wrote down on Friday the sixth"."""
    i = at
    while i > 0 and talk.texts[i - 1] in _BEFORE_DATE:
        i -= 1
    if i > 0 and talk.texts[i - 1] == "dated":
        return True  # "the card is dated Wednesday the nineteenth"
    if i > 1 and talk.texts[i - 2 : i] in _SEEN and "on" in talk.texts[i:at]:
        return True
    if "on" not in talk.texts[i:at] or i == 0 or talk.texts[i - 1] not in _SET_DOWN:
        return False
    before = talk.texts[max(0, i - 5) : i]
    if before[-1] in ("was", "were"):
        return before[-2:-1] != ("it",)
    return before[-1] not in ("this", "that", "these", "down") or bool(
        {"wrote", "took", "measured", "noted", "jotted", "set", "filmed", "recorded"} & set(before)
    )


_DATELINE = frozenset("resumed again back later now and so right well hello visit second".split())
_ENDS_LINE = (".", ",", "?")


def _dateline(talk: Talk, at: int, end: int) -> bool:
    """ "Resumed, Saturday the seventh of June;": a date by itself at the head of a sentence.

    Not "the seventh of June is the show".
    """
    start = talk.sentence(at)[0]
    lead = talk.texts[start:at]
    if not talk.punctuated or at - start > 5 or not talk.between(end - 1, end, _ENDS_LINE):
        return False
    return all(t in _DATELINE or t in _WEEKDAYS or t == "the" for t in lead)


def _date_at(texts: tuple[str, ...], at: int) -> tuple[int, int, int | None, int | None] | None:
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
    if at == 0 or texts[at - 1] not in ("the", *_WEEKDAYS):
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


def _deictic_before(talk: Talk, at: int) -> bool:
    i = at
    while (
        i > 0 and at - i < 6 and (talk.texts[i - 1] in _BETWEEN or talk.texts[i - 1] in _WEEKDAYS)
    ):
        i -= 1
    return talk.texts[max(0, i - 2) : i] in _DEICTIC or (
        talk.texts[i - 1 : i] == ("is",) and talk.texts[i : i + 1] == ("now",)
    )


def _day(number: int, month: int | None, year: int | None, current: date | None) -> date | None:
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


def _weekdays(talk: Talk, recorded: date | None, found: list[DayHeard]) -> list[DayHeard]:
    """ "so it's Thursday now": the next such day after the one before."""
    extra: list[DayHeard] = []
    if recorded is None:
        return extra
    for at, text in enumerate(talk.texts):
        if text not in _WEEKDAYS or any(d.start - 3 <= at < d.end + 1 for d in found):
            continue
        now = "now" in talk.texts[at + 1 : at + 3] or "now" in talk.texts[max(0, at - 2) : at]
        if not (now and _deictic_before(talk, at)):
            continue
        before = max((d.day for d in found if d.start < at), default=recorded)
        ahead = (_WEEKDAYS[text] - before.weekday()) % 7
        extra.append(DayHeard(start=at, end=at + 1, day=before + timedelta(days=ahead), holds=True))
    return extra
