"""Lengths that are a pot's: "in a six inch", "it wants a bigger pot, this one is nine centimetres".

Leaves alone "it wants a bigger pot. The flower is five centimetres" and "a five-inch flower".
"""

from diary.reading.lengths import Length
from diary.reading.mentions import Mentions

_FOR_A_PLANT = tuple(("for", w) for w in ("you", "it", "him", "her", "this", "that"))
_DETERMINERS = ("a", "an", "its", "my", "that", "this", "the", "her", "his", "another")
_SMALL = ("wee", "little", "small", "big", "tiny", "plastic", "clay", "old", "poor", "mere", "good")
_INTO = ("in", "into", "to", "still", "on", "of", "out", "from", "inside", "outgrown", "filling")
_POTS = frozenset(
    "pot pots potted potting repot repotted repotting rootbound pan planter container".split()
)
_WITHIN = 14
_ONES = frozenset(
    "one it that this its the present old current new last a is 's was only of".split()
)


def is_pot(mentions: Mentions, length: Length) -> bool:
    """ "it's only in a six inch", "still in a nine centimetre": the pot is not said."""
    texts = mentions.talk.texts
    i = length.start
    while i > 0 and length.start - i < 3 and texts[i - 1] in _SMALL:
        i -= 1
    if not length.singular or i < 1 or texts[i - 1] not in _DETERMINERS:
        return _the_present_one(mentions, length)
    given = texts[length.end : length.end + 2] in _FOR_A_PLANT  # "so a five-inch for you"
    return (i > 1 and texts[i - 2] in _INTO) or given or _pots_just_told_of(mentions, i)


def _pots_just_told_of(mentions: Mentions, at: int) -> bool:
    """ "bursting its pot. A five-inch tonight": a pot was named, and no part of a plant since."""
    texts = mentions.talk.texts
    for i in range(at - 1, max(0, at - _WITHIN) - 1, -1):
        if texts[i] in _POTS:
            return not mentions.vocabulary.subjects.find(texts, i + 1, at)
    return False


def _the_present_one(mentions: Mentions, length: Length) -> bool:
    """ "it needs a bigger pot; the present one is nine centimetres"."""
    talk = mentions.talk
    i = length.start
    while i > 0 and length.start - i < 6 and talk.texts[i - 1] in _ONES:
        i -= 1
    if "one" not in talk.texts[i : length.start]:
        return False
    return talk.texts[i - 1 : i] == ("pot",) or _pots_just_told_of(mentions, i)
