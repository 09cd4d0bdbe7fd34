"""How this breeder writes seedling numbers, learnt from the numbers on record.

A number is a prefix of letters, groups of digits apart by separators, and a suffix letter:
`23-04`, `R23/104`, `S204`, `2311`, `22-14A`, `24/6/3`, `K12`, `9.12`, `2029/14`. Letters may
be joined to the digits by a separator of their own: `K-214`, `23-04/B`. The letter of a cross
may stand between the year and the place: `24B07`, `24-B-7`.
"""

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

_NUMBER = re.compile(r"^(?:([A-Za-z]{1,3})([-/. ]?))?(\d+(?:[-/. ]\d+)*)(?:([-/. ]?)([A-Za-z]))?$")
_LETTER_BETWEEN = re.compile(r"^(\d+)([-/. ]?)([A-Za-z]{1,2})([-/. ]?)(\d+)$")
_BETWEEN = "?"  # in a separator: where the prefix stands, in numbers like 24B07
DEFAULT_EXAMPLE = "23-04"


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """A written number taken apart; `joints` stand after the prefix and before the suffix.

    Of a number like 24-B-7 the prefix is B and the separator "-?-".
    """

    prefix: str
    groups: tuple[str, ...]
    separators: tuple[str, ...]
    suffix: str
    joints: tuple[str, str] = ("", "")

    @property
    def joined(self) -> bool:
        """Digits in one run, of which the first two are a year: 2311, 28112, R2307."""
        return len(self.groups) == 1 and len(self.groups[0]) in (4, 5)

    @property
    def kind(self) -> tuple[object, ...]:
        """What the numbers of one shape have in common."""
        lettered = (bool(self.prefix), bool(self.suffix))
        return (*lettered, self.joints, len(self.groups), self.separators, self.joined)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """One shape of number in use.

    `widths` holds, for each group of digits, the least and greatest number of digits;
    `padded` whether single digits are written with a leading zero. `joined` is a
    four-digit number without separator whose first two digits are a year.
    """

    prefixes: frozenset[str]
    separators: tuple[str, ...]
    widths: tuple[tuple[int, int], ...]
    padded: tuple[bool, ...]
    suffixed: bool
    joined: bool
    joints: tuple[str, str]
    leads: frozenset[str]  # first groups in use (years, crosses)
    lasts: frozenset[str] = frozenset()  # last groups in use

    @property
    def groups(self) -> int:
        """How many groups of digits the number has; two where they are joined."""
        return len(self.widths)

    @property
    def year_column(self) -> int:
        """Which group is the year or cross: the one with fewer values, the first if even."""
        if self.groups == 2 and len(self.leads) == len(self.lasts):
            return 1 if _spread(self.lasts) < _spread(self.leads) and not self.joined else 0
        return 0 if len(self.leads) <= len(self.lasts) else 1

    @property
    def place_first(self) -> bool:
        """Whether the place stands before the year: "8/25"."""
        return self.groups == 2 and not self.suffixed and self.year_column == 1

    @property
    def letter_between(self) -> bool:
        """Whether the letters stand between year and place: "24B07"."""
        return any(_BETWEEN in separator for separator in self.separators)

    def write(self, prefix: str, groups: tuple[str, ...], suffix: str) -> str:
        """The number as the breeder writes it; digits are padded as on record."""
        digits = [
            group.lstrip("0").rjust(low if padded else 1, "0") if group.strip("0") else group
            for group, (low, _), padded in zip(groups, self.widths, self.padded, strict=True)
        ]
        body = digits[0]
        for separator, group in zip(self.separators, digits[1:], strict=True):
            body += separator.replace(_BETWEEN, prefix.upper()) + group
        before, after = self.joints
        head = f"{prefix.upper()}{before}" if prefix and not self.letter_between else ""
        return f"{head}{body}{after}{suffix.upper()}" if suffix else f"{head}{body}"


def parse(number: str) -> Parts | None:
    """A written number taken apart; None where it is none."""
    if between := _LETTER_BETWEEN.match(number.strip()):
        year, left, letters, right, place = between.groups()
        return Parts(
            prefix=letters.upper(),
            groups=(year, place),
            separators=(f"{left}{_BETWEEN}{right}",),
            suffix="",
        )
    match = _NUMBER.match(number.strip())
    if match is None:
        return None
    prefix, before, digits, after, suffix = (part or "" for part in match.groups())
    return Parts(
        prefix=prefix.upper(),
        groups=tuple(re.split(r"[-/. ]", digits)),
        separators=tuple(re.findall(r"[-/. ]", digits)),
        suffix=suffix.upper(),
        joints=(before, after),
    )


def learn_shapes(numbers: Iterable[str], example: str | None = None) -> tuple[Shape, ...]:
    """The shapes in use, commonest first. With nothing to learn from, year-number."""
    pool = [parsed for number in numbers if (parsed := parse(number))]
    if example is not None and (parsed := parse(example)):
        pool = [p for p in pool if _alike(p, parsed)]
        pool.append(parsed)
    if not pool:
        pool = [parsed for parsed in [parse(DEFAULT_EXAMPLE)] if parsed]
    kinds = Counter(p.kind for p in pool)
    return tuple(_shape([p for p in pool if p.kind == kind]) for kind, _ in kinds.most_common())


def _alike(one: Parts, other: Parts) -> bool:
    same = len(one.groups) == len(other.groups) and one.separators == other.separators
    return same and bool(one.suffix) == bool(other.suffix)


def _shape(pool: list[Parts]) -> Shape:
    first = pool[0]
    if first.joined:
        groups = [(p.groups[0][:2], p.groups[0][2:]) for p in pool]
        separators: tuple[str, ...] = ("",)
    else:
        groups = [p.groups for p in pool]  # type: ignore[misc]
        separators = first.separators
    columns = list(zip(*groups, strict=True))
    padded = tuple(
        first.joined or any(g.startswith("0") and len(g) > 1 for g in column) for column in columns
    )
    widths = tuple((min(map(len, column)), max(map(len, column))) for column in columns)
    # A column of two-digit groups with no small number in it gives no sign of padding; years do.
    padded = tuple(
        pad
        or (
            low == high == 2
            and n == len(columns) - 1
            and len(columns) == 2
            and not _any_single(column)
        )
        for n, (pad, (low, high), column) in enumerate(zip(padded, widths, columns, strict=True))
    )
    return Shape(
        prefixes=frozenset(p.prefix for p in pool),
        separators=separators,
        widths=widths,
        padded=padded,
        suffixed=bool(first.suffix),
        joined=first.joined,
        joints=first.joints,
        leads=frozenset(column for column in columns[0]),
        lasts=frozenset(column for column in columns[-1]),
    )


def _spread(groups: Iterable[str]) -> int:
    values = [int(group) for group in groups]
    return max(values) - min(values)


def _any_single(column: Iterable[str]) -> bool:
    return any(len(group) == 1 for group in column)
