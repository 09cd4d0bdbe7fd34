"""Seedling numbers as they are said: "twenty-three oh four", "23 04", "number four of the 23s".

What is heard is kept as pieces (digits, separators, letters); every way of laying the
pieces into the breeder's own format is a candidate, and the register decides. Homophones
(for/four, to/two, ate/eight, won/one, bee/B, see/C) count only inside a number.

Catches "two three one four", "S two-forty", "7 stroke 24", "seventeen A" (cut short, to be
completed from the plants just seen). Leaves alone amounts of anything ("nine-centimetre
pot", "4 pound 50", "31 degrees"): whatever is followed by a unit or a thing counted.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from diary.reading.known import Known, KnownSeedling
from diary.reading.number_format import Shape, learn_shapes, parse
from diary.reading.numerals import ONES, TENS, whole
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_ZERO = frozenset("oh o zero nought naught ought".split())
_SEPARATORS = frozenset("dash hyphen slash stroke dot point oblique minus".split())
_LETTERS = {
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
}
_HOMOPHONES = {"for": "4", "fore": "4", "to": "2", "too": "2", "won": "1", "ate": "8"}
_TOKEN = re.compile(r"^[a-z]{0,3}\d+(?:[-/.]\d+)*[a-z]?$|^[a-z]{1,2}-\d+(?:[-/.]\d+)*[a-z]?$")
_PIECE = re.compile(r"[a-z]+|\d+|[-/.]")
_ORDINAL = re.compile(r"^\d+(st|nd|rd|th|s)$")
_MOST_PIECES = 9

# Scores, set by hand and checked on the practice scripts.
ON_RECORD, NEAR_RECORD, PLAUSIBLE, FAR = 1.0, 0.8, 0.6, 0.3
_COMMA = 0.25
_NEW_PREFIX = 0.2
_MISSING_ZERO, _HOMOPHONE, _NO_PREFIX, _NO_SUFFIX, _SHORT_YEAR = 0.06, 0.1, 0.05, 0.35, 0.05


@dataclass(frozen=True, slots=True)
class _Piece:
    kind: str  # "digits", "split" (written digits that may be taken apart), "sep", "letter"
    text: str
    end: int
    guess: bool = False  # a homophone


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberHeard:
    """A seedling number heard at tokens start..end-1, in the breeder's own format.

    `cut` holds what was said of a number cut short (groups of digits and suffix letter);
    its `number` is then empty until linking completes it.
    """

    start: int
    end: int
    number: str
    score: float
    on_record: bool
    runner_up: str | None = None
    runner_up_score: float | None = None
    cut: tuple[tuple[str, ...], str] | None = None
    explicit: bool = False  # said with its letters, separators, or the word "number"


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberSystem:
    """The breeder's formats and the numbers on record."""

    shapes: tuple[Shape, ...]
    seedlings: dict[str, KnownSeedling]

    def seedling(self, number: str) -> KnownSeedling | None:
        """The seedling on record with this number, however its letters are written."""
        return self.seedlings.get(number.upper())

    def complete(
        self, cut: tuple[tuple[str, ...], str], seen: str, *, cross: str = ""
    ) -> str | None:
        """A number cut short, completed from a number just seen: "105" after R23/104.

        Only the front may be missing; a suffix letter alone keeps all digits of `seen`.
        `cross` takes the place of the group before the last.
        """
        parsed = parse(seen)
        if parsed is None:
            return None
        prefix, groups, _, suffix = parsed
        joined = len(groups) == 1 and len(groups[0]) == 4 and not prefix
        if joined:
            groups = (groups[0][:2], groups[0][2:])
        said, letter = cut
        if len(said) > len(groups):
            return None
        if cross and len(groups) > 1:
            groups = (*groups[:-2], cross, groups[-1])
        kept = groups[: len(groups) - len(said)] if said else groups
        for shape in self.shapes:
            if shape.groups != len(groups) or shape.suffixed != bool(suffix):
                continue
            if shape.joined != joined or (prefix and prefix not in shape.prefixes):
                continue
            if shape.suffixed and not letter:
                return None
            if letter and not shape.suffixed:
                return None
            new = (*kept, *said)
            if any(
                len(g.lstrip("0") or "0") > max(3, w[1])
                for g, w in zip(new, shape.widths, strict=True)
            ):
                return None
            return shape.write(prefix, new, letter)
        return None


