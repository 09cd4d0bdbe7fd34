"""The pieces of a spoken number: digits, separators and letters, homophones among them."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from diary.reading.numerals import ONES, TENS, whole
from diary.reading.tokens import Talk

ZERO = frozenset("oh o zero nought naught ought".split())


SEPARATORS = frozenset("dash hyphen slash stroke dot point oblique minus".split())


LETTER_NAMES = {
    "bee": "b",
    "be": "b",
    "see": "c",
    "sea": "c",
    "dee": "d",
    "gee": "g",
    "jay": "j",
    "kay": "k",
    "ess": "s",
    "eff": "f",
    "em": "m",
    "en": "n",
    "tee": "t",
    "aitch": "h",
    "pee": "p",
    "ay": "a",
    "ar": "r",
    "cee": "c",
    "es": "s",
    "ef": "f",
    "el": "l",
    "ell": "l",
    "ex": "x",
    "zed": "z",
    "zee": "z",
    "vee": "v",
    "cue": "q",
    "queue": "q",
    "tea": "t",
    "pea": "p",
}
_TEENS = {"thir": 13, "for": 14, "four": 14, "fif": 15, "six": 16, "seven": 17} | {
    "ate": 18, "eight": 18, "nine": 19,
}  # fmt: skip
_TIES = {"twen": 20, "thir": 30, "for": 40, "four": 40, "fif": 50, "six": 60, "seven": 70} | {
    "eight": 80, "ate": 80, "nine": 90,
}  # fmt: skip


_HOMOPHONES = {"for": "4", "fore": "4", "to": "2", "too": "2", "won": "1", "ate": "8"}


_TOKEN = re.compile(
    r"^(?:[a-z]{1,3}[-/.]?)?\d+(?:[-/.]\d+)*(?:[-/.]?[a-rt-z])?$|^\d+[-/.]?[a-z]{1,2}[-/.]?\d+$"
)


_PIECE = re.compile(r"[a-z]+|\d+|[-/.]")


_ORDINAL = re.compile(r"^\d+(st|nd|rd|th|s)$")


_MOST_PIECES = 9


@dataclass(frozen=True, slots=True)
class Piece:
    kind: str  # "digits", "split" (written digits that may be taken apart), "sep", "letter"
    text: str
    end: int
    guess: bool = False  # a homophone


# Letters by name that begin no ordinary words of talk: "bee nineteen" is B19, "be six" nothing.
_PREFIX_NAMES = frozenset(
    "bee dee gee jay kay ess eff em en tee tea aitch pee pea cee es ef el ell ex zed zee vee "
    "cue ar".split()
)


# Ordinary words that sound like a letter: they begin a number only where numbers begin so.
ORDINARY_LETTERS = {
    "see": "c", "sea": "c", "be": "b", "are": "r", "our": "r", "you": "u", "why": "y", "age": "h",
    "hate": "h", "elle": "l", "hell": "l", "am": "m", "eggs": "x", "said": "z", "we": "v",
    "fee": "v", "he": "e", "if": "f", "okay": "k", "ok": "k",
}  # fmt: skip


_OPENS_NOUN = frozenset("the a an it him her them this that its his my our be show".split())


def _teen_apart(texts: tuple[str, ...], at: int) -> int | None:
    """ "for teen", "six ty": a number heard as two words."""
    after = texts[at + 1 : at + 2]
    if after in (("teen",), ("teens",)):
        return _TEENS.get(texts[at])
    return _TIES.get(texts[at]) if after in (("ty",), ("tea",)) else None


_DIGITS = tuple((word,) for word in (*ONES, *ZERO))


def _tens_spelt(texts: tuple[str, ...], at: int) -> bool:
    """ "ninety nine zero": the tens, and then their two digits again."""
    ones, zero = texts[at + 1 : at + 2], texts[at + 2 : at + 3]
    if not ones or not zero or zero[0] not in ZERO or texts[at + 3 : at + 4] in _DIGITS:
        return False  # "twenty two oh nine"
    return TENS.get(texts[at]) == 10 * ONES.get(ones[0], 0)


_VERBS = frozenset("is 's has had was looks and now next again here on beside behind".split())


def _is_article(talk: Talk, at: int) -> bool:
    """ "eleven a penny": an "a" that leads on to a noun is no letter of a number."""
    token = talk.tokens[at]
    if not talk.punctuated or token.capital or token.mark or at + 1 >= len(talk.texts):
        return False
    return talk.texts[at + 1] not in _VERBS


def _digits_follow(texts: tuple[str, ...], at: int) -> bool:
    """Whether digits stand right after the token, or after a separator or nought said aloud."""
    at += 2 if texts[at + 1 : at + 2] and texts[at + 1] in SEPARATORS else 1
    at += at < len(texts) and texts[at] in ZERO
    after = texts[at] if at < len(texts) else ""
    return after[:1].isdecimal() or after in ONES or after in TENS


def _spells_prefix(texts: tuple[str, ...], at: int, prefixes: frozenset[str]) -> bool:
    """Whether a letter's name stands right before digits."""
    named = texts[at] in _PREFIX_NAMES or ORDINARY_LETTERS.get(texts[at]) in prefixes
    return named and _digits_follow(texts, at)


