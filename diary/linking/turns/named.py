"""Turning to a plant by its name: only where the plant itself is plainly shown."""

from diary.linking.turns.brought_in import set_aside, shown_after
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.named_aside import crossed_after, only_likened, others_opinion, parent_told
from diary.linking.turns.named_fragments import clause_to_name, ends_fragment, here_it_is
from diary.linking.turns.named_here import (
    SITES,
    kin_placed_before,
    kin_stands,
    kin_with_a_place,
    only_guessed,
    owned_elsewhere,
    shown_as_kin,
    stands_behind,
    stood_alongside,
    there_itself,
    thing_in_its_place,
    this_is_what,
)
from diary.linking.turns.openings import opening
from diary.linking.turns.plant_named import plant_of
from diary.linking.turns.walk import Turn
from diary.reading.mentions import Mentions, Ref

_NOT_AFTER_NAME = frozenset(
    "'s crossed by times with as pollen selfed self seedling x cross and on had gave was "
    "were carried threw".split()
)


_SELF = frozenset({"itself", "himself", "herself", "too", "now"})
_STANDS = frozenset({"is", "'s", "stands", "sits", "lives", "comes", "goes"})
_POSTURES = frozenset(
    "sitting sat standing stood living lurking hiding parked hanging sulking tucked growing".split()
)
_HERE = frozenset("here beside behind next alongside right just at there in".split())
_NEAR = frozenset(
    "here it him her this that them its his along elbow end side comparison flower bloom".split()
)
_KEPT = frozenset("keep kept have had 've bought brought put stood stuck fetched left grow".split())


def _placed_here(mentions: Mentions, ref: Ref) -> bool:
    """ "Tin Whistle itself is here at its elbow", "Tin Whistle I keep here for a yardstick".

    Not "Tin Whistle is better", "Tin Whistle I lost".
    """
    talk = mentions.talk
    first, i = talk.clause(ref.start)[0], ref.start
    while i > first and talk.texts[i - 1] in _OPENING:
        i -= 1
    if i > first and (talk.punctuated or i == ref.start):
        return False
    stop = talk.sentence(ref.start)[1] if talk.punctuated else len(talk.texts)
    rest = talk.texts[ref.end : min(ref.end + 8, stop)]
    if rest[:1] in (("i",), ("we",)) and len(rest) > 1 and rest[1] in _KEPT:
        return bool(_NEAR & set(rest))
    if len(rest) > 2 and rest[0] in _BESIDE and any(t in _STANDS for t in rest[2:5]):
        return bool(_NEAR & set(rest[1:3]))  # "Tin Whistle behind it is sulking"
    i = 1 if rest[:1] != () and rest[0] in _SELF else 0
    if len(rest) <= i + 1 or rest[i] not in _STANDS:
        return False
    if rest[i] in ("is", "'s") and rest[i + 1] in _POSTURES:
        i += 1
    if rest[i + 1 : i + 2] == () or rest[i + 1] not in _HERE | {"by", "on", "under", "in"}:
        return False
    return bool((_NEAR | SITES) & set(rest[i + 1 : i + 5]))


_SIDES = frozenset("left right end corner floor bench shelf staging".split())
_BESIDE = frozenset("behind beside next alongside opposite below above under by".split())


_APPOSED = 10
_HERES = (
    ("here", "'s"), ("here", "is"), ("this", "is"), ("that", "'s"), ("here", "he"), ("here", "she"),
    ("there", "'s"), ("here", "it"), ("there", "he"), ("there", "she"), ("these", "are"),
)  # fmt: skip


def _here_by_name(mentions: Mentions, ref: Ref) -> bool:
    """ "And here's its old man, Tin Whistle."; not "this is pink, Tin Whistle was redder"."""
    talk = mentions.talk
    start, stop = talk.sentence(ref.start)
    apart = ref.start > start and talk.tokens[ref.start - 1].mark == ","
    ends = stop == ref.end or talk.tokens[ref.end - 1].mark == ","
    if not (apart and ends and ref.start - start <= _APPOSED):
        return False
    words = talk.texts[start : ref.start]
    told = any(talk.tokens[i].mark for i in range(start, ref.start - 1))
    if words[:2] in _NOW_FOR or words[:3] in _NOW_FOR:
        return True
    return not told and any(words[i : i + 2] in _HERES for i in range(min(3, len(words) - 1)))


_NOW_FOR = (("now", "for"), ("and", "now", "for"), ("on", "to"), ("next", "up"), ("and", "finally"))
_KIN = frozenset(
    "mother father mum dad parent parents pollen seed pod sire dam cross crossed by times like "
    "double image reminds name called who what".split()
)
_HEADLINE = 8


def _headline(mentions: Mentions, ref: Ref) -> bool:
    """ "Tin Whistle, ladies and gentlemen.": a sentence without a verb that a name heads.

    Not after a question, nor where parents or a likeness are spoken of.
    """
    talk = mentions.talk
    start, stop = talk.sentence(ref.start)
    if not talk.punctuated or start != ref.start or stop - start > _HEADLINE:
        return False
    if talk.tokens[ref.end - 1].mark != "," or talk.between(start - 1, start, ("?",)):
        return False
    before = talk.texts[talk.sentence(start - 1)[0] : start] if start else ()
    rest = talk.texts[ref.end : stop]
    if (
        (set(before) & _KIN and not kin_stands(before))
        or set(rest) & _KIN
        or mentions.refs_in(ref.end, stop)
    ):
        return False
    return not any(t in _VERBS for t in rest)


