"""Where the speaker turns to another plant, and to which.

A number turns the talk when it is brought in ("this is", "next is", "back to", at the head
of a sentence); a name only when it is plainly shown ("behind it is Lady Pellingate"); a
plant without a number when the speaker says so, or moves on without giving one. A
comparison, a parent, a guess or a denial ("not twenty-three forty") turns nothing.
"""

from collections.abc import Sequence
from dataclasses import replace

from diary.linking.document import PlantKind
from diary.linking.likeness.likened import Likeness
from diary.linking.statement import Statement
from diary.linking.turns.by_looks import back_by_looks, pointings
from diary.linking.turns.corrected import corrected
from diary.linking.turns.kin_told_apart import kin_told_apart
from diary.linking.turns.lead_ins import LeadIns, lead_ins
from diary.linking.turns.moved_on import came_back, moved_on
from diary.linking.turns.named import named_turn
from diary.linking.turns.nicknames import back_by_nickname, nicknames_again
from diary.linking.turns.no_label import label_losses
from diary.linking.turns.numbered import numbered_turn
from diary.linking.turns.placed import shown_in_place, stands_there
from diary.linking.turns.unnumbered import unlabelled
from diary.linking.turns.walk import Turn, Walk, telling_words
from diary.reading.mentions import Mentions, Ref

_FIRST_WORDS = 60


def find_turns(
    mentions: Mentions,
    parents: tuple[Statement, ...],
    likenesses: tuple[Likeness, ...],
    statement_ends: Sequence[int],
) -> tuple[Turn, ...]:
    """All turns in order; the first clip begins at the first of them."""
    leads = lead_ins(mentions, statement_ends)
    taken = {i for s in parents for i in range(s.start, s.end)}
    taken |= {
        i
        for x in likenesses
        if x.operand.start - x.start <= _LIKENED_REACH
        for i in range(x.operand.start, x.operand.end)
    }
    walk = Walk()
    events: list[tuple[int, int, Ref | None]] = [(r.start, 0, r) for r in mentions.refs]
    events += [(at, 1, None) for at in label_losses(mentions)]
    events += [(m.start, 2, None) for m in mentions.cue("movement")]
    events += [(r.start, 3, None) for r in mentions.cue("return")]
    passed: Ref | None = None
    pointed = {p.start: p for p in pointings(mentions)}
    events += [(start, 4, None) for start in pointed]
    nicknames = {n.start: n for n in nicknames_again(mentions)}
    events += [(start, 5, None) for start in nicknames]
    placed = shown_in_place(mentions)
    events += [(at, 6, None) for at in placed]
    numbered_to = 0
    for at, kind, ref in sorted(events, key=lambda e: (e[0], e[1])):
        if walk.turns and at <= walk.turns[-1].said and kind:
            continue
        if kind in (2, 6) and at == numbered_to:
            continue  # "29-02 next to it is a sport": its own place
        turn = None
        if ref is not None and corrected(mentions, ref, leads, taken, walk):
            continue
        if ref is not None and _again_in_passing(mentions, ref, passed):
            continue
        if ref is not None and walk.turns and kin_told_apart(mentions, ref):
            continue
        if ref is not None and _where_it_stands(mentions, ref, walk):
            continue
        if ref is not None and ref.is_number:
            turn = numbered_turn(mentions, ref, leads, taken, parents, walk)
        elif ref is not None:
            turn = named_turn(mentions, ref, leads, taken)
        elif kind == 1:
            turn = unlabelled(mentions, at, leads, taken, walk)
        elif kind == 2:
            turn = moved_on(mentions, at, leads, taken, walk)
        elif kind == 3:
            turn = came_back(mentions, at, leads, walk)
        elif kind == 5:
            turn = back_by_nickname(mentions, nicknames[at], walk)
        elif kind == 6:
            turn = stands_there(mentions, at, placed[at], leads, taken, walk)
        else:
            turn = back_by_looks(mentions, pointed[at], leads, walk)
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
        _remember(mentions, turn, walk)
    return walk.turns


def _past(mentions: Mentions, said: int) -> int:
    """The token after the written word in which a plant is told ("two-two-six" is one)."""
    tokens, i = mentions.talk.tokens, said + 1
    while i < len(tokens) and tokens[i].word == tokens[said].word:
        i += 1
    return i


_LIKENED_REACH = 7
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


def _remember(mentions: Mentions, turn: Turn, walk: Walk) -> None:
    walk.turns = (*walk.turns, turn)
    walk.current = turn.plant
    walk.shown = (*walk.shown, (turn.plant, turn.at))
    if turn.plant.number:
        walk.numbers = (*walk.numbers, turn.plant.number)
    if turn.plant.kind is PlantKind.UNNAMED and all(p != turn.plant for p, _ in walk.unnamed):
        words = telling_words(mentions.talk.texts[turn.at : turn.at + _FIRST_WORDS])
        walk.unnamed = (*walk.unnamed, (turn.plant, words))
