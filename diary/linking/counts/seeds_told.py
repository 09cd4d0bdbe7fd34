"""Seeds sown and germinated: "I sowed ten seeds and three came up", "Eleven seed in. Four up."

Every number of seed talk is asked what stands beside it: a verb of sowing or the seeds
themselves, or words that say they came up; "of those" and "out of twelve" hold two together.
"""

from bisect import bisect_left

from diary.linking.counts.came_of_sown import came_of_sown, is_taken
from diary.linking.counts.seed_numbers import (
    OF_THEM,
    SEED_TALK,
    came_up,
    ends,
    follows,
    precedes,
)
from diary.linking.counts.sown_pairs import all_but, all_of_them, sown_pairs, told_how_many
from diary.linking.counts.was_sown import was_sown
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.misheard.numbers import HOMOPHONES
from diary.reading.numerals import Quantity
from diary.reading.spoken import amount_at
from diary.reading.tokens import Talk

SOWN, GERMINATED = "count_seeds_sown", "count_germinated"
_UNSAID = frozenset({Habit.NOT_RECALLED, Habit.WISH, Habit.QUESTION, Habit.HYPOTHETICAL})
_TALK_BEFORE, _TALK_AFTER = 34, 16
_MOST = 999
_CUTTINGS_BEFORE = 10
_NO_COUNT_BEFORE = frozenset("number no page shelf row year day not never".split())
_SECOND_THOUGHT = 12
# A word for a figure that it sounds like: what stands after it, and before.
_SURELY_UP = (("come", "up"), ("came", "up"), ("coming", "up"), ("sprouted",), ("emerged",))
_ONLY_AFTER_FIGURES = (
    ("up", "out"),
    ("up", "from"),
    ("up", "of"),
    ("of", "them"),
    ("came", "up"),
    ("came", "through"),
    ("germinated", "from"),
    ("germinated", "out"),
    ("out", "of"),
)
_BEFORE = frozenset("got only just and but had 've have get with about so".split())


def find_seeds(mentions: Mentions) -> tuple[list[Statement], set[int]]:
    """All counts of seeds sown and germinated, and where those begin that are only asked."""
    found: list[Statement] = []
    doubted: set[int] = set()
    amounts = _amounts(mentions)
    paired = {}
    for pair in sown_pairs(mentions, amounts):
        paired[pair.sown.start] = _told(mentions, SOWN, pair.sown)
        paired[pair.up.start] = _told(mentions, GERMINATED, pair.up)
    for amount, came in told_how_many(mentions, amounts):
        paired[amount.start] = _told(mentions, GERMINATED if came else SOWN, amount)
    for amount in amounts:
        unsaid = _unsaid(mentions, amount)
        if unsaid - {Habit.QUESTION, Habit.HYPOTHETICAL}:
            continue
        if Habit.HYPOTHETICAL in unsaid and _supposed(mentions, amount):
            continue
        unsaid = unsaid & {Habit.QUESTION}
        if amount.value == 1 and _one_of(mentions, amount, paired):
            continue  # "one of three that germinated"
        told = paired.get(amount.start)
        if told is None and _seed_talk(mentions, amount.start):
            told = _alone(mentions, amount, found)
        if told is not None:
            found.append(told)
        if unsaid:
            doubted.add(amount.start)
    found += _whole_lot(mentions, found)
    return [*found, *_came_of_them(mentions, found)], doubted


