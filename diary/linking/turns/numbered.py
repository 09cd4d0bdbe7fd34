"""Turning to a plant by its number or its name."""

from diary.linking.document import Plant, PlantKind
from diary.linking.statement import Statement
from diary.linking.turns.brought_in import set_aside, shown_after
from diary.linking.turns.cut_short import completed, cut_turns, spelt_again
from diary.linking.turns.in_passing import (
    acted_on,
    contrasted,
    cut_in_passing,
    governed,
    only_told_apart,
    paired,
    says_where,
)
from diary.linking.turns.in_row import next_in_row
from diary.linking.turns.lead_ins import LeadIn, LeadIns
from diary.linking.turns.listed import in_list
from diary.linking.turns.lost import not_here, tells_of_the_lost
from diary.linking.turns.openings import opening
from diary.linking.turns.plainly_brought import announced, plainly_brought
from diary.linking.turns.set_against import set_against
from diary.linking.turns.skipped import skipped
from diary.linking.turns.walk import Turn, Walk
from diary.reading.mentions import Mentions, Ref


def numbered_turn(
    mentions: Mentions,
    ref: Ref,
    leads: LeadIns,
    taken: set[int],
    parents: tuple[Statement, ...],
    walk: Walk,
) -> Turn | None:
    """The turn that a number makes, or none."""
    told_after = shown_after(mentions, ref) and ref.cut is None
    plain = plainly_brought(mentions, ref)
    lead = leads.before(ref.start)
    announced_here = ref.cut is None and announced(mentions, ref, leads)
    plain = plain or announced_here
    moved_from = lead.start if lead.moved or lead.came_back else None
    told_as_parent = ref.start in taken and not announced_here
    if (told_as_parent or set_aside(mentions, ref, moved_from)) and not (
        (told_after and _which_is(mentions, ref))
        or (plain and not told_as_parent)
        or _is_child(mentions, ref)
        or _spoken_of_again(mentions, ref, walk)
    ):
        return None
    if leads.compared(ref.start) and not (
        plain or lead.shown or lead.came_back or _which_is(mentions, ref)
    ):
        return None
    if (
        (leads.guessed(ref.start) and not lead.came_back)
        or _is_kin(mentions, ref)
        or _mends_parent(mentions, ref)
    ):
        return None
    lost = tells_of_the_lost(mentions, ref) or not_here(mentions, ref)
    seen = ref.title in walk.numbers and mentions.talk.texts[ref.end : ref.end + 1] == ("that",)
    if lost and not (lead.presented or lead.came_back or seen):
        return None
    if (
        ref.cut is None
        and not plain
        and (governed(mentions, ref, lead) or acted_on(mentions, ref, lead))
    ):
        return None
    if (
        ref.cut is None
        and not lead.came_back
        and (says_where(mentions, ref) or contrasted(mentions, ref))
    ):
        return None
    if ref.cut is None and only_told_apart(mentions, ref, lead, leads, walk):
        return None
    if (ref.cut is None and paired(mentions, ref)) or skipped(mentions, ref):
        return None
    if ref.cut is None and not lead.came_back and in_list(mentions, ref):
        return None
    if ref.cut is None and not plain and set_against(mentions, ref, lead, walk):
        return None
    number, score, on_record = ref.title, ref.score, ref.on_record
    if ref.cut is not None:
        if spelt_again(ref, walk) or cut_in_passing(mentions, ref):
            return None
        whole = completed(mentions, ref, lead, leads, walk)
        if whole is None:
            return None
        number, on_record = whole
        score = 0.9 if on_record else 0.7
        in_row = on_record and next_in_row(mentions, ref, number, walk)
        if not in_row and not cut_turns(mentions, ref, lead, leads, on_record):
            return None
    elif (
        not (
            lead.at_head
            or told_after
            or plain
            or lead.shown
            or lead.came_back
            or lead.numbered
            or _first(mentions, ref, leads, walk)
            or _stands_beside(mentions, ref, lead)
        )
        or not (on_record or plain or lead.any or lead.at_head or lead.shown or ref.explicit)
        or (not on_record and score < 0.55 and not (plain or lead.numbered or lead.shown))
    ):
        return None
    again = mentions.talk.texts[ref.end : ref.end + 1] == ("again",)
    firm = announced_here or lead.shown or lead.came_back or lead.numbered or lead.moved or again
    if _is_parent_here(number, parents, walk, ref.start) and not firm and not _alone(mentions, ref):
        return None
    if ref.cut is not None:
        rule = "a number cut short, completed from the plants just seen"
    else:
        rule = "a number brought in" if lead.any else "a number at the head of a sentence"
    certainty = score * (1.0 if firm else 0.95 if lead.at_head else 0.85)
    return Turn(
        at=opening(mentions, leads, lead, ref.start),
        said=ref.start,
        plant=Plant(kind=PlantKind.SEEDLING, number=number, on_record=on_record),
        score=round(min(certainty, 0.99), 3),
        rule=rule,
        runner_up=ref.runner_up,
        runner_up_score=ref.runner_up_score,
    )


