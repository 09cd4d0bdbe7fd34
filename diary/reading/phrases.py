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
    by_size: tuple[tuple[int, frozenset[tuple[str, ...]]], ...]  # options, for a quick look


_Entry = tuple[tuple[_Slot, ...], str]


class PhraseBook:
    """Phrases by label; `find` gives the longest match of each label at each place."""

    def __init__(self, phrases: Iterable[tuple[str, str]]) -> None:
        # Entries by their first two words, or by the first where any word may come second.
        self._by_two: dict[tuple[str, str], list[_Entry]] = defaultdict(list)
        self._by_one: dict[str, list[_Entry]] = defaultdict(list)
        for label, phrase in phrases:
            entry = (_slots(phrase), label)
            for first, second in _openings(entry[0]):
                if second is None:
                    self._by_one[first].append(entry)
                else:
                    self._by_two[first, second].append(entry)

    def find(self, texts: Sequence[str], start: int = 0, end: int | None = None) -> list[Found]:
        """All matches that lie in texts[start:end], by start, longest first at one place."""
        stop = len(texts) if end is None else min(end, len(texts))
        found: list[Found] = []
        one, two = self._by_one, self._by_two
        for at in range(max(start, 0), stop):
            if texts[at] not in one and tuple(texts[at : at + 2]) not in two:
                continue
            best = self._longest(texts, at, stop)
            found += [
                Found(at, reach, label)
                for label, reach in sorted(best.items(), key=lambda item: -item[1])
            ]
        return found

    def _longest(self, texts: Sequence[str], at: int, stop: int) -> dict[str, int]:
        """The longest match of each label that begins at the token."""
        best: dict[str, int] = {}
        entries = self._by_one.get(texts[at], ())
        if at + 1 < stop:
            entries = [*entries, *self._by_two.get((texts[at], texts[at + 1]), ())]
        for slots, label in entries:
            reach = _match(slots, 0, texts, at, stop)
            if reach > best.get(label, at):
                best[label] = reach
        return best

    def at(self, texts: Sequence[str], at: int) -> Found | None:
        """The longest match that begins exactly at the token, if any."""
        if at >= len(texts):
            return None
        best = self._longest(texts, at, len(texts))
        if not best:
            return None
        label = max(best, key=lambda one: best[one])
        return Found(at, best[label], label)


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
            by_size = tuple(
                (size, frozenset(o for o in options if len(o) == size))
                for size in sorted({len(o) for o in options})
            )
            slots.append(_Slot(tuple(options), optional, by_size))
    return tuple(slots)


def _openings(slots: tuple[_Slot, ...]) -> set[tuple[str, str | None]]:
    """The two words a match can begin with; None where it may end, or any word may follow."""
    found: set[tuple[str, str | None]] = set()
    for n, slot in enumerate(slots):
        for option in slot.options:
            if len(option) > 1:
                found.add((option[0], option[1]))
            else:
                found |= {(option[0], second) for second in _second_words(slots[n + 1 :])}
        if not slot.optional:
            break
    return found


def _second_words(slots: tuple[_Slot, ...]) -> set[str | None]:
    words: set[str | None] = set()
    for slot in slots:
        words |= {None if option[0] == _ANY else option[0] for option in slot.options}
        if not slot.optional:
            return words
    return words | {None}


def _match(slots: tuple[_Slot, ...], n: int, texts: Sequence[str], at: int, stop: int) -> int:
    """The furthest end of slots[n:] matched from `at`, or -1."""
    if n == len(slots):
        return at
    best = -1
    for size, options in slots[n].by_size:
        if at + size <= stop and (tuple(texts[at : at + size]) in options or (_ANY,) in options):
            best = max(best, _match(slots, n + 1, texts, at + size, stop))
    if slots[n].optional:
        best = max(best, _match(slots, n + 1, texts, at, stop))
    return best
