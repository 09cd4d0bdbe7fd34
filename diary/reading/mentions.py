"""Everything heard in one talk, before anything is linked to a plant."""

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol, TypeVar

from diary.reading.colours import ColourHeard, find_colours
from diary.reading.habits.scope import Scopes, cues
from diary.reading.habits.scopes import find_scopes
from diary.reading.known import Known
from diary.reading.lengths import Length, find_lengths
from diary.reading.looks_begun import looks_begun
from diary.reading.name_places import name_places
from diary.reading.names import NameHeard, find_names, name_index
from diary.reading.numbers.seedling_numbers import find_numbers
from diary.reading.numbers.system import NumberHeard, NumberSystem, number_system
from diary.reading.phrases import Found, PhraseBook
from diary.reading.short_names import short_names
from diary.reading.tokens import COMMA, QUERY, STOP, Talk, cut_at
from diary.reading.vocabulary import Vocabulary


@dataclass(frozen=True, slots=True, kw_only=True)
class Ref:
    """A plant named or numbered at tokens start..end-1.

    `title` is a number in the breeder's format or a name; empty for a number cut short.
    """

    start: int
    end: int
    title: str
    score: float
    is_number: bool
    on_record: bool
    cut: tuple[tuple[str, ...], str] | None = None
    explicit: bool = False  # said with its letters, separators or "number"
    runner_up: str | None = None
    runner_up_score: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mentions:
    """All mentions of a talk. `masked` marks the tokens of names and numbers."""

    talk: Talk
    vocabulary: Vocabulary
    numbers: NumberSystem
    refs: tuple[Ref, ...]
    masked: tuple[bool, ...]
    scopes: Scopes
    colours: tuple[ColourHeard, ...]
    parts: tuple[Found, ...]
    lengths: tuple[Length, ...]
    cue_table: Mapping[str, tuple[Found, ...]]
    looks: frozenset[int] = frozenset()  # where a look is told afresh, in captions

    def cue(self, habit: str, start: int = 0, end: int | None = None) -> tuple[Found, ...]:
        """The cues of a habit of speech that begin at tokens start..end-1, in order."""
        return _between(self.cue_table[habit], start, end)

    def parts_in(self, start: int, end: int | None = None) -> tuple[Found, ...]:
        """Parts that begin at tokens start..end-1."""
        return _between(self.parts, start, end)

    def colours_in(self, start: int, end: int | None = None) -> tuple[ColourHeard, ...]:
        """Colours that begin at tokens start..end-1."""
        return _between(self.colours, start, end)

    def refs_in(self, start: int, end: int | None = None) -> tuple[Ref, ...]:
        """Plants named or numbered that begin at tokens start..end-1."""
        return _between(self.refs, start, end)

    def lengths_in(self, start: int, end: int | None = None) -> tuple[Length, ...]:
        """Lengths that begin at tokens start..end-1."""
        return _between(self.lengths, start, end)

    def ref_at(self, start: int) -> Ref | None:
        """The plant whose words begin at the token."""
        return next(iter(self.refs_in(start, start + 1)), None)

    def ref_ending(self, end: int) -> Ref | None:
        """The plant whose words end right before the token."""
        return next((r for r in self.refs_in(end - _LONGEST_REF, end) if r.end == end), None)

    def phrases(self, book: PhraseBook, never: PhraseBook | None = None) -> list[Found]:
        """Matches of the book outside names and numbers, without the exceptions of `never`."""
        texts = self.talk.texts
        found = [
            f
            for longest in book.find(texts)
            if (f := self._within_marks(book, longest)) and not any(self.masked[f.start : f.end])
        ]
        if never is None:
            return found
        meant_otherwise = {
            (e.label, end)
            for e in never.find(texts)
            if not self.talk.between(e.start, e.end - 1, (STOP, QUERY, COMMA))
            for end in range(e.start + 1, e.end + 1)
        }
        return [f for f in found if (f.label, f.end) not in meant_otherwise]

    def _within_marks(self, book: PhraseBook, found: Found) -> Found | None:
        """The phrase, or the longest of its label that runs over no mark: "one more year."

        A phrase of two words may run over a comma.
        """
        talk = self.talk
        while talk.between(found.start, found.end - 1, (STOP, QUERY)) or (
            found.end - found.start > 2 and talk.between(found.start, found.end - 1, (COMMA,))
        ):
            marks = range(found.start, found.end - 1)
            cut = next(i for i in reversed(marks) if talk.tokens[i].mark) + 1
            shorter = [
                f
                for f in book.find(talk.texts, found.start, cut)
                if f.start == found.start and f.label == found.label
            ]
            if not shorter:
                return None
            found = shorter[0]
        return found


