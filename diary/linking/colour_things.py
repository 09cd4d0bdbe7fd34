"""Colours of things: "the gate's blue", "a yellow label", "a purple haze over the allotments"."""

from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions

_THE = frozenset("the my your his her their our a an that this these those some one".split())
_BE = frozenset(
    "is 's are 're was were gone went goes turned turns has have came comes come".split()
)
_NOUN_SAID_OF = frozenset(
    "on in into onto under off behind by with through from over near beside at of to".split()
)


def of_a_thing(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the sky was that pink", "put a yellow label in"; not "the flower is pink"."""
    return any(habit(mentions, colour) for habit in _THINGS)


def _thing_after(mentions: Mentions, colour: ColourHeard) -> bool:
    talk, i = mentions.talk, colour.end
    if i >= len(talk.texts) or talk.tokens[i - 1].mark:
        return False
    things = mentions.vocabulary.things
    if talk.texts[i] in things or talk.tokens[i].mark:
        return talk.texts[i] in things
    unknown = talk.texts[i] not in mentions.vocabulary.said_of_colours  # "yellow sticky traps"
    return unknown and talk.texts[i + 1 : i + 2] != () and talk.texts[i + 1] in things


def _thing_before(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "painted the gate blue"."""
    talk, i = mentions.talk, colour.start
    if i < 2 or talk.tokens[i - 1].mark or talk.texts[i - 1] not in mentions.vocabulary.things:
        return False
    return (
        talk.texts[i - 2] in _THE
        and talk.clause(i)[0] < i - 2
        and (talk.texts[i - 3] not in _NOUN_SAID_OF)
    )


def _one_of_them(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "somebody grows a blue one", "the big red one"; not "it's a blue one"."""
    talk = mentions.talk
    one = talk.texts[colour.end : colour.end + 1]
    if talk.tokens[colour.end - 1].mark or one not in _ONES + _FELLOWS:
        return False
    if one in _FELLOWS:
        lead = talk.texts[max(0, colour.start - 3) : colour.start]
        return bool({"yon", "that", "those"} & set(lead)) and not {"'s", "is"} & set(lead)
    before = talk.texts[talk.clause(colour.start)[0] : colour.start]
    shown = bool(before) and bool(_SHOWN & set(before))
    return bool(before) and not (shown and "the" not in before and "those" not in before)


def _some_object(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "a purple haze over the allotments", "I put a blue dot on the pot"; not "it's a red beauty".

    A noun that no breeder says of a flower, at the end of its phrase.
    """
    talk, after = mentions.talk, colour.end
    if after >= len(talk.texts) or talk.tokens[after - 1].mark or mentions.masked[after]:
        return False
    noun = talk.texts[after]
    if not noun.isalpha() or noun.endswith(("ly", "ed", "ing", "ish", "er")):
        return False
    if noun in mentions.vocabulary.said_of_colours or mentions.parts_in(after, after + 1):
        return False
    closed = bool(talk.tokens[after].mark) or talk.texts[after + 1 : after + 2] in _OF_NOUNS
    start = talk.clause(colour.start)[0]
    lead = colour.start
    while lead > start and talk.texts[lead - 1] in _QUALIFYING:
        lead -= 1
    if talk.texts[lead - 1] in ("a", "an", "the", "some", "my", "that") and lead > start:
        shown = talk.texts[max(start, lead - 3) : lead - 1]
        told_of = {"it", "she", "he", "this", "that", "such", "be", "quite", "what"} & set(shown)
        return closed and not told_of and shown[-1:] != ("is",)
    return closed and lead == start and talk.punctuated and not mentions.masked[start - 1]


_OF_NOUNS = tuple((w,) for w in "of on in over to from at through under round by into".split())
_QUALIFYING = frozenset("big little small old great long thick thin sort kind of".split())
_FELLOWS = tuple((w,) for w in "thing fella lad lass girl plant seedling".split())
_ONES = (("one",), ("ones",))
_SHOWN = frozenset({"it", "this", "that", "'s", "is", "here"})


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
        owned = talk.texts[i + 1] == "'s" and mentions.parts_in(colour.end, colour.end + 3)
        if owned:
            return False  # "her mother's white throat"
        if said and not held and not told_on and not mentions.parts_in(i + 1, colour.start):
            return True
    return False


def _on_a_thing(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "there's white on the compost, that'll be mould"."""
    talk, i = mentions.talk, colour.end
    start = talk.clause(colour.start)[0]
    said = set(talk.texts[max(start, colour.start - 5) : colour.start])
    if talk.tokens[i - 1].mark or not said & {"there", "some", "bit", "got"}:
        return False
    placed = talk.texts[i : i + 1] in (("on",), ("in",), ("over",), ("round",), ("under",))
    return placed and bool(mentions.vocabulary.things & set(talk.texts[i + 2 : i + 3]))


def _some_subject(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the greenhouse is green with algae"; not "the flower is", "the shade of it is"."""
    talk = mentions.talk
    start = talk.clause(colour.start)[0]
    if not talk.punctuated or colour.start - start > 7:
        return False
    while talk.texts[start] in ("and", "but", "so", "now", "well"):
        start += 1
    noun, verb = talk.texts[start + 1 : start + 2], talk.texts[start + 2 : start + 3]
    if talk.texts[start] not in _DETERMINERS or not noun or verb not in _COPULAS:
        return False
    if verb == ("'s",) and mentions.parts_in(colour.end, colour.end + 3):
        return False  # "her mother's white throat"
    said = mentions.vocabulary.said_of_colours | _WHOLE
    if noun[0] in said or mentions.masked[start + 1] or not noun[0].isalpha():
        return False
    return not mentions.parts_in(start, colour.start) and start + 2 < colour.start


_DETERMINERS = frozenset({"the", "my", "our", "his", "her", "your"})
_COPULAS = (("is",), ("'s",), ("are",), ("was",), ("has",), ("turned",), ("goes",), ("went",))
_WHOLE = frozenset(
    "whole rest result overall first second third last best general main other others lot pair "
    "open opening new old young outer inner remainder chief over under predominant".split()
)
_THINGS = (
    _thing_after,
    _thing_before,
    _thing_is,
    _one_of_them,
    _some_object,
    _on_a_thing,
    _some_subject,
)