def _came_of_them(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """What came of each number sown that no word of coming up was found for."""
    told: list[Statement] = []
    ups = sorted(s.start for s in found if s.trait == GERMINATED)
    sown = sorted((s for s in found if s.trait == SOWN), key=lambda s: s.start)
    for s, following in zip(sown, [*sown[1:], None], strict=False):
        near = bisect_left(ups, s.start - _UP_BEFORE)
        if (near < len(ups) and ups[near] <= s.start + _UP_AFTER) or not isinstance(s.value, int):
            continue
        stop = following.start if following is not None else len(mentions.talk.texts)
        came = came_of_sown(mentions, Quantity(s.start, s.end - 1, s.value), stop)
        told += [_told(mentions, GERMINATED, came)] if came is not None else []
    return told


_UP_BEFORE, _UP_AFTER = 10, 22


def _unsaid(mentions: Mentions, amount: Quantity) -> frozenset[Habit]:
    """The habits that keep the figure from being told; captions may run into the next words.

    "10 seeds in the tray and 6 up | can't say yet" tells six.
    """
    scopes = mentions.scopes.by_token[amount.start]
    return (
        frozenset(
            s.habit
            for s in scopes
            if mentions.talk.punctuated
            or s.habit is not Habit.NOT_RECALLED
            or s.cue <= amount.start
        )
        & _UNSAID
    )


def _supposed(mentions: Mentions, amount: Quantity) -> bool:
    """ "if I had ten seeds from it"; not "if it lives 12 seeds I sowed"."""
    before = mentions.talk.texts[max(0, amount.start - 4) : amount.start]
    return mentions.talk.punctuated or before[-1:] in (("had",), ("got",), ("have",), ("get",))


def _one_of(mentions: Mentions, amount: Quantity, paired: dict[int, Statement]) -> bool:
    of = mentions.talk.texts[amount.end : amount.end + 1] == ("of",)
    return of and any(
        s.trait == GERMINATED for i in (1, 2) if (s := paired.get(amount.end + i)) is not None
    )


def _alone(mentions: Mentions, amount: Quantity, found: list[Statement]) -> Statement | None:
    """What a figure tells by the words beside it."""
    if is_taken(mentions, amount):
        return None
    if came_up(mentions, amount) or _got(mentions, amount, found):
        return _told(mentions, GERMINATED, amount)
    if was_sown(mentions, amount):
        return _told(mentions, SOWN, amount)
    return None


def _got(mentions: Mentions, amount: Quantity, found: list[Statement]) -> bool:
    """ "I planted forty and only got six": a number got, right after a number sown."""
    sown = [s for s in found if s.trait == SOWN and amount.start - s.end <= _SECOND_THOUGHT]
    got = precedes(mentions, amount, mentions.vocabulary.germinated_before)
    return bool(sown) and got is not None and ends(mentions, amount.end)


def _told(mentions: Mentions, trait: str, amount: Quantity) -> Statement:
    return Statement(
        trait=trait,
        value=int(amount.value),
        unit="count",
        start=amount.start,
        end=min(amount.end + 1, len(mentions.talk.texts)),
        rule="seeds sown" if trait == SOWN else "seeds germinated",
        score=0.93,
    )


def _amounts(mentions: Mentions) -> list[Quantity]:
    """The whole numbers that count nothing else."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    sized = {i for x in mentions.lengths for i in range(x.start, x.end)}
    found: list[Quantity] = []
    at = 0
    while at < len(talk.texts):
        amount = None if mentions.masked[at] or at in sized else _figure(talk, at)
        if amount is None:
            at += 1
            continue
        at = amount.end
        other = vocabulary.other_units.at(talk.texts, amount.end)
        marked = not amount.start or talk.tokens[amount.start - 1].mark
        before = "" if marked else talk.texts[amount.start - 1]
        if (
            amount.value == int(amount.value)
            and 0 < amount.value <= _MOST
            and (other is None or talk.texts[amount.end] in OF_THEM)
            and before not in _NO_COUNT_BEFORE
            and talk.texts[amount.end : amount.end + 2] != ("of", "you")
        ):
            found.append(amount)
    return found


def _figure(talk: Talk, at: int) -> Quantity | None:
    """A figure, or what captions write for one: "got to up out of six", "for of them came"."""
    texts = talk.texts
    after = texts[at + 1 : at + 3]
    in_to_up = texts[at - 1 : at] == ("in",) and texts[at + 1 : at + 2] == ("up",) and at > 1
    led = at > 0 and texts[at - 1] in _BEFORE and after in _ONLY_AFTER_FIGURES
    if texts[at] in HOMOPHONES and (led or in_to_up):
        return Quantity(at, at + 1, HOMOPHONES[texts[at]])
    return amount_at(talk, at)


def _seed_talk(mentions: Mentions, at: int) -> bool:
    """Whether the talk is of seeds; not "I took five cuttings and three are alive"."""
    talk = mentions.talk
    for i in range(at - 1, max(0, at - _CUTTINGS_BEFORE), -1):
        if talk.texts[i] in SEED_TALK:
            break
        if talk.texts[i] in ("cuttings", "slips"):
            return False
    amount = amount_at(talk, at)
    if amount is not None and amount.value > 1:
        cue = follows(mentions, amount, mentions.vocabulary.germinated)
        surely = cue is not None and talk.texts[cue.start : cue.end] in _SURELY_UP
        if (
            surely
            and cue is not None
            and (ends(mentions, cue.end) or talk.texts[cue.end] in ("out", "from", "for", "in"))
        ):
            return True  # "there's fourteen come up out of that lot"
    texts = talk.texts[max(0, at - _TALK_BEFORE) : at + _TALK_AFTER]
    return bool(SEED_TALK & set(texts)) or bool(
        mentions.vocabulary.sown_before.find(texts) or mentions.vocabulary.sown_after.find(texts)
    )


def _whole_lot(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """ "I put in seven and every one of them came up": as many as were sown."""
    told: list[Statement] = []
    for s in found:
        if s.trait == SOWN and isinstance(s.value, int):
            left = all_but(mentions, Quantity(s.start, s.end - 1, s.value))
            told += [_told(mentions, GERMINATED, left)] if left is not None else []
    for start, end, both in all_of_them(mentions):
        sown = [s for s in found if s.trait == SOWN and s.end <= start and start - s.end <= 16]
        value = sown[-1].value if sown else 2 if both and _seed_talk(mentions, start) else None
        if isinstance(value, int):
            told.append(_told(mentions, GERMINATED, Quantity(start, end - 1, value)))
    return told
