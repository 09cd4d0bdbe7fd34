"""Days said aloud: "it's the second of May", "so this is the ninth now", "Tuesday the thirteenth".

Only what the speaker says of the day it is moves the date of the clips after it; "the show
on the sixteenth" and "out by the tenth of July" do not.
"""

from dataclasses import dataclass
from datetime import date, timedelta

from diary.reading.calendar_dates import WEEKDAYS, date_at, day_of
from diary.reading.days_later import Later, days_later
from diary.reading.days_told import (
    dateline,
    deictic_before,
    ranks,
    taken_up_again,
    visit_on,
    written_then,
)
from diary.reading.tokens import Talk


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
        spelt = date_at(talk.texts, at)
        if spelt is None:
            continue
        end, number, month, year = spelt
        if month is None and ranks(talk, at, end, number):
            continue
        lead = deictic_before(talk, at) or visit_on(talk, at) or taken_up_again(talk, at, end)
        alone = talk.transcript.clock.value == "lines" and talk.sentence(at)[0] == at
        past = written_then(talk, at)
        if not lead and not alone and not past and not dateline(talk, at, end):
            continue
        day = day_of(number, month, year, current)
        if day is None:
            continue
        found.append(DayHeard(start=at, end=end, day=day, holds=not past or lead))
        current = day if not past else current
    found += _weekdays(talk, recorded, found)
    if recorded is not None:
        found += [d for x in days_later(talk) if (d := _later(x, recorded, found)) is not None]
    return tuple(sorted(found, key=lambda d: d.start))


_SAME_BREATH = 8


def _later(later: Later, recorded: date, found: list[DayHeard]) -> DayHeard | None:
    """So long after the day before it, unless a date is told beside it."""
    if any(later.start - _SAME_BREATH < d.start < later.end + _SAME_BREATH for d in found):
        return None
    before = max((d for d in found if d.start < later.start), key=lambda d: d.start, default=None)
    base = before.day if before else recorded
    ahead = later.ahead
    if later.weekday is not None:
        ahead = timedelta(days=(later.weekday - base.weekday() - 1) % 7 + 1)
    if ahead is None:
        return None
    return DayHeard(start=later.start, end=later.end, day=base + ahead, holds=True)


def _weekdays(talk: Talk, recorded: date | None, found: list[DayHeard]) -> list[DayHeard]:
    """ "so it's Thursday now": the next such day after the one before."""
    extra: list[DayHeard] = []
    if recorded is None:
        return extra
    for at, text in enumerate(talk.texts):
        if text not in WEEKDAYS or any(d.start - 3 <= at < d.end + 1 for d in found):
            continue
        now = "now" in talk.texts[at + 1 : at + 3] or "now" in talk.texts[max(0, at - 2) : at]
        if not (now and deictic_before(talk, at)):
            continue
        before = max((d.day for d in found if d.start < at), default=recorded)
        ahead = (WEEKDAYS[text] - before.weekday()) % 7
        extra.append(DayHeard(start=at, end=at + 1, day=before + timedelta(days=ahead), holds=True))
    return extra
