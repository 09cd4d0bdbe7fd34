"""A number that the plant in hand is set against, told in a sentence of its own.

"24-03 has the better leaf, mind you", "24-11 was a fortnight behind it", "24-03 never had that
many". Leaves alone "now 24-03 is bigger" and "24-03, better than 24-02 in every way": those turn.
"""

from diary.linking.turns.lead_ins import LeadIn
from diary.linking.turns.walk import Walk
from diary.reading.mentions import Mentions, Ref

_JOINING = frozenset("and but though although while whereas even only mind well still".split())
_TELLS = frozenset(
    "is 's was has had did does would never still always could might may will 'd 'll got gets "
    "came comes goes went makes made opens opened flowers flowered grows grew looks only "
    "took needed".split()
)
_REACH = 14


_PREPOSITIONS = frozenset("on of off from with for to".split())


def set_against(mentions: Mentions, ref: Ref, lead: LeadIn, walk: Walk) -> bool:
    """Whether the number only gives the measure of the plant in hand."""
    talk = mentions.talk
    if walk.current is None or walk.current.number == ref.title:
        return False
    if lead.moved or lead.came_back or lead.numbered or lead.shown:
        return False
    reach = min(len(talk.texts), ref.end + _REACH)
    start, stop = talk.sentence(ref.start)
    stop = min(stop, reach) if talk.punctuated else reach
    if mentions.refs_in(ref.end, stop) or talk.texts[ref.end : ref.end + 1] == ("which",):
        return False  # "not to be mixed up with 24-03, which is this one behind it"
    outdone = bool(mentions.cue("outdone", ref.end, stop))
    if talk.texts[ref.start - 1] in _PREPOSITIONS and not talk.tokens[ref.start - 1].mark:
        start = max(start, ref.start - _REACH)
        seen = ref.title in walk.numbers and bool(mentions.cue("set_beside", start, ref.start))
        return outdone or seen  # "the leaf on 24-03 is darker than this"
    if not set(talk.texts[lead.start : ref.start]) <= _JOINING or talk.tokens[ref.end - 1].mark:
        return False
    after = talk.texts[ref.end : ref.end + 1]
    if after == () or not (after[0] in _TELLS or after[0].endswith("s")):
        return False
    beside = bool(mentions.cue("set_beside", ref.end, stop))
    conceded = bool(mentions.cue("conceded", ref.end, stop))
    return outdone or (beside and (conceded or ref.title in walk.numbers))
