"""The part of a colour that goes on from colours told before it.

"And what a throat, gold, pure gold." "The leaf's green splashed with yellow." "Upper petals black.
Rest of it, wine." What was told before, with its parts, says what the next colour is of.
"""

from collections.abc import Sequence
from dataclasses import replace

from diary.linking.colours.attached import Attached
from diary.linking.colours.heads import brought_in
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions

Told = Sequence[tuple[ColourHeard, Attached]]
_FAR = 28


def sequel_of(mentions: Mentions, colour: ColourHeard, told: Told) -> Attached | None:
    """The part of a colour with none of its own, going by the colours told before it."""
    for habit in (_said_again, _running_on, _put_closer, _and_it_goes, _it_after_the_flower):
        part = habit(mentions, colour, told)
        if part is not None:
            return Attached(
                part=part,
                rule="a colour told on from another",
                score=0.8,
                start=colour.start,
                end=colour.end,
            )
    return None


def _said_again(mentions: Mentions, colour: ColourHeard, told: Told) -> str | None:
    """ "and what a throat, gold, pure gold": the same colour at once is of the same part."""
    if not told:
        return None
    before, where = told[-1]
    near = colour.start - max(before.end, where.end) <= 3
    same = before.value == colour.value and where.part != "bloom"
    others = [p for p in mentions.parts_in(before.end, colour.start) if p.label != where.part]
    return where.part if near and same and not others else None


def _running_on(mentions: Mentions, colour: ColourHeard, told: Told) -> str | None:
    """ "the leaf's green splashed with yellow": the second colour is of the leaf too."""
    if not told or told[-1][1].part not in ("leaf", "bud", "stem", "upper petals", "lower petals"):
        return None
    before, where = told[-1]
    between = mentions.talk.texts[before.end : colour.start]
    joined = len(between) <= 6 and set(between) <= _JOINING
    ends = between[-1:] in ((), ("with",), ("and",), ("to",), ("or",), ("of",))
    return where.part if joined and ends else None


_JOINING = frozenset(
    "and with or to splashed mottled marbled streaked speckled variegated a bit little of "
    "touched washed shaded fading touch dash hint edge splash".split()
)


def _put_closer(mentions: Mentions, colour: ColourHeard, told: Told) -> str | None:
    """ "stems very red, nearly maroon": a closer word for the same part."""
    if not told or told[-1][1].part == "bloom":
        return None
    before, where = told[-1]
    talk = mentions.talk
    start = colour.start
    while start > before.end and talk.texts[start - 1] in ("a", "the", "sort", "of", "kind"):
        start -= 1
    closer = talk.texts[start - 1 : start] in (("nearly",), ("almost",), ("practically",))
    same = talk.sentence_number(before.start) == talk.sentence_number(colour.start)
    parts = mentions.parts_in(max(before.end, where.end), colour.start)
    near = colour.start - before.end <= 6
    return where.part if closer and same and near and not parts else None


def _and_it_goes(mentions: Mentions, colour: ColourHeard, told: Told) -> str | None:
    """ "the leaf's gold when it's young and it goes | green | later": the same part, changed."""
    if not told or told[-1][1].part == "bloom":
        return None
    before, where = told[-1]
    start = max(before.end, where.end)
    words = mentions.talk.texts[start : colour.start]
    if len(words) > _CHANGE_WITHIN or mentions.parts_in(start, colour.end + 2):
        return None
    to = next((i for i in range(len(words) - 1, -1, -1) if words[i] in _GOES), None)
    if to is None or to == 0 or words[to - 1] not in ("it", "they", "and", "then", "but"):
        return None
    fit = where.part != "leaf" or colour.value in ("green", "bronze", "gold", "yellow", "brown")
    return where.part if fit and set(words[to + 1 :]) <= _TO else None


_CHANGE_WITHIN = 10
_GOES = frozenset("goes go turns turn fades fade ages age greens darkens deepens pales".split())
_TO = frozenset("to a an into more almost nearly quite very proper plain later".split())


def _it_after_the_flower(mentions: Mentions, colour: ColourHeard, told: Told) -> str | None:
    """ "it's pink, there's a blotch, and it's red": the flower is told, so "it" is the blotch."""
    talk = mentions.talk
    start = talk.clause(colour.start)[0]
    near = [a for c, a in told if colour.start - c.end <= _FAR]
    words = talk.texts[start : start + 3]
    if not any(a.part == "bloom" for a in near) or "it" not in words or start == 0:
        return None
    low = talk.clause(start - 1)[0]
    return brought_in(mentions, low, start)


def said_again_of_petals(
    mentions: Mentions, colour: ColourHeard, attached: Attached, told: Told
) -> bool:
    """ "three below are white. Each | white petal | carries a feather": told already."""
    the = mentions.talk.texts[colour.start - 1 : colour.start] == ("the",)
    if the and attached.start == colour.start and attached.end == colour.end:
        over = mentions.talk.texts[colour.start - 2 : colour.start] in _OVER_THE
        near = (told_of for told_of in told if colour.start - told_of[0].end <= _FAR)
        if any(c.value == colour.value and (over or a.part != "bloom") for c, a in near):
            return True  # "lemon, and a blotch on the lemon", "the crimson bleeds into it"
    if attached.part != "bloom" or attached.end == colour.end:
        return False
    if mentions.talk.texts[colour.start - 1 : colour.start] not in _POINTING_BACK:
        return False
    return any(
        before.value == colour.value and where.part in _REST and colour.start - before.end <= _FAR
        for before, where in told
    )


_OVER_THE = tuple((w, "the") for w in ("on", "over", "against", "across", "into", "through"))
_POINTING_BACK = tuple((w,) for w in "each every the those these that both".split())
_REST = {"upper petals": "lower petals", "lower petals": "upper petals"}
_REST_REACH = 25


def the_rest(mentions: Mentions, told: Told, attached: Attached) -> Attached:
    """ "Upper petals black. Rest of it, wine.": the rest is what was not told of yet."""
    start = max(mentions.talk.sentence(attached.start)[0], attached.start - 6)
    words = mentions.talk.texts[start : attached.end]
    if attached.part != "bloom" or not {"rest", "others", "remainder"} & set(words):
        return attached
    near = [a for c, a in told if attached.start - c.end <= _REST_REACH]
    petals = [a.part for a in near if a.part in _REST]
    if not petals or any(a.part == "bloom" for a in near):
        return attached
    return replace(attached, part=_REST[petals[-1]])
