"""The breeder's formats and the numbers on record, and a number heard in them."""

from dataclasses import dataclass

from diary.reading.known import Known, KnownSeedling
from diary.reading.numbers.format import Shape, learn_shapes, parse

# Scores, set by hand and checked on the practice scripts.
ON_RECORD, NEAR_RECORD, PLAUSIBLE, FAR = 1.0, 0.8, 0.6, 0.3


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
    prefixes: frozenset[str]  # the letters in use, small: "r", "px"
    families: frozenset[str] = frozenset()  # numbers that end in a letter, without it
    years: frozenset[str] = frozenset()  # the last two digits of the years in use
    year: int | None = None  # of the recording

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
        prefix, groups, joined = parsed.prefix, parsed.groups, parsed.joined
        if joined:
            groups = (groups[0][:2], groups[0][2:])
        said, letter = cut
        if len(said) > len(groups):
            return None
        place_first = next((s.place_first for s in self.shapes if s.groups == len(groups)), False)
        if place_first and len(said) == 1 and len(groups) == 2 and not cross:
            said = (said[0].lstrip("0") or "0", groups[1])  # "twelve" after 8/25
        if cross and len(groups) > 1:
            groups = (*groups[:-2], cross, groups[-1])
        kept = groups[: len(groups) - len(said)] if said else groups
        for shape in self.shapes:
            if shape.groups != len(groups) or shape.suffixed != bool(parsed.suffix):
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


def number_system(known: Known, year: int | None = None) -> NumberSystem:
    """The formats in use, and every number on record by its spelling in capitals."""
    shapes = learn_shapes((s.number for s in known.seedlings), known.number_format)
    return NumberSystem(
        shapes=shapes,
        prefixes=frozenset(p.lower() for shape in shapes for p in shape.prefixes if p),
        seedlings={s.number.upper(): s for s in known.seedlings},
        years=frozenset(
            lead[-2:]
            for shape in shapes
            if shape.groups == 2
            for lead in (shape.lasts if shape.year_column else shape.leads)
        ),
        year=year,
        families=frozenset(s.number[:-1] for s in known.seedlings if s.number[-1:].isalpha()),
    )