def number_system(known: Known) -> NumberSystem:
    """The formats in use, and every number on record by its spelling in capitals."""
    return NumberSystem(
        shapes=learn_shapes((s.number for s in known.seedlings), known.number_format),
        seedlings={s.number.upper(): s for s in known.seedlings},
    )


def find_numbers(
    talk: Talk, system: NumberSystem, vocabulary: Vocabulary
) -> tuple[NumberHeard, ...]:
    """Numbers and numbers cut short, in order, not overlapping."""
    texts, found, at = talk.texts, [], 0
    while at < len(texts):
        heard = _number_of(talk, at, system) or _number_at(talk, at, system, vocabulary)
        if heard is None:
            at += 1
            continue
        found.append(heard)
        at = heard.end
    return tuple(found)


def _number_of(talk: Talk, at: int, system: NumberSystem) -> NumberHeard | None:
    """ "number 14 of the 23s", "number 24 of 23", "plant three of cross six"."""
    texts = talk.texts
    if texts[at] == "cross" and (cross := whole(texts, at + 1)) is not None:
        j = (
            cross.end + 1
            if texts[cross.end : cross.end + 1] in (("plant",), ("number",), ("seedling",))
            else cross.end
        )
        plant = whole(texts, j) if j > cross.end else None
        if plant is not None:
            return NumberHeard(
                start=at,
                end=plant.end,
                number="",
                score=PLAUSIBLE,
                on_record=False,
                explicit=True,
                cut=((str(int(cross.value)), str(int(plant.value))), ""),
            )
    i = at + 1 if texts[at] in ("number", "plant", "seedling") else at
    serial = whole(texts, i)
    if serial is None or serial.end >= len(texts) or texts[serial.end] != "of":
        return None
    j = serial.end + 1
    if texts[j : j + 2] == ("the", "same") and i > at:
        return NumberHeard(
            start=at,
            end=j + 2,
            number="",
            score=PLAUSIBLE,
            on_record=False,
            explicit=True,
            cut=((str(int(serial.value)),), ""),
        )
    if j < len(texts) and texts[j] == "the":
        j += 1
    if j < len(texts) and any(texts[j].upper() in shape.prefixes for shape in system.shapes):
        j += 1
    lead, end = _batch(texts, j)
    if lead is None or (serial.value == 1 and i == at):
        return None
    best: NumberHeard | None = None
    for shape in system.shapes:
        if shape.groups != 2 or shape.suffixed:
            continue
        year_first = _year_column(shape) == 0
        year = lead if (shape.widths[0 if year_first else 1][1] == len(lead)) else f"20{lead}"
        groups = (year, str(int(serial.value))) if year_first else (str(int(serial.value)), year)
        prefix = min(shape.prefixes) if len(shape.prefixes) == 1 else ""
        number = shape.write(prefix, groups, "")
        known = system.seedling(number) is not None
        score = ON_RECORD if known else NEAR_RECORD
        if best is None or score > best.score:
            best = NumberHeard(
                start=at, end=end, number=number, score=score, on_record=known, explicit=True
            )
    if best is not None and i == at and texts[j - 1] != "the" and not best.on_record:
        return None
    return best


def _batch(texts: Sequence[str], at: int) -> tuple[str | None, int]:
    """A year's batch ("23s", "twenty-threes", "23", "twenty three") and its end."""
    if at >= len(texts):
        return None, at
    if re.fullmatch(r"'?\d{2}(\d{2})?s?", texts[at]):
        end = at + 2 if texts[at + 1 : at + 2] == ("'s",) else at + 1
        return texts[at].strip("'s"), end
    if texts[at] in TENS:
        tens = TENS[texts[at]]
        ones = ONES.get(texts[at + 1].removesuffix("s")) if at + 1 < len(texts) else None
        if ones is None and at + 1 < len(texts) and texts[at + 1] == "sixes":
            ones = 6
        if ones is not None and 0 < ones < 10:
            return str(tens + ones), at + 2
        return str(tens), at + 1
    return None, at


def _year_column(shape: Shape) -> int:
    """Which group is the year: the one with fewer different values; the first if even."""
    return 0 if len(shape.leads) <= len(shape.lasts) else 1


