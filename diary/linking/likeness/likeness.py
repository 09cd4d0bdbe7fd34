"""Likeness to another plant, where it is asserted.

"very like twenty-three oh six", "a dead ringer for C", "Candle Wharf all over again", "you
couldn't tell it from its mother". Leaves alone "nothing like it", what other people say,
and "bigger than that one".
"""

from collections.abc import Iterator

from diary.linking.likeness.after_name import over_again
from diary.linking.likeness.alike import alike
from diary.linking.likeness.apart import inseparable, side_by_side
from diary.linking.likeness.asserted import denied_just_before, unsaid
from diary.linking.likeness.like import like
from diary.linking.likeness.likened import OWN, Likeness, operand_or_kin
from diary.reading.mentions import Mentions


def find_likenesses(mentions: Mentions) -> tuple[Likeness, ...]:
    """Every likeness spoken of, asserted or not, in order."""
    found = [
        *inseparable(mentions),
        *side_by_side(mentions),
        *like(mentions),
        *over_again(mentions),
        *_seen_alike(mentions),
        *_kin_it_is_like(mentions),
    ]
    kept: dict[int, Likeness] = {}
    for likeness in sorted(found, key=lambda x: (x.operand.start, -x.asserted, x.start)):
        kept.setdefault(likeness.operand.start, likeness)
    return tuple(sorted(kept.values(), key=lambda x: x.start))


def _kin_it_is_like(mentions: Mentions) -> Iterator[Likeness]:
    """ "it's her mother she's like"; not "it's her mother that died"."""
    texts = mentions.talk.texts
    for cue in mentions.cue("like_it"):
        at = cue.start - 2
        if at < 1 or texts[at - 1] not in ("is", "'s", "was") or texts[at] not in OWN:
            continue
        operand, kin = operand_or_kin(mentions, at)
        if kin is not None and operand is not None:
            yield Likeness(
                start=at,
                end=cue.end,
                operand=operand,
                asserted=not unsaid(mentions, at, cue.end, cue.end),
                score=0.88,
                kin=kin,
            )


def _seen_alike(mentions: Mentions) -> Iterator[Likeness]:
    """ "she and A are twins", "a strong look of A about it", "it's A she's like"."""
    for x in alike(mentions):
        yield Likeness(
            start=x.start,
            end=x.end,
            operand=x.operand,
            asserted=not unsaid(mentions, x.start, x.end, x.end)
            and not denied_just_before(mentions, x.start),
            score=0.88,
        )
