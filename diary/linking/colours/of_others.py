"""Colours that are not the plant's: of a thing, of a smell, only compared with, only approached."""

from diary.linking.colours.after import in_phrase_after
from diary.linking.colours.kinds import of_a_kind_or_name
from diary.linking.colours.once import of_one_had, spoilt, was_once
from diary.linking.colours.places import noun_after
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.said_by_others import (
    anothers_word,
    called_by_another,
    denied_after,
    part_denied_after,
    says_another_after,
)
from diary.linking.colours.things import of_a_thing
from diary.linking.colours.wanted import wanted
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.tokens import COMMA, QUERY, STOP


def is_not_meant(mentions: Mentions, colour: ColourHeard) -> bool:
    """Whether the colour is no colour of the plant at all."""
    return any(habit(mentions, colour) for habit in _HABITS)


def _smelt(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "brush past the leaf and it's pure lemon"; not "it smells lovely. It's lemon."."""
    if colour.value not in mentions.vocabulary.fragrant_colours:
        return False
    talk = mentions.talk
    start, stop = talk.sentence(colour.start)
    if not talk.punctuated:
        start, stop = max(0, colour.start - _NOSE_REACH), min(len(talk.texts), colour.end + 6)
    if talk.texts[colour.end : colour.end + 1] in (("colour",), ("color",), ("coloured",)):
        return False
    nose = mentions.vocabulary.colour_habits["nose"].find(talk.texts, start, stop)
    nose = [n for n in nose if n.start < colour.start or _smelt_then(mentions, colour, n.start)]
    return any(not _seen_again(mentions, n.end, colour.start) for n in nose)


def _smelt_then(mentions: Mentions, colour: ColourHeard, nose: int) -> bool:
    """ "it's pure lemon when you rub the leaf"; not "deep rose, and if you rub the leaf"."""
    told = {p.label for p in mentions.parts_in(colour.end, nose)} - {"leaf"}
    apart = mentions.talk.between(colour.end - 1, nose, (COMMA, STOP))
    return not told and not apart


def _seen_again(mentions: Mentions, start: int, end: int) -> bool:
    """Whether the talk is of looks again: "no scent to it, flower's lemon"."""
    words = set(mentions.talk.texts[start:end])
    parts = {p.label for p in mentions.parts_in(start, end)}
    return bool(parts - {"leaf", "stem"} or words & {"no", "none", "nothing", "looks", "colour"})


_NOSE_REACH = 9


def _compared(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "more lilac than mauve", "paler than white": no colour of it after "than"."""
    talk, i = mentions.talk, colour.start
    low = talk.clause(i)[0]
    if talk.texts[i - 3 : i] == ("not", "so", "much"):
        return talk.texts[colour.end : colour.end + 1] == ("as",)
    if talk.texts[i - 1 : i] == ("as",) and talk.texts[colour.end : colour.end + 1] == ("as",):
        before = set(talk.texts[max(low, i - 4) : i - 1])
        return bool(before & {"not", "nowhere", "nothing", "half", "never"})
    if talk.texts[i - 2 : i] in _LIKE_A and _some_noun(mentions, colour.end):
        return True  # "a throat like a lemon drop"
    in_another = talk.texts[colour.end : colour.end + 1] in (("in",), ("on",))
    if in_another and "more" in talk.texts[low:i] and mentions.ref_at(colour.end + 1):
        return True  # "there's more pink in Hobnail"
    while i > low and talk.texts[i - 1] in ("the", "a", "any", "your", "on", "to", "it", "is"):
        i -= 1
    if i > low and talk.texts[i - 1] == "than":
        return talk.texts[max(0, i - 2)] != "other"
    some = talk.texts[i - 1 : i] in (("something",), ("anything",))
    if some and talk.texts[i - 2 : i - 1] in (*_BESIDE, *_ONTO):
        return True
    if talk.texts[i] in ("a", "an", "any", "your") and talk.texts[i - 1 : i] in _BESIDE:
        return True
    while i > low and talk.texts[i - 1] in ("proper", "real", "good", "true", "decent", "bright"):
        i -= 1
    return talk.texts[i - 1 : i] in (("a",), ("any",), ("an",), ("your",)) and talk.texts[
        i - 2 : i - 1
    ] in (("beside",), ("against",), ("alongside",), ("unlike",))


def _some_noun(mentions: Mentions, at: int) -> bool:
    """Whether a noun that is not the plant's follows at once."""
    talk = mentions.talk
    if at >= len(talk.texts) or talk.tokens[at - 1].mark or mentions.parts_in(at, at + 1):
        return False
    return talk.texts[at].isalpha() and talk.texts[at] not in mentions.vocabulary.said_of_colours


_ONTO = tuple((w,) for w in "with under near across onto over to on by into".split())
_LIKE_A = (("like", "a"), ("like", "an"), ("like", "the"))
_BESIDE = (("beside",), ("against",), ("alongside",), ("unlike",))


def _of_the_batch(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "they all came pink except this"; not "the petals, they all have a pink edge"."""
    talk = mentions.talk
    start = talk.clause(colour.start)[0]
    for cue in mentions.vocabulary.colour_habits["batch"].find(talk.texts, start, colour.start):
        far = cue.start - start > 1
        if not talk.punctuated:
            far = colour.start - cue.end > 4
        owned = talk.texts[cue.end] == "'s" and mentions.parts_in(colour.end, colour.end + 3)
        called = talk.texts[cue.start - 1 : cue.start] in (("is",), ("'s",), ("are",), ("got",))
        if far or owned or called or mentions.parts_in(cue.start, colour.start):
            continue
        if not {"this", "it", "only", "but"} & set(talk.texts[cue.end : colour.start]):
            around = talk.texts[cue.start] in ("everything", "everyone", "plants", "pots", "stuff")
            return around or not mentions.parts_in(max(0, start - 10), start)
    return False


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
        if before and not apart and set(between) <= _TOWARDS:
            if not mentions.parts_in(before[-1].end, verging.start):
                return True
            placed = in_phrase_after(mentions, colour) or noun_after(mentions, colour)
            return placed is None  # "yellow at the throat, shading out through cream"
    return False


_TOWARDS = frozenset("a the an sort of almost near nearly very practically something".split())


def _no_part_of_it(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the green edge of the bench", "that whitish bloom on the leaf"."""
    if mentions.talk.tokens[colour.end - 1].mark:
        return False
    parts = mentions.parts_in(colour.end, colour.end + 1)
    return bool(parts) and not is_of_plant(mentions, parts[0])


def _blemish(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "orange spots underneath the leaf", "the leaf has brown patches": an ailment's."""
    talk = mentions.talk
    if _pests_marks(mentions, colour):
        return True
    near = mentions.parts_in(colour.start - 6, colour.end + 9)
    marks = [p for p in near if p.label in ("spots", "blotch")]
    leaves = [p for p in near if p.label == "leaf"]
    if not marks or not leaves:
        return False
    first, last = sorted((marks[0], leaves[0]), key=lambda p: p.start)
    own = range(colour.start, colour.end)
    between = [talk.texts[i] for i in range(first.end, last.start) if i not in own]
    same = talk.sentence_number(first.start) == talk.sentence_number(last.start)
    return same and len(between) <= 4 and set(between) <= _ON_A_LEAF


def _pests_marks(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "them silvery marks, that's thrips", "mildew, that white powdery stuff"."""
    talk, i = mentions.talk, colour.end
    noun = next((j for j in range(i, min(i + 2, len(talk.texts))) if talk.texts[j] in _MARKS), None)
    if noun is None or talk.between(i - 1, noun, (COMMA, STOP)):
        return False
    low, stop = max(0, colour.start - 18), min(len(talk.texts), noun + 12)
    ails = mentions.vocabulary.terms.find(talk.texts, low, stop)
    return any(f.label.startswith("health") and f.label != "health clean" for f in ails)


_MARKS = frozenset("marks mark stuff powder dust fuzz fluff specks scars patches flecks".split())


_ON_A_LEAF = frozenset(
    "on under underneath over beneath across all the a its one some these those each every is are "
    "has have got 's with in bottom lower old new".split()
)


def _not_yet(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "it might go purple in the cold"; not "I'll go with coral"."""
    texts = mentions.talk.texts
    start = max(mentions.talk.clause(colour.start)[0], colour.start - 6)
    said = mentions.vocabulary.colour_habits["not_yet"].find(texts, start, colour.start)
    return any(set(texts[f.end : colour.start]) <= _DEGREES for f in said)


_DEGREES = frozenset("a an more to very almost nearly quite bit of little even all right".split())


def _crossed(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "I crossed a red with a white"; not "out of a good home, and it's white"."""
    talk = mentions.talk
    start = max(talk.clause(colour.start)[0], colour.start - 9)
    before = talk.texts[colour.start - 1 : colour.start]
    had = {"had", "raised", "'ve"} & set(talk.texts[start : colour.start])
    if had and talk.texts[colour.end : colour.end + 3] in _OUT_OF_IT:
        return True  # "I've had a white out of this cross"
    article = before in (("a",), ("an",), ("my",), ("the",), ("two",), ("good",), ("any",))
    if not article or mentions.parts_in(colour.end, colour.end + 2):
        return False
    crossing = mentions.vocabulary.colour_habits["crossing"].find(talk.texts, start, colour.start)
    return any(
        not {"it", "this", "got", "came"} & set(talk.texts[c.end : colour.start]) for c in crossing
    )


_OUT_OF_IT = tuple(("out", "of", w) for w in ("this", "that", "the", "it", "them"))


def _another_than_this(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "she's pink herself and this has come magenta": the first is of another plant."""
    talk = mentions.talk
    start = talk.clause(colour.start)[0]
    if not talk.punctuated:
        start = max(start, colour.start - 7)
    before = talk.texts[start : colour.start]
    if _MINE & set(before) or not {"is", "'s", "was", "are", "having", "came"} & set(before):
        return False
    stop = min(talk.sentence(colour.end - 1)[1], colour.end + 8)
    if not talk.punctuated:
        stop = min(len(talk.texts), colour.end + 8)
    for i in range(colour.end, stop - 1):
        if talk.texts[i] == "this" and not talk.between(colour.start, i, (STOP, QUERY)):
            i += 1 + (talk.texts[i + 1] in ("one", "fella", "lad", "girl", "lass"))
            told = set(talk.texts[i : i + 1]) & {"is", "'s", "has", "came", "comes", "come"}
            return bool(told) and bool(mentions.colours_in(i, i + 9))
    return False


def _handled(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "I swapped a magenta for it", "pass us that green can"; not "I cut it, it's a pink"."""
    talk, i = mentions.talk, colour.start
    low = talk.clause(i)[0]
    while i > low and talk.texts[i - 1] in _HELD_LEADS:
        i -= 1
    if i == colour.start or i == low or talk.tokens[i - 1].mark:
        return False
    if talk.texts[i - 1] not in mentions.vocabulary.classes["handled"]:
        return False
    if talk.texts[i - 1] == "broke" and talk.texts[i - 2] in ("this", "it", "she", "he"):
        return False  # "this broke a clear orange"
    parts = mentions.parts_in(colour.start, colour.end + 3)
    return not (parts and is_of_plant(mentions, parts[0]))


_HELD_LEADS = frozenset("a an the that this some my another us me him her you big little".split())


def _of_another_number(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the lower petals are lilac where 140 is white": a number cut short, and its colour."""
    texts, i = mentions.talk.texts, colour.start
    while i and texts[i - 1] in ("a", "an", "all", "more", "quite"):
        i -= 1
    if i < 3 or texts[i - 1] not in ("is", "'s", "was", "has", "came", "came_out"):
        return False
    return texts[i - 2].isdigit() and texts[i - 3] in ("where", "whereas", "while", "when")


_MINE = frozenset({"this", "it", "these", "i", "flower", "bloom"})


_HABITS = (
    of_a_kind_or_name,
    _another_than_this,
    _of_another_number,
    anothers_word,
    called_by_another,
    denied_after,
    part_denied_after,
    says_another_after,
    _handled,
    _crossed,
    _blemish,
    _not_yet,
    was_once,
    of_one_had,
    spoilt,
    wanted,
    _no_part_of_it,
    _smelt,
    of_a_thing,
    _compared,
    _of_the_batch,
    _approached,
)
