"""Seedling numbers as they are said: "twenty-three oh four", "23 04", "number four of the 23s".

What is heard is kept as pieces (digits, separators, letters); every way of laying the
pieces into the breeder's own format is a candidate, and the register decides. Homophones
(for/four, to/two, ate/eight, won/one, bee/B, see/C) count only inside a number.

Catches "two three one four", "S two-forty", "7 stroke 24", "seventeen A" (cut short, to be
completed from the plants just seen). Leaves alone amounts of anything ("nine-centimetre
pot", "4 pound 50", "31 degrees"): whatever is followed by a unit or a thing counted.
"""

from dataclasses import replace

from diary.reading.numbers.amounts import counted_or_measured
from diary.reading.numbers.cut_short import cut_short
from diary.reading.numbers.figures import is_figure
from diary.reading.numbers.format import parse
from diary.reading.numbers.layout import NO_SUFFIX, lay_out
from diary.reading.numbers.pieces import (
    ORDINARY_LETTERS,
    SEPARATORS,
    ZERO,
    Piece,
    inside_word,
    pieces_from,
    tens_apart,
)
from diary.reading.numbers.system import NEAR_RECORD, PLAUSIBLE, NumberHeard, NumberSystem
from diary.reading.numbers.told_by_batch import number_of
from diary.reading.numerals import ONES, quantity
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_COMMA = 0.25
_POINT = frozenset({"point", "dot"})


def find_numbers(
    talk: Talk, system: NumberSystem, vocabulary: Vocabulary
) -> tuple[NumberHeard, ...]:
    """Numbers and numbers cut short, in order, not overlapping."""
    texts, found, at = talk.texts, [], 0
    while at < len(texts):
        heard = number_of(talk, at, system) or _number_at(talk, at, system, vocabulary)
        if heard is None:
            at += 1
            continue
        if not heard.on_record and (
            _on_the_way_to(talk, at, system, vocabulary)
            or _said_after_it(talk, heard, system, vocabulary)
        ):
            at += 1
            continue
        if is_figure(talk, heard, vocabulary):
            at = heard.end
            continue
        found.append(heard)
        at = heard.end
    return tuple(found)


# "two" and "for" after these are "to" and "for", where a number on record follows.
_ON_THE_WAY = frozenset(
    "come came comes go goes going back on over along move moving get got up down turn".split()
)
_TO = frozenset({"two", "2", "four", "4"})


def _on_the_way_to(talk: Talk, at: int, system: NumberSystem, vocabulary: Vocabulary) -> bool:
    """ "then we come two 24 09": captions' "two" is no part of the number."""
    if at == 0 or talk.texts[at] not in _TO or talk.texts[at - 1] not in _ON_THE_WAY:
        return False
    rest = _number_at(talk, at + 1, system, vocabulary) if at + 1 < len(talk.texts) else None
    return rest is not None and rest.on_record


def _said_after_it(
    talk: Talk, heard: NumberHeard, system: NumberSystem, vocabulary: Vocabulary
) -> bool:
    """ "that's a six 62 d": far from all on record, where what follows the first word is there."""
    if heard.cut is not None or heard.score >= PLAUSIBLE or heard.end - heard.start < 3:
        return False
    rest = _number_at(talk, heard.start + 1, system, vocabulary)
    return rest is not None and rest.on_record and rest.explicit and rest.end == heard.end


def _without_echo(pieces: list[Piece], system: NumberSystem) -> list[Piece]:
    """ "29-14-14": the last part said again, where numbers have fewer parts."""
    digits = [p for p in pieces if p.kind != "sep"]
    most = max(shape.groups for shape in system.shapes)
    written = len(pieces) == 5 and pieces[0].end == pieces[-1].end and len(digits) == 3
    if written and most < 3 and digits[-1].text == digits[-2].text:
        return pieces[:3]
    return pieces


def _number_at(
    talk: Talk, at: int, system: NumberSystem, vocabulary: Vocabulary
) -> NumberHeard | None:
    texts = talk.texts
    if at > 0 and texts[at - 1] in ("£", "$"):
        return None
    if texts[at] in SEPARATORS and at + 1 < len(texts):
        if texts[at] in _POINT and at and quantity(texts, at - 1) is not None:
            return None  # "it's two point six"
        rest = (
            _number_at(talk, at + 1, system, vocabulary)
            if texts[at + 1] not in SEPARATORS
            else None
        )
        if rest is not None and rest.cut is not None and rest.cut[0] and texts[at] != "minus":
            return replace(rest, start=at, explicit=True)  # "point one three" of 9.13
        return None
    if texts[at] == "one" and at > 0 and texts[at - 1] in _ONE_IS_PRONOUN:
        follows = texts[at + 1] if at + 1 < len(texts) else ""
        if talk.tokens[at].mark or (follows not in ZERO and follows not in ONES):
            return None
    if _place_told(talk, at, system, vocabulary):
        return None
    pieces = _without_echo(list(pieces_from(talk, at, system.prefixes)), system)
    while pieces and pieces[-1].kind == "sep":
        pieces.pop()
    candidates = _laid_out(talk, at, pieces, system, vocabulary)
    if all(c.score < NEAR_RECORD for c in candidates):
        candidates += [
            c
            for apart in tens_apart(talk, at, pieces)
            for c in _laid_out(talk, at, apart, system, vocabulary)
            if c.on_record
        ]
    left = {c.end: _digit_left(talk, pieces, c.end) for c in candidates}
    candidates.sort(key=lambda c: (left[c.end] - c.score, -(c.end - c.start)))
    if texts[at] in ORDINARY_LETTERS:  # "see 41 2"; not "see 40 people"
        candidates = [c for c in candidates if c.on_record or _of_two_parts(c)]
        pieces = pieces if candidates else []
    good = [c for c in candidates if c.score >= PLAUSIBLE - NO_SUFFIX + 0.05]
    if good and good[0].score < PLAUSIBLE and (half := _said_twice(talk, good[0])):
        good, pieces = [], [p for p in pieces if p.end <= half]
    if good:
        best = good[0]
        other = next((c for c in good[1:] if c.number != best.number and c.end == best.end), None)
        return replace(
            best,
            runner_up=other.number if other else None,
            runner_up_score=other.score if other else None,
        )
    return cut_short(talk, at, pieces, system, vocabulary)


