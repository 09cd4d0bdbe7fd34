"""Where the speaker turns to another plant, and to which.

A number turns the talk when it is brought in ("this is", "next is", "back to", at the head
of a sentence); a name only when it is plainly shown ("behind it is Lady Pellingate"); a
plant without a number when the speaker says so, or moves on without giving one. A
comparison, a parent, a guess or a denial ("not twenty-three forty") turns nothing.
"""

from dataclasses import replace

from diary.linking.document import PlantKind
from diary.linking.lead_ins import lead_ins
from diary.linking.likeness import Likeness
from diary.linking.numbered import named_turn, numbered_turn
from diary.linking.statement import Statement
from diary.linking.unnumbered import came_back, moved_on, unlabelled
from diary.linking.walk import Turn, Walk, telling_words
from diary.reading.mentions import Mentions, Ref
from diary.reading.scope import cues

_FIRST_WORDS = 60


def find_turns(
    mentions: Mentions, parents: tuple[Statement, ...], likenesses: tuple[Likeness, ...]
) -> tuple[Turn, ...]:
    """All turns in order; the first clip begins at the first of them."""
    leads = lead_ins(mentions)
    taken = {i for s in parents for i in range(s.start, s.end)}
    taken |= {i for x in likenesses for i in range(x.operand.start, x.operand.end)}
    walk = Walk()
    events: list[tuple[int, int, Ref | None]] = [(r.start, 0, r) for r in mentions.refs]
    events += [(f.start, 1, None) for f in cues(mentions.talk, mentions.vocabulary, "unlabelled")]
    events += [(m.start, 2, None) for m in leads.moves]
    events += [(r.start, 3, None) for r in leads.returns]
    for at, kind, ref in sorted(events, key=lambda e: (e[0], e[1])):
        if walk.turns and at <= walk.turns[-1].said and kind:
            continue
        turn = None
        if ref is not None and ref.is_number:
            turn = numbered_turn(mentions, ref, leads, taken, parents, walk)
        elif ref is not None:
            turn = named_turn(mentions, ref, leads, taken)
        elif kind == 1:
            turn = unlabelled(mentions, at, leads, walk)
        elif kind == 2:
            turn = moved_on(mentions, at, leads, taken, walk)
        else:
            turn = came_back(mentions, at, leads, walk)
        if turn is None or walk.current == turn.plant:
            continue
        if walk.turns and turn.at <= walk.turns[-1].said:
            turn = replace(turn, at=min(walk.turns[-1].said + 1, turn.said))
        _remember(mentions, turn, walk)
    return walk.turns


def _remember(mentions: Mentions, turn: Turn, walk: Walk) -> None:
    walk.turns = (*walk.turns, turn)
    walk.current = turn.plant
    walk.shown = (*walk.shown, (turn.plant, turn.at))
    if turn.plant.number:
        walk.numbers = (*walk.numbers, turn.plant.number)
    if turn.plant.kind is PlantKind.UNNAMED and all(p != turn.plant for p, _ in walk.unnamed):
        words = telling_words(mentions.talk.texts[turn.at : turn.at + _FIRST_WORDS])
        walk.unnamed = (*walk.unnamed, (turn.plant, words))
