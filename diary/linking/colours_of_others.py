"""Colours that are not the plant's: of a thing, of a smell, only compared with, only approached."""

from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.tokens import QUERY, STOP

_THE = frozenset("the my your his her their our a an that this these those some one".split())
_BE = frozenset(
    "is 's are 're was were gone went goes turned turns has have came comes come".split()
)
_PREDICATE = frozenset("is 's are 're was be it as being of call more such".split())
_NOUN_SAID_OF = frozenset("on in into onto under off behind by with through from".split())


def is_not_meant(mentions: Mentions, colour: ColourHeard) -> bool:
    """Whether the colour is no colour of the plant at all."""
    return any(habit(mentions, colour) for habit in (_smelt, _of_a_thing, _compared, _approached))


def _smelt(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "brush past the leaf and it's pure lemon"; not "it smells lovely. It's lemon."."""
    if colour.value not in mentions.vocabulary.fragrant_colours:
        return False
    talk = mentions.talk
    start, stop = talk.sentence(colour.start)
    if not talk.punctuated:
        start, stop = max(0, colour.start - _NOSE_REACH), min(len(talk.texts), colour.end + 6)
    nose = mentions.vocabulary.colour_habits["nose"].find(talk.texts, start, stop)
    return any(not _seen_again(mentions, n.end, colour.start) for n in nose)


def _seen_again(mentions: Mentions, start: int, end: int) -> bool:
    """Whether the talk is of looks again: "no scent to it, flower's lemon"."""
    words = set(mentions.talk.texts[start:end])
    parts = {p.label for p in mentions.parts_in(start, end)}
    return bool(parts - {"leaf", "stem"} or words & {"no", "none", "nothing", "looks", "colour"})


_NOSE_REACH = 9


def _of_a_thing(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the sky was that pink", "put a yellow label in"; not "the flower is pink"."""
    return _thing_after(mentions, colour) or _thing_is(mentions, colour)


def _thing_after(mentions: Mentions, colour: ColourHeard) -> bool:
    talk, i = mentions.talk, colour.end
    if i >= len(talk.texts) or talk.tokens[i - 1].mark:
        return False
    return talk.texts[i] in mentions.vocabulary.things


def _thing_is(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the label's gone green", "my jumper's the same pink"."""
    talk = mentions.talk
    start = talk.clause(colour.start)[0]
    if not talk.punctuated:
        start = max(start, colour.start - 7)
    for i in range(start, colour.start - 1):
        said = talk.texts[i] in mentions.vocabulary.things and talk.texts[i + 1] in _BE
        held = i > start and talk.texts[i - 1] in _NOUN_SAID_OF
        told_on = {"it", "she", "he", "this", "but"} & set(talk.texts[i + 2 : colour.start])
        if said and not held and not told_on and not mentions.parts_in(i + 1, colour.start):
            return True
    return False


def _compared(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "more lilac than mauve", "paler than white": no colour of it after "than"."""
    talk, i = mentions.talk, colour.start
    low = talk.clause(i)[0]
    while i > low and talk.texts[i - 1] in ("the", "a", "any", "your", "on", "to", "it", "is"):
        i -= 1
    return i > low and talk.texts[i - 1] == "than" and talk.texts[max(0, i - 2)] != "other"


def _approached(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "deep red verging on burgundy": it is red."""
    talk = mentions.talk
    start = max(talk.sentence(colour.start)[0], colour.start - 6)
    for verging in mentions.vocabulary.colour_habits["verging"].find(
        talk.texts, start, colour.start
    ):
        between = talk.texts[verging.end : colour.start]
        before = mentions.colours_in(max(0, verging.start - 6), verging.start)
        apart = talk.between(verging.end - 1, colour.start, (STOP, QUERY))
        if before and not apart and set(between) <= {"a", "the", "an", "sort", "of", "almost"}:
            return not mentions.parts_in(before[-1].end, verging.start)
    return False
