"""The words that lead in a plant: "so this is", "the one next to it is", "back to".

A lead-in is read backwards from the plant, phrase by phrase, so that a clip can begin at
"okay so this first one right here is" and not at the number.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from diary.reading.mentions import Mentions
from diary.reading.numbers.batches import letters_at
from diary.reading.numerals import whole

_FILLERS = frozenset(
    "um uh er the old my a good just here right there look little fella fellow chap one "
    "this first that's so and now "
    "then okay ok oh well yes on next also only same this these big great dear our very "
    "named called last he she "
    "father mother mum dad sister brother guy bloke feller beauty plant for today up "
    "down along in hi ha hmm very its gal lass lad lady baby poor youngster again is 's "
    "are that were himself herself itself".split()
)
_SHOW_VERBS = frozenset(
    {
        "is",
        "'s",
        "are",
        "'re",
        "here",
        "got",
        "have",
        "'ve",
        "meet",
        "says",
        "labelled",
        "marked",
        "reads",
        "hello",
        "come",
        "comes",
        "called",
        "labeled",
        "showing",
        "holding",
    }
)
_GUESSES = frozenset({"could", "might", "may", "perhaps", "either", "maybe", "possibly", "think"})
_AFRESH = frozenset({"now", "then", "next", "here"})
_MOST_WORDS = 16
_SHORT_OPENING = 9  # words before a lead-in that still count as the head of a sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class LeadIn:
    """What leads in a plant: where it starts and what kinds of phrase it holds."""

    start: int
    any: bool
    at_head: bool  # it begins a sentence (or the plant itself does)
    shown: bool  # "this is", "here's", "label says"
    presented: bool  # "this", "here" or "next" is among its words
    moved: bool  # "next to it", "the one behind"
    came_back: bool  # "back to"
    numbered: bool  # "number", "plant"
    batch: str  # "the Hs": letters that the numbers begin with


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """A phrase of moving on; `plain` when it can bring in a plant with no number by itself."""

    start: int
    end: int
    plain: bool


class LeadIns:
    """All phrases that lead in plants, asked by token."""

    def __init__(self, mentions: Mentions, telling: tuple[int, ...] = ()) -> None:
        talk, vocabulary = mentions.talk, mentions.vocabulary
        self._mentions = mentions
        self._told_ends = telling
        self._kinds: dict[int, list[tuple[int, str]]] = {}
        for kind in ("intro", "movement", "return"):
            for found in vocabulary.cues[kind].find(talk.texts):
                self._kinds.setdefault(found.end, []).append((found.start, kind))
        self._compared: dict[int, int] = {}
        for found in vocabulary.cues["compared"].find(talk.texts):
            self._compared[found.end] = max(
                found.end - found.start, self._compared.get(found.end, 0)
            )

    def before(self, at: int) -> LeadIn:
        """The lead-in that ends right before the token."""
        talk = self._mentions.talk
        floor = max(
            0, at - _MOST_WORDS, talk.sentence(at)[0] if talk.punctuated else self.told_before(at)
        )
        start, kinds, words = self._furthest(at, floor)
        sentence = talk.sentence(at)[0]
        clause = talk.clause(at)[0]
        shown = (any(w in _SHOW_VERBS for w in words) and any(k == "intro" for k in kinds)) or (
            talk.texts[at - 1 : at] in (("is",), ("'s",), ("its",)) and not talk.tokens[at - 1].mark
        )
        return LeadIn(
            start=start,
            any=bool(kinds),
            at_head=start <= sentence
            or (not talk.punctuated and start <= clause)
            or (shown and (start <= clause or start - sentence <= _SHORT_OPENING)),
            shown=shown,
            presented=bool({"this", "that", "here", "next", "first", "last"} & set(words)),
            moved="movement" in kinds,
            came_back="return" in kinds,
            numbered=at > 0 and talk.texts[at - 1] in ("number", "plant", "seedling"),
            batch=self._batch(at),
        )

    def _furthest(self, at: int, floor: int) -> tuple[int, frozenset[str], tuple[str, ...]]:
        """The earliest token from which phrases and fillers lead up to `at`, and what they are."""
        texts, tokens = self._mentions.talk.texts, self._mentions.talk.tokens
        reached: dict[int, tuple[frozenset[str], tuple[str, ...]]] = {at: (frozenset(), ())}
        for end in range(at, floor, -1):
            if end not in reached:
                continue
            kinds, words = reached[end]
            steps = [(s, frozenset({k})) for s, k in self._kinds.get(end, ()) if s >= floor]
            if texts[end - 1] in _FILLERS and tokens[end - 1].mark not in (".", "?"):
                steps.append((end - 1, frozenset()))
            steps += [
                (r.start, frozenset())
                for r in self._mentions.refs_in(floor, end)
                if r.end == end and r.cut is not None
            ]
            for start, kind in steps:
                told = (kinds | kind, (*words, *texts[start:end]))
                if start not in reached or len(told[0]) > len(reached[start][0]):
                    reached[start] = told
        start = min(reached)
        return start, *reached[start]

    def cross_before(self, at: int) -> str:
        """The cross spoken of shortly before: "cross twenty-two is ..., and this is plant four"."""
        texts = self._mentions.talk.texts
        for i in range(at - 1, max(-1, at - 26), -1):
            if (
                texts[i] == "cross"
                and (number := whole(texts, i + 1)) is not None
                and number.end <= at
            ):
                return str(int(number.value))
        return ""

    def _batch(self, at: int) -> str:
        prefixes = {
            p.lower() for shape in self._mentions.numbers.shapes for p in shape.prefixes if p
        }
        for i in range(at - 1, max(-1, at - 24), -1):
            texts = self._mentions.talk.texts
            told = letters_at(texts, i) if texts[i - 1] in ("the", "to") else None
            if told is not None and told[0] in prefixes:
                return told[0]  # "the b's now", "on to the tees"
        return ""

    def told_before(self, at: int) -> int:
        """The end of the last statement before the token: a clip cannot begin before it."""
        n = bisect_right(self._told_ends, at)
        return self._told_ends[n - 1] if n else 0

    def compared(self, at: int) -> bool:
        """Whether a phrase of comparison ends right before the token ("starting with" is none)."""
        if at not in self._compared or self._mentions.talk.between(at - 1, at, (".", "?")):
            return False
        longest = max((at - start for start, _ in self._kinds.get(at, ())), default=0)
        if longest == self._compared[at]:
            return not self.before(at).at_head  # "on to 23-04", not "put it on to 23-04"
        return longest < self._compared[at]

    def moved_before(self, at: int) -> bool:
        """Whether a phrase of moving on stands before the token in its sentence."""
        start = self._mentions.talk.sentence(at)[0]
        return bool(self._mentions.cue("movement", start, at))

    def guessed(self, at: int) -> bool:
        """Whether the plant is only a guess: "could be 23 80"."""
        texts = self._mentions.talk.texts
        start = self._mentions.talk.sentence(at)[0] if self._mentions.talk.punctuated else 0
        near = texts[max(start, at - 3) : at]
        if near[-1:] in (("now",), ("then",), ("next",)):
            return False  # "and there again I might not. Now 23-13"
        if "but" in near:
            near = near[near.index("but") :]  # "you'd never think it, but 23-34 is"
        if set(near) & _AFRESH:
            return False  # "there again i might not now 23 13"
        return bool(_GUESSES & set(near)) and "number" not in texts[max(0, at - 1) : at]

    def move_near(self, at: int) -> Move | None:
        """The phrase of moving on in the same sentence, or right before it."""
        start = self._mentions.talk.sentence(at)[0]
        earliest = max(0, min(start, at - 10), start - 10)
        near = self._mentions.cue("movement", earliest, at + 9)
        return self.move_at(near[-1].start) if near else None

    def move_at(self, at: int) -> Move | None:
        """The phrase of moving on that begins at the token."""
        found = next(iter(self._mentions.cue("movement", at, at + 1)), None)
        if found is None:
            return None
        words = self._mentions.talk.texts[found.start : found.end]
        return Move(start=found.start, end=found.end, plain=_plain(words))

    def came_back_near(self, at: int) -> bool:
        """Whether the speaker says in the words before that he goes back."""
        texts = self._mentions.talk.texts
        return any(
            f.end - f.start > 2 or texts[f.start] not in ("on", "about")  # "on the floor"
            for f in self._mentions.cue("return", at - 12, at + 1)
        )

    def start_of(self, at: int, move: Move | None) -> int:
        """Where a clip begins whose plant is told at the token."""
        talk = self._mentions.talk
        start = talk.sentence(at)[0]
        if not talk.punctuated:
            start = max(start, min(self.told_before(at), at))
        if move is not None and move.start < at:
            return (
                min(self.before(move.start).start, max(start, move.start))
                if at - move.start < 16
                else start
            )
        if not talk.punctuated:
            return max(min(start, at), at - 10)
        return start


_PLACES = frozenset(
    {
        "behind",
        "beside",
        "next",
        "along",
        "end",
        "after",
        "front",
        "corner",
        "under",
        "below",
        "above",
    }
)


_STANDING = frozenset({"behind", "beside", "next", "along", "after", "front", "below", "above"})


def _plain(words: tuple[str, ...]) -> bool:
    """Moving words that can stand for a plant: "the one behind it", "its neighbour"."""
    if words[:1] == ("the",) and words[1:2] != ("one",) and _STANDING & set(words):
        return True  # "the basket behind it"
    if words[:1] == ("its",):
        return bool({"neighbour", "neighbor", "companion", "friend"} & set(words))
    if words[-1:] in (("this",), ("here",), ("you",)) and words[0] in (
        "what",
        "who",
        "now",
        "and",
        "hello",
    ):
        return bool({"what", "who"} & set(words))
    another = words in (("and", "another"), ("another", "one"))
    return another or ("one" in words and bool(_PLACES & set(words)))


def lead_ins(mentions: Mentions, statement_ends: Sequence[int]) -> LeadIns:
    """The lead-ins of a talk; `statement_ends` are the tokens at which statements end."""
    return LeadIns(mentions, tuple(sorted(statement_ends)))
