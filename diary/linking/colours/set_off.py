"""Parts that only a colour before them shows: a silver back, green tips, a ring on the leaf."""

from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions


def set_off_part(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "with a silver back", "white with green tips", "marked with a bronze ring" on a leaf."""
    if _backed(mentions, colour):
        return "reverse"
    if _ring_on_a_leaf(mentions, colour):
        return "zone"
    return "edge" if _tipped(mentions, colour) else None


def _backed(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "with a silver | back"; not "a silver back then", "turn it pink back up"."""
    talk, i = mentions.talk, colour.end
    if talk.texts[i : i + 1] not in (("back",), ("backs",)) or talk.tokens[i - 1].mark:
        return False
    led = talk.texts[colour.start - 1 : colour.start] in (("a",), ("the",), ("its",), ("with",))
    after = talk.texts[i + 1 : i + 2]
    ends = not after or bool(talk.tokens[i].mark) or after[0] in ("and", "to", "on", "with", "but")
    return led and (ends or talk.clause(i)[1] == i + 1)


def _ring_on_a_leaf(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the leaf's glossy, and marked with a bronze | ring"; not "a white ring round the eye"."""
    talk, i = mentions.talk, colour.end
    if talk.texts[i : i + 1] not in (("ring",), ("band",), ("halo",)) or talk.tokens[i - 1].mark:
        return False
    near = mentions.parts_in(i + 1, min(i + 5, talk.clause(i)[1]))
    if near and near[0].label != "centre":
        return near[0].label == "leaf"
    before = mentions.parts_in(max(talk.sentence(i)[0], colour.start - 10), colour.start)
    return bool(before) and before[-1].label == "leaf"


def _tipped(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "white with green | tips"; not "bronze tips to the shoots"."""
    talk, i = mentions.talk, colour.end
    if talk.texts[i : i + 1] != ("tips",) or talk.tokens[i - 1].mark:
        return False
    low, stop = talk.clause(i)
    return not {"shoots", "leaf", "leaves", "growth", "foliage"} & set(talk.texts[low:stop])