def _laid_out(
    talk: Talk, at: int, pieces: list[Piece], system: NumberSystem, vocabulary: Vocabulary
) -> list[NumberHeard]:
    """What the pieces, or the first of them, may be in any of the breeder's formats."""
    candidates: list[NumberHeard] = []
    for size in range(len(pieces), 0, -1):
        if pieces[size - 1].kind == "sep" or inside_word(pieces, size):
            continue
        end = pieces[size - 1].end
        if counted_or_measured(talk, at, end, vocabulary):
            continue
        broken = talk.between(at, end - 1, (",",)) and not any(
            p.kind == "sep" for p in pieces[:size]
        )
        for shape in system.shapes:
            laid = lay_out(
                pieces[:size], shape, system, at, end, goes_on=_goes_on(talk, pieces, size)
            )
            candidates += [replace(c, score=c.score - _COMMA) for c in laid] if broken else laid
    return candidates


def _place_told(talk: Talk, at: int, system: NumberSystem, vocabulary: Vocabulary) -> bool:
    """ "page two 26 13", "along one 24 12": a place or a step, and then a number on record."""
    texts = talk.texts
    led = at and (
        texts[at - 1] in _COUNTED_PLACES or (texts[at] == "one" and texts[at - 1] in _ALONG)
    )
    if not led or at + 1 >= len(texts) or not (texts[at] in ONES or texts[at].isdecimal()):
        return False
    if texts[at + 1] == texts[at] or len(texts[at]) > _LONGEST_ONES:
        return False
    rest = _number_at(talk, at + 1, system, vocabulary)
    return rest is not None and rest.on_record


def _of_two_parts(heard: NumberHeard) -> bool:
    """ "see 14 1" may be a C14-1 not yet on record; "see 40" is no C40."""
    parsed = parse(heard.number)
    parts = parsed.joined or len(parsed.groups) > 1 if parsed is not None else False
    return heard.score >= NEAR_RECORD and parts


def _said_twice(talk: Talk, heard: NumberHeard) -> int | None:
    """ "not sixteen, sixteen's the red one": where the second half begins, the first again."""
    half = heard.start + (heard.end - heard.start) // 2
    twice = talk.texts[heard.start : half] == talk.texts[half : heard.end]
    return half if twice and half > heard.start else None


def _goes_on(talk: Talk, pieces: list[Piece], size: int) -> bool:
    """Whether one more digit is said in the same breath."""
    following = pieces[size : size + 1]
    end = pieces[size - 1].end
    return (
        bool(following)
        and following[0].kind == "digits"
        and len(following[0].text) == 1
        and not following[0].guess
        and not talk.tokens[end - 1].mark
    )


_DIGIT_LEFT = 0.25


def _digit_left(talk: Talk, pieces: list[Piece], end: int) -> float:
    """What it costs to leave a digit over that is said in the same breath.

    "two three five one" is no 23-05, "24 stroke seven oh" no 24/7, "seven point two two" no 7.2.
    """
    size = next((n for n, p in enumerate(pieces, 1) if p.end == end), len(pieces))
    if size >= len(pieces) or not _goes_on(talk, pieces, size):
        return 0.0
    if pieces[size].text == "0" and not _exclaimed(talk, end):
        return _DIGIT_LEFT
    run = [p for p in pieces[: size + 1] if p.kind != "letter"]
    single = [p.kind == "digits" and len(p.text) == 1 and not p.guess for p in run]
    spelt = len(run) >= _SPELT and all(single)
    after_separator = [p.kind for p in run[-3:-1]] == ["sep", "digits"] and single[-2]
    return _DIGIT_LEFT if spelt or after_separator else 0.0


_SPELT = 4


def _exclaimed(talk: Talk, at: int) -> bool:
    """ "24 7 oh look at that": no nought of 24/70."""
    after = talk.texts[at + 1 : at + 2]
    return talk.texts[at] == "oh" and (not after or after[0] in _EXCLAIMING)


_EXCLAIMING = frozenset(
    "my dear look that this these those she he it i we they you what how no yes yeah god lord "
    "heavens well but wow hello sorry hang wait bother drat blimey bless here there lovely".split()
)
_COUNTED_PLACES = frozenset(
    "page line row bench shelf tray table box bed bay slot position block tier rack frame house "
    "tunnel column stage entry lot".split()
)
_LONGEST_ONES = 5


# "last one, twenty-three twenty-three": here "one" is no part of a number.
_ONE_IS_PRONOUN = frozenset(
    "last this next that first another the which final new other only end each every "
    "good nice big little no".split()
)
_ALONG = frozenset("along over up down across on back more move skip shuffle miss".split())
