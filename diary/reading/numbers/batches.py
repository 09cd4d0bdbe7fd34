"""A year's batch and a place in it: "the twenty-threes", "the 2024 sowing", "one-oh-four".

A batch is told by its year alone, in figures or words, as a plural ("the 23s") or beside a word
for what was sown together ("the twenty-four lot"). Leaves alone plain amounts ("the 23 pots").
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from diary.reading.numbers.pieces import ZERO
from diary.reading.numerals import ONES, TENS, whole

SOWN_TOGETHER = frozenset(
    "lot batch batches sowing sowings sown crop crosses crowd bunch year seedlings series set "
    "gang tray trays crew litter class season vintage family generation intake kids babies".split()
)
_PLURAL_TENS = {f"{word[:-1]}ies": tens for word, tens in TENS.items()}
_PLURAL_ONES = {f"{word}s": n for word, n in ONES.items() if 0 < n < 20} | {
    "sixes": 6,
    "elevens": 11,
    "twelves": 12,
}
_WRITTEN = re.compile(r"(?:[a-z]{1,2}(?=\d+s$))?'?(\d{2}|\d{4})(s?)")
_OWNED = frozenset("the those these my our that this your last of".split())


@dataclass(frozen=True, slots=True)
class Batch:
    """A year said of a batch at tokens start..end-1; `plain` with no plural and no noun."""

    start: int
    end: int
    year: str
    plain: bool


def batch_at(texts: Sequence[str], at: int) -> Batch | None:
    """ "23s", "the twenty-threes", "2024 sowing", "two thousand and twenty-four"."""
    start = at
    while at < len(texts) and texts[at] in ("the", "those", "our", "my", "that", "year"):
        at += 1
    told = _year(texts, at)
    if told is None:
        return None
    year, end, plural = told
    if texts[end : end + 1] == ("'s",):
        end, plural = end + 1, True
    noun = texts[end : end + 1] != () and texts[end] in SOWN_TOGETHER
    return Batch(start, end + noun, year, not plural and not noun)


def _year(texts: Sequence[str], at: int) -> tuple[str, int, bool] | None:
    """The year's digits, where it ends and whether it is a plural."""
    if at >= len(texts):
        return None
    if written := _WRITTEN.fullmatch(texts[at]):
        return written[1], at + 1, bool(written[2])
    if texts[at] == "two" and tuple(texts[at + 1 : at + 2]) == ("thousand",):
        at += 3 if tuple(texts[at + 2 : at + 3]) == ("and",) else 2
        inner = _year(texts, at)
        return (f"20{inner[0]}", *inner[1:]) if inner and len(inner[0]) == 2 else None
    text, after = texts[at], texts[at + 1] if at + 1 < len(texts) else ""
    if text == "twenty" and (after in TENS or after in _PLURAL_TENS or ONES.get(after, 0) >= 10):
        inner = _year(texts, at + 1)
        return (f"20{inner[0]}", *inner[1:]) if inner else None
    if text in TENS:
        if 0 < ONES.get(after, 0) < 10:
            return str(TENS[text] + ONES[after]), at + 2, False
        if 0 < _PLURAL_ONES.get(after, 0) < 10:
            return str(TENS[text] + _PLURAL_ONES[after]), at + 2, True
        return str(TENS[text]), at + 1, False
    if text in _PLURAL_TENS:
        return str(_PLURAL_TENS[text]), at + 1, True
    if _PLURAL_ONES.get(text, 0) >= 10:
        return str(_PLURAL_ONES[text]), at + 1, True
    if ONES.get(text, 0) >= 10:
        return str(ONES[text]), at + 1, False
    return None


_LETTERED = re.compile(r"([a-z]{1,2})(\d{2})")


def lettered_at(texts: Sequence[str], at: int) -> tuple[str, Batch] | None:
    """Letters and the year written with them: "a P24, number nine"."""
    written = _LETTERED.fullmatch(texts[at]) if at < len(texts) else None
    return (written[1], Batch(at, at + 1, written[2], True)) if written else None


def batch_named(texts: Sequence[str], start: int, end: int) -> Batch | None:
    """The last batch told plainly within the tokens: "the twenty-fives", "the 2023 sowing"."""
    for i in range(end - 1, start - 1, -1):
        if texts[i] not in _OWNED:
            continue
        found = batch_at(texts, i + 1 if texts[i] in ("this", "your", "last", "of") else i)
        if found is not None and not found.plain and found.end <= end:
            return found
    return None


_LETTER_PLURALS = {
    "bees": "b", "sees": "c", "seas": "c", "dees": "d", "effs": "f", "gees": "g", "jays": "j",
    "kays": "k", "ells": "l", "ems": "m", "ens": "n", "pees": "p", "peas": "p", "cues": "q",
    "queues": "q", "ars": "r", "arrs": "r", "esses": "s", "tees": "t", "teas": "t", "vees": "v",
    "exes": "x", "zeds": "z", "zees": "z", "aitches": "h",
}  # fmt: skip
_LETTERS_PLURAL = re.compile(r"([a-z]{1,2})'?s")


def letters_at(texts: Sequence[str], at: int) -> tuple[str, int] | None:
    """The letter of a batch and its end: "tees", "hs", "b 's"; it has to be one in use."""
    if at >= len(texts):
        return None
    if texts[at] in _LETTER_PLURALS:
        return _LETTER_PLURALS[texts[at]], at + 1
    if len(texts[at]) < 3 and tuple(texts[at + 1 : at + 2]) == ("'s",):
        return texts[at], at + 2
    written = _LETTERS_PLURAL.fullmatch(texts[at])
    return (written[1], at + 1) if written else None


def _doubled(texts: Sequence[str], at: int) -> tuple[str, int] | None:
    """ "double oh", "double three" and their end."""
    after = texts[at + 1] if at + 1 < len(texts) else ""
    digit = "0" if after in ZERO else str(ONES.get(after, after))
    return (digit * 2, at + 2) if len(digit) == 1 and digit.isdecimal() else None


def serial_at(texts: Sequence[str], at: int) -> tuple[str, int] | None:
    """A place in a batch and its end: "nine", "oh nine", "one-oh-four", "one nineteen"."""
    if at >= len(texts):
        return None
    if texts[at] in ZERO:
        inner = serial_at(texts, at + 1) if texts[at + 1 : at + 2] != () else None
        return (f"0{inner[0]}", inner[1]) if inner and len(inner[0]) == 1 else None
    digits, end = "", at
    while end < len(texts) and len(digits) < 3:
        if texts[end] in ZERO and digits:
            step: tuple[str, int] | None = ("0", end + 1)
        elif texts[end] == "double":
            step = _doubled(texts, end)
        else:
            amount = whole(texts, end)
            step = (str(int(amount.value)), amount.end) if amount else None
        if step is None or len(digits) + len(step[0]) > 3:
            break
        digits, end = digits + step[0], step[1]
    return (digits, end) if digits else None
