"""Cutting the talk into clips: from each turn to the next, asides left out.

One sentence of aside lies inside the clip; two or more in a row split it, and general talk
at the end ("that's the first bench done, and the kettle is on") belongs to no clip.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from diary.linking.asides import PERSONS, goes_on, interrupts, of_the_plant
from diary.linking.endings import endings, leave_taken, wraps_up
from diary.linking.turns.walk import Turn
from diary.reading.mentions import Mentions
from diary.reading.tokens import Talk

# A run of aside at least so long ends a clip, where sentences are not marked.
_ASIDE_WORDS = 13
_PLANT_WORDS = frozenset(
    "flower flowers bloom blooms plant leaf leaves petals petal colour color habit "
    "seedling label seed parent mother "
    "father cross pollen truss head heads buds bud stem keeper cuttings grower shape size".split()
)
_NO_THING = frozenset("sorry excuse hang hold anyway where i must remind spray by mind".split())
_POINTERS = frozenset(
    {"it", "this", "that", "he", "she", "him", "her", "its", "his", "they", "them"}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """Tokens start..end-1 are about the plant of `turn`."""

    start: int
    end: int
    turn: Turn


@dataclass(frozen=True, slots=True, kw_only=True)
class _Unit:
    start: int
    end: int
    off: bool  # says nothing about a plant, and is about something else
    neutral: bool  # could be about anything ("they were on offer")
    aside: bool  # has a word of other things
    closing: bool
    over: bool  # the walk is said to be over
    new_day: bool
    broken_off: bool  # something else interrupts
    firm: bool  # a look, a size or a plant is told


def cut_clips(
    mentions: Mentions,
    turns: Sequence[Turn],
    telling: Sequence[int],
    firm: Sequence[int] = (),
    days: Sequence[int] = (),
) -> tuple[Stretch, ...]:
    """Stretches in order, not overlapping.

    `telling` are tokens where something is stated, `firm` those of them where a look or a
    size is, `days` where a new day begins.
    """
    talk = mentions.talk
    stretches: list[Stretch] = []
    marks = _marks(mentions, telling, firm, days)
    for n, turn in enumerate(turns):
        stop = turns[n + 1].at if n + 1 < len(turns) else len(talk.texts)
        if stop <= turn.at:
            continue
        last = n + 1 == len(turns)
        units = _units(mentions, turn, stop, marks)
        for start, end in _kept(mentions, units, turn.at, stop, last):
            start, end = _at_a_word(talk, start), _at_a_word(talk, end)
            if start < end:
                stretches.append(Stretch(start=start, end=end, turn=turn))
    return tuple(stretches)


def _at_a_word(talk: Talk, at: int) -> int:
    """Where the word begins that the token belongs to: a clip never begins inside "there's"."""
    while 0 < at < len(talk.tokens) and talk.tokens[at - 1].word == talk.tokens[at].word:
        at -= 1
    return at


def _marks(
    mentions: Mentions, telling: Sequence[int], firm: Sequence[int], days: Sequence[int]
) -> dict[str, set[int]]:
    talk, vocabulary = mentions.talk, mentions.vocabulary
    aside = {i for f in vocabulary.cues["aside"].find(talk.texts) for i in range(f.start, f.end)}
    closing = {f.start for f in mentions.cue("closing")}
    refs = {r.start for r in mentions.refs if r.cut is None}
    ending = set(endings(mentions, max((*firm, *refs), default=0)))
    parts = {p.start for p in mentions.parts}
    plants = {i for i, t in enumerate(talk.texts) if t in _PLANT_WORDS}
    return {
        "telling": set(telling),
        "firm": set(firm),
        "days": set(days),
        "aside": aside,
        "things": {
            f.start
            for f in vocabulary.cues["aside"].find(talk.texts)
            if talk.texts[f.start] not in _NO_THING
        },
        "closing": closing | ending | set(days),
        "ending": ending,
        "parts": parts | plants,
        "refs": refs,
    }


def _units(mentions: Mentions, turn: Turn, stop: int, marks: dict[str, set[int]]) -> list[_Unit]:
    talk = mentions.talk
    units: list[_Unit] = []
    called: set[str] = set()
    for start, end, ended in _sentences(talk, turn, stop, marks):
        tokens = range(start, end)
        told = any(i in marks["telling"] for i in tokens) or start <= turn.said < end
        plantish = any(i in marks["parts"] or i in marks["refs"] for i in tokens)
        aside = any(i in marks["aside"] for i in tokens)
        closing = any(i in marks["closing"] for i in tokens)
        pointing = any(talk.texts[i] in _POINTERS for i in tokens)
        if closing and not told:
            plantish = False
        if ended:
            told = plantish = False
        looks = any(i in marks["firm"] for i in tokens)
        firm = looks or any(i in marks["refs"] for i in tokens)
        broken_off = interrupts(talk, start, end) or (
            bool(units)
            and not called & set(talk.texts[start:end])
            and goes_on(talk, (units[-1].start, units[-1].end), start, end)
        )
        over = wraps_up(talk, start, end) and start > turn.said
        if (broken_off or over) and start > turn.said:
            aside, closing = aside or broken_off, closing or not broken_off
            if not firm or (over and not broken_off and not looks):
                told = plantish = False
        if sum(i in marks["things"] for i in tokens) > 1 and not firm:
            told = plantish = False  # "compost is up to six pounds ninety a bag"
        new_day = any(i in marks["days"] for i in tokens) and start > turn.said
        if new_day and not looks:
            told = plantish = False
        if looks and not broken_off:
            called |= PERSONS & set(talk.texts[start:end])
        spoken_of = of_the_plant(talk, start, end, called) and not (broken_off or closing)
        off = not told and not plantish and (aside or closing or not pointing) and not spoken_of
        neutral = not told and not plantish and not off
        units.append(
            _Unit(
                start=start,
                end=end,
                off=off,
                neutral=neutral,
                aside=aside or closing,
                closing=closing,
                over=off and (over or ended),
                new_day=new_day,
                broken_off=broken_off,
                firm=firm or start <= turn.said < end,
            )
        )
    return units


def _sentences(
    talk: Talk, turn: Turn, stop: int, marks: dict[str, set[int]]
) -> Iterator[tuple[int, int, bool]]:
    """The sentences of a turn, and whether leave is taken in them.

    Where no sentence is marked, leave that is taken after the last thing told begins one too.
    """
    told = marks["telling"] | marks["parts"] | marks["refs"]
    last = max(marks["firm"] | marks["refs"], default=0)
    for a, b in talk.sentences_in(turn.at, stop):
        if b <= turn.at or a >= stop:
            continue
        start, end = max(a, turn.at), min(b, stop)
        leaves = [i for i in range(start, end) if i in marks["ending"]]
        heads = end > turn.said + 1 and any(i <= start + 2 for i in leaves)
        if talk.punctuated or heads:
            yield start, end, heads
            continue
        leave = next((leave_taken(talk, i) for i in leaves if i > max(last, turn.said)), None)
        if leave is None or leave <= start or not told & set(range(start, leave)):
            yield start, end, leave is not None
        else:
            yield start, leave, False
            yield leave, end, True


def _kept(
    mentions: Mentions, units: list[_Unit], start: int, stop: int, last: bool
) -> list[tuple[int, int]]:
    """The stretch without its runs of aside."""
    spans: list[tuple[int, int]] = []
    begin = start
    i = 0
    while i < len(units):
        if not units[i].off:
            i += 1
            continue
        j = i
        while j < len(units) and (units[j].off or units[j].neutral or _bridged(units, j)):
            j += 1
        while j > i + 1 and units[j - 1].neutral and j < len(units):
            j -= 1
        if any(u.over for u in units[i:j]):  # till next time, and on another day
            j = max([n + 1 for n in range(j, len(units)) if units[n].new_day], default=j)
        if i > 1 and units[i - 1].neutral and any(u.new_day for u in units[i:j]):
            i -= 1
        run = units[i:j]
        tail = j == len(units)
        if last and i > 0 and any(u.over for u in run):
            spans.append((begin, units[i].start))
            return [(a, b) for a, b in spans if b > a]
        again = not tail and _told_again(mentions, units[j], units[0])
        if _is_general(mentions, run, tail or again, last) and i > _opened(run, tail):
            if units[i].start > begin:
                spans.append((begin, units[i].start))
            begin = run[-1].end
            while any(u.new_day for u in run) and j < len(units) and not units[j].firm:
                begin, j = units[j].end, j + 1  # another day: the plant in hand is put down
        i = j
    if begin < stop and begin < (units[-1].end if units else stop):
        spans.append((begin, stop))
    return spans or [(start, stop)]


def _told_again(mentions: Mentions, unit: _Unit, first: _Unit) -> bool:
    """Whether the sentence brings the plant in hand in once more, by its number."""
    titles = {r.title for r in mentions.refs_in(first.start, first.end) if r.cut is None}
    return any(r.title in titles for r in mentions.refs_in(unit.start, unit.start + 4))


def _opened(run: list[_Unit], tail: bool) -> int:
    """How many units at the head of a clip are never cut off from what follows: "this is Tin
    Whistle. I bought it for twelve dollars from a man at the market. It's pink."
    """
    return 0 if tail or any(u.broken_off or u.over or u.new_day for u in run) else 1


def _bridged(units: list[_Unit], n: int) -> bool:
    """A short unit between two of aside goes with them."""
    return (
        0 < n < len(units) - 1
        and units[n - 1].off
        and units[n + 1].off
        and units[n].aside
        and not units[n].off
        and units[n].end - units[n].start <= 4
    )


def _is_general(mentions: Mentions, run: list[_Unit], tail: bool, last: bool) -> bool:
    """Whether a run of sentences is talk about other things."""
    words = sum(u.end - u.start for u in run)
    if not any(u.aside for u in run) and (not mentions.talk.punctuated or words < _ASIDE_WORDS):
        return False
    if tail and any(u.new_day for u in run):
        return True  # "now this is a second visit, on the ninth"
    if tail and last and any(u.closing for u in run):
        return True
    if mentions.talk.punctuated:
        segments = {
            mentions.talk.transcript.segment_of(mentions.talk.tokens[u.start].word) for u in run
        }
        return (len(run) >= 2 and len(segments) >= 2) or (
            tail and len(run) >= 2 and words >= _ASIDE_WORDS
        )
    return words >= _ASIDE_WORDS