def _after_kin(mentions: Mentions, ref: Ref) -> bool:
    """ "Mother's at the end of the row. Tin Whistle, no less.": said before where it stands."""
    start = mentions.talk.sentence(ref.start)[0]
    before = mentions.talk.sentence(start - 1)[0] if start else 0
    return kin_stands(mentions.talk.texts[before:start])


_VERBS = frozenset(
    "is 's was were are has had have would will did does do made gave got beats could can might "
    "think reckon suppose threw came went never no too again".split()
)


_OPENING = frozenset("and now then so right well oh here but the old".split())
_BROUGHT = frozenset("brought fetched stood put set kept got left placed".split())
_ALONGSIDE = frozenset("alongside beside next here by".split())
_FETCHING = frozenset("fetch bring pass hand reach give lift show".split())


def _sent_for(mentions: Mentions, ref: Ref) -> bool:
    """ "Where's Tin Whistle got to?", "fetch Tin Whistle over"."""
    texts = mentions.talk.texts
    before = tuple(t for t in texts[max(0, ref.start - 4) : ref.start] if t not in ("the", "old"))
    rest = texts[ref.end : ref.end + 2]
    if before[-2:] in (("where", "'s"), ("where", "is"), ("where", "has")):
        return mentions.talk.tokens[ref.end - 1].mark == "?" or rest[:1] in (
            ("got",), ("gone",), ("hiding",), ("now",), ("then",), ("today",), ("been",),
        )  # fmt: skip
    head = mentions.talk.sentence(ref.start)[0]
    near = set(texts[ref.end : ref.end + 6])
    if before[-1:] and before[-1] in _BROUGHT and near & _ALONGSIDE:
        return True  # "I've brought Tin Whistle out to stand alongside"
    return bool(_FETCHING & set(texts[head : head + 3])) and bool(_FETCHING & set(before))


_PREPOSITIONS = frozenset({"on", "from", "of", "with", "onto", "off", "for", "than"})


def named_turn(mentions: Mentions, ref: Ref, leads: LeadIns, taken: set[int]) -> Turn | None:
    """The turn that a name makes: only where the plant is plainly shown."""
    kin_at = shown_as_kin(mentions, ref)
    if kin_at is None:
        kin_at = thing_in_its_place(mentions, ref)
    as_kin = (
        kin_at is not None
        or kin_with_a_place(mentions, ref)
        or kin_placed_before(mentions, ref)
        or (_after_kin(mentions, ref) and _headline(mentions, ref))
    )
    if ref.start in taken and not as_kin:
        return None
    if set_aside(mentions, ref) and not _sent_for(mentions, ref):
        return None
    if only_guessed(mentions, ref) or owned_elsewhere(mentions, ref):
        return None
    if crossed_after(mentions, ref) or (parent_told(mentions, ref) and not as_kin):
        return None
    if only_likened(mentions, ref) or others_opinion(mentions, ref):
        return None
    lead = leads.before(ref.start)
    talk = mentions.talk
    rest = talk.texts[ref.end : ref.end + 1]
    marked = bool(talk.tokens[ref.end - 1].mark)
    shown_there = here_it_is(mentions, ref)
    placed = (
        _placed_here(mentions, ref)
        or ends_fragment(mentions, ref)
        or clause_to_name(mentions, ref, leads)
        or shown_there
        or _here_by_name(mentions, ref)
        or _headline(mentions, ref)
        or as_kin
        or stood_alongside(mentions, ref)
        or there_itself(mentions, ref)
        or stands_behind(mentions, ref)
        or this_is_what(mentions, ref)
    )
    sided = talk.texts[ref.end : ref.end + 2] == ("on", "the") and bool(
        _SIDES & set(talk.texts[ref.end + 2 : ref.end + 4])
    )
    placed = placed or (sided and lead.shown)
    parted = rest != () and rest[0] in _NOT_AFTER_NAME and rest[0] not in ("and", "with", "by")
    if parted and not marked and not placed:
        return None
    if rest == ("by",) and not marked and mentions.refs_in(ref.end + 1, ref.end + 3):
        return None
    before = [
        t
        for t in talk.texts[max(0, ref.start - 3) : ref.start]
        if t not in ("the", "my", "old", "a")
    ]
    apart = ref.start > 0 and talk.tokens[ref.start - 1].mark in (".", "?")
    hangs = before[-1:] != [] and before[-1] in _PREPOSITIONS and not apart
    if hangs and not (lead.came_back or shown_there):
        return None
    if rest == ("with",) and not marked and not lead.moved:
        return None
    if rest == ("and",) and not marked and mentions.ref_at(ref.end + 1) is not None:
        return None
    sentence = talk.sentence(ref.start)
    heads = sentence[0] == lead.start
    bought = heads and bool(
        mentions.vocabulary.cues["bought"].find(
            talk.texts, sentence[0], min(sentence[1], ref.end + 14)
        )
    )
    bought = bought or placed or _sent_for(mentions, ref)
    next_up = heads and shown_after(mentions, ref) and rest != ("now",)
    moved = lead.moved or leads.moved_before(ref.start)
    if not (bought or next_up or lead.came_back or (lead.shown and (lead.at_head or moved))):
        return None
    if leads.compared(ref.start) and not (lead.shown or shown_there):
        return None
    begin = opening(mentions, leads, lead, ref.start)
    return Turn(
        at=min(begin, kin_at) if kin_at is not None else begin,
        said=ref.start,
        plant=plant_of(mentions, ref),
        score=round(ref.score * 0.92, 3),
        rule="a named plant shown",
        runner_up=ref.runner_up,
        runner_up_score=ref.runner_up_score,
    )
