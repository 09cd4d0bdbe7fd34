"""The places of a talk at which it may turn to another plant, in order."""

from dataclasses import dataclass
from enum import Enum

from diary.linking.turns.by_looks import Pointing, pointings
from diary.linking.turns.nicknames import Nickname, nicknames_again
from diary.linking.turns.no_label import label_losses
from diary.linking.turns.placed import shown_in_place
from diary.reading.mentions import Mentions, Ref


class EventKind(Enum):
    """What stands at the place, in the order in which it is heard."""

    PLANT = 0  # a number or a name
    LABEL = 1  # a label said to be missing
    MOVEMENT = 2  # "the one behind it"
    RETURN = 3  # "back to"
    LOOKS = 4  # "the pink one"
    NICKNAME = 5
    PLACE = 6  # "down at your feet there's a"


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """Something at token `at` that may turn the talk, with what was heard there."""

    at: int
    kind: EventKind
    ref: Ref | None = None
    pointing: Pointing | None = None
    nickname: Nickname | None = None
    placed_from: int = 0  # where the words begin that tell the place


def events(mentions: Mentions) -> list[Event]:
    """All events of the talk, in order."""
    found = [Event(at=r.start, kind=EventKind.PLANT, ref=r) for r in mentions.refs]
    found += [Event(at=at, kind=EventKind.LABEL) for at in label_losses(mentions)]
    for cue, kind in (("movement", EventKind.MOVEMENT), ("return", EventKind.RETURN)):
        found += [Event(at=f.start, kind=kind) for f in mentions.cue(cue)]
    found += [Event(at=p.start, kind=EventKind.LOOKS, pointing=p) for p in pointings(mentions)]
    found += [
        Event(at=n.start, kind=EventKind.NICKNAME, nickname=n) for n in nicknames_again(mentions)
    ]
    found += [
        Event(at=at, kind=EventKind.PLACE, placed_from=start)
        for at, start in shown_in_place(mentions).items()
    ]
    return sorted(found, key=lambda e: (e.at, e.kind.value))