def _number_at(
    talk: Talk, at: int, system: NumberSystem, vocabulary: Vocabulary
) -> NumberHeard | None:
    texts = talk.texts
    if at > 0 and texts[at - 1] in ("£", "$"):
        return None
    if texts[at] in _SEPARATORS and at + 1 < len(texts):
        rest = (
            _number_at(talk, at + 1, system, vocabulary)
            if texts[at + 1] not in _SEPARATORS
            else None
        )
        if rest is not None and rest.cut is not None and rest.cut[0] and texts[at] != "minus":
            return replace(rest, start=at, explicit=True)  # "point one three" of 9.13
        return None
    if texts[at] == "one" and at > 0 and texts[at - 1] in _ONE_IS_PRONOUN:
        follows = texts[at + 1] if at + 1 < len(texts) else ""
        if talk.tokens[at].mark or (follows not in _ZERO and follows not in ONES):
            return None
    pieces = list(_pieces(talk, at))
    while pieces and pieces[-1].kind == "sep":
        pieces.pop()
    candidates: list[NumberHeard] = []
    for size in range(len(pieces), 0, -1):
        if pieces[size - 1].kind == "sep" or (
            size < len(pieces) and pieces[size].end == pieces[size - 1].end
        ):
            continue
        end = pieces[size - 1].end
        if _counted_or_measured(talk, at, end, vocabulary):
            continue
        broken = talk.between(at, end - 1, (",",)) and not any(
            p.kind == "sep" for p in pieces[:size]
        )
        for shape in system.shapes:
            fits = _fits(pieces[:size], shape, system, at, end)
            candidates += [replace(c, score=c.score - _COMMA) for c in fits] if broken else fits
    candidates.sort(key=lambda c: (-c.score, -(c.end - c.start)))
    good = [c for c in candidates if c.score >= PLAUSIBLE - _NO_SUFFIX + 0.05]
    if good:
        best = good[0]
        other = next((c for c in good[1:] if c.number != best.number and c.end == best.end), None)
        return replace(
            best,
            runner_up=other.number if other else None,
            runner_up_score=other.score if other else None,
        )
    return _cut_short(talk, at, pieces, system, vocabulary)


def _cut_short(
    talk: Talk, at: int, pieces: list[_Piece], system: NumberSystem, vocabulary: Vocabulary
) -> NumberHeard | None:
    """The last part of a number: "105", "seventeen A", "C", "plant four"."""
    if at and talk.texts[at - 1] in _COUNTED_OFF and talk.texts[at] not in _LETTER_NAMES:
        return None
    suffixed = any(shape.suffixed for shape in system.shapes)
    most = max(shape.groups for shape in system.shapes)
    for size in range(min(len(pieces), 4), 0, -1):
        run, end = pieces[:size], pieces[size - 1].end
        digits = [p.text for p in run if p.kind in ("digits", "split")]
        letters = [p.text for p in run if p.kind == "letter"]
        if any(p.kind == "sep" for p in run) or (letters and run[-1].kind != "letter"):
            continue
        if talk.between(at, end - 1, (",",)):
            continue
        if len(letters) > 1 or (letters and not suffixed) or any(p.guess for p in run):
            continue
        if _counted_or_measured(talk, at, end, vocabulary):
            continue
        if not digits and not _lone_letter(talk, at):
            continue
        joined = "".join(digits)
        if len(joined) > 3:
            continue
        if (not digits and not letters) or texts_of(talk, at, end) in _NO_NUMBER_ALONE:
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


# "last one, twenty-three twenty-three": here "one" is no part of a number.
_ONE_IS_PRONOUN = frozenset(
    "last this next that first another the which final new other only end each every "
    "good nice big little no".split()
)
# After these a number counts things: "on the two top ones", "all three".
_COUNTED_OFF = frozenset(
    "the these those all both my our a about only of other some last first every".split()
)
_LETTER_NAMES = frozenset("abcdefgh")
_NO_NUMBER_ALONE = frozenset({("one",), ("a",), ("zero",), ("one", "oh")})


def texts_of(talk: Talk, start: int, end: int) -> tuple[str, ...]:
    """The tokens start..end-1; a lone letter "A" counts as itself."""
    run = talk.texts[start:end]
    return ("A",) if run == ("a",) and talk.tokens[start].capital else run


