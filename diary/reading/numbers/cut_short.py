"""The last part of a number alone: "105", "seventeen A", "C", "plant four".

Linking completes it from the plants just seen. Leaves alone "the two top ones", "all three".
"""

from diary.reading.numbers.amounts import counted_or_measured
from diary.reading.numbers.pieces import Piece, inside_word
from diary.reading.numbers.system import PLAUSIBLE, NumberHeard, NumberSystem
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary


def cut_short(
    talk: Talk, at: int, pieces: list[Piece], system: NumberSystem, vocabulary: Vocabulary
) -> NumberHeard | None:
    """The last part of a number: "105", "seventeen A", "C", "plant four"."""
    if at and talk.texts[at - 1] in _COUNTED_OFF and talk.texts[at] not in _LETTER_NAMES:
        return None
    if at and talk.tokens[at - 1].word == talk.tokens[at].word and talk.texts[at - 1].isalpha():
        return None  # the "double one" of "a semi-double one"
    suffixed = any(shape.suffixed for shape in system.shapes)
    if suffixed and not pieces and (letter := _letter_by_name(talk, at)):
        return NumberHeard(
            start=at, end=at + 1, number="", score=PLAUSIBLE, on_record=False, cut=((), letter)
        )
    most = max(shape.groups for shape in system.shapes)
    for size in range(min(len(pieces), 4), 0, -1):
        run, end = pieces[:size], pieces[size - 1].end
        digits = [p.text for p in run if p.kind in ("digits", "split")]
        letters = [p.text for p in run if p.kind == "letter"]
        if any(p.kind == "sep" for p in run) or (letters and run[-1].kind != "letter"):
            continue
        if talk.between(at, end - 1, (",",)) or inside_word(pieces, size):
            continue
        if len(letters) > 1 or (letters and not suffixed) or any(p.guess for p in run):
            continue
        if counted_or_measured(talk, at, end, vocabulary):
            continue
        if not digits and not _lone_letter(talk, at):
            continue
        joined = "".join(digits)
        if len(joined) > 3:
            continue
        if (not digits and not letters) or _is_no_number_alone(talk, at, end):
            continue
        if digits and not letters and (suffixed and all(s.suffixed for s in system.shapes)):
            continue
        groups: tuple[str, ...] = (joined,) if digits else ()
        if most == 3 and len(digits) == 2:
            groups = (digits[0], digits[1])
        return NumberHeard(
            start=at,
            end=end,
            number="",
            score=PLAUSIBLE,
            on_record=False,
            cut=(groups, letters[0] if letters else ""),
        )
    return None


# After these a number counts things: "on the two top ones", "all three".
_COUNTED_OFF = frozenset(
    "the these those all both my our a about only of other some last first every".split()
)
_LETTER_NAMES = frozenset("abcdefgh")
_NO_NUMBER_ALONE = frozenset({("one",), ("a",), ("zero",), ("one", "oh")})


def _is_no_number_alone(talk: Talk, at: int, end: int) -> bool:
    """ "one", "a"; but "number one is a pink"."""
    if _texts_of(talk, at, end) not in _NO_NUMBER_ALONE:
        return False
    told = bool(talk.tokens[end - 1].mark) or talk.texts[end : end + 1] in (("is",), ("'s",))
    return not (told and at and talk.texts[at - 1] == "number" and talk.texts[at] == "one")


def _texts_of(talk: Talk, start: int, end: int) -> tuple[str, ...]:
    """The tokens start..end-1; a lone letter "A" counts as itself."""
    run = talk.texts[start:end]
    return ("A",) if run == ("a",) and talk.tokens[start].capital else run


def _lone_letter(talk: Talk, at: int) -> bool:
    token = talk.tokens[at]
    if len(token.text) != 1 or not token.text.isalpha() or token.text in "ios":
        return False
    return token.text != "a" or (token.capital and talk.punctuated and not _after_stop(talk, at))


_NAMED = {"bee": "b", "be": "b", "see": "c", "sea": "c", "dee": "d", "eff": "f", "gee": "g"}


def _letter_by_name(talk: Talk, at: int) -> str:
    """ "and see is darker", "then bee has a white eye": where no ordinary word can stand."""
    if at + 1 >= len(talk.texts) or talk.texts[at + 1] not in ("is", "'s", "has", "was", "looks"):
        return ""
    leads = at and talk.texts[at - 1] in ("and", "then", "now", "but", "so", "next", "while")
    return _NAMED.get(talk.texts[at], "") if leads else ""


def _after_stop(talk: Talk, at: int) -> bool:
    return at == 0 or talk.tokens[at - 1].mark in (".", "?")