def _is_kin(mentions: Mentions, ref: Ref) -> bool:
    """ "twenty-three oh six is its sister, but this is better": another plant is spoken of."""
    rest = mentions.talk.texts[ref.end : ref.end + 3]
    kin = ("sister", "brother", "parent", "mother", "father", "sibling")
    return rest[:2] in (("is", "its"), ("'s", "its")) and rest[2:] != () and rest[2] in kin


_PARENTS = frozenset("father mother mum dad sire parent pollen pod seed".split())
_MENDED_REACH = 12


def _mends_parent(mentions: Mentions, ref: Ref) -> bool:
    """ "the father's not 3 of 22 at all, it's 8 of 22": a parent is put right, nothing shown."""
    texts = mentions.talk.texts
    if texts[max(0, ref.start - 2) : ref.start] not in (("it", "'s"), ("it", "is")):
        return False
    low = max(0, ref.start - _MENDED_REACH)
    denied = [r for r in mentions.refs_in(low, ref.start - 1) if set_aside(mentions, r)]
    return bool(denied) and bool(
        _PARENTS & set(texts[max(0, denied[-1].start - 4) : denied[-1].start])
    )


def _spoken_of_again(mentions: Mentions, ref: Ref, walk: Walk) -> bool:
    """ "I said 24-30 was white, and it is, but": of a plant shown before, by the speaker."""
    before = mentions.talk.texts[max(0, ref.start - 4) : ref.start]
    return (
        ref.title in walk.numbers
        and "i" in before
        and bool({"said", "told", "called", "promised"} & set(before))
    )


_CHILDREN = frozenset("kid child daughter son baby youngster offspring seedling bairn".split())


def _is_child(mentions: Mentions, ref: Ref) -> bool:
    """ "and its kid is 23-15 with the pollen of 21-40": the child is shown, it is no parent."""
    before = mentions.talk.texts[max(0, ref.start - 2) : ref.start]
    return len(before) == 2 and before[0] in _CHILDREN and before[1] in ("is", "'s")


def _which_is(mentions: Mentions, ref: Ref) -> bool:
    return mentions.talk.texts[ref.end : ref.end + 3] == ("which", "is", "this")


def _stands_beside(mentions: Mentions, ref: Ref, lead: LeadIn) -> bool:
    """ "and 24-09 on the right": with a word that adds it and a place after it."""
    words = mentions.talk.texts[lead.start : ref.start]
    adds = bool({"and", "then", "next"} & set(words)) and "but" not in words
    return adds and bool(mentions.cue("movement", ref.end, ref.end + 1))


def _first(mentions: Mentions, ref: Ref, leads: LeadIns, walk: Walk) -> bool:
    """No other plant before it in its sentence, or since the last thing told, unpunctuated."""
    start = mentions.talk.sentence(ref.start)[0]
    if not mentions.talk.punctuated:
        lead = leads.before(ref.start)
        if {"then", "next", "now"} & set(mentions.talk.texts[lead.start : ref.start]):
            return True
        start = max(start, min(leads.told_before(ref.start), ref.start))
    in_hand = walk.current.number if walk.current is not None else None
    before = mentions.refs_in(start, ref.start)
    return not any(r.cut is None and r.title != in_hand for r in before)


def _alone(mentions: Mentions, ref: Ref) -> bool:
    """The number is a sentence of its own, as a note-taker speaks."""
    start, stop = mentions.talk.sentence(ref.start)
    return start == ref.start and stop == ref.end


def _is_parent_here(number: str, parents: tuple[Statement, ...], walk: Walk, at: int) -> bool:
    """Whether the number was told as a parent of the plant in hand."""
    if not walk.shown or walk.current is None:
        return False
    since = walk.shown[-1][1]
    return any(s.value == number and since <= s.start < at for s in parents)
