"""Hear a doubtful window again with the few names it may hold, and believe them on evidence only.

The first hearing is given as many names as fit. A breeder with more than that has names the
model was not told of: where its words sound like one of those, or like something misheard
before, the window is read once more with those few names. A name is taken only if the second
reading holds it at that moment, it sounds like what was heard, and the sound bears it out (the
engine's probability for it, asked without any hint). Else the first reading stays.
"""

import math
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from diary.speech.block import Swap
from diary.speech.hints import Hints
from diary.speech.likeness import sounds_like
from diary.speech.transcript import Word

MOST_CANDIDATES = 8
_ALIKE = 0.66  # from here on a stretch may be a name; see tests/benchmarks for the trade-off
_STILL_ALIKE = 0.55  # between what was heard and the name that the second reading gives
_DOUBTFUL = 0.75  # a stretch whose least certain word is surer than this is not looked at
_MOST_LOSS = 2.5  # nats a word that a rare name may be less likely than what was heard


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect:
    """Words first..last (both inside) that may be `name`."""

    first: int
    last: int
    name: str
    alike: float


def suspects(words: Sequence[Word], hints: Hints, *, given: Iterable[str]) -> tuple[Suspect, ...]:
    """The stretches that sound like a name the model was not given, best first.

    Misheard forms (`hints.mishearings`) count wherever they occur, given or not.
    """
    found = [
        Suspect(first=first, last=last, name=meant, alike=1.0)
        for heard, meant in hints.mishearings
        for first, last in _occurrences(words, heard)
    ]
    told = set(given)
    for name in hints.names:
        if name not in told:
            found.extend(_like(words, name))
    best: dict[tuple[int, str], Suspect] = {}
    for suspect in sorted(found, key=lambda one: -one.alike):
        best.setdefault((suspect.first, suspect.name), suspect)
    return tuple(best.values())


def _like(words: Sequence[Word], name: str) -> Iterator[Suspect]:
    size = len(name.split())
    for length in range(max(1, size - 1), size + 3):
        for first in range(len(words) - length + 1):
            stretch = words[first : first + length]
            if min(word.confidence or 0.0 for word in stretch) > _DOUBTFUL:
                continue
            alike = sounds_like(" ".join(word.text for word in stretch), name)
            if alike >= _ALIKE:
                yield Suspect(first=first, last=first + length - 1, name=name, alike=alike)


def candidates(found: Sequence[Suspect]) -> tuple[str, ...]:
    """The few names to read the window with again, likeliest first."""
    return tuple(dict.fromkeys(suspect.name for suspect in found))[:MOST_CANDIDATES]


def weigh(
    words: Sequence[Word], second: Sequence[Word], names: Sequence[str]
) -> tuple[tuple[Word, ...], tuple[Swap, ...]]:
    """The first reading with those names of the second put in that the evidence bears out."""
    taken = list(words)
    swaps = []
    for name in names:
        for first, last in _occurrences(second, name):
            new = second[first : last + 1]
            place = _same_time(taken, new)
            if place is None:
                continue
            old = taken[place[0] : place[1] + 1]
            heard = " ".join(word.text for word in old)
            if _bare(heard) == _bare(name):
                continue
            gain = _certainty(new) - _certainty(old)
            alike = sounds_like(heard, name)
            accepted = alike >= _STILL_ALIKE and gain >= -_MOST_LOSS
            if accepted:
                taken[place[0] : place[1] + 1] = [
                    replace(word, text=word.text if word is not new[-1] else _ended(word, old[-1]))
                    for word in new
                ]
            swaps.append(
                Swap(
                    start_ms=old[0].start_ms,
                    end_ms=old[-1].end_ms,
                    heard=heard,
                    taken=name if accepted else heard,
                    gain=round(gain, 2),
                )
            )
    return tuple(taken), tuple(swaps)


def _occurrences(words: Sequence[Word], phrase: str) -> Iterator[tuple[int, int]]:
    wanted = [_bare(part) for part in phrase.split()]
    for first in range(len(words) - len(wanted) + 1):
        said = [_bare(word.text) for word in words[first : first + len(wanted)]]
        if said == wanted or said == [*wanted[:-1], wanted[-1] + "s"]:
            yield first, first + len(wanted) - 1


def _same_time(words: Sequence[Word], new: Sequence[Word]) -> tuple[int, int] | None:
    """First and last word whose middle lies in the time of `new`; None where there is none."""
    start, end = new[0].start_ms - 60, new[-1].end_ms + 60
    inside = [
        index
        for index, word in enumerate(words)
        if start <= (word.start_ms + word.end_ms) / 2 < end
    ]
    return (inside[0], inside[-1]) if inside else None


def _certainty(words: Sequence[Word]) -> float:
    return sum(math.log(max(word.confidence or 0.0, 0.001)) for word in words) / len(words)


def _ended(word: Word, old: Word) -> str:
    """The last word of a name with the punctuation that stood there before."""
    mark = re.search(r"[.,;:?!]+$", old.text)
    return re.sub(r"[.,;:?!]+$", "", word.text) + (mark[0] if mark else "")


def _bare(text: str) -> str:
    return re.sub(r"[^a-z0-9 ]", "", re.sub(r"['\u2019]s\b", "s", text.lower()))
