"""What speaks for and against a turn to the plant named at a place: words, standing, register.

Every sign is a short name ("before 1: next", "shown before: True"); which of them count for
how much has been learnt from talks written down with their answers (evaluation/learn.py).
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from diary.linking.kinds_of_words import kinds_of_words
from diary.linking.statement import Statement
from diary.linking.turns.events import Event
from diary.linking.turns.lead_ins import LeadIns
from diary.reading.mentions import Mentions, Ref
from diary.reading.tokens import COMMA

_WORDS_BEFORE, _WORDS_AFTER, _PAIRS = 6, 6, 3
_TELLS_WITHIN, _TELLS_SOON = 40, 12
_JUST = 12
_CUE_REACH, _CUE_NEAR = 8, 3
_AROUND, _SENTENCE = 7, 14
_LEADS = ("any", "at_head", "presented", "moved", "came_back", "shown", "numbered")


@dataclass(frozen=True, slots=True, kw_only=True)
class InHand:
    """The plant the talk is of since token `at`, by its title, and those shown before it."""

    title: str | None = None
    at: int = 0
    shown: frozenset[str] = frozenset()


class Signs:
    """The signs of one talk, asked by place."""

    def __init__(self, mentions: Mentions, statements: Sequence[Statement], leads: LeadIns) -> None:
        """`statements` are in order of their start."""
        self._mentions = mentions
        self._leads = leads
        self._told = tuple(statements)
        self._told_at = [s.start for s in statements]
        self._parent_tokens = {
            i for s in statements if s.trait.endswith("_parent") for i in range(s.start, s.end)
        }
        self._looks = {
            i for s in statements if not s.trait.endswith("_parent") for i in range(s.start, s.end)
        }
        self._kinds = kinds_of_words(mentions)
        self._full = [r.start for r in mentions.refs if r.cut is None]
        self._said: dict[str, list[int]] = {}
        for ref in mentions.refs:
            if ref.cut is None:
                self._said.setdefault(ref.title, []).append(ref.start)
        seedlings = mentions.numbers.seedlings.values()
        self._parents = {
            s.number: frozenset(p for p in (s.seed_parent, s.pollen_parent) if p) for s in seedlings
        }
        self._places = {s.number: n for n, s in enumerate(seedlings)}
        self._bred_from = frozenset(p for both in self._parents.values() for p in both)

    def tells(self, at: int) -> bool:
        """Whether a look or an amount is told at the token: "forty sown", "semi-double one"."""
        return at in self._looks

    def of(self, ref: Ref, hand: InHand) -> tuple[str, ...]:
        """What speaks for or against a turn to the plant that is named, in full."""
        return (
            *self._words(ref.start, ref.end),
            *self._phrases(ref),
            *self._heard(ref),
            *self._standing(ref.title, ref.start, hand),
            *self._telling(ref.start, ref.end, hand),
        )

    def cut_short(self, ref: Ref, whole: str, on_record: bool, hand: InHand) -> tuple[str, ...]:
        """What speaks for or against a turn to the plant whose number is cut short.

        `whole` is the number as completed, empty where nothing completes it.
        """
        digits, letter = ref.cut or ((), "")
        return (
            *self._words(ref.start, ref.end),
            *self._phrases(ref),
            *self._heard(ref),
            *self._standing(whole, ref.start, hand),
            f"completed: {bool(whole)}, on record: {on_record}",
            f"digits: {min(len(''.join(digits)), 3)}, letter: {bool(letter)}",
            f"begins with nought: {''.join(digits).startswith('0')}",
            *self._telling(ref.start, ref.end, hand),
        )

    def at(self, event: Event, hand: InHand) -> tuple[str, ...]:
        """What speaks for or against a turn where no plant is named."""
        talk, at = self._mentions.talk, event.at
        first, stop = talk.sentence(at)
        if not talk.punctuated:
            first, stop = max(first, at - _AROUND), min(stop, at + _AROUND + 1)
        n = bisect_left(self._full, at)
        next_plant = self._full[n] if n < len(self._full) else len(talk.texts)
        return (
            f"at: {event.kind.name.lower()}",
            *(f"here: {' '.join(talk.texts[at : at + n])}" for n in (1, 2, 3)),
            *(f"around: {self._word(i)}" for i in range(first, min(stop, first + _SENTENCE))),
            f"heads a sentence: {talk.punctuated and at == first}",
            f"words to the plant named next: {_step(next_plant - at, 3, 6, 9, 12, 15, 18)}",
            *(f"within: {habit.value}" for habit in self._mentions.scopes.habits(at)),
            *self._words(at, at + 1),
            *self._telling(at, at + 1, hand),
        )

    def _words(self, start: int, end: int) -> Iterator[str]:
        """The words around, plants and looks by their kind only."""
        talk = self._mentions.talk
        for n in range(1, _WORDS_BEFORE + 1):
            i = start - n
            if i < 0:
                yield f"before {n}: start"
                break
            if talk.tokens[i].mark and talk.tokens[i].mark != COMMA:
                yield f"before {n}: stop"
                break
            if talk.tokens[i].mark:
                yield f"before {n}: comma"
            yield f"before {n}: {self._word(i)}"
            yield f"before: {self._word(i)}"
            if n <= _PAIRS and i > 0:
                yield f"before {n}: {self._word(i - 1)} {self._word(i)}"
            if n == 1 and i > 1:
                yield f"before: {self._word(i - 2)} {self._word(i - 1)} {self._word(i)}"
        if talk.tokens[end - 1].mark:
            yield f"after: {talk.tokens[end - 1].mark}"
        for n in range(_WORDS_AFTER):
            i = end + n
            if i >= len(talk.texts):
                yield "after: end"
                break
            if n and talk.tokens[i - 1].mark and talk.tokens[i - 1].mark != COMMA:
                yield f"after {n}: stop"
                break
            yield f"after {n}: {self._word(i)}"
            yield f"after: {self._word(i)}"
            if n < _PAIRS and i + 1 < len(talk.texts):
                yield f"after {n}: {self._word(i)} {self._word(i + 1)}"

    def _marked(self, i: int) -> bool:
        return bool(self._mentions.talk.tokens[i].mark)

    def _word(self, i: int) -> str:
        return self._kinds.get(i) or self._mentions.talk.texts[i]

    def _phrases(self, ref: Ref) -> Iterator[str]:
        """Where in its sentence it stands, and what leads it in or takes it back."""
        talk, at = self._mentions.talk, ref.start
        first, stop = talk.sentence(at)
        yield f"words since the sentence began: {_step(at - first, 1, 2, 3, 4, 8)}"
        yield f"punctuated: {talk.punctuated}"
        if talk.punctuated:
            yield f"closes its sentence: {ref.end >= stop}"
            yield f"a sentence of its own: {ref.end >= stop and at == first}"
            yield f"words to the end: {_step(stop - ref.end, 1, 3, 6, 9, 12)}"
        lead = self._leads.before(at)
        yield from (f"led in: {kind}" for kind in _LEADS if getattr(lead, kind))
        if self._leads.compared(at):
            yield "compared"
        if self._leads.guessed(at):
            yield "guessed"
        yield from (f"within: {habit.value}" for habit in self._mentions.scopes.habits(at))
        for habit in ("intro", "movement", "return", "compared"):
            ends = [at - f.end for f in self._mentions.cue(habit, max(0, at - _CUE_REACH), at)]
            if any(0 <= gap <= _CUE_NEAR for gap in ends):
                yield f"near: {habit}"
            if 0 in ends:
                yield f"right after: {habit}"
        if at in self._parent_tokens:
            yield "told as a parent"

    def _standing(self, title: str, at: int, hand: InHand) -> Iterator[str]:
        """What the register and the walk so far say of the plant."""
        said = self._said.get(title, [])
        earlier = bisect_left(said, at)
        yield f"named before: {min(earlier, 2)}"
        yield f"named again: {min(len(said) - bisect_right(said, at), 2)}"
        yield f"shown before: {title in hand.shown}"
        if title in self._bred_from:
            yield "bred from"
        if hand.title is None:
            yield "first of the walk"
            return
        if title in self._parents.get(hand.title, ()):
            yield "parent of the one in hand"
        if hand.title in self._parents.get(title, ()):
            yield "child of the one in hand"
        if title in self._parents and hand.title in self._parents:
            yield f"same cross: {self._parents[title] == self._parents[hand.title]}"
        if title in self._places and hand.title in self._places:
            step = self._places[title] - self._places[hand.title]
            yield f"places on in the register: {max(-2, min(step, 3))}"

    def _heard(self, ref: Ref) -> Iterator[str]:
        """How surely the number or name was heard."""
        yield f"number: {ref.is_number}, on record: {ref.on_record}"
        yield f"heard for sure: {_step(round(ref.score * 10), 5, 7, 8, 9, 10)}"
        yield f"said with its letters: {ref.explicit}"
        after = self._mentions.talk.texts[ref.end : ref.end + 1]
        if after and len(after[0]) > 3 and after[0].endswith("s") and not self._marked(ref.end - 1):
            yield "before a plural"

    def _telling(self, start: int, end: int, hand: InHand) -> Iterator[str]:
        """What is told before and after: a look told twice is told of two plants."""
        n = bisect_left(self._full, end)
        next_plant = self._full[n] if n < len(self._full) else len(self._mentions.talk.texts)
        n = bisect_left(self._full, start)
        last_plant = self._full[n - 1] if n else -1
        yield f"words to the next plant: {_step(next_plant - end, 4, 8, 12, 16, 20, 24)}"
        if last_plant >= 0:
            yield f"words from the last plant: {_step(start - last_plant, 4, 8, 12, 16, 24, 32)}"
        after = self._between(end, min(end + _TELLS_WITHIN, next_plant))
        yield f"told after: {min(len(after), 5)}"
        yield f"told soon: {min(sum(s.start < end + _TELLS_SOON for s in after), 3)}"
        yield from (f"told first: {s.trait}" for s in after[:1])
        if any(s.trait == "decision" for s in after):
            yield "decided after"
        gap = start - self._leads.told_before(start)
        yield f"words since anything was told: {_step(gap, 2, 4, 6, 8)}"
        if hand.title is None:
            return
        before = self._between(hand.at, start)
        yield f"words since the one in hand: {_step(start - hand.at, 8, 16, 24, 32, 40, 48)}"
        yield f"told of the one in hand: {min(len(before), 6)}"
        twice = {(s.trait, s.part) for s in before} & {(s.trait, s.part) for s in after}
        yield f"told twice: {min(len(twice), 3)}"
        decided = [s.end for s in before if s.trait == "decision"]
        if decided:
            yield "decided before"
        if decided and start - decided[-1] < _JUST:
            yield "decided just before"

    def _between(self, start: int, end: int) -> tuple[Statement, ...]:
        first, last = bisect_left(self._told_at, start), bisect_left(self._told_at, end)
        return self._told[first:last]


def _step(figure: int, *steps: int) -> str:
    """The figure, as coarse as the steps: "under 4", "8 or more"."""
    n = bisect_right(steps, figure)
    return f"under {steps[n]}" if n < len(steps) else f"{steps[-1]} or more"
