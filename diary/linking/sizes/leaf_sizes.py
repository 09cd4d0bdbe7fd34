"""Whether a leaf spoken of a while before is what a length measures.

"The leaf's small. A centimetre across", "the leaf is cut like parsley and it's five centimetres
wide"; not "the leaf is cut. Two inches across", which is the flower's.
"""

from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

MEASURING = frozenset(
    "measure measured measuring ruler rule tape calipers callipers gauge width across size".split()
)
_SIZED = frozenset(
    "small smaller big bigger large larger tiny little wide wider broad broader narrow huge neat "
    "great massive enormous biggest largest broadest widest smallest size sized long".split()
)
_WIDE, _TALL = frozenset({"wide", "broad", "width"}), frozenset({"tall", "high"})
_AFTER, _BESIDE = 7, 3


def leaf_is_sized(mentions: Mentions, leaf: Found, at: int) -> bool:
    """Whether the leaf was told of by its size, or the length at `at` is said to be wide."""
    talk = mentions.talk
    low = talk.sentence(leaf.start)[0] if talk.punctuated else leaf.start - 4
    said = set(talk.texts[max(0, low) : at])
    return bool((_SIZED | MEASURING) & said) or _said_after(mentions, at, _WIDE)


def leaf_left_behind(mentions: Mentions, noun: Found, at: int) -> bool:
    """ "leaf deeply cut and bronze | two inches across": captions have gone on to the flower."""
    if mentions.talk.punctuated or noun.label != "leaf" or at - noun.end <= _BESIDE:
        return False
    return not leaf_is_sized(mentions, noun, at) and not _said_after(mentions, at, _TALL)


def _said_after(mentions: Mentions, at: int, words: frozenset[str]) -> bool:
    return bool(words & set(mentions.talk.texts[at : at + _AFTER]))