def _lone_letter(talk: Talk, at: int) -> bool:
    token = talk.tokens[at]
    if len(token.text) != 1 or not token.text.isalpha() or token.text in "ios":
        return False
    return token.text != "a" or (token.capital and talk.punctuated and not _after_stop(talk, at))


def _after_stop(talk: Talk, at: int) -> bool:
    return at == 0 or talk.tokens[at - 1].mark in (".", "?")


def _pieces(talk: Talk, at: int) -> Iterator[_Piece]:
    """The pieces of a number that begins at the token; stops at the first other word."""
    texts, i, count = talk.texts, at, 0
    while i < len(texts) and count < _MOST_PIECES:
        if i > at and talk.tokens[i - 1].mark in (".", "?"):
            return
        text = texts[i]
        count += 1
        if text.isdecimal():
            yield _Piece("split" if len(text) > 2 else "digits", text, i + 1)
            i += 1
        elif _TOKEN.match(text) and not _ORDINAL.match(text):
            for part in _PIECE.findall(text):
                kind = "digits" if part.isdecimal() else "letter" if part.isalpha() else "sep"
                split = kind == "digits" and len(part) > 2 and not re.search(r"[-/.]", text)
                yield _Piece("split" if split else kind, part, i + 1)
            i += 1
        elif text in ("double", "triple") and i + 1 < len(texts):
            digit = "0" if texts[i + 1] in _ZERO else str(ONES.get(texts[i + 1], ""))
            if len(digit) != 1:
                return
            yield _Piece("digits", digit * (2 if text == "double" else 3), i + 2)
            i += 2
        elif text in _ZERO and (i > at or (i + 1 < len(texts) and texts[i + 1] in ONES)):
            yield _Piece("digits", "0", i + 1)
            i += 1
        elif text in ONES or text in TENS:
            apart = bool(talk.tokens[i].mark)  # "thirty, three-oh" is no thirty-three
            number = whole(texts[: i + 1] if apart else texts, i)
            assert number is not None
            yield _Piece("digits", str(int(number.value)), number.end)
            i = number.end
        elif text in _SEPARATORS and i > at:
            yield _Piece("sep", "-", i + 1)
            i += 1
        elif (len(text) == 1 and text.isalpha()) or (i > at and text in _LETTERS):
            guess = text in _LETTERS or (
                text == "a" and not talk.tokens[i].capital and talk.punctuated
            )
            yield _Piece("letter", _LETTERS.get(text, text), i + 1, guess)
            i += 1
        elif i > at and text in _HOMOPHONES:
            yield _Piece("digits", _HOMOPHONES[text], i + 1, True)
            i += 1
        else:
            return


def _counted_or_measured(talk: Talk, start: int, end: int, vocabulary: Vocabulary) -> bool:
    """Whether the words after make it an amount: "31 degrees", "fourteen buds", "4 and a half"."""
    texts = talk.texts
    if talk.between(end - 1, end, (".", ",", "?")):
        return False
    if vocabulary.units.at(texts, end) or vocabulary.other_units.at(texts, end):
        return True
    rest = texts[end : end + 3]
    if rest[:2] == ("and", "a") or rest[:1] == ("hundred",) or rest[:1] == ("of",):
        return True
    if rest[:1] == ("and",) and len(rest) > 1 and (rest[1] in ("half", "quarter")):
        return True
    counted = vocabulary.counted.at(texts, end) or (
        end + 1 < len(texts)
        and any(texts[end] in words for words in vocabulary.between.values())
        and vocabulary.counted.at(texts, end + 1)
    )
    return bool(counted) and texts[start - 1 : start] != ("number",)


