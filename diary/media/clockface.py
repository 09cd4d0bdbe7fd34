"""Moments as containers and file names write them, in local time. Pure."""

import re
from datetime import datetime

# Cameras without a set clock say 1904 or 1970 (the epochs of QuickTime and of Unix).
_FIRST_YEAR, _LAST_YEAR = 1990, 2100
_MONTHS = {
    name: number
    for number, names in enumerate(
        (
            ("jan", "january"),
            ("feb", "february"),
            ("mar", "march"),
            ("apr", "april"),
            ("may",),
            ("jun", "june"),
            ("jul", "july"),
            ("aug", "august"),
            ("sep", "sept", "september"),
            ("oct", "october"),
            ("nov", "november"),
            ("dec", "december"),
        ),
        start=1,
    )
    for name in names
}
_DIGITS = re.compile(
    r"(?<!\d)(?P<y>(?:19|20)\d\d)[-_. ]?(?P<m>0[1-9]|1[0-2])[-_. ]?(?P<d>0[1-9]|[12]\d|3[01])"
    r"(?:[-_. tT]{0,4}(?:at )?(?P<H>[01]\d|2[0-3])[-_.:h]?(?P<M>[0-5]\d)"
    r"(?:[-_.:m]?(?P<S>[0-5]\d))?)?"
    r"(?:\d{3})?(?!\d)"
)
_DAY_FIRST = re.compile(r"(?<!\d)(?P<d>\d{1,2})[-_.](?P<m>\d{1,2})[-_.](?P<y>(?:19|20)\d\d)(?!\d)")
_WORDED = re.compile(
    r"(?<!\d)(?P<d>\d{1,2})(?:st|nd|rd|th)?[-_. ]+(?P<name>[a-z]{3,9})\.?,?[-_. ]+"
    r"(?P<y>(?:19|20)\d\d)"
    r"|(?<![a-z])(?P<name2>[a-z]{3,9})\.?[-_. ]+(?P<d2>\d{1,2})(?:st|nd|rd|th)?,?[-_. ]+"
    r"(?P<y2>(?:19|20)\d\d)",
    re.IGNORECASE,
)


def local_moment(text: str) -> datetime | None:
    """An ISO 8601 moment with day, as local time without zone.

    A moment in UTC is brought into this machine's zone; one with an offset of its own keeps
    the clock of the place where it was filmed.
    """
    text = text.strip()
    if not re.match(r"\d{4}-?\d\d-?\d\d", text):
        return None
    try:
        moment = datetime.fromisoformat(text.replace(" UTC", "Z"))
    except ValueError:
        return None
    if not _FIRST_YEAR <= moment.year <= _LAST_YEAR:
        return None
    if moment.tzinfo is not None and text.endswith(("Z", "UTC", "+00:00", "+0000")):
        moment = moment.astimezone()
    return moment.replace(tzinfo=None, microsecond=0)


def moment_in_name(name: str) -> datetime | None:
    """The date, and the time if there, in a file's name; None without one.

    Understands 20310602_101112, 2031-06-02 10.11.12, 02.06.2031 (day first; month first
    only where it cannot be otherwise), 2 June 2031 and June 2nd 2031.
    """
    if found := _DIGITS.search(name):
        time = [int(found[key] or 0) for key in ("H", "M", "S")]
        if moment := _made(int(found["y"]), int(found["m"]), int(found["d"]), *time):
            return moment
    if found := _DAY_FIRST.search(name):
        year, month, day = int(found["y"]), int(found["m"]), int(found["d"])
        if moment := _made(year, month, day) or _made(year, day, month):
            return moment
    for found in _WORDED.finditer(name):
        month = _MONTHS.get((found["name"] or found["name2"]).lower(), 0)
        if month:
            return _made(int(found["y"] or found["y2"]), month, int(found["d"] or found["d2"]))
    return None


def _made(
    year: int, month: int, day: int, hour: int = 0, minute: int = 0, second: int = 0
) -> datetime | None:
    try:
        return datetime(year, month, day, hour, minute, second)
    except ValueError:
        return None
