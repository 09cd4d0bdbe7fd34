"""Numbers that are amounts: followed by a unit, a fraction or the thing counted.

"31 degrees", "fourteen buds", "4 and a half"; not "number 4 seeds well".
"""

from diary.reading.numbers.pieces import LETTER_NAMES
from diary.reading.numerals import quantity
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_MEASURED = (("tall",), ("wide",), ("across",), ("high",))
_BITS = frozenset("half quarter bit third touch fraction little smidgen smidge".split())


def counted_or_measured(talk: Talk, start: int, end: int, vocabulary: Vocabulary) -> bool:
    """Whether the words after make it an amount: "31 degrees", "fourteen buds", "4 and a half"."""
    texts = talk.texts
    if talk.between(end - 1, end, (".", ",", "?")):
        return False
    if texts[end : end + 1] == ("c",) and _lettered(texts, start, end):
        return False  # "34 b 3 c was the mother", no degrees
    if vocabulary.units.at(texts, end):
        return True
    amount = quantity(texts, start)
    if amount is not None and amount.end < end and texts[end - 1].startswith("0"):
        return False  # "23 04 heads about the size of an orange"
    if vocabulary.other_units.at(texts, end) or texts[end : end + 1] in _MEASURED:
        return True
    rest = texts[end : end + 3]
    if (
        (rest[:2] == ("and", "a") and rest[2:] != () and rest[2] in _BITS)
        or rest[:1] in (("hundred",), ("hundreds",))
        or rest[:1] == ("of",)
    ):
        return True
    if rest[:1] == ("and",) and len(rest) > 1 and (rest[1] in ("half", "quarter")):
        return True
    counted = vocabulary.counted.at(texts, end) or (
        end + 1 < len(texts)
        and any(texts[end] in words for words in vocabulary.between.values())
        and vocabulary.counted.at(texts, end + 1)
    )
    if counted and _lettered(texts, start, end) and not texts[end].endswith("s"):
        return False  # "34 f 20 slip copper was the mother"
    return bool(counted) and texts[start - 1 : start] != ("number",)


def _lettered(texts: tuple[str, ...], start: int, end: int) -> bool:
    """Whether a letter stands before the last digits."""
    return any(
        (len(text) == 1 and text.isalpha()) or text in LETTER_NAMES
        for text in texts[start : end - 1]
    )
