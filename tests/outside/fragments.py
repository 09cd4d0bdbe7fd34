"""A reader of W3C media fragments, written from the recommendation's grammar and from nothing
of the project: Media Fragments URI 1.0 (basic), 25 September 2012, sections 4.2.1, 5.1 and 5.2.
"""

import re
from urllib.parse import unquote

_SECONDS = r"\d+(?:\.\d*)?"
_TIME = rf"(?:\d+:[0-5]\d:[0-5]\d(?:\.\d*)?|[0-5]\d:[0-5]\d(?:\.\d*)?|{_SECONDS})"
_NPT = re.compile(rf"(?:npt:)?(?:(?P<start>{_TIME})(?:,(?P<end>{_TIME}))?|,(?P<only_end>{_TIME}))")


def fragment_time(fragment: str, length_s: float) -> tuple[float, float] | None:
    """Start and end in seconds that a player should play, None where `t` is to be ignored."""
    found = None
    for pair in fragment.split("&"):
        name, sign, value = pair.partition("=")
        if sign and unquote(name) == "t":
            found = _interval(unquote(value), length_s) or found  # the last valid one counts
    return found


def _interval(value: str, length_s: float) -> tuple[float, float] | None:
    match = _NPT.fullmatch(value)
    if match is None:
        return None
    end_said = match["end"] or match["only_end"]
    start = _seconds(match["start"]) if match["start"] else 0.0
    end = _seconds(end_said) if end_said else length_s
    if end_said and start >= end:
        return None
    return min(start, length_s), min(end, length_s)


def _seconds(time: str) -> float:
    total = 0.0
    for part in time.split(":"):
        total = total * 60 + float(part)
    return total