def _letters_spelt(
    texts: tuple[str, ...], at: int, prefixes: frozenset[str]
) -> tuple[str, int] | None:
    """ "ess dee thirteen", "double you five": letters in use told by name, and their end."""
    letters, i = "", at
    while i < len(texts) and len(letters) < _MOST_LETTERS:
        double_u = texts[i] == "double" and texts[i + 1 : i + 2] in (("you",), ("u",))
        name = texts[i] if len(texts[i]) == 1 and texts[i].isalpha() else LETTER_NAMES.get(texts[i])
        if not double_u and name is None:
            return None
        letters, i = letters + ("w" if double_u else name or ""), i + 1 + double_u
        if i - at > 1 and letters in prefixes and _digits_follow(texts, i - 1):
            return letters, i
    return None


_MOST_LETTERS = 3


def pieces_from(talk: Talk, at: int, prefixes: frozenset[str] = frozenset()) -> Iterator[Piece]:
    """The pieces of a number that begins at the token; stops at the first other word.

    `prefixes` are the letters in use, small: "bx" of "BX nineteen" where numbers begin so.
    """
    texts, i, count = talk.texts, at, 0
    while i < len(texts) and count < _MOST_PIECES:
        if i > at and talk.tokens[i - 1].mark in (".", "?"):
            return
        if i > at and talk.tokens[i - 1].mark == "," and re.search(r"[-/.]", texts[i - 1]):
            return  # "71.3, 71": the number was whole before the comma
        text = texts[i]
        count += 1
        if (apart := _teen_apart(texts, i)) is not None:
            yield Piece("digits", str(apart), i + 2)
            i += 2
        elif text.isdecimal():
            yield Piece("split" if len(text) > 2 else "digits", text, i + 1)
            i += 1
        elif _TOKEN.match(text) and not _ORDINAL.match(text):
            for part in _PIECE.findall(text):
                kind = "digits" if part.isdecimal() else "letter" if part.isalpha() else "sep"
                split = kind == "digits" and len(part) > 2 and not re.search(r"[-/.]", text)
                yield Piece("split" if split else kind, part, i + 1)
            i += 1
        elif spelt := _letters_spelt(texts, i, prefixes):
            yield Piece("letter", *spelt)
            i = spelt[1]
        elif text in ("double", "triple") and i + 1 < len(texts):
            digit = "0" if texts[i + 1] in ZERO else str(ONES.get(texts[i + 1], texts[i + 1]))
            if len(digit) != 1 or not digit.isdecimal():
                return
            yield Piece("digits", digit * (2 if text == "double" else 3), i + 2)
            i += 2
        elif text in ZERO and (i > at or (i + 1 < len(texts) and texts[i + 1] in ONES)):
            yield Piece("digits", "0", i + 1)
            i += 1
        elif text in ONES or text in TENS or (i > at and texts[i : i + 2] == ("a", "hundred")):
            # "thirty, three-oh", "ninety nine zero": no thirty-three, no ninety-nine
            apart = bool(talk.tokens[i].mark) or _tens_spelt(texts, i)
            number = whole(texts[: i + 1] if apart else texts, i)
            assert number is not None
            digits = str(int(number.value))
            yield Piece("split" if len(digits) > 3 else "digits", digits, number.end)
            i = number.end
        elif text in SEPARATORS and i > at:
            yield Piece("sep", "-", i + 1)
            i += 1
        elif len(text) > 1 and text in prefixes and _digits_follow(texts, i):
            yield Piece("letter", text, i + 1)
            i += 1
        elif (len(text) == 1 and text.isalpha()) or (
            (text in LETTER_NAMES and i > at)
            or (text in LETTER_NAMES | ORDINARY_LETTERS and _spells_prefix(texts, i, prefixes))
        ):
            if text == "a" and _is_article(talk, i):
                return
            guess = len(text) > 1 or (
                text == "a" and not talk.tokens[i].capital and talk.punctuated
            )
            letter = LETTER_NAMES.get(text, ORDINARY_LETTERS.get(text, text))
            yield Piece("letter", letter, i + 1, guess)
            i += 1
        elif i > at and text in _HOMOPHONES:
            if texts[i + 1 : i + 2] != () and texts[i + 1] in _OPENS_NOUN:
                return  # "a hundred and ten for the whole head"
            if text in ("to", "too") and whole(texts, i + 1) is not None:
                return  # "23 to 24 flowers a week"
            yield Piece("digits", _HOMOPHONES[text], i + 1, True)
            i += 1
        else:
            return


def inside_word(pieces: list[Piece], size: int) -> bool:
    """Whether the first pieces end inside a written word: the 24 of "24B07"."""
    return size < len(pieces) and pieces[size].end == pieces[size - 1].end


def tens_apart(talk: Talk, start: int, pieces: list[Piece]) -> Iterator[list[Piece]]:
    """ "thirty one zero four" is 30 104 as well as 31 04: each pair of words taken apart."""
    for n, piece in enumerate(pieces):
        first = pieces[n - 1].end if n else start
        if piece.kind != "digits" or piece.end - first != 2 or talk.texts[first] not in TENS:
            continue
        tens, ones = TENS[talk.texts[first]], ONES[talk.texts[first + 1]]
        apart = [Piece("digits", str(tens), first + 1), Piece("digits", str(ones), piece.end)]
        yield [*pieces[:n], *apart, *pieces[n + 1 :]]
