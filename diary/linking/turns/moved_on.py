"""Moving on to a plant that is given no number, and back to one by a word of its looks."""

from diary.linking.document import Plant
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.unnumbered import FAR_NUMBER, new_unnamed, told_soon
from diary.linking.turns.walk import UNSAID, Turn, Walk, telling_words
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions

_TOO_SOON = 4
_TOLD_OF = (("that", "'s"), ("that", "is"), ("that", "was"), ("it", "'s"), ("it", "is"))


def moved_on(
    mentions: Mentions, at: int, leads: LeadIns, taken: set[int], walk: Walk
) -> Turn | None:
    """ "its neighbour is much the same", "the one behind it": moved on, and no number given."""
    move = leads.move_at(at)
    if move is None or not move.plain or Habit.WISH in mentions.scopes.habits(at):
        return None
    if mentions.talk.texts[move.end : move.end + 1] in (("for",), ("to",), ("of",)):
        return None  # "another one for the show"
    if leads.compared(at) or told_soon(mentions, at, leads, taken, FAR_NUMBER):
        return None
    if not leads.before(at).at_head and mentions.talk.clause(at)[0] != at:
        return None
    if mentions.scopes.habits(at) & (UNSAID - {Habit.QUESTION}):
        return None
    if mentions.talk.texts[at] == "its" and mentions.talk.texts[max(0, at - 2) : at] in _TOLD_OF:
        return None
    if walk.turns and at - walk.turns[-1].said < _TOO_SOON:
        return None
    return Turn(
        at=leads.before(at).start,
        said=move.end - 1,
        plant=new_unnamed(walk),
        score=0.72,
        rule="moved on to a plant without giving its number",
    )


def came_back(mentions: Mentions, at: int, leads: LeadIns, walk: Walk) -> Turn | None:
    """ "back to the pink one": a plant shown before, pointed at by its looks."""
    found = mentions.cue("return", at, at + 1)[0]
    texts = mentions.talk.texts
    again = texts[found.end - 1] == "again"
    if not again and "back" not in texts[found.start : found.end]:
        return None
    rest = texts[found.start if again else found.end : found.end + 9]
    if (
        not rest
        or rest[0] not in ("the", "that", "my", "our", "this")
        or not (
            {"one", "plant", "fella", "fellow", "chap", "lady", "thing", "seedling"} & set(rest)
        )
    ):
        return None
    if any(r.is_number and r.cut is None for r in mentions.refs_in(found.end, found.end + 9)):
        return None
    telling = telling_words(tuple(rest))
    best: tuple[int, int, Plant] | None = None
    for n, (plant, described) in enumerate(walk.unnamed):
        score = len(telling & described)
        if score and (best is None or score > best[0]):
            best = (score, n, plant)
    if best is None:
        for plant, turn_at in walk.shown:
            score = len(telling & telling_words(mentions.talk.texts[turn_at : turn_at + 40]))
            if score and plant != walk.current and (best is None or score >= best[0]):
                best = (score, 0, plant)
    if best is None:
        return None
    return Turn(
        at=leads.before(at).start,
        said=found.end,
        plant=best[2],
        score=0.75,
        rule="back to a plant by its looks",
    )
