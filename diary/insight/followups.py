"""What the speaker promised to do later, found in the words of a walk. Pure.

"I'll film the twenty-fives when they open" is a promise; "I'll be honest" is none. The words
are data/promises.toml.
"""

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from diary.records.record import Moment, PlantRef, RecordClip, RecordingId
from diary.speech.transcript import Transcript

_SENTENCE_END = re.compile(r"[.!?][\"')\]]*$")
_SPACE = r"[\s,;:]+"


@dataclass(frozen=True, slots=True, kw_only=True)
class Promise:
    """One promise: the plant being talked of (None outside every clip) and the words."""

    plant: PlantRef | None
    moment: Moment


@dataclass(frozen=True, slots=True, kw_only=True)
class _Patterns:
    opener: re.Pattern[str]
    verb: re.Pattern[str]
    never: re.Pattern[str]
    reach: int
    quote: int


@cache
def _patterns() -> _Patterns:
    table = tomllib.loads((files("diary") / "data" / "promises.toml").read_text("utf-8"))
    return _Patterns(
        opener=_any_of(table["openers"]),
        verb=_any_of(table["verbs"]),
        never=_any_of(table["never"]),
        reach=table["reach"],
        quote=table["quote"],
    )


def _any_of(phrases: list[str]) -> re.Pattern[str]:
    said = (
        _SPACE.join(
            "(?:" + "|".join(map(re.escape, word.split("|"))) + ")" for word in phrase.split()
        )
        for phrase in phrases
    )
    return re.compile(r"\b(?:" + "|".join(said) + r")\b", re.IGNORECASE)


def promises(
    recording: RecordingId, transcript: Transcript, clips: tuple[RecordClip, ...]
) -> Iterator[Promise]:
    """Every promise of one walk, in order of time."""
    patterns = _patterns()
    words = [word.text.replace("\u2019", "'") for word in transcript.words]
    last = -1
    for index in range(len(words)):
        if index <= last:
            continue
        end = _end(transcript, index, patterns.quote)
        said = " ".join(words[index : end + 1])
        opener = patterns.opener.match(said)
        if opener is None or patterns.never.match(said):
            continue
        within = " ".join(said[opener.end() :].split()[: patterns.reach])
        if not patterns.verb.search(within):
            continue
        last = end
        start_ms = transcript.words[index].start_ms
        clip = next((c for c in clips if c.moment.start_ms <= start_ms < c.moment.end_ms), None)
        yield Promise(
            plant=clip.plant if clip else None,
            moment=Moment(
                recording=recording,
                start_ms=start_ms,
                end_ms=transcript.words[end].end_ms,
                day=clip.moment.day if clip else None,
                text=transcript.quote(index, end),
            ),
        )


def _end(transcript: Transcript, index: int, quote: int) -> int:
    """The last word of the sentence from `index` on, no further than `quote` words."""
    for position in range(index, min(index + quote, len(transcript.words))):
        if _SENTENCE_END.search(transcript.words[position].text):
            return position
    return min(index + quote, len(transcript.words)) - 1
