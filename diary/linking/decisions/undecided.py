"""Decisions that were nearly made, or that are somebody else's: none of them holds.

"I was going to throw it out and then it did this", "my wife would bin it", "breeding from
it would be madness", "I'd keep it if it had any colour".
"""

from itertools import pairwise

from diary.linking.decisions.anew import begins_anew
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.tokens import COMMA

_CUE_REACH, _FOLLY_REACH, _CONDITION_REACH = 4, 5, 4
_WOULD_REACH = 6
_TURNS = frozenset({"but", "so", "then", "now"})
_CONFIRMED_REACH, _CONDITIONED_REACH = 12, 10
_CONDITIONS = frozenset({"if", "unless", "provided", "should", "as"})
_TURNED = frozenset({"but", "no", "so", "things"})
_WOULD = frozenset({"would", "'d"})
_UNREAL = frozenset(
    "had were was did could only would 'd knew got held came went flowered stood thought grew "
    "looked opened smelt smelled made kept gave".split()
)
_PAST = frozenset(
    {"went", "was", "were", "been", "came", "took", "stood", "showed", "won", "brought", "since"}
)
# What is told of the past as often as it is decided.
_TOLD_OF_THE_PAST = frozenset({"keep", "discard", "show", "name", "repot", "watch"})


def does_not_hold(mentions: Mentions, found: Found) -> bool:
    """Whether the decision is told as one that was not, or is not to be, made."""
    return (
        nearly(mentions, found)
        or whether(mentions, found)
        or folly(mentions, found)
        or (counterfactual(mentions, found) and not confirmed(mentions, found))
        or long_done(mentions, found)
        or habitual(mentions, found)
        or not_such_a_one(mentions, found)
        or lesser(mentions, found)
        or (found.label == "breed" and put_before(mentions, found))
        or (found.label in ("repot", "discard") and traded(mentions, found))
        or (somebody_elses(mentions, found) and not followed(mentions, found))
    )


def nearly(mentions: Mentions, found: Found) -> bool:
    """ "I was going to bin it", "I very nearly named it"; not "I was going by, so bin it"."""
    talk = mentions.talk
    low = talk.sentence(found.start)[0] if talk.punctuated else 0
    return any(
        cue.start < found.start
        and found.start - cue.end <= _CUE_REACH
        and not _TURNS & set(talk.texts[cue.end : found.start])
        and not talk.between(cue.start, found.start, (COMMA,))
        and begins_anew(talk, cue.end, found.start + 1) is None
        for cue in mentions.cue("nearly", max(low, found.start - _CUE_REACH - 5), found.start + 1)
    )


def whether(mentions: Mentions, found: Found) -> bool:
    """ "I'm asked whether I name them", "how to show it is beyond me"; not "see how it does"."""
    lead = mentions.talk.texts[max(0, found.start - 3) : found.start + 1]
    return any(word in _WHETHER and after in _WHO for word, after in pairwise(lead))


_WHETHER = frozenset({"whether", "why", "how"})
_WHO = frozenset({"i", "we", "to"})


def folly(mentions: Mentions, found: Found) -> bool:
    """ "breeding from it would be madness", "it'd be a crime to bin it"."""
    low, high = mentions.talk.sentence(found.start)
    after = mentions.cue("folly", found.end, min(high, found.end + _FOLLY_REACH))
    if after and mentions.talk.texts[found.end : after[0].start + 1][:1] in (
        ("would",),
        ("is",),
        ("'d",),
        ("'s",),
        ("was",),
    ):
        return True
    before = mentions.cue("folly", max(low, found.start - 6), found.start)
    return any(
        mentions.talk.texts[cue.end : cue.end + 1] == ("to",)
        and mentions.talk.texts[cue.end + 1 : cue.end + 2] not in (("say",), ("tell",))
        for cue in before
    )


