"""Whether the words around a missing label show another plant than the one in hand.

"This one", "the next", "behind it", "a seedling", "whose are you" show one; "I lost the label"
and "there's no label on it" tell only of the plant in hand.
"""

from dataclasses import dataclass

from diary.linking.document import PlantKind
from diary.linking.turns.hailed import addressed, asked_who, hailed_before
from diary.linking.turns.lacking import shown_lacking
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.walk import Walk
from diary.reading.mentions import Mentions


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """Whether another plant is shown, and where the words that show it begin."""

    fresh: bool
    opened: bool  # by the sentence before
    brought_in: bool  # "on the step is a seedling"
    start: int | None


def shown_anew(mentions: Mentions, at: int, stop: int, leads: LeadIns, walk: Walk) -> Shown:
    """What shows another plant around the token at which a label is said to be missing."""
    texts = mentions.talk.texts
    start = mentions.talk.sentence(at)[0]
    window = texts[max(start, at - 12) : min(stop, at + 10)]
    window = tuple(
        w
        for n, w in enumerate(window)
        if w != "another" or window[n - 1 : n] == () or window[n - 1] not in _WRITING
    )
    before = texts[max(start, at - 8) : at]
    earlier = mentions.talk.sentence(start - 1)[0] if start else start
    pointed = _pointed_at(mentions, at, walk)
    lacking = shown_lacking(mentions, at)
    opened = (
        _opened_by(texts[earlier : min(earlier + 2, start)], at - start, earlier, walk)
        or pointed is not None
        or hailed_before(mentions, earlier, start)
    )
    brought_in = _brought_in(mentions, start, stop)
    fresh = (
        opened
        or brought_in
        or lacking is not None
        or bool((_NEW_ONE | {"this"}) & set(window))
        or _opens_with(mentions, start, at)
        or _on_that_one(window)
        or (at == start and texts[at] in _SAID_OUTRIGHT)
        or _headed_so(mentions, at, leads, walk)
        or asked_who(mentions, before)
        or addressed(texts[max(start, at - 4) : min(stop, at + 9)])
        or (texts[at] in _ANY and before[-2:] not in _OF_IT)
    )
    begins = [i for i in (pointed, lacking) if i is not None]
    return Shown(fresh=fresh, opened=opened, brought_in=brought_in, start=min(begins, default=None))


def _opened_by(words: tuple[str, ...], far: int, earlier: int, walk: Walk) -> bool:
    """ "This one's a puzzle. No label.", "A seedling of sorts. No label."; not "This is 24-03."."""
    pointed = bool(_POINTED_AT & set(words)) and not _just_numbered(earlier, walk)
    return far < _NEAR_BEFORE and (pointed or _indefinite(words))


_NEAR_BEFORE = 14
# Words near by that show that another plant is meant than the one in hand.
_NEW_ONE = frozenset(
    {
        "another",
        "behind",
        "beside",
        "next",
        "here",
        "end",
        "along",
        "below",
        "neighbour",
        "neighbor",
    }
)


_SAID_OUTRIGHT = frozenset(
    {
        "unlabelled",
        "unlabeled",
        "unnumbered",
        "anonymous",
        "nameless",
        "mystery",
        "blank",
        "ticketless",
    }
)


_POINTED_AT = frozenset(
    "this another then adjacent next end neighbouring last third second".split()
)
_POINTED_REACH = 13


def _pointed_at(mentions: Mentions, at: int, walk: Walk) -> int | None:
    """Where "this fella here came up between the rows" begins, shortly before, unpunctuated."""
    if mentions.talk.punctuated:
        return None
    floor = max(0, at - _POINTED_REACH, walk.turns[-1].said + 1 if walk.turns else 0)
    found = [i for i in range(floor, at) if mentions.talk.texts[i] in ("this", "another")]
    return found[-1] if found else None


