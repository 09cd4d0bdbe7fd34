"""Every way of laying the pieces of a spoken number into one of the breeder's formats."""

from collections.abc import Iterator

from diary.reading.known import KnownSeedling
from diary.reading.numbers.format import Shape
from diary.reading.numbers.pieces import Piece
from diary.reading.numbers.system import (
    FAR,
    NEAR_RECORD,
    ON_RECORD,
    PLAUSIBLE,
    NumberHeard,
    NumberSystem,
)

_NEW_PREFIX = 0.2


_CUT_OFF = 0.25
_MISSING_ZERO, _HOMOPHONE, _NO_PREFIX, NO_SUFFIX, _SHORT_YEAR = 0.06, 0.1, 0.05, 0.35, 0.05


def lay_out(
    run: list[Piece],
    shape: Shape,
    system: NumberSystem,
    start: int,
    end: int,
    *,
    goes_on: bool = False,
) -> list[NumberHeard]:
    """The numbers that the pieces may be; `goes_on` where another digit follows them at once."""
    led_by_letter = run[0].kind == "letter"
    if shape.letter_between:
        run = _letter_first(run)
    prefix, body, penalty = "", run, 0.0
    letters = ""
    while body and body[0].kind == "letter":
        letters, body = letters + body[0].text, body[1:]
    if letters:
        prefix = letters.upper()
        if prefix not in shape.prefixes:
            # a letter not in use yet, but written together with its digits: "R3"
            if not shape.letter_between and (
                not any(shape.prefixes)
                or end - start > 1
                or len(prefix) > 1
                or suffixed_only(shape)
            ):
                return []
            if shape.letter_between and len(prefix) > 1:
                return []  # "34 see three, C was the mother"
            penalty = _NEW_PREFIX
    elif "" not in shape.prefixes:
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
        penalty += NO_SUFFIX
    if body and body[-1].kind == "sep":
        body = body[:-1]
    if not body or any(p.kind == "letter" for p in body):
        return []
    penalty += sum(_HOMOPHONE for p in body if p.guess)
    guessed = any(p.guess for p in body)
    column = shape.year_column
    years = shape.leads if column == 0 else shape.lasts
    found = []
    laid = [*_layouts(body, shape), *(_year_left_out(body, shape) if led_by_letter else ())]
    for groups, cost in laid:
        if not int(groups[-1]):
            continue  # no plant is number nought
        written = shape.write(prefix, groups, suffix)
        known = system.seedling(written)
        if not letters and len(shape.prefixes) > 1 and "" not in shape.prefixes:
            known = _only_known(shape, groups, suffix, system)
            if known is None:
                continue
        if guessed and known is None:
            continue
        if known is not None:
            score = ON_RECORD
        elif (
            groups[column].lstrip("0") in {year.lstrip("0") for year in years} or shape.groups == 1
        ):
            score = NEAR_RECORD
        elif _year_near(groups, shape):
            score = PLAUSIBLE
        elif sum(map(len, groups)) < sum(low for low, _ in shape.widths):
            continue  # "24 115, one one five": no 1-15, nor 11-5
        else:
            score = FAR
        if shape.groups == 1 and not shape.joined and not prefix and known is None:
            low, high = shape.widths[0]
            if len(groups[0]) < low:
                continue
            in_series = low == high >= _LEAST_DIGITS and groups[0][0] in {n[0] for n in years}
            score = PLAUSIBLE if in_series else FAR  # 709, where there is a 711
        if shape.groups == 1 and penalty and not letters and known is None:
            score = FAR
        if suffix and known is None:
            if suffix == "i":
                continue  # "four ninety nine, I paid"
            if written[: -len(suffix)] in system.families:
                score = NEAR_RECORD  # "118 a", where there is a 118B
        if goes_on and cost >= _MISSING_ZERO:
            cost += _CUT_OFF  # "31 oh seven oh" is no 31-007
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


def _only_known(
    shape: Shape, groups: tuple[str, ...], suffix: str, system: NumberSystem
) -> KnownSeedling | None:
    """ "41 3": the one on record that is numbered so, whatever letter its number begins with."""
    if len(groups) < 2 and len(groups[0]) < _LEAST_DIGITS:
        return None
    found = [
        known
        for prefix in sorted(shape.prefixes)
        if (known := system.seedling(shape.write(prefix, groups, suffix))) is not None
    ]
    return found[0] if len(found) == 1 else None


_LEAST_DIGITS = 3


def _letter_first(run: list[Piece]) -> list[Piece]:
    """ "24 B 7": the letters put before the digits, and a separator where they stood."""
    letters = [p for p in run if p.kind == "letter"]
    at = next((n for n, p in enumerate(run) if p.kind == "letter"), 0)
    rest = [p for p in run[at:] if p.kind != "letter"]
    return [*letters, *run[:at], Piece("sep", "-", letters[0].end), *rest] if at else run


def _year_left_out(body: list[Piece], shape: Shape) -> Iterator[tuple[tuple[str, ...], float]]:
    """ "B seven" of 24-B-7: every year in use, where only the letter and the place are said."""
    digits = "".join(p.text for p in body if p.kind != "sep")
    low, high = shape.widths[-1]
    if shape.letter_between and (cost := _width_cost(digits, low, high, shape, 1)) is not None:
        yield from (((lead, digits), cost) for lead in sorted(shape.leads, reverse=True))


def suffixed_only(shape: Shape) -> bool:
    """Whether numbers of the shape end in a letter, so that none can stand before."""
    return shape.suffixed


def _year_near(groups: tuple[str, ...], shape: Shape) -> bool:
    """Whether the year, or cross, lies within three of those in use."""
    column = shape.year_column
    used = shape.leads if column == 0 else shape.lasts
    return any(abs(int(groups[column]) - int(lead)) <= 3 for lead in used)


def _layouts(body: list[Piece], shape: Shape) -> Iterator[tuple[tuple[str, ...], float]]:
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
        if len(digits) == low or (low < len(digits) <= high and digits[0] != "0"):
            return 0.0  # 24/117, where there is a 24/09 too
        return _MISSING_ZERO if len(digits) < low else None
    if low == 4:
        return 0.0 if len(digits) == 4 else _SHORT_YEAR if len(digits) == 2 else None
    if digits.startswith("0"):
        return _MISSING_ZERO if len(bare) <= high else None
    most = max(high, 3 if group == shape.groups - 1 else 2)
    return 0.0 if len(digits) <= most else None
