"""A walk along the bench as it is followed: the turns so far, and what they leave behind."""

from dataclasses import dataclass, field

from diary.linking.document import Plant, PlantKind
from diary.reading.habits.scope import Habit

FIRST_WORDS = 60  # of what is told of a plant, by which it may be known again
UNSAID = frozenset({Habit.DENIAL, Habit.WISH, Habit.QUESTION, Habit.REPORTED})
# Words that tell nothing about which plant is meant.
PLAIN_WORDS = frozenset(
    "the a an and is was it he she this that one ones with to of on in at back go going "
    "come again my me i so oh um "
    "now then right just for 's had has have got no label number tag without minute "
    "second moment look lost here there "
    "what which who let us we you quick quickly briefly little snapped "
    "but not its his her him them they from all are were will would been very too when while than "
    "into out off some any more most much can could did does each how other over same such these "
    "those though till until under where why yet also quite rather really think know say said see "
    "put get give take made make because about thing things plant".split()
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """From token `at` on the talk is of `plant`; `said` is where it is told which."""

    at: int
    said: int
    plant: Plant
    score: float
    rule: str
    runner_up: str | None = None
    runner_up_score: float | None = None


@dataclass(slots=True)
class Walk:
    """What has been seen so far; the one mutable value of the core, local to one reading."""

    current: Plant | None = None
    numbers: tuple[str, ...] = ()  # latest last
    unnamed: tuple[tuple[Plant, frozenset[str]], ...] = ()
    shown: tuple[tuple[Plant, int], ...] = ()  # plants with the token of their turn
    turns: tuple[Turn, ...] = ()
    titles: frozenset[str] = frozenset()  # of the plants turned to
    told: dict[int, frozenset[str]] = field(default_factory=dict)  # words of each finished turn

    def turn_to(self, turn: Turn, words: tuple[str, ...]) -> None:
        """Go on to the plant; `words` are the first said of it."""
        self.turns = (*self.turns, turn)
        self.current = turn.plant
        self.titles |= {turn.plant.title}
        self.shown = (*self.shown, (turn.plant, turn.at))
        if turn.plant.number:
            self.numbers = (*self.numbers, turn.plant.number)
        if turn.plant.kind is PlantKind.UNNAMED and all(p != turn.plant for p, _ in self.unnamed):
            self.unnamed = (*self.unnamed, (turn.plant, telling_words(words)))

    def mend_last(self, turn: Turn) -> None:
        """Put another numbered plant in the place of the last one."""
        assert turn.plant.number is not None
        self.turns = (*self.turns[:-1], turn)
        self.titles = frozenset(one.plant.title for one in self.turns)
        self.current = turn.plant
        self.shown = (*self.shown[:-1], (turn.plant, turn.at))
        self.numbers = (*self.numbers[:-1], turn.plant.number)

    def forget_last(self) -> None:
        """Take back the last turn, to a plant without a number seen for the first time."""
        self.turns, self.shown = self.turns[:-1], self.shown[:-1]
        self.titles = frozenset(turn.plant.title for turn in self.turns)
        self.unnamed = self.unnamed[:-1]
        self.current = self.turns[-1].plant if self.turns else None


def telling_words(words: tuple[str, ...]) -> frozenset[str]:
    """The words that may tell one plant from another."""
    return frozenset(w for w in words if w not in PLAIN_WORDS and len(w) > 2)