_LONGEST_REF = 16


class _Placed(Protocol):
    @property
    def start(self) -> int: ...


_P = TypeVar("_P", bound=_Placed)


def _between(items: tuple[_P, ...], start: int, end: int | None) -> tuple[_P, ...]:
    """The items, ordered by start, that begin at start..end-1."""
    first = bisect_left(items, start, key=lambda item: item.start)
    last = len(items) if end is None else bisect_left(items, end, key=lambda item: item.start)
    return items[first:last]


def find_mentions(
    talk: Talk, vocabulary: Vocabulary, known: Known, *, year: int | None = None
) -> Mentions:
    """All mentions of the talk; `year` is that of the recording."""
    system = number_system(known, year)
    index = name_index(known)
    names = find_names(talk, index, name_places(talk, vocabulary))
    names = tuple(
        sorted((*names, *short_names(talk, names, index, vocabulary)), key=lambda n: n.start)
    )
    numbers = find_numbers(talk, system, vocabulary)
    refs = _refs(names, numbers)
    masked = _mask(refs, len(talk.texts))
    colours = find_colours(talk, vocabulary, masked)
    parts = _longest(
        [f for f in vocabulary.parts.find(talk.texts) if not any(masked[f.start : f.end])]
    )
    looks = looks_begun(talk, vocabulary, masked, colours, parts)
    talk = cut_at(talk, looks)
    return Mentions(
        talk=talk,
        vocabulary=vocabulary,
        numbers=system,
        refs=refs,
        masked=masked,
        scopes=find_scopes(talk, vocabulary),
        colours=colours,
        parts=parts,
        lengths=find_lengths(talk.texts, vocabulary, masked),
        looks=frozenset(looks),
        cue_table={habit: tuple(cues(talk, vocabulary, habit)) for habit in vocabulary.cues},
    )


def _refs(names: Sequence[NameHeard], numbers: Sequence[NumberHeard]) -> tuple[Ref, ...]:
    refs = [
        Ref(
            start=n.start,
            end=n.end,
            title=n.name,
            score=n.score,
            is_number=False,
            on_record=True,
            runner_up=n.runner_up,
            runner_up_score=n.runner_up_score,
        )
        for n in names
    ]
    for n in numbers:
        clash = [r for r in refs if r.start < n.end and n.start < r.end]
        if clash and (n.cut is not None or any(r.score >= 0.9 for r in clash)):
            continue
        refs = [r for r in refs if r not in clash]
        refs.append(
            Ref(
                start=n.start,
                end=n.end,
                title=n.number,
                score=n.score,
                is_number=True,
                on_record=n.on_record,
                explicit=n.explicit,
                cut=n.cut,
                runner_up=n.runner_up,
                runner_up_score=n.runner_up_score,
            )
        )
    return tuple(sorted(refs, key=lambda r: r.start))


def _mask(refs: Sequence[Ref], size: int) -> tuple[bool, ...]:
    masked = [False] * size
    for ref in refs:
        if ref.cut is None:
            masked[ref.start : ref.end] = [True] * (ref.end - ref.start)
    return tuple(masked)


def _longest(found: Sequence[Found]) -> tuple[Found, ...]:
    """Without those inside a longer one ("petals" in "upper petals")."""
    kept: list[Found] = []
    for f in sorted(found, key=lambda f: (f.start, -f.end)):
        if not kept or f.start >= kept[-1].end:
            kept.append(f)
    return tuple(kept)
