"""Denials that decide the other way: who isn't throwing it out keeps it.

"I shan't be binning that", "couldn't bring myself to chuck it" keep; "I won't be keeping
it", "not a keeper" discard. Any other decision denied is none.
"""

from diary.linking.decisions.answered import Answer, answer
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_OTHER_WAY = {"discard": "keep", "keep": "discard"}
_CUE_REACH, _LATER_REACH, _DENIAL_REACH, _DOUBT_REACH = 7, 6, 8, 8
_THINKS = frozenset({"think", "believe", "reckon", "suppose", "see", "fancy", "imagine", "intend"})
_KNOWS = (("know", "that"), ("know", "it"), ("sure", "that"), ("sure", "it"))
_SURE = (("sure", "i", "'d"), ("sure", "i", "would"), ("sure", "i", "want"))
_WHO = frozenset("i we it she he this that they me us myself it's to i'd".split())
_AM_I = frozenset("am i 'm we are 're would 'd going to be will 'll shall me ever".split())
_SEE_REACH = 2  # "can't say yet | see what it does"
_SUBJECTS = frozenset({"it", "she", "he", "that", "this", "they"})
_BEGINS = frozenset({"'s", "is"})
_TURNED = frozenset({"but", "so", "because", "and"})
# "not binning it yet", "don't bin it till June": put off, and not decided.
_PUT_OFF = frozenset("yet till until before unless just when if because for while today".split())
# "nobody's to throw it", "why not bin it", "should I not keep it".
_NO_ONES = frozenset("why should could did do does had if might may know sure think".split())
_OWN = frozenset({"not", "no", "never", "cannot"})
_LED = frozenset("no so and but well nope nah oh then definitely be do".split())
_SAYS_KEEP = frozenset(
    {"room", "keeping", "keeper", "keepers", "retaining", "keep", "retain", "kept"}
)
_KEEPS_TO_COME = frozenset({"'ll", "will", "shall", "going", "need", "cannot", "can", "a"})


def denied_by(mentions: Mentions, found: Found) -> int | None:
    """Where the denial of a decision begins: "not a keeper", "I don't think I'll bin it"."""
    texts = mentions.talk.texts
    if texts[found.start - 1] == "to" and texts[found.start] in _SUBJECTS:
        return None  # "i'd bin it and i'm not going to | it's staying put"
    doubt = _doubted(mentions, found)
    reach = _SEE_REACH if texts[found.start] in ("see", "wait") else _DENIAL_REACH
    cues = [
        scope.cue
        for i in range(found.start, found.end)
        for scope in mentions.scopes.by_token[i]
        if scope.habit is Habit.DENIAL
        and 0 < found.start - scope.cue <= reach
        and not _says_no(mentions, scope.cue, found)
    ]
    cues += [
        cue.start
        for cue in mentions.cue("refusal", found.start - _DENIAL_REACH, found.start)
        if cue.end <= found.start
        and set(texts[cue.end : found.start]) <= _AM_I
        and texts[found.start + 1] not in _BEGINS  # "no chance | that's a keeper"
    ]
    cues += _before_padding(mentions, found)
    return doubt if doubt is not None else max(cues, default=None)


def _says_no(mentions: Mentions, cue: int, found: Found) -> bool:
    """ "no bin it", "no, give her another year": an answer, where no noun follows."""
    talk, at = mentions.talk, cue + 1
    if talk.texts[cue] != "no" or at != found.start:
        return False
    return found.end - at > 1 and talk.texts[at + 1] in mentions.vocabulary.classes["it"]


def _before_padding(mentions: Mentions, found: Found) -> list[int]:
    """ "I'm not, sad to say, breeding from it": the "not" stands before what pads."""
    low = max(0, found.start - _DENIAL_REACH)
    at = found.start
    for cue in reversed(mentions.cue("padding", low, found.start)):
        if cue.end != at:
            break
        at = cue.start
    denies = at < found.start and mentions.talk.texts[at - 1 : at] in (("not",), ("never",))
    return [at - 1] if denies else []


def _doubted(mentions: Mentions, found: Found) -> int | None:
    """ "I don't think I'll be keeping it", "can't see me showing that"; not "can't see why"."""
    texts = mentions.talk.texts
    low = max(mentions.talk.sentence(found.start)[0], found.start - _DOUBT_REACH)
    if not mentions.talk.punctuated:
        low = max(0, found.start - _DOUBT_REACH)
    for i in range(found.start - 2, low - 1, -1):
        if texts[i] in _TURNED:
            return None
        thinks = texts[i] in _THINKS or texts[i : i + 2] in _KNOWS or texts[i : i + 3] in _SURE
        if thinks and texts[i - 1 : i] == ("not",) and texts[i + 1] in _WHO:
            return i - 1
    return None


def overturned(mentions: Mentions, found: Found) -> Statement | None:
    """The other decision, where a denied one is as good as that; None where it is not."""
    value = _OTHER_WAY.get(found.label)
    if value is None or not _is_a_deed(mentions, found):
        return None
    talk = mentions.talk
    if answer(mentions, found) is Answer.NO:
        return _the_other(value, found.start, found.end)
    cue = denied_by(mentions, found)
    if cue is None or found.start - cue > _CUE_REACH:
        return None
    low = max(talk.clause(cue)[0], cue - 3)
    lead = set(talk.texts[low:cue])
    if lead & _NO_ONES - {"could", "do"} or (value == "keep" and not _first_person(mentions, cue)):
        return None
    if _PUT_OFF & set(talk.texts[found.end : found.end + _LATER_REACH]):
        return None
    if value == "discard" and not _never_kept(mentions, low, found):
        return None
    return _the_other(value, cue, found.end)


def _the_other(value: str, start: int, end: int) -> Statement:
    return Statement(
        trait="decision",
        value=value,
        start=start,
        end=end,
        rule="the other decision denied",
        score=0.76,
    )


def put_off(mentions: Mentions, found: Found) -> bool:
    """ "not binning it yet", "not for the bin just yet": nothing is decided."""
    if found.label != "keep" or not _OWN & set(mentions.talk.texts[found.start : found.end]):
        return False
    return bool({"yet", "today"} & set(mentions.talk.texts[found.end : found.end + 2]))


def _is_a_deed(mentions: Mentions, found: Found) -> bool:
    words = mentions.talk.texts[found.start : found.end]
    if found.label == "keep":
        return bool(_SAYS_KEEP & set(words))
    classes = mentions.vocabulary.classes
    return len(words) > 1 and bool(
        set(words) & (classes["cast_out"] | classes["was_cast"] | {"lose", "rid", "shot"})
    )


def _first_person(mentions: Mentions, cue: int) -> bool:
    """ "I'm not binning it", "not chucking that"; not "they don't bin it"."""
    talk = mentions.talk
    low = talk.clause(cue)[0]
    before = talk.texts[low:cue]
    refused = bool(mentions.cue("refusal", cue, cue + 1))
    return refused or bool({"i", "we", "me"} & set(before)) or set(before) <= _LED


def _never_kept(mentions: Mentions, low: int, found: Found) -> bool:
    """ "I won't be keeping it", "not a keeper"; not "I don't keep it wet", "can't keep up"."""
    texts = mentions.talk.texts
    said = set(texts[found.start : found.end])
    return bool(said & (_SAYS_KEEP - {"keep", "retain"})) or bool(
        _KEEPS_TO_COME & set(texts[low : found.start])
    )
