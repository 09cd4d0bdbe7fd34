"""Sentences that end the walk, or a stretch of it: what follows is about no plant.

"That's the whole gang", "that's seven pots looked at", "I'd better get on". Leaves alone "that's
the best of them", "I'd better get it into a bigger pot".
"""

from collections.abc import Iterator

from diary.linking.asides import IS, LEADS, OF_PLANTS
from diary.reading.mentions import Mentions
from diary.reading.tokens import Talk

_VOCATIVES = frozenset(
    "folks everybody everyone all now then today friends people you so for folk mate ladies gents "
    "this week morning afternoon evening think reckon i believe suppose".split()
)


def endings(mentions: Mentions, told: int) -> Iterator[int]:
    """Where leave is taken: "I'd better get on", "we'll leave it at that."; not "leave it there".

    `told` is the last token at which a look, a size or a plant is told: where no sentence is
    marked, leave is taken after it.
    """
    talk = mentions.talk
    for found in mentions.cue("ending"):
        if "with" not in talk.texts[found.end : found.end + 3]:
            yield found.start  # not "that's me finished with it"
    for found in mentions.cue("ending_alone"):
        start, end = talk.sentence(found.start)
        if not talk.punctuated and found.start > told and found.end - found.start > 1:
            yield found.start
            continue
        rest = (*talk.texts[start : found.start], *talk.texts[found.end : end])
        if set(rest) <= LEADS | _VOCATIVES:
            yield found.start


_ALL = frozenset("me us them everybody everyone all lot end wrap whole yours finis full".split())
_STRETCHES = frozenset(
    "row rows bench benches field shelf shelves house frame side tray trays gang bunch family "
    "bed beds staging border crew tour walk wall top bottom collection tunnel tier table rack "
    "half hour minutes battery light daylight lads regals zonals ivies uniques scenteds angels "
    "stellars".split()
)
_DONE = frozenset(
    "done finished over seen looked written sorted through up complete completed gone filled "
    "wrapped told shown dealt visited ticked counted measured in".split()
)
_COUNTED = frozenset(
    "one two three four five six seven eight nine ten eleven twelve dozen thirteen fourteen "
    "fifteen sixteen twenty thirty forty fifty".split()
)
_POTS = frozenset(
    "pots plants of seedlings looked done baskets bulbs fans clumps on off in".split()
)
_MAKES_END = frozenset("completes concludes ends finishes wraps brings rounds".split())


def leave_taken(talk: Talk, at: int) -> int:
    """Where the words begin that lead up to taking leave: "right then, I'd better get on"."""
    while at > 0 and talk.texts[at - 1] in LEADS:
        at -= 1
    return at


_HAVE_IT = frozenset("you yous ye we".split())


def wraps_up(talk: Talk, start: int, end: int) -> bool:
    """Whether the sentence says that the walk, or a stretch of it, is at its end."""
    texts = talk.texts
    i = start
    while i < end and texts[i] in LEADS:
        i += 1
    if i > start and texts[i - 1] == "there" and texts[i] in _HAVE_IT and i + 2 < end:
        i += 2  # "so there you are, that's the whole of it"
        while i < end and texts[i] in LEADS:
            i += 1
    words = texts[i : min(i + 10, end)]
    if words[:1] != ("that",) or len(words) < 2:
        return words[:1] in (("end",), ("entry",), ("total",)) and len(words) < 8
    if words[1] in _MAKES_END:
        return True
    if words[1] not in IS:
        return False
    rest = tuple(w for w in words[2:] if w not in ("then", "about", "be", "just", "nearly", "only"))
    if "with" in rest[:4]:
        return False  # "that's me finished with it"
    if rest[:1] == () or _MEASURED & set(rest[:4]):
        return False
    if rest[0] == "all":
        return rest[1:2] == () or rest[1] in ("i", "for", "folks", "we", "of", "from", "there")
    if rest[:2] == ("the", "whole") and rest[2:3] in (("of",), ("lot",), ("thing",), ()):
        return True
    if rest[0] in _ALL or (
        rest[0] in ("the", "your", "my", "both") and rest[1:2] != () and rest[1] in _ALL
    ):
        return True
    if rest[0] in _COUNTED or rest[0].isdecimal():
        return rest[1:2] != () and rest[1] in _POTS
    named = bool(_STRETCHES & set(rest[1:4])) and not OF_PLANTS & set(rest[1:3])
    finished = bool(_DONE & set(rest[1:7])) and not OF_PLANTS & set(rest[1:4])
    return rest[0] in ("the", "this", "both", "my", "our", "half", "your") and (named or finished)


_MEASURED = frozenset(
    "centimetres centimetre inches inch millimetres mil cm mm across wide tall high heads buds "
    "shoots years weeks months".split()
)
