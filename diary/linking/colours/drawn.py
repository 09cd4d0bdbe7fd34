"""A marking told with its colour: "a flash of maroon", "veining picked out in raspberry"."""

from diary.linking.colours.attached import Attached
from diary.linking.colours.places import PREPOSITIONS, petals_after
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.words import BE
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.tokens import COMMA


def marking_of(mentions: Mentions, colour: ColourHeard) -> Attached | None:
    """ "a flash of maroon", "an edge in cream", "veined in cerise", "edged with white"."""
    texts = mentions.talk.texts
    i = colour.start
    i -= i > 0 and texts[i - 1] in mentions.vocabulary.classes["more"]  # "stripes in a deeper red"
    i -= i > 0 and texts[i - 1] in ("slightly", "rather", "much", "somewhat")
    if i and texts[i - 1] in ("a", "an", "the", "pure"):
        i -= 1
    if i >= 1 and texts[i - 1] in ("of", "in", "with", "by"):
        drawn = _before_aside(mentions, _drawn(mentions, i - 1))
        for part in reversed(mentions.parts_in(i - 14, i - 1)):
            marked = mentions.talk.tokens[part.end - 1].mark and part.end == i - 1
            if part.end in (drawn, i - 1) and not marked and is_of_plant(mentions, part):
                if part.end == drawn < i - 1:
                    pass
                elif texts[i - 1] in ("with", "by") and not texts[part.end - 1].endswith("ed"):
                    return None
                return Attached(
                    part=_said_to_be_one(mentions, part) or part.label,
                    rule="a part told with its colour",
                    score=0.93,
                    start=part.start,
                    end=colour.end,
                    on=petals_after(mentions, colour.end),
                )
    return None


def _said_to_be_one(mentions: Mentions, part: Found) -> str | None:
    """ "the eye's a speck of gold", "the throat is just a smudge of lemon": of the eye."""
    texts, i = mentions.talk.texts, part.start
    while i and texts[i - 1] in ("a", "an", "just", "only", "mere", "tiny", "little", "no", "more"):
        i -= 1
    if i == part.start or texts[i - 1] not in BE:
        return None
    return next((p.label for p in mentions.parts_in(i - 5, i - 1) if p.end == i - 1), None)


def _before_aside(mentions: Mentions, at: int) -> int:
    """ "it's edged, | ever so thinly, | in silver": back over what is put in between commas."""
    talk = mentions.talk
    if not at or talk.tokens[at - 1].mark != COMMA:
        return at
    for j in range(at - 2, max(0, at - 7), -1):
        if talk.tokens[j].mark != COMMA:
            continue
        if talk.texts[j].endswith("ed"):
            return j + 1
        return _before_place(mentions, j + 1)
    return at


def _before_place(mentions: Mentions, at: int) -> int:
    """ "a star | in the middle |, if you please, in crimson": back over where the marking lies."""
    parts = mentions.parts_in(at - 8, at)
    if len(parts) < 2 or parts[-1].end != at:
        return at
    between = mentions.talk.texts[parts[-2].end : parts[-1].start]
    kinds = mentions.vocabulary.part_kinds
    placed = 1 <= len(between) <= 3 and between[0] in PREPOSITIONS
    return parts[-2].end if placed and kinds[parts[-2].label] == "marking" else at


def _drawn(mentions: Mentions, at: int) -> int:
    """Back over how a marking is done: "the veining | picked out | in raspberry"."""
    texts, i = mentions.talk.texts, at
    named = {p.end for p in mentions.parts_in(at - 8, at)}
    while (
        i
        and at - i < 3
        and i not in named
        and (texts[i - 1].endswith(("ed", "ing")) or texts[i - 1] in _DRAWN)
    ):
        i -= 1
    return i


_DRAWN = frozenset("up down out drawn done laid on in over cut shot run through all just".split())


def lined(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "a cherry line drawn down each petal": a stripe; "round the rim a red line": the rim.

    Not "the washing line", "a yellow line on the path".
    """
    talk, i = mentions.talk, colour.end
    if talk.texts[i : i + 1] not in _LINES or talk.tokens[i - 1].mark:
        return None
    low, stop = talk.sentence(colour.start)
    if any(p.label == "edge" for p in mentions.parts_in(max(low, colour.start - 12), colour.start)):
        return "edge"
    i += 1
    while i < stop and i - colour.end < 4 and talk.texts[i] in _RULED:
        i += 1
    if talk.texts[i : i + 1] not in _ALONG:
        return None
    parts = mentions.parts_in(i, min(stop, i + 6))
    on_petals = parts and parts[0].label in ("bloom", "upper petals", "lower petals", "centre")
    return "stripe" if on_petals else None


_LINES = (("line",), ("lines",), ("bar",), ("bars",))
_RULED = frozenset("drawn ruled painted pencilled running runs run going straight right".split())
_ALONG = tuple((w,) for w in "down up along through".split())
