"""Where a figure is taken back: by words of repair, or by owning to a slip of eye or rule.

"No, thirty-eight", "I'm reading the wrong side of the rule, she's thirty-eight", "well I'm
flattering it, fifteen and a half"; not the "no" of "no blotch".
"""

from diary.linking.second_thoughts import repairs_in
from diary.reading.mentions import Mentions


def mends_in(mentions: Mentions, start: int, end: int) -> list[tuple[int, int]]:
    """The spans of such words in a stretch of tokens, in order."""
    slips = mentions.vocabulary.slips.find(mentions.talk.texts, start, end)
    return sorted({*repairs_in(mentions, start, end), *((f.start, f.end) for f in slips)})
