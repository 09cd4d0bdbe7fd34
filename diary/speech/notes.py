"""A typed note to words: line numbers stand for time."""

import re
from datetime import date
from pathlib import Path

from diary.media.clockface import moment_in_name
from diary.speech.captions import read_text
from diary.speech.transcript import Clock, DateMark, Transcript, Word
from diary.speech.words_in_cues import spread

LINE_MS = 1000  # what stands for one line (see transcript.py)

# A heading or the start of a paragraph that is a date and little else: "## 2 June 2031",
# "2031-06-02:", "Monday 2nd June 2031 -", "02/06/2031 in the cold house".
_LEAD = re.compile(
    r"^\s*(?:[#>*_=-]+\s*)?(?:on\s+)?(?:the\s+)?"
    r"(?:(?:mon|tues?|wed(?:nes)?|thur?s?|fri|sat(?:ur)?|sun)(?:day)?\.?,?\s+)?"
    r"(?P<day>\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[./]\d{1,2}[./]\d{4}"
    r"|\d{1,2}(?:st|nd|rd|th)?\s+(?:of\s+)?[a-z]{3,9}\.?,?\s+\d{4}"
    r"|[a-z]{3,9}\.?\s+\d{1,2}(?:st|nd|rd|th)?,?\s+\d{4})(?!\w)",
    re.IGNORECASE,
)
_MARKUP = re.compile(
    r"^\s*(?:#{1,6}\s+|>\s+|[-*+]\s+(?:\[[ xX]\]\s+)?)|[*_`]{1,3}(?=\S)|(?<=\S)[*_`]{1,3}"
)


def read_note(path: Path) -> Transcript:
    """The words of a note (.txt, .md); a paragraph that opens with a date is of that day.

    Line N (from 0) is the time from N * 1000 to (N + 1) * 1000 ms. Every line that has words
    is a segment. Markdown's own signs are left out. MediaError where it cannot be read.
    """
    words: list[Word] = []
    starts: list[int] = []
    dates: list[DateMark] = []
    fresh = True  # a date counts at the start of a paragraph only
    for number, line in enumerate(read_text(path).split("\n")):
        text = _MARKUP.sub("", line).strip()
        if not text:
            fresh = True
            continue
        at_ms = number * LINE_MS
        heading = line.lstrip().startswith("#")
        if (fresh or heading) and (day := leading_day(line)):
            dates.append(DateMark(at_ms=at_ms, day=day))
        fresh = heading
        said = spread(text, at_ms, at_ms + LINE_MS)
        if said:
            starts.append(len(words))
            words.extend(said)
    return Transcript(
        words=tuple(words),
        segment_starts=tuple(starts),
        duration_ms=None,
        clock=Clock.LINES,
        dates=tuple(dates),
    )


def leading_day(line: str) -> date | None:
    """The date a line opens with, None if it opens otherwise."""
    found = _LEAD.match(line)
    if not found:
        return None
    day = re.sub(r"\bof\b", "", found["day"].replace("/", "."), flags=re.IGNORECASE)
    if iso := re.fullmatch(r"(\d{4})-(\d{1,2})-(\d{1,2})", day):
        day = f"{iso[1]}-{int(iso[2]):02d}-{int(iso[3]):02d}"
    moment = moment_in_name(" ".join(day.split()))
    return moment.date() if moment else None
