"""Where a speaker begins anew inside talk that runs on: "I might, I'll see how it does".

What stood before such a beginning ("might", "nearly", "no more than that") says nothing of
what comes after it.
"""

from diary.reading.tokens import Talk

_SPEAKER = frozenset({"i", "we"})
_SPOKEN_OF = frozenset({"it", "she", "he", "that", "this", "they", "you"})
_FIRM = frozenset("'m am 're are 'll will shall 've have must".split())
_FIRM_OF_IT = frozenset("'s 're is 'll will shall goes stays gets".split())
# "I thought I'll keep it", "maybe I'll keep it", "if I'm keeping it": no beginning of its own.
_HELD_BY = frozenset(
    "said say says thought think thinks swore promised told wish if whether when unless that what "
    "which who as than like because till until thinking saying hoping maybe perhaps wondered "
    "wonder mind suppose".split()
)
_JOINTS = frozenset({"and", "but", "so", "well", "then", "no", "now"})


def begins_anew(talk: Talk, low: int, high: int) -> int | None:
    """Where the speaker last begins anew in tokens low..high-1, if he does.

    Catches "i was going to bin it | i'm keeping it"; leaves "i nearly did bin it".
    """
    texts = talk.texts
    for i in range(high - 1, max(low, 1) - 1, -1):
        after = texts[i + 1 : i + 2]
        if not after or texts[i - 1] in _HELD_BY:
            continue
        joined = not talk.punctuated or texts[i - 1] in _JOINTS or bool(talk.tokens[i - 1].mark)
        if texts[i] in _SPEAKER and after[0] in _FIRM:
            return i
        if joined and texts[i] in _SPOKEN_OF and after[0] in _FIRM_OF_IT:
            return i
    return None
