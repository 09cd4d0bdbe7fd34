"""Where a clip begins whose plant is told a little later: "okay so this first one is"."""

from diary.linking.turns.lead_ins import LeadIn, LeadIns
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


_LEADING = frozenset("then and so now okay right oh well".split())


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
    while start > max(told, 0) and talk.texts[start - 1] in _LEADING:
        start -= 1
    if not lead.any and not lead.shown and lead.start - start > 2 and not _begun(mentions, start):
        return lead.start
    if lead.start - start <= _SHORT_OPENING:
        return _with_places(mentions, leads, start)
    for i in range(lead.start, max(start, said - _FAR_OPENING), -1):
        if talk.texts[i - 1] in _OPENERS and talk.texts[i] in _OPENED:
            return i - 1
    return lead.start


_BEGUN = (("then", "there"), ("here", "'s"), ("there", "'s"), ("and", "here"), ("now", "here"))


def _begun(mentions: Mentions, start: int) -> bool:
    """ "then there's a new one this year 24-03": shown before it is numbered."""
    return mentions.talk.texts[start : start + 2] in _BEGUN


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
    told, least = leads.told_before(start), start
    while start > 0:
        before, _ = talk.sentence(start - 1)
        words = talk.texts[before:start]
        if least - before > _PLACE_REACH or before < told:
            break
        if _PLACE_WORDS & set(words) or _says_where(words):
            least = before
        elif not set(words) <= _SMALL:
            break
        start = before
    return least


def _says_where(words: tuple[str, ...]) -> bool:
    """ "So by the potting machine first", "up on the top shelf here"; not "in flower since May"."""
    i = 0
    while i < len(words) and words[i] in _SMALL | _OPENERS:
        i += 1
    return i < len(words) - 1 and words[i] in _PREPOSITIONS and bool(_SPOTS & set(words[i + 1 :]))


_SMALL = frozenset(
    "er um uh that 's is so right now and then well okay ok oh the first last next second one "
    "other plant pot".split()
)
_PREPOSITIONS = frozenset(
    "by inside in up on at under down across over behind beside round through out off near".split()
)
_SPOTS = frozenset(
    "shelf bench row door post front back top bottom window machine tap heater vent path wall "
    "floor stove table tray frame gate butt barrel staging corner light basket step gravel bed "
    "porch tunnel greenhouse house".split()
)
