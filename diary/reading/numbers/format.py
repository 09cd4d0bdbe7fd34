"""How this breeder writes seedling numbers, learnt from the numbers on record.

A number is a prefix of letters, groups of digits apart by separators, and a suffix letter:
`23-04`, `R23/104`, `S204`, `2311`, `22-14A`, `24/6/3`, `K12`, `9.12`, `2029/14`.
"""

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

_NUMBER = re.compile(r"^([A-Za-z]{0,3})[-/ ]?(\d+(?:[-/. ]\d+)*)[-/ ]?([A-Za-z]?)$")
DEFAULT_EXAMPLE = "23-04"


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

    def write(self, prefix: str, groups: tuple[str, ...], suffix: str) -> str:
        """The number as the breeder writes it; digits are padded as on record."""
        digits = [
            group.lstrip("0").rjust(low if padded else 1, "0") if group.strip("0") else group
            for group, (low, _), padded in zip(groups, self.widths, self.padded, strict=True)
        ]
        body = digits[0]
        for separator, group in zip(self.separators, digits[1:], strict=True):
            body += separator + group
        return f"{prefix.upper()}{body}{suffix.upper()}"


def parse(number: str) -> tuple[str, tuple[str, ...], tuple[str, ...], str] | None:
    """Prefix, groups of digits, separators and suffix of a written number; None if none."""
    match = _NUMBER.match(number.strip())
    if match is None:
        return None
    groups = tuple(re.split(r"[-/. ]", match[2]))
    return match[1].upper(), groups, tuple(re.findall(r"[-/. ]", match[2])), match[3].upper()


def learn_shapes(numbers: Iterable[str], example: str | None = None) -> tuple[Shape, ...]:
    """The shapes in use, commonest first. With nothing to learn from, year-number."""
    pool = [parsed for number in numbers if (parsed := parse(number))]
    if example is not None and (parsed := parse(example)):
        pool = [
            p
            for p in pool
            if (len(p[1]), p[2], bool(p[3])) == (len(parsed[1]), parsed[2], bool(parsed[3]))
        ]
        pool.append(parsed)
    if not pool:
        pool = [parsed for parsed in [parse(DEFAULT_EXAMPLE)] if parsed]
    kinds = Counter((bool(p[0]), len(p[1]), p[2], bool(p[3]), _joined(p)) for p in pool)
    return tuple(
        _shape([p for p in pool if (bool(p[0]), len(p[1]), p[2], bool(p[3]), _joined(p)) == kind])
        for kind, _ in kinds.most_common()
    )


def _joined(parsed: tuple[str, tuple[str, ...], tuple[str, ...], str]) -> bool:
    return not parsed[0] and len(parsed[1]) == 1 and len(parsed[1][0]) == 4


def _shape(pool: list[tuple[str, tuple[str, ...], tuple[str, ...], str]]) -> Shape:
    joined = _joined(pool[0])
    if joined:
        groups = [(p[1][0][:2], p[1][0][2:]) for p in pool]
        separators: tuple[str, ...] = ("",)
    else:
        groups = [p[1] for p in pool]  # type: ignore[misc]
        separators = pool[0][2]
    columns = list(zip(*groups, strict=True))
    padded = tuple(
        joined or any(g.startswith("0") and len(g) > 1 for g in column) for column in columns
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
        prefixes=frozenset(p[0] for p in pool),
        separators=separators,
        widths=widths,
        padded=padded,
        suffixed=bool(pool[0][3]),
        joined=joined,
        leads=frozenset(column for column in columns[0]),
        lasts=frozenset(column for column in columns[-1]),
    )


def _spread(groups: Iterable[str]) -> int:
    values = [int(group) for group in groups]
    return max(values) - min(values)


def _any_single(column: Iterable[str]) -> bool:
    return any(len(group) == 1 for group in column)
