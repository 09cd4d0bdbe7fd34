"""The day of the talk told from the day before: "it's a week later", "the next day now".

Leaves alone "it opened a week later", "a week later than its sister" and "the next day I'm out".
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from itertools import pairwise

from diary.reading.calendar_dates import WEEKDAYS
from diary.reading.tokens import Talk

_COUNTS = {
    w: n
    for n, w in enumerate(
        "one two three four five six seven eight nine ten eleven twelve".split(), 1
    )
} | {"a": 1, "another": 1, "couple": 2}
_DAYS_IN = {"day": 1, "days": 1, "week": 7, "weeks": 7, "fortnight": 14, "fortnights": 14}
_LATER = frozenset({"later", "on", "after"})
_PARTS = frozenset({"day", "morning", "afternoon", "evening", *WEEKDAYS})
_TELLS = frozenset("'s is 'm am 're are back now again so right okay here".split())
_LEADS = frozenset(
    "it this here i we and so now right okay ok well hello again back 's is 'm am 're are just "
    "about exactly nearly only already then me us that there a of got , folks all morning".split()
)
_BACK = tuple((am, back) for am in ("'m", "'re", "am", "are") for back in ("back", "here", "again"))
_GOES_ON = frozenset({"and", "so", "again", "same", "here"})
_NOT_AFTER = frozenset("than this that every each in to i we when it she he they was the".split())


@dataclass(frozen=True, slots=True, kw_only=True)
class Later:
    """Told at tokens start..end-1: so much later, or on the next such day of the week."""

    start: int
    end: int
    ahead: timedelta | None
    weekday: int | None = None


def days_later(talk: Talk) -> Iterator[Later]:
    """All the days told so, in order."""
    for at, text in enumerate(talk.texts):
        later = _span(talk.texts, at) if text in _COUNTS or text.isdecimal() else None
        if later is None and text in ("next", "following"):
            later = _next(talk.texts, at)
        if later is not None and _of_the_talk(talk, later):
            yield later


def _span(texts: tuple[str, ...], at: int) -> Later | None:
    """ "Three days later", "a couple of weeks on", "a fortnight on"."""
    count = _COUNTS.get(texts[at]) or (int(texts[at]) if texts[at].isdecimal() else 0)
    unit = at + 1 + (texts[at + 1 : at + 2] == ("couple",))
    if texts[unit - 1] == "couple":
        count = 2
    unit += texts[unit : unit + 1] == ("of",)
    if texts[unit : unit + 1] == () or texts[unit] not in _DAYS_IN or not 0 < count < 100:
        return None
    end = unit + 1
    if texts[end : end + 1] == () or texts[end] not in _LATER:
        return None
    return Later(start=at, end=end + 1, ahead=timedelta(days=count * _DAYS_IN[texts[unit]]))


def _next(texts: tuple[str, ...], at: int) -> Later | None:
    """ "The next morning", "the following Monday"; a bare "next Monday" is a plan."""
    if texts[at + 1 : at + 2] == () or texts[at + 1] not in _PARTS:
        return None
    day = WEEKDAYS.get(texts[at + 1])
    if day is not None:
        if texts[at] == "next":
            return None
        return Later(start=at, end=at + 2, ahead=None, weekday=day)
    return Later(start=at, end=at + 2, ahead=timedelta(days=1))


def _of_the_talk(talk: Talk, later: Later) -> bool:
    """Whether the sentence says no more than that, or that it is so now."""
    low, stop = talk.sentence(later.start)
    start = later.start - (talk.texts[later.start - 1 : later.start] == ("the",))
    if not talk.punctuated:
        low = start
        while low > 0 and start - low < 5 and talk.texts[low - 1] in _LEADS:
            low -= 1
    lead, after = talk.texts[low:start], talk.texts[later.end : later.end + 1]
    if not all(w in _LEADS for w in lead):
        return False
    now = "now" in talk.texts[later.end : later.end + 2]
    if after and not now and after[0] in _NOT_AFTER and not talk.tokens[later.end - 1].mark:
        return False
    loose = talk.texts[later.end - 1] in ("on", "after") and after
    if loose and not now and after[0] not in _GOES_ON and not talk.tokens[later.end - 1].mark:
        return False  # "it's a week after flowering"
    told = any(lead[n] in _TELLS and lead[n - 1 : n] != () for n in range(len(lead)))
    whole = talk.punctuated and later.end == stop
    told |= any(pair in _BACK for pair in pairwise(talk.texts[later.end : later.end + 5]))
    return told or now or whole
