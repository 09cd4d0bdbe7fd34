"""Two plants that cannot be told apart: "you couldn't tell it from A", "beside A you'd be lost"."""

from collections.abc import Iterator

from diary.linking.likeness.likened import Likeness, operand_or_kin
from diary.linking.operands import Operand
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.tokens import QUERY, STOP


def inseparable(mentions: Mentions) -> Iterator[Likeness]:
    """ "you couldn't tell it from A", "hard to tell from A"; not "you can tell it from A"."""
    for cue in mentions.vocabulary.cues["inseparable"].find(mentions.talk.texts):
        operand, kin = operand_or_kin(mentions, cue.end)
        if operand is None or operand.start - cue.end > 2:
            continue
        yield Likeness(
            start=cue.start,
            end=operand.end,
            operand=operand,
            asserted=hardly(mentions, cue.start)
            and not mentions.scopes.habits(cue.start) & {Habit.REPORTED, Habit.WISH},
            score=0.9,
            kin=kin,
        )


def side_by_side(mentions: Mentions) -> Iterator[Likeness]:
    """ "put it beside A and you couldn't tell which was which"."""
    talk = mentions.talk
    for ref in mentions.refs:
        if talk.texts[ref.start - 1 : ref.start] not in _BESIDE and (
            talk.texts[ref.start - 2 : ref.start] not in (("next", "to"), ("side", "with"))
        ):
            continue
        lost = [
            c
            for c in mentions.cue("no_difference", ref.end, ref.end + 14)
            if hardly(mentions, c.start)
        ]
        alike = mentions.cue("two_alike", ref.end, ref.end + 9) or mentions.cue(
            "mixed_up", ref.end, ref.end + 14
        )
        for cue in lost or alike:
            if talk.between(ref.end - 1, cue.start, (STOP, QUERY)):
                continue
            yield Likeness(
                start=ref.start,
                end=ref.end,
                operand=Operand(
                    start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score
                ),
                asserted=Habit.REPORTED not in mentions.scopes.habits(ref.start),
                score=0.85,
            )


_BESIDE = tuple((w,) for w in ("beside", "against", "alongside", "by"))
_HARDLY_WITHIN = 9


def hardly(mentions: Mentions, at: int) -> bool:
    """Whether it is hard or impossible, in the words right before the token."""
    low = max(0, at - _HARDLY_WITHIN)
    return any(cue.end <= at for cue in mentions.cue("hardly", low, at))
