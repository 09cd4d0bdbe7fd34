"""Colour words that stand in a name, a saying, an ailment or for plants of that colour.

"Seed off Copper Beadle." "The cream of the crop." "Its pollen on the yellows."
"""

from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions


def of_a_kind_or_name(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "Wexholt Plum. ...", "purple flowers don't sell"; not "purple flowers, and small"."""
    return any(habit(mentions, colour) for habit in _KIND_HABITS)


def _in_an_idiom(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the cream of the crop", "a golden opportunity"."""
    near = mentions.vocabulary.colour_habits["idiom"].find(
        mentions.talk.texts, max(0, colour.start - 6), colour.end + 4
    )
    return any(f.start <= colour.start and colour.end <= f.end for f in near)


def _in_a_name(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "Seed off Copper Beadle": a name that is not on record."""
    talk = mentions.talk
    if not talk.punctuated:
        return False
    if _ends_a_name(mentions, colour):
        return True
    if colour.end >= len(talk.texts):
        return False
    last, after = talk.tokens[colour.end - 1], talk.tokens[colour.end]
    named = talk.tokens[colour.start].capital and after.capital and not last.mark
    return (
        named
        and after.text not in ("i", "'s")
        and not mentions.parts_in(colour.end, colour.end + 1)
    )


def _ends_a_name(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "Wexholt Plum.": a capital where no sentence begins; not "Eye White"."""
    talk, i = mentions.talk, colour.head_start
    if i == 0 or not talk.tokens[i].capital or talk.tokens[i - 1].mark:
        return False
    if talk.texts[i - 1] in ("'s", "is", "are", "i") or not talk.tokens[i - 1].capital:
        return False
    noted = mentions.parts_in(i - 3, i)
    return (
        not (noted and noted[-1].end == i)
        and mentions.vocabulary.modifiers.at(talk.texts, i - 1) is None
    )


def _of_all_such(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "purple flowers don't sell"; not "purple flowers, and small"."""
    talk = mentions.talk
    noun = talk.texts[colour.end : colour.end + 1]
    low = talk.clause(colour.start)[0]
    if talk.texts[low : colour.start] in (("a",), ("an",)) and noun in _WOULD:
        return True  # "a pink would sell better"
    if talk.texts[colour.start - 1 : colour.start] in _HOLDING and noun in _IS_ANYTHING:
        return True  # "children who think purple is a personality"
    if noun not in _PLURALS or talk.tokens[colour.end].mark:
        return False
    begun = colour.start == talk.clause(colour.start)[0]
    return begun and talk.texts[colour.end + 1 : colour.end + 2] in _GENERALLY


_HOLDING = tuple((w,) for w in "think thinks thought that says because believe reckon".split())
_IS_ANYTHING = tuple((w,) for w in "is 's sells does goes never always".split())
_WOULD = (("would",), ("might",), ("sells",), ("always",), ("never",), ("could",))
_PLURALS = tuple((w,) for w in "flowers blooms petals ones leaves eyes edges plants".split())
_GENERALLY = tuple(
    (w,) for w in "do never always sell tend usually mostly attract will would fade bring".split()
)


def _sickly(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "got black spot on it": an ailment."""
    texts = mentions.talk.texts
    spot = texts[colour.end : colour.end + 1] == ("spot",)
    return colour.value == "black" and spot and texts[colour.start - 1] not in ("a", "the", "one")


def _of_a_kind(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "its pollen on the yellows", "two whites | and a red": plants of a colour."""
    texts = mentions.talk.texts
    before = texts[max(0, colour.start - 3) : colour.start]
    if before[1:] in _WHERE_THE and _comes_from(mentions, colour):
        return True  # "which is where the salmon in all these comes from"
    joined = before[1:2] == ("and",) and before[0] in _KINDS
    return joined or texts[colour.end - 1] in _KINDS


def _comes_from(mentions: Mentions, colour: ColourHeard) -> bool:
    """Whether the colour comes from somewhere: "the salmon in all these | comes from"."""
    after = mentions.talk.texts[colour.end : colour.end + 8]
    return "from" in after and bool({"comes", "came", "come", "gets", "got", "get"} & set(after))


_WHERE_THE = tuple((w, the) for w in ("where", "that") for the in ("the", "that"))
_KINDS = frozenset({"whites", "yellows", "reds", "pinks", "blues"})

_KIND_HABITS = (_in_an_idiom, _in_a_name, _sickly, _of_all_such, _of_a_kind)
