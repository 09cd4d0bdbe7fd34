"""Where a clip begins whose plant is told a little later: "okay so this first one is"."""

from diary.linking.lead_ins import LeadIn, LeadIns
from diary.reading.mentions import Mentions

_LONG_OPENING, _SHORT_OPENING, _FAR_OPENING = 18, 8, 13


_OPENERS = frozenset(
    {
        "so",
        "now",
        "and",
        "then",
        "right",
        "okay",
        "this",
        "that",
        "last",
        "next",
        "first",
        "see",
        "wait",
    }
)


_OPENED = frozenset(
    {
        "this",
        "that",
        "the",
        "here",
        "over",
        "down",
        "up",
        "at",
        "on",
        "in",
        "behind",
        "next",
        "last",
        "first",
        "we",
        "these",
        "one",
        "there",
        "under",
        "beside",
        "now",
        "before",
    }
)


def opening(mentions: Mentions, leads: LeadIns, lead: LeadIn, said: int) -> int:
    """Where the sentence begins that brings a plant in, if that is near."""
    talk = mentions.talk
    start = talk.sentence(lead.start)[0]
    if talk.punctuated:
        return start if lead.start - start <= _LONG_OPENING else lead.start
    told = min(leads.told_before(lead.start), lead.start)
    if told > start and lead.any:
        return lead.start
    start = max(start, told)
    if not lead.any and not lead.shown and lead.start - start > 2:
        return lead.start
    if lead.start - start <= _SHORT_OPENING:
        return _with_places(mentions, leads, start)
    for i in range(lead.start, max(start, said - _FAR_OPENING), -1):
        if talk.texts[i - 1] in _OPENERS and talk.texts[i] in _OPENED:
            return i - 1
    return lead.start


_PLACE_WORDS = frozenset(
    {
        "side",
        "along",
        "behind",
        "beside",
        "next",
        "end",
        "down",
        "further",
        "corner",
        "sister",
        "brother",
        "batch",
        "over",
    }
)


_PLACE_REACH = 13


def _with_places(mentions: Mentions, leads: LeadIns, start: int) -> int:
    """The statement before too, where it only says where to look ("on the other side")."""
    talk = mentions.talk
    if start == 0:
        return start
    before, _ = talk.sentence(start - 1)
    words = set(talk.texts[before:start])
    told = leads.told_before(start)
    if start - before <= _PLACE_REACH and before >= told and words & _PLACE_WORDS:
        return before
    return start