_ANY_PLANT = frozenset("seedling plant pot bulb stray oddity orphan tuber fan rosette".split())


def _indefinite(words: tuple[str, ...]) -> bool:
    """ "A seedling of I know not what. No label.", "Now for the odd one out." """
    if words[:2] == ("now", "for"):
        return True
    return words[:1] in (("a",), ("an",), ("one",)) and bool(_ANY_PLANT & set(words[1:2]))


def _on_that_one(words: tuple[str, ...]) -> bool:
    """ "The label on that one's been eaten"."""
    return any(
        words[i] in ("on", "off", "from", "of") and words[i + 1 : i + 3] == ("that", "one")
        for i in range(len(words) - 2)
    )


def _opens_with(mentions: Mentions, start: int, at: int) -> bool:
    """ "This one came with no history, a gift in a plain pot, unlabelled"."""
    head = mentions.talk.texts[start : min(at, start + 4)]
    nouns = {"label", "tag", "stick", "ticket", "pot"}
    shown = bool({"this", "another", "whoever", "something", "somebody"} & set(head))
    comes = any(head[i : i + 2] in _COMES for i in range(len(head) - 1))
    if head[:1] == ("one",) or _NEIGHBOURS & set(head):
        return not nouns & set(head[:2])
    stands = head[1:2] == ("one",) and head[2:3] != () and head[2] in _PLACED
    return (shown or comes or stands) and not nouns & set(head)


_WRITING = frozenset("do write make need needs get want wants find wanting it".split())
_ANY = frozenset({"a", "an", "another"})
_OF_IT = (("it", "'s"), ("it", "is"), ("that", "'s"), ("he", "'s"), ("she", "'s"), ("was", "it"))
_NEIGHBOURS = frozenset({"neighbour", "neighbor", "odd"})
_PLACED = frozenset("in on by under at behind beside next over down up".split())


_COMES = (("then", "comes"), ("then", "there"), ("next", "comes"), ("here", "'s"), ("here", "is"))


_A = frozenset({"a", "an", "another", "some", "something"})
_SHOWN = frozenset("is 's sits stands lives comes".split())
_SOME_PLANT = frozenset("something one pot plant seedling basket tub stray volunteer".split())
_NOUN_WITHIN = 5
_BACK_THERE = frozenset("it that this he she".split())


def _brought_in(mentions: Mentions, start: int, stop: int) -> bool:
    """ "On the step, again with no label, is a seedling"; not "back to it, that's a stray too"."""
    texts = mentions.talk.texts
    plants = mentions.vocabulary.classes["plantlike"] | _SOME_PLANT
    return any(
        texts[i] in _SHOWN
        and texts[i + 1] in _A
        and texts[i - 1] not in _BACK_THERE
        and bool(plants & set(texts[i + 1 : min(i + _NOUN_WITHIN, stop)]))
        for i in range(max(start, 1), min(stop, len(texts) - 1))
    )


def _just_numbered(start: int, walk: Walk) -> bool:
    """ "This is 24-03. I lost the label": the sentence from `start` gave a plant its number."""
    if not walk.turns or walk.turns[-1].plant.kind is PlantKind.UNNAMED:
        return False
    return walk.turns[-1].said >= start


def _headed_so(mentions: Mentions, at: int, leads: LeadIns, walk: Walk) -> bool:
    """ "24-03 is pink. No tag. White.": heads a note, a colour after it; not "No tag. Pity."."""
    talk = mentions.talk
    start, stop = talk.sentence(at)
    whole = (
        talk.punctuated
        and start == at
        and any(f.end == stop for f in mentions.cue("unlabelled", at, at + 1))
    )
    if not whole or not walk.turns or stop >= len(talk.texts):
        return False
    if leads.told_before(at) <= walk.turns[-1].said + 1:
        return False
    return any(
        c.start <= stop + 1 for c in mentions.colours_in(stop, min(stop + 4, len(talk.texts)))
    )
