"""Colours of things: "the gate's blue", "a yellow label", "a purple haze over the allotments"."""

from diary.linking.colours.after import hemmed
from diary.linking.colours.drawn import lined
from diary.linking.colours.heads import one_of_a_part
from diary.linking.colours.subjects import some_subject
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.tokens import COMMA, STOP

_THE = frozenset("the my your his her their our a an that this these those some one".split())
_BE = frozenset(
    "is 's are 're was were gone went goes turned turns has have came comes come".split()
)
_ITS = frozenset({"its", "their"})
_NOUN_SAID_OF = frozenset(
    "on in into onto under off behind by with through from over near beside at of to".split()
)


def of_a_thing(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the sky was that pink", "put a yellow label in"; not "the flower is pink"."""
    return not hemmed(mentions, colour) and any(habit(mentions, colour) for habit in _THINGS)


def _thing_after(mentions: Mentions, colour: ColourHeard) -> bool:
    talk, i = mentions.talk, colour.end
    if i >= len(talk.texts) or talk.tokens[i - 1].mark:
        return False
    things = mentions.vocabulary.things
    if lined(mentions, colour) is not None:
        return False
    if talk.texts[i] in things or talk.tokens[i].mark:
        return talk.texts[i] in things
    # "yellow sticky traps"
    unknown = talk.texts[i] not in mentions.vocabulary.said_of_colours | _THE | _ITS
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
        begun = talk.clause(colour.start)[0]
        lead = talk.texts[max(begun, colour.start - 3) : colour.start]
        return bool({"yon", "that", "those"} & set(lead)) and not {"'s", "is"} & set(lead)
    before = talk.texts[talk.clause(colour.start)[0] : colour.start]
    if mentions.parts_in(colour.end, colour.end + 1):
        return False  # "the same white | ones below"
    if one == ("one",) and one_of_a_part(mentions, colour) is not None:
        return False
    shown = bool(before) and bool(_SHOWN & set(before))
    if before[-2:-1] in _AT_ONE and before[-1] in ("a", "an"):
        return True  # "it's written on a yellow one"
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
    after += _is_compound(mentions, after)
    several = noun.endswith("s") and talk.texts[after + 1 : after + 3] == ("and", "all")
    closed = (
        several or bool(talk.tokens[after].mark) or talk.texts[after + 1 : after + 2] in _OF_NOUNS
    )
    start = talk.clause(colour.start)[0]
    lead = colour.start
    while lead > start and talk.texts[lead - 1] in _QUALIFYING:
        lead -= 1
    if talk.texts[lead - 1] in ("a", "an", "the", "some", "my", "that") and lead > start:
        shown = talk.texts[max(start, lead - 3) : lead - 1]
        told_of = {"it", "she", "he", "this", "that", "such", "be", "quite", "what"} & set(shown)
        return closed and not told_of and shown[-1:] != ("is",)
    return closed and lead == start and talk.punctuated and not mentions.masked[start - 1]


def _is_compound(mentions: Mentions, at: int) -> bool:
    """ "a brown | slug trail | over the label": a second noun after the first."""
    talk = mentions.talk
    second = talk.texts[at + 1 : at + 2]
    if not second or talk.tokens[at].mark or not second[0].isalpha() or second in _OF_NOUNS:
        return False
    plain = second[0] not in mentions.vocabulary.said_of_colours and second not in _ANDS
    return plain and not mentions.parts_in(at + 1, at + 2) and not mentions.masked[at + 1]


_OF_NOUNS = tuple((w,) for w in "of on in over to from at through under round by into".split())
_QUALIFYING = frozenset("big little small old great long thick thin sort kind of".split())
_FELLOWS = tuple((w,) for w in "thing fella lad lass girl plant seedling".split())
_AT_ONE = tuple((w,) for w in "on in from off under behind beside by into onto for".split())
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
    if talk.tokens[i - 1].mark:
        return False
    i += talk.texts[i : i + 1] == ("all",)
    placed = talk.texts[i : i + 1] in (("on",), ("in",), ("over",), ("round",), ("under",))
    held = talk.texts[i + 1 : i + 2] and talk.texts[i + 1] in _THE
    if not placed or not held or mentions.parts_in(i + 1, i + 4):
        return False
    where = talk.texts[i + 2 : i + 4]
    if talk.texts[i] in ("in", "under") and where[:1] in _LIGHTS:
        return False  # "the stems go nearly black in the sun", "bright cerise in the pot"
    where = where[: 1 + (where[:1] in (("whole",), ("old",), ("top",), ("back",), ("far",)))]
    return bool(mentions.vocabulary.things & set(where))


_LIGHTS = tuple((w,) for w in "sun light lamp torch moon sunset sunrise glass pot hand".split())


def _of_a_sort(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the labels: white for my own crosses and yellow for a friend's": what things stand for."""
    talk = mentions.talk
    low = max(talk.sentence(colour.start)[0], colour.start - _SORTED_WITHIN)
    stands_for = talk.texts[colour.end : colour.end + 1] in (("for",), ("means",), ("if",))
    things = mentions.vocabulary.things & set(talk.texts[low : colour.start])
    return stands_for and bool(things) and not mentions.parts_in(low, colour.start)


_SORTED_WITHIN = 16


def _alive(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "white specks flying up", "little green things crawling on it"; not "white spots"."""
    talk = mentions.talk
    stop = min(talk.clause(colour.start)[1], colour.end + 4)
    stirring = mentions.vocabulary.colour_habits["stirring"]
    found = stirring.find(talk.texts, colour.end + 1, stop)
    return any(not talk.between(colour.end - 1, f.start, (COMMA, STOP)) for f in found)


def _fruit(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "somebody's left an orange on the bench"; not "it's an orange", "call it an orange"."""
    talk, i = mentions.talk, colour.start
    if colour.value not in _FRUITS or i + 1 != colour.end or i == 0:
        return False
    if talk.texts[i - 1] not in ("a", "an"):
        return False
    standing = talk.texts[i - 3 : i - 1] == ("there", "'s") and not talk.tokens[i].mark
    if standing and talk.texts[colour.end : colour.end + 1] in _STANDING:
        return not mentions.parts_in(colour.end, colour.end + 4)
    if talk.texts[i - 2 : i - 1] not in _HANDLED:
        return False
    after = talk.texts[colour.end : colour.end + 1]
    return bool(talk.tokens[i].mark) or after in _OF_NOUNS or after in _ANDS


_FRUITS = frozenset({"orange", "lemon", "peach", "plum", "cherry", "apricot", "rose", "salmon"})
_HANDLED = tuple(
    (w,)
    for w in "left leave eat ate eating peeled peeling dropped drop found bought buy brought had "
    "having have fetch fetched picked pick planted smoked caught".split()
)
_STANDING = tuple((w,) for w in "by outside beside near behind over out next".split())
_ANDS = (("and",), ("while",), ("that",), ("for",), ("yesterday",), ("today",))


_THINGS = (
    _thing_after,
    _thing_before,
    _thing_is,
    _one_of_them,
    _some_object,
    _on_a_thing,
    _fruit,
    _of_a_sort,
    _alive,
    some_subject,
)