def counterfactual(mentions: Mentions, found: Found) -> bool:
    """ "I'd keep it if it had any scent"; not "I'd keep it, if you ask me"."""
    talk = mentions.talk
    low, high = talk.sentence(found.start)
    if not talk.punctuated:
        low, high = max(0, found.start - 6), min(len(talk.texts), found.end + 8)
    before = set(talk.texts[max(low, found.start - _WOULD_REACH) : found.start + 2])
    if not before & _WOULD:
        return False
    for i in range(found.end, high):
        if talk.texts[i] == "if":
            if talk.texts[i : i + 4] == ("if", "i", "were", "you"):
                return False
            return bool(_UNREAL & set(talk.texts[i + 1 : i + 1 + _CONDITION_REACH]))
    return False


def confirmed(mentions: Mentions, found: Found) -> bool:
    """ "I'd have a few cuttings if I were you, and I will"; "it might do, so I'll enter it"."""
    talk = mentions.talk
    high = talk.sentence(found.start)[1] if talk.punctuated else found.end + _CONFIRMED_REACH
    return bool(mentions.cue("confirmed", found.end, min(high, found.end + _CONFIRMED_REACH)))


def followed(mentions: Mentions, found: Found) -> bool:
    """ "grandad says it needs a bigger pot, so we're doing that"; not "but I'm going to wait"."""
    cues = mentions.cue("confirmed", found.end, found.end + _CONFIRMED_REACH)
    return any(mentions.talk.texts[cue.start] == "so" for cue in cues)


def under_condition(mentions: Mentions, found: Found) -> bool:
    """ "if it does nothing by June it's for the heap"; not "if not now, no, it's a keeper"."""
    talk = mentions.talk
    low = talk.sentence(found.start)[0]
    if not talk.punctuated:
        low = min(low, max(0, found.start - _CONDITIONED_REACH))
    return any(
        talk.texts[cue.start] in _CONDITIONS
        and found.start - cue.start > 2
        and not _TURNED & set(talk.texts[cue.start : found.start])
        and not (cue.start > low + 1 and "and" in talk.texts[cue.end : found.start])
        for cue in mentions.cue("hypothetical", low, found.start)
    )


def habitual(mentions: Mentions, found: Found) -> bool:
    """ "I throw out half of them every year"; not "thrips, as always, so bin it"."""
    talk = mentions.talk
    low = max(talk.clause(found.start)[0], found.start - _HABIT_REACH)
    high = min(talk.clause(found.end - 1)[1] + 1, found.end + _HABIT_REACH)
    cues = mentions.cue("habitual", low, high)
    if all(_SETS_APART & set(talk.texts[c.end : found.start]) for c in cues):
        return False
    return not _INTENDED & set(talk.texts[max(low, found.start - 4) : found.end])


def not_such_a_one(mentions: Mentions, found: Found) -> bool:
    """ "it's not one I would breed from", "not a plant I'd show"; not "one I'd keep"."""
    texts = mentions.talk.texts
    at = found.start - 1
    while at > 0 and found.start - at < _SUCH_REACH and texts[at] in _SAID_OF_SUCH:
        at -= 1
    such = {"one", "plant", "thing", "something", "anything", "seedling", "flower"}
    return at > 1 and texts[at] in such and bool(_DENIES & set(texts[max(0, at - 2) : at]))


def lesser(mentions: Mentions, found: Found) -> bool:
    """ "it needs a drink more than it needs a bigger pot", "rather than bin it"."""
    texts = mentions.talk.texts
    low = max(mentions.talk.sentence(found.start)[0], found.start - 6)
    anew = begins_anew(mentions.talk, low, found.start + 1)
    lead = texts[low if anew is None else anew : found.start]
    return ("than" in lead and bool({"more", "rather", "sooner", "better"} & set(lead))) or (
        lead[-2:] == ("instead", "of")
    )


def traded(mentions: Mentions, found: Found) -> bool:
    """ "he tried to sell me a bigger pot", "that would pay for a new bin": goods and prices."""
    low = mentions.talk.clause(found.start)[0]
    lead = mentions.talk.texts[max(low, found.start - _TRADE_REACH) : found.start]
    return bool(_TRADE & set(lead)) and not {"it", "this", "that"} & set(lead[-2:])