def _fits(
    run: list[_Piece], shape: Shape, system: NumberSystem, start: int, end: int
) -> list[NumberHeard]:
    prefix, body, penalty = "", run, 0.0
    letters = ""
    while body and body[0].kind == "letter":
        letters, body = letters + body[0].text, body[1:]
    if letters:
        prefix = letters.upper()
        if prefix not in shape.prefixes:
            # a letter not in use yet, but written together with its digits: "R3"
            if (
                not any(shape.prefixes)
                or end - start > 1
                or len(prefix) > 1
                or suffixed_only(shape)
            ):
                return []
            penalty = _NEW_PREFIX
    elif "" not in shape.prefixes:
        if len(shape.prefixes) > 1:
            return []
        prefix, penalty = min(shape.prefixes), _NO_PREFIX
    if body and body[0].kind == "sep":
        body = body[1:]
    suffix = ""
    if body and body[-1].kind == "letter":
        if not shape.suffixed:
            return []
        suffix, body = body[-1].text, body[:-1]
        penalty += 0.03 if run[-1].guess else 0.0
    elif shape.suffixed:
        penalty += _NO_SUFFIX
    if body and body[-1].kind == "sep":
        body = body[:-1]
    if not body or any(p.kind == "letter" for p in body):
        return []
    penalty += sum(_HOMOPHONE for p in body if p.guess)
    guessed = any(p.guess for p in body)
    found = []
    for groups, cost in _layouts(body, shape):
        written = shape.write(prefix, groups, suffix)
        known = system.seedling(written)
        if guessed and known is None:
            continue
        if known is not None:
            score = ON_RECORD
        elif (
            groups[0].lstrip("0") in {lead.lstrip("0") for lead in shape.leads} or shape.groups == 1
        ):
            score = NEAR_RECORD
        elif _year_near(groups, shape):
            score = PLAUSIBLE
        else:
            score = FAR
        if shape.groups == 1 and not shape.joined and not prefix and known is None:
            score = FAR
        if shape.groups == 1 and penalty and not letters and known is None:
            score = FAR
        found.append(
            NumberHeard(
                start=start,
                end=end,
                number=known.number if known else written,
                score=round(score - penalty - cost, 3),
                on_record=known is not None,
                explicit=bool(letters or suffix or any(p.kind == "sep" for p in run)),
            )
        )
    return found


def suffixed_only(shape: Shape) -> bool:
    """Whether numbers of the shape end in a letter, so that none can stand before."""
    return shape.suffixed


def _year_near(groups: tuple[str, ...], shape: Shape) -> bool:
    """Whether the year, or cross, lies within three of those in use."""
    column = _year_column(shape)
    used = shape.leads if column == 0 else shape.lasts
    return any(abs(int(groups[column]) - int(lead)) <= 3 for lead in used)


def _layouts(body: list[_Piece], shape: Shape) -> Iterator[tuple[tuple[str, ...], float]]:
    """Every way to lay the digits into the groups of the shape, with its cost."""
    atoms: list[tuple[str, bool]] = []  # digits, and whether a separator follows
    for piece in body:
        if piece.kind == "sep":
            if atoms:
                atoms[-1] = (atoms[-1][0], True)
        elif piece.kind == "split" and shape.groups > 1:
            atoms += [(digit, False) for digit in piece.text]
        else:
            atoms.append((piece.text, False))
    yield from _lay(tuple(atoms), shape, 0, (), 0.0)


def _lay(
    atoms: tuple[tuple[str, bool], ...],
    shape: Shape,
    group: int,
    done: tuple[str, ...],
    cost: float,
) -> Iterator[tuple[tuple[str, ...], float]]:
    if group == shape.groups:
        if not atoms:
            yield done, cost
        return
    low, high = shape.widths[group]
    digits = ""
    for size in range(1, len(atoms) + 1):
        digits += atoms[size - 1][0]
        rest = atoms[size:]
        ended = atoms[size - 1][1]
        if ended and group == shape.groups - 1:
            return
        extra = _width_cost(digits, low, high, shape, group)
        if extra is not None and (rest or group == shape.groups - 1):
            laid = f"20{digits}" if low == 4 and len(digits) == 2 else digits
            yield from _lay(rest, shape, group + 1, (*done, laid), cost + extra)
        if ended or len(digits) >= max(high, 3):
            return


def _width_cost(digits: str, low: int, high: int, shape: Shape, group: int) -> float | None:
    """What it costs to take the digits for the group; None where they do not fit."""
    bare = digits.lstrip("0") or "0"
    if shape.padded[group]:
        if len(digits) == low:
            return 0.0
        return _MISSING_ZERO if len(digits) == 1 and low == 2 else None
    if low == 4:
        return 0.0 if len(digits) == 4 else _SHORT_YEAR if len(digits) == 2 else None
    if digits.startswith("0"):
        return _MISSING_ZERO if len(bare) <= high else None
    most = max(high, 3 if group == shape.groups - 1 else 2)
    return 0.0 if len(digits) <= most else None
