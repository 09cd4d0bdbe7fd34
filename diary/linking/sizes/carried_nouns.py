"""The noun that a length takes from before its clause, where this one has none.

"Stalks long. Eighteen ...", "Dwarf, twelve centimetres"; not the stem of "only shorter in the
stem. It's forty-five millimetres".
"""

from diary.linking.sizes.leaf_sizes import MEASURING, leaf_is_sized
from diary.linking.sizes.measured_nouns import (
    COPULAS,
    NOTHING,
    PLACED,
    is_place,
    of_many,
    outermost,
)
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity
from diary.reading.phrases import Found
from diary.reading.tokens import QUERY

_NO_COMPARATIVE = frozenset("flower after under never other centimeter over ruler".split())
_REACH = 14
_OBJECTS = frozenset(
    "with it i you we they she he has had got gives makes carries holds and".split()
)
_LEADS = frozenset(
    "the a an this that these those its his her my and but so now well oh right yes aye no "
    "it there as for with on each one good nice big little lovely small great whole actual "
    "what about then look hold measure of got has have had 's is are 've i you we biggest "
    "best main".split()
)


def carried_over(mentions: Mentions, low: int, at: int) -> str:
    """The noun of the clause before, where this one has none: "Stalks long. Eighteen ..."."""
    talk = mentions.talk
    if low == 0:
        return ""
    start = talk.sentence(low - 1)[0]
    if start and low - start <= 3 and talk.tokens[low - 1].mark == QUERY:
        start = talk.sentence(start - 1)[0]  # "It's a small leaf. How wide? Eighteen ..."
    if not talk.punctuated:
        start = talk.sentence(max(0, low - _REACH))[0]
    start = max([start, *_plants_said(mentions, start, low)])
    found = outermost(mentions.vocabulary.subjects.find(talk.texts, start, low))
    if not talk.punctuated and found and found[-1].label == NOTHING:
        return ""
    if many := of_many(mentions, [f for f in found if f.label != NOTHING], at):
        return many[0].label
    nouns = [
        f
        for f in found
        if f.label != NOTHING
        and not is_place(mentions, f, start, low)
        and not _compared(mentions, f, start)
        and (f.label != "leaf" or leaf_is_sized(mentions, f, at))
    ]
    if not nouns or low - nouns[-1].end > _REACH:
        return ""
    if MEASURING & set(talk.texts[nouns[-1].start - 6 : low]) and found[-1].label != NOTHING:
        return nouns[-1].label
    told = [f.label for f in nouns if _is_subject(mentions, f)]
    if not told:
        return ""
    return told[0] if talk.punctuated else told[-1]


def _compared(mentions: Mentions, noun: Found, low: int) -> bool:
    """ "only shorter in the stem", "no taller in the leaf": a likeness is drawn, no size told."""
    before = mentions.talk.texts[max(low, noun.start - 4) : noun.start]
    return {"in", "of"} & set(before) != set() and any(
        w.endswith("er") and len(w) > 4 and w not in _NO_COMPARATIVE for w in before
    )


def _plants_said(mentions: Mentions, low: int, at: int) -> list[int]:
    """Where the names and numbers said there end: what stood before is of another plant."""
    return [r.end for r in mentions.refs_in(max(0, low - 8), at) if r.cut is None]


def _is_subject(mentions: Mentions, noun: Found) -> bool:
    """Whether the clause is about the noun: it opens it, or a verb follows it."""
    texts = mentions.talk.texts
    following = texts[noun.end : noun.end + 1]
    if following and (following[0] in COPULAS or following[0] in ("it", "they")):
        return True
    owned = following in (("on",), ("of",)) and texts[noun.end + 2 : noun.end + 3] != ()
    if owned and texts[noun.end + 2] in COPULAS:
        return True  # "leaf on it's big too"
    low = mentions.talk.sentence(noun.start)[0]
    near = True  # "lovely straight stem on it": whatever few words but verbs and places lead
    for i in range(noun.start - 1, low - 1, -1):
        if mentions.masked[i]:
            return True
        opens = texts[i] in ("and", "but") and not mentions.talk.punctuated
        if opens and texts[i + 1] in ("the", "its", "his", "her"):
            return True  # "on the back of a packet and the head | I got ..."
        near = near and noun.start - i <= 3 and texts[i] not in PLACED | _OBJECTS
        if not near and texts[i] not in _LEADS and quantity(texts, i) is None:
            return False
    return True


def topic(mentions: Mentions, low: int, at: int) -> tuple[str, str]:
    """The plant and the way it is measured: "Dwarf, twelve centimetres", "it's not tall ..."."""
    low = max([low, *_plants_said(mentions, low, at)])
    texts = mentions.talk.texts
    found = mentions.vocabulary.size_topics.find(texts, max(low, at - _REACH), at)
    found = [f for f in found if texts[f.end : f.end + 1] != ("in",)]  # "shorter in the stem"
    if not found:
        return "", ""
    subject, dimension = found[-1].label.split()
    return subject, dimension