_TRADE = frozenset("sell sold selling buy bought buying pay paid pays price pounds quid".split())
_TRADE_REACH = 5


def put_before(mentions: Mentions, found: Found) -> bool:
    """ "I put the pollen of A on B", "I took A's pollen and put it on B": a cross of old.

    Not "I put its own pollen on it last week", "I put it on B", "I'll put the pollen of A on B".
    """
    talk = mentions.talk
    if talk.texts[found.start] != "put" or talk.texts[found.start - 1] not in _TELLS:
        return False
    low = max(talk.sentence(found.start)[0], found.start - _HABIT_REACH)
    whose = [
        r for r in mentions.refs_in(low, found.start) if "pollen" in talk.texts[r.end : r.end + 2]
    ]
    given = talk.texts[found.end - 1] == "pollen" and mentions.refs_in(found.end, found.end + 3)
    near = max(low, talk.clause(found.start)[0])
    coming = _TO_COME & set(talk.texts[near : found.start])
    if talk.texts[found.start - 2] != "to":
        coming -= {"to"}  # "and to get that I put the pollen of A on B"
    return bool(whose or given) and not coming


_TELLS = frozenset({"i", "we", "and", "then"})
_TO_COME = frozenset("'ll will going must gonna shall to can let should take please".split())
_SETS_APART = frozenset({"so", "and", "but", "do", "does", "did"})
_HABIT_REACH, _SUCH_REACH = 8, 6
_INTENDED = frozenset("'ll will going must gonna shall this 'm mean aim plan intend".split())
_SAID_OF_SUCH = frozenset("that which i we you 'd would 'll will want to be 'm care should".split())
_DENIES = frozenset({"not", "no", "never", "hardly", "nothing"})


def long_done(mentions: Mentions, found: Found) -> bool:
    """ "it went to the show and got nowhere", "it was on the heap"; not "it's on the heap"."""
    talk = mentions.talk
    if found.label not in _TOLD_OF_THE_PAST or "enough" in talk.texts[found.start : found.end]:
        return False  # "it's been in that pot long enough"
    if talk.texts[found.start] == "was" and _DAYS & set(talk.texts[found.end - 1 : found.end + 1]):
        return False  # "that one was binned on Tuesday"
    low = max(talk.clause(found.start)[0], found.start - 3)
    past = _PAST if found.label == "show" else _PAST - {"won"}  # "it's won its place"
    return bool(past & set(talk.texts[low : found.start + 1])) or (
        found.label == "show" and _had_there(talk.texts[talk.clause(found.start)[0] : found.start])
    )


def _had_there(lead: tuple[str, ...]) -> bool:
    """ "I had it at the show", "I've had it on the bench at the show twice"."""
    return "had" in lead[-3:] or any(
        lead[i - 1] in ("'ve", "have", "has") for i in range(1, len(lead)) if lead[i] == "had"
    )


_DAYS = frozenset(
    "monday tuesday wednesday thursday friday saturday sunday yesterday today morning this".split()
)


def somebody_elses(mentions: Mentions, found: Found) -> bool:
    """ "my wife would bin it", "you'd throw it out"; not "she says bin it, so I'll bin it"."""
    talk = mentions.talk
    low = talk.clause(found.start)[0]
    if found.label == "discard" and talk.texts[max(low, found.start - 2) : found.start] in _YOUD:
        return True
    if talk.texts[found.end : found.end + 1] in _SAYS and (
        talk.texts[found.end + 1 : found.end + 2] in _SAYERS
    ):
        return True  # "bin it, says he"
    return any(
        cue.end <= found.start and not _TURNS & set(talk.texts[cue.end : found.start])
        for cue in mentions.cue("somebody_else", max(low, found.start - 9), found.start)
    )


_YOUD = (("you", "'d"), ("you", "would"), ("they", "'d"), ("they", "would"))
_SAYS = (("says",), ("said",), ("say",))
_SAYERS = (("he",), ("she",), ("they",), ("the",), ("my",), ("himself",), ("herself",))
