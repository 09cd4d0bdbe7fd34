"""Denials that decide the other way: who isn't throwing it out keeps it.

"I shan't be binning that", "couldn't bring myself to chuck it" keep; "I won't be keeping
it", "not a keeper" discard. Any other decision denied is none.
"""

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.scope import Habit

_OTHER_WAY = {"discard": "keep", "keep": "discard"}
_CUE_REACH, _LATER_REACH = 6, 6
# "not binning it yet", "don't bin it till June": put off, and not decided.
_PUT_OFF = frozenset("yet till until before unless just when if because for while today".split())
# "nobody's to throw it", "why not bin it", "should I not keep it".
_NO_ONES = frozenset("why should could did do does had if might may know sure think".split())
_OWN = frozenset({"i", "we", "not", "no", "never", "cannot"})
_SAYS_KEEP = frozenset({"keeping", "keeper", "keepers", "retaining", "keep", "retain", "kept"})
_KEEPS_TO_COME = frozenset({"'ll", "will", "shall", "going", "need", "cannot", "can", "a"})


def overturned(mentions: Mentions, found: Found) -> Statement | None:
    """The other decision, where a denied one is as good as that; None where it is not."""
    value = _OTHER_WAY.get(found.label)
    if value is None or not _is_a_deed(mentions, found):
        return None
    talk = mentions.talk
    cues = [s.cue for s in mentions.scopes.by_token[found.start] if s.habit is Habit.DENIAL]
    cue = max(cues, default=-1)
    if cue < 0 or found.start - cue > _CUE_REACH:
        return None
    low = max(talk.clause(cue)[0], cue - 3)
    lead = set(talk.texts[low:cue])
    if lead & _NO_ONES - {"could", "do"} or (value == "keep" and not _first_person(mentions, cue)):
        return None
    if _PUT_OFF & set(talk.texts[found.end : found.end + _LATER_REACH]):
        return None
    if value == "discard" and not _never_kept(mentions, low, found):
        return None
    return Statement(
        trait="decision",
        value=value,
        start=cue,
        end=found.end,
        rule="the other decision denied",
        score=0.76,
    )


def _is_a_deed(mentions: Mentions, found: Found) -> bool:
    words = mentions.talk.texts[found.start : found.end]
    if found.label == "keep":
        return bool(_SAYS_KEEP & set(words))
    classes = mentions.vocabulary.classes
    return bool(set(words) & (classes["cast_out"] | classes["was_cast"] | {"lose", "rid", "shot"}))


def _first_person(mentions: Mentions, cue: int) -> bool:
    """ "I'm not binning it", "not chucking that"; not "they don't bin it"."""
    talk = mentions.talk
    low = talk.clause(cue)[0]
    before = talk.texts[low:cue]
    return not before or bool({"i", "we", "be", "getting"} & set(before)) or len(before) <= 1


def _never_kept(mentions: Mentions, low: int, found: Found) -> bool:
    """ "I won't be keeping it", "not a keeper"; not "I don't keep it wet", "can't keep up"."""
    texts = mentions.talk.texts
    said = set(texts[found.start : found.end])
    return bool(said & (_SAYS_KEEP - {"keep", "retain"})) or bool(
        _KEEPS_TO_COME & set(texts[low : found.start])
    )
