"""Turns of phrase of the vocabulary, and finding them in tokens.

A phrase is words apart by spaces. `a|b` are alternatives, `a_b` is two words of one
alternative, a word that ends in `?` can be left out, and `*` (never the first) is any word.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from diary.reading.tokens import pieces

_ANY = "*"


@dataclass(frozen=True, slots=True)
class Found:
    """A phrase found: tokens start..end-1, and the label it stands for."""

    start: int
    end: int
    label: str


@dataclass(frozen=True, slots=True)
class _Slot:
    options: tuple[tuple[str, ...], ...]
    optional: bool


class PhraseBook:
    """Phrases by label; `find` gives the longest match of each label at each place."""

    def __init__(self, phrases: Iterable[tuple[str, str]]) -> None:
        self._by_first: dict[str, list[tuple[tuple[_Slot, ...], str]]] = defaultdict(list)
        for label, phrase in phrases:
            slots = _slots(phrase)
            for first in _first_words(slots):
                self._by_first[first].append((slots, label))

    def find(self, texts: Sequence[str], start: int = 0, end: int | None = None) -> list[Found]:
        """All matches that lie in texts[start:end], by start, longest first at one place."""
        stop = len(texts) if end is None else end
        found: list[Found] = []
        for at in range(start, stop):
            entries = self._by_first.get(texts[at])
            if not entries:
                continue
            best: dict[str, int] = {}
            for slots, label in entries:
                reach = _match(slots, 0, texts, at, stop)
                if reach > best.get(label, at):
                    best[label] = reach
            found += [
                Found(at, reach, label)
                for label, reach in sorted(best.items(), key=lambda item: -item[1])
            ]
        return found

    def at(self, texts: Sequence[str], at: int) -> Found | None:
        """The longest match that begins exactly at the token, if any."""
        if at >= len(texts):
            return None
        best: Found | None = None
        for slots, label in self._by_first.get(texts[at], ()):
            reach = _match(slots, 0, texts, at, len(texts))
            if reach > (best.end if best else at):
                best = Found(at, reach, label)
        return best


def _slots(phrase: str) -> tuple[_Slot, ...]:
    slots = []
    for item in phrase.split():
        optional = item.endswith("?")
        options = []
        for option in item.removesuffix("?").split("|"):
            words = (
                [_ANY]
                if option == _ANY
                else [p for part in option.split("_") for p in pieces(part)]
            )
            if words:
                options.append(tuple(words))
        if options:
            slots.append(_Slot(tuple(options), optional))
    return tuple(slots)


def _first_words(slots: tuple[_Slot, ...]) -> set[str]:
    firsts: set[str] = set()
    for slot in slots:
        firsts |= {option[0] for option in slot.options}
        if not slot.optional:
            break
    return firsts


def _match(slots: tuple[_Slot, ...], n: int, texts: Sequence[str], at: int, stop: int) -> int:
    """The furthest end of slots[n:] matched from `at`, or -1."""
    if n == len(slots):
        return at
    best = -1
    for option in slots[n].options:
        size = len(option)
        if at + size <= stop and (option == (_ANY,) or tuple(texts[at : at + size]) == option):
            best = max(best, _match(slots, n + 1, texts, at + size, stop))
    if slots[n].optional:
        best = max(best, _match(slots, n + 1, texts, at, stop))
    return best
