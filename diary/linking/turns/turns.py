"""Where the speaker turns to another plant, and to which.

A number turns the talk when it is brought in ("this is", "next is", "back to", at the head
of a sentence); a name only when it is plainly shown ("behind it is Lady Pellingate"); a
plant without a number when the speaker says so, or moves on without giving one. A
comparison, a parent, a guess or a denial ("not twenty-three forty") turns nothing.
"""

from dataclasses import replace

from diary.linking.document import PlantKind
from diary.linking.heard import Heard
from diary.linking.turns.by_looks import back_by_looks
from diary.linking.turns.corrected import corrected
from diary.linking.turns.events import Event, EventKind, events
from diary.linking.turns.kin_told_apart import kin_told_apart
from diary.linking.turns.lead_ins import LeadIns, lead_ins
from diary.linking.turns.moved_on import came_back, moved_on
from diary.linking.turns.named import named_turn
from diary.linking.turns.nicknames import back_by_nickname
from diary.linking.turns.numbered import numbered_turn
from diary.linking.turns.placed import stands_there
from diary.linking.turns.signs import Signs
from diary.linking.turns.unnumbered import unlabelled
from diary.linking.turns.walk import FIRST_WORDS, Turn, Walk
from diary.linking.turns.weighed import BY_SIGNS, weighed
from diary.reading.mentions import Mentions, Ref


def find_turns(heard: Heard) -> tuple[Turn, ...]:
    """All turns in order; the first clip begins at the first of them."""
    mentions, parents, likenesses = heard.mentions, heard.parents, heard.likenesses
    leads = lead_ins(mentions, heard.ends)
    signs = Signs(mentions, heard.statements, leads)
    taken = {i for s in parents for i in range(s.start, s.end)}
    taken |= {
        i
        for x in likenesses
        if x.operand.start - x.start <= _LIKENED_REACH
        for i in range(x.operand.start, x.operand.end)
    }
    likened = frozenset(x.operand.start for x in likenesses if x.asserted)
    walk = Walk()
    passed: Ref | None = None
    numbered_to = 0
    for event in events(mentions):
        at, kind, ref = event.at, event.kind, event.ref
        if walk.turns and at <= walk.turns[-1].said and ref is None:
            continue
        if kind in _OWN_PLACE and at == numbered_to:
            continue  # "29-02 next to it is a sport": its own place
        turn = None
        if ref is not None and corrected(mentions, ref, leads, taken, walk):
            continue
        if ref is not None:
            if not _in_passing(mentions, ref, passed, walk):
                turn = (
                    numbered_turn(mentions, ref, leads, taken, parents, walk)
                    if ref.is_number
                    else named_turn(mentions, ref, leads, taken)
                )
        else:
            turn = _unnumbered_turn(mentions, event, leads, taken, walk)
        turn = weighed(mentions, event, turn, signs, leads, taken, walk)
        if turn is not None and turn.rule == BY_SIGNS and at in likened:
            turn = None  # "what it puts me in mind of, and strongly, is Hobnail"
        if turn is None and ref is not None:
            passed = ref
        if turn is None or walk.current == turn.plant:
            continue
        if _number_found(mentions, turn, leads, walk):
            turn = replace(turn, at=walk.turns[-1].at)
            walk.forget_last()
        if walk.turns and turn.at < (floor := _past(mentions, walk.turns[-1].said)):
            turn = replace(turn, at=max(turn.at, min(floor, turn.said)))
        numbered_to = ref.end if ref is not None else numbered_to
        walk.turn_to(turn, mentions.talk.texts[turn.at : turn.at + FIRST_WORDS])
    return walk.turns


_OWN_PLACE = frozenset({EventKind.MOVEMENT, EventKind.PLACE})


def _unnumbered_turn(
    mentions: Mentions, event: Event, leads: LeadIns, taken: set[int], walk: Walk
) -> Turn | None:
    """The turn that is made where no plant is named."""
    if event.kind is EventKind.LABEL:
        return unlabelled(mentions, event.at, leads, taken, walk)
    if event.kind is EventKind.MOVEMENT:
        return moved_on(mentions, event.at, leads, taken, walk)
    if event.kind is EventKind.RETURN:
        return came_back(mentions, event.at, leads, walk)
    if event.kind is EventKind.PLACE:
        return stands_there(mentions, event.at, event.placed_from, leads, taken, walk)
    if event.nickname is not None:
        return back_by_nickname(mentions, event.nickname, walk)
    return back_by_looks(mentions, event.pointing, leads, walk) if event.pointing else None


def _past(mentions: Mentions, said: int) -> int:
    """The token after the written word in which a plant is told ("two-two-six" is one)."""
    tokens, i = mentions.talk.tokens, said + 1
    while i < len(tokens) and tokens[i].word == tokens[said].word:
        i += 1
    return i


_LIKENED_REACH = 7


def _in_passing(mentions: Mentions, ref: Ref, passed: Ref | None, walk: Walk) -> bool:
    return (
        _again_in_passing(mentions, ref, passed)
        or (bool(walk.turns) and kin_told_apart(mentions, ref))
        or _where_it_stands(mentions, ref, walk)
    )


_PASSED_REACH = 8


def _again_in_passing(mentions: Mentions, ref: Ref, passed: Ref | None) -> bool:
    """ "half the size of 24-03, and 24-03's no giant": named in passing, and once more."""
    if passed is None or ref.cut is not None or not ref.is_number:
        return False
    if ref.start - passed.end == 1 and mentions.talk.texts[passed.end] in ("and", "or"):
        return not mentions.talk.tokens[passed.end - 1].mark and passed.is_number  # "and 23-19"
    same = mentions.talk.sentence(ref.start) == mentions.talk.sentence(passed.start)
    return same and passed.title == ref.title and ref.start - passed.end <= _PASSED_REACH


_BY_REACH = 5
_BY = frozenset("beside behind by near opposite alongside".split())


def _where_it_stands(mentions: Mentions, ref: Ref, walk: Walk) -> bool:
    """ "back to that white one, next to 23-05": only where the plant gone back to stands."""
    if not walk.turns or walk.turns[-1].plant.kind is not PlantKind.UNNAMED:
        return False
    last, before = walk.turns[-1], mentions.talk.texts[max(0, ref.start - 2) : ref.start]
    near = last.said < ref.start <= last.said + _BY_REACH
    by = before[-1:] != () and (before[-1] in _BY or before == ("next", "to"))
    return near and by and last.rule.startswith("back to")


_FOUND_WITHIN = 24


def _number_found(mentions: Mentions, turn: Turn, leads: LeadIns, walk: Walk) -> bool:
    """ "This one's lost its label. No, here it is: 23-11": the plant without a number has one.

    Not "no label. Next is 23-11", nor where something was told of the plant before.
    """
    if turn.plant.number is None or len(walk.turns) < 1:
        return False
    last = walk.turns[-1]
    if last.plant.kind is not PlantKind.UNNAMED or len(walk.unnamed) < 1:
        return False
    first_seen = walk.unnamed[-1][0] == last.plant and last.rule.startswith("a plant said")
    if not first_seen or turn.said - last.said > _FOUND_WITHIN:
        return False
    moved = mentions.cue("movement", last.said + 1, turn.said + 1)
    return not moved and leads.told_before(turn.said) <= last.said + 1
