"""Where a figure is taken back: by words of repair, or by owning to a slip of eye or rule.

"No, thirty-eight", "I'm reading the wrong side of the rule, she's thirty-eight", "well I'm
flattering it, fifteen and a half"; not the "no" of "no blotch".
"""

from diary.linking.second_thoughts import repairs_in
from diary.reading.lengths import Length
from diary.reading.mentions import Mentions


def mends_in(mentions: Mentions, start: int, end: int) -> list[tuple[int, int]]:
    """The spans of such words in a stretch of tokens, in order."""
    slips = mentions.vocabulary.slips.find(mentions.talk.texts, start, end)
    return sorted({*repairs_in(mentions, start, end), *((f.start, f.end) for f in slips)})


def told_otherwise(mentions: Mentions, told: Length, at: int) -> bool:
    """ "I gave the stems as twenty, and they're sixteen", "he had her at six and it's five".

    The first was said, by whomever; what it is comes after "and" or "but".
    """
    talk = mentions.talk
    low = max(talk.sentence(told.start)[0], told.start - _TOLD_BEFORE)
    lead = talk.texts[low : told.start]
    then = talk.texts[told.end : at]
    is_now = then[-1:] in _BE or then[-2:-1] in _BE or then[-3:-2] in _BE
    return (
        bool(_TOLD & set(lead))
        and bool({"and", "but"} & set(then))
        and is_now
        and (lead[-1:] in _AS or lead[-2:-1] in _AS)
    )


_TOLD_BEFORE = 8
_TOLD = frozenset("gave said told had put called made reckoned wrote guessed thought".split())
_BE = (("is",), ("'s",), ("are",), ("'re",), ("was",))
_AS = (("as",), ("at",), ("down",), ("about",), ("were",), ("was",), ("it",), ("you",))
