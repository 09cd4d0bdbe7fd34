"""Crosses to be made on the plant in hand, or just made: decisions to breed, and no parents.

"I'll put Copper Lantern on her this afternoon", "Tin Whistle's pollen goes on it tonight",
"I've dusted her with Lady Quill this morning" breed; "I put Copper Lantern on her and sowed
six" tells where the seed in hand came from.
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions, Ref

_SOON = frozenset(
    "'ll will going shall be want today tonight tomorrow next afternoon evening spring summer "
    "goes gets wants needs ready fancy mean".split()
)
_JUST_NOW = frozenset(
    "'ve have today morning now just minute yesterday weekend monday tuesday wednesday thursday "
    "friday saturday sunday".split()
)
_PUTTING = frozenset(
    "put cross putting try crossing use using dab dabbing trying pop popping have having".split()
)
_PUT = frozenset("put tried dabbed popped brushed rubbed dusted used had".split())
_A_DAB_OF = frozenset("a bit dab touch drop little some more of the pollen from".split())
_ITSELF = frozenset({"it", "her", "him", "this", "that", "them", "you"})
_OVER = frozenset({"on", "to", "onto", "over", "with", "'s", "pollen", "straight", "right", "back"})
_UPON = frozenset({"on", "onto", "to", "over", "with"})
_GOING = frozenset("goes going go gets getting be is 's 'll will put dabbed being to".split())
_TIMES = tuple((word,) for word in "tomorrow tonight today next this".split())
_DUSTING = frozenset(
    "dust dusting brush brushing dab dabbing cross crossing hit hitting pollinate pollinating "
    "tickle tickling marry marrying mate mating pair pairing put putting try trying".split()
)
_DUSTED = frozenset("dusted brushed dabbed crossed hit pollinated tickled married mated".split())
_AROUND, _LEAD, _ON = 5, 6, 6
_UNMEANT = {Habit.WISH, Habit.HISTORY, Habit.QUESTION, Habit.DENIAL}


def crosses_to_make(mentions: Mentions, taken: set[int]) -> list[Statement]:
    """The crosses to be made on this plant, where no other way of deciding was found."""
    found = []
    for ref in mentions.refs:
        if ref.cut is not None:
            continue
        for start, end in (
            *_goes_to(mentions, ref),
            *_put_to(mentions, ref),
            *_put_on(mentions, ref),
            *_goes_on(mentions, ref),
            *_with(mentions, ref),
        ):
            if taken & {start} or mentions.scopes.habits(start, end) & _UNMEANT:
                continue
            found.append(
                Statement(
                    trait="decision",
                    value="breed",
                    start=start,
                    end=end,
                    rule="a cross to be made on it",
                    score=0.88,
                )
            )
            break
    return found


def made_just_now(mentions: Mentions, start: int, end: int) -> bool:
    """ "I've put A on it this morning"; not "I put A on it", "I've always put A on it"."""
    low, high = _around(mentions, start, end)
    return bool(_JUST_NOW & set(mentions.talk.texts[low:high]))


def _put_on(mentions: Mentions, ref: Ref) -> Iterator[tuple[int, int]]:
    """ "I'll put A on her", "I've dabbed A's pollen on it this morning"."""
    texts = mentions.talk.texts
    verb = ref.start - 1
    while verb > 0 and texts[verb] in _A_DAB_OF:
        verb -= 1
    to = _upon_it(mentions, ref.end)
    if to is None or texts[verb] not in _PUTTING | _PUT:
        return
    soon = texts[verb] in _PUTTING and _soon(mentions, verb, to)
    if soon or made_just_now(mentions, verb, to):
        yield verb, to


def _goes_to(mentions: Mentions, ref: Ref) -> Iterator[tuple[int, int]]:
    """ "Next spring it goes to A, with the brush", "that's going on A tomorrow"."""
    texts = mentions.talk.texts
    i = ref.start
    while i and texts[i - 1] in _OVER:
        i -= 1
    onto = bool(_UPON - {"with"} & set(texts[i : ref.start]))
    if not onto or i < 2 or texts[i - 1] not in ("goes", "going", "go"):
        return
    verb = i - 1
    while verb and texts[verb - 1] in _GOING | {"'ll", "can", "is", "'s"}:
        verb -= 1
    low = max(mentions.talk.sentence(ref.start)[0], verb - _LEAD)
    brushed = {"brush", "pollen", "cross"} & set(texts[low : ref.end + _ON])
    if texts[verb - 1] in _ITSELF | {"he", "she"} and (
        _soon_said(texts[low : ref.end + _ON]) or brushed
    ):
        yield verb - 1, ref.end


def _put_to(mentions: Mentions, ref: Ref) -> Iterator[tuple[int, int]]:
    """ "I'm going to put that across A", "I'll try its pollen on A"; not "I put it on A"."""
    texts = mentions.talk.texts
    i = ref.start
    while i and texts[i - 1] in _OVER | {"across"}:
        i -= 1
    if not (_UPON | {"across"}) & set(texts[i : ref.start]):
        return
    verb = i - 1
    while verb and verb > i - _AROUND and texts[verb] in _ITSELF | _A_DAB_OF | _ITS_OWN:
        verb -= 1
    if texts[verb] in _PUTTING and i - verb > 1 and _soon(mentions, verb, ref.end):
        yield verb, ref.end


_ITS_OWN = frozenset({"its", "his", "her", "one", "plant", "fella"})


def _soon_said(words: tuple[str, ...]) -> bool:
    return bool(
        {"next", "tomorrow", "tonight", "today", "spring", "summer", "afternoon"} & set(words)
    )


def _goes_on(mentions: Mentions, ref: Ref) -> Iterator[tuple[int, int]]:
    """ "A's pollen goes on it this evening", "A will be going on her", "A goes on tomorrow"."""
    texts = mentions.talk.texts
    i = ref.end
    while i < len(texts) and texts[i] in ("'s", "pollen"):
        i += 1
    verb = i
    while i < len(texts) and i - verb < _AROUND and texts[i] in _GOING:
        i += 1
    to = _upon_it(mentions, i)
    if to is None and texts[i : i + 1] == ("on",) and texts[i + 1 : i + 2] in _TIMES:
        to = i + 2
    if i > verb and to is not None and {"goes", "going", "go", "gets", "put"} & set(texts[verb:i]):
        yield ref.start, to


def _with(mentions: Mentions, ref: Ref) -> Iterator[tuple[int, int]]:
    """ "I'll dust it with A", "I've just crossed her with A"."""
    texts = mentions.talk.texts
    i = ref.start
    while i and texts[i - 1] in _A_DAB_OF:
        i -= 1
    if i < 3 or texts[i - 1] != "with" or texts[i - 2] not in _ITSELF:
        return
    verb = i - 3
    soon = texts[verb] in _DUSTING and _soon(mentions, verb, ref.end)
    if soon or (texts[verb] in _DUSTED and made_just_now(mentions, verb, ref.end)):
        yield verb, ref.end


def _upon_it(mentions: Mentions, at: int) -> int | None:
    """The end of "on to it", "straight over her"."""
    texts = mentions.talk.texts
    i = at
    while i < len(texts) and texts[i] in _OVER:
        i += 1
    if i < len(texts) and texts[i] in _ITSELF and _UPON & set(texts[at:i]):
        return i + 1
    return None


def _soon(mentions: Mentions, start: int, end: int) -> bool:
    low, high = _around(mentions, start, end)
    return bool(_SOON & set(mentions.talk.texts[low:high]))


def _around(mentions: Mentions, start: int, end: int) -> tuple[int, int]:
    low, high = mentions.talk.sentence(start)
    return max(low, start - _AROUND), min(high, end + _AROUND)
