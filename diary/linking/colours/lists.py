"""Parts and colours by turns with no mark between them: which noun a colour goes with.

"Top petals burgundy bottom petals mauve", "the edge is white middle is cherry": each colour comes
after its part. "Gold leaf bronze zone salmon flower": each comes before it.
"""

from dataclasses import replace

from diary.linking.colours.attached import Attached
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.words import ADJECTIVES, BE, COPULAR
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_REACH = 9
_DEFINITE = frozenset({"the", "its", "with", "that", "this", "his", "her", "each", "every"})
_PLACED = frozenset("on in at across over the its his her each both all up down".split())
_TELLING = BE | {"has", "have", "got", "same", "darker", "paler", "goes", "not", "no", "just"}


def listed(mentions: Mentions, colour: ColourHeard, part: Found) -> bool:
    """Whether the part right after the colour begins something new: the colour is of one before.

    "Edge is white | middle is cherry"; not "the flower has a white | middle".
    """
    talk = mentions.talk
    if part.start != colour.end:
        return False
    before = [
        p
        for p in mentions.parts_in(colour.start - _REACH, colour.start)
        if p.end <= colour.start and is_of_plant(mentions, p)
    ]
    if not before:
        return False
    head = before[-1]
    between = talk.texts[head.end : colour.start]
    if talk.between(head.end - 1, part.end - 1, (".", "?")):
        return False
    if _petals_by_turns(mentions, head, part, between):
        return True
    if _said_to_be(mentions, head, part, between):
        return True
    return (
        not between
        and _begins_with_part(mentions, head)  # not "gold leaf bronze zone salmon flower"
        and _coloured_after(mentions, part)
        and not talk.tokens[part.end - 1].mark
    )


def _coloured_after(mentions: Mentions, part: Found) -> bool:
    """ "stems | a bit red": the part has a colour of its own after it."""
    after = next(iter(mentions.colours_in(part.end, part.end + 4)), None)
    fill = {"a", "bit", "very", "sort", "of", "kind", "quite", "more", "all", "pretty", "rather"}
    return after is not None and set(mentions.talk.texts[part.end : after.start]) <= fill


def twin_of(mentions: Mentions, attached: Attached) -> Attached | None:
    """ "stem and bud | both bronze", "feathered and veined | in crimson": the first part too."""
    head = next(iter(mentions.parts_in(attached.start, attached.start + 1)), None)
    if head is None or head.label != attached.part or attached.on:
        return None
    texts, i = mentions.talk.texts, head.start
    if i and texts[i - 1] in ("the", "its"):
        i -= 1
    if i < 2 or texts[i - 1] != "and" or mentions.talk.tokens[i - 2].mark:
        return None
    several = bool({"are", "'re", "both", "have"} & set(texts[head.end : attached.end]))
    if {"is", "'s"} & set(texts[head.end : attached.end]) or (i < head.start and not several):
        return None  # "dark eye and | the bud is nearly black"
    first = next((p for p in mentions.parts_in(i - 6, i - 1) if p.end == i - 1), None)
    if first is None or first.label == head.label or not is_of_plant(mentions, first):
        return None
    if any(
        c.end >= first.start or set(texts[c.end : first.start]) <= _PLACED
        for c in mentions.colours_in(first.start - 6, head.start)
    ):
        return None  # "white edge and throat cream", "white on the uppers and the lowers pink"
    if texts[first.start - 1 : first.start] in (("no",), ("without",), ("of",), ("with",)):
        return None
    return replace(attached, part=first.label, start=first.start)


def _petals_by_turns(
    mentions: Mentions, head: Found, part: Found, between: tuple[str, ...]
) -> bool:
    """ "bottom petals lovely soft pink top petals darker"."""
    kinds = mentions.vocabulary.part_kinds
    if kinds[part.label] != "petals" or kinds[head.label] != "petals" or len(between) > 4:
        return False
    return set(between) <= ADJECTIVES - {"and"} | {"a", "an"} and _begins_with_part(mentions, head)


def _said_to_be(mentions: Mentions, head: Found, part: Found, between: tuple[str, ...]) -> bool:
    """ "top ones are a good cherry | bottom ones pink"; not "they are white petals"."""
    talk = mentions.talk
    if talk.punctuated or head.label == part.label or not BE & set(between):
        return False
    if not set(between) <= COPULAR | ADJECTIVES or between[-1] in _DEFINITE:
        return False
    if between[-1] in ("a", "an") and mentions.vocabulary.part_kinds[part.label] != "petals":
        return False  # "the flower is a white | throat": said of what is brought in
    told = talk.texts[part.end : part.end + 2]
    return bool(_TELLING & set(told)) or bool(mentions.colours_in(part.end, part.end + 4))


def _begins_with_part(mentions: Mentions, part: Found) -> bool:
    """Whether a run of parts and colours by turns, back from the part, begins with a part."""
    while True:
        colour = next(
            (c for c in mentions.colours_in(part.start - 3, part.start) if c.end == part.start),
            None,
        )
        if colour is None:
            return True
        near = mentions.parts_in(colour.start - _REACH, colour.start)
        earlier = next((p for p in near if p.end == colour.start), None)
        if earlier is None:
            return False
        part = earlier
