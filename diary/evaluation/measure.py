"""What is scored and how near is right, as data/scoring.toml says."""

import re
import tomllib
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources

from diary.linking.document import Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """The scored traits: each one's family, its terms where the list is closed, lengths."""

    family: Mapping[str, str]  # trait -> family
    families: tuple[str, ...]
    terms: Mapping[str, frozenset[str]]  # trait -> its closed list
    lengths: frozenset[str]
    within_mm: float
    within_share: float

    def counts(self, trait: str, value: Value) -> bool:
        """Whether a report is scored at all: a known trait, a term of its list."""
        terms = self.terms.get(trait)
        return trait in self.family and (terms is None or value in terms)

    def fits(self, trait: str, told: Value, asked: Value) -> bool:
        """Whether the value told is as good as the one asked for."""
        if trait in self.lengths:
            if not isinstance(told, int | float) or not isinstance(asked, int | float):
                return False
            return abs(told - asked) <= max(self.within_mm, self.within_share * asked)
        if isinstance(asked, int | float):
            return told == asked
        return plain(told) == plain(asked)


@cache
def measure() -> Measure:
    """The measure in use."""
    text = resources.files("diary.data").joinpath("scoring.toml").read_text(encoding="utf-8")
    data = tomllib.loads(text)
    return Measure(
        family={trait: name for name, traits in data["families"].items() for trait in traits},
        families=tuple(data["families"]),
        terms={trait: frozenset(terms) for trait, terms in data["terms"].items()},
        lengths=frozenset(data["lengths"]["traits"]),
        within_mm=data["lengths"]["within_mm"],
        within_share=data["lengths"]["within_share"],
    )


def plain(value: Value | None) -> str:
    """Letters and digits only, without case and accents; nothing for None.

    >>> plain("St. Élise's Own")
    'stelisesown'
    """
    text = unicodedata.normalize("NFKD", "" if value is None else str(value)).casefold()
    return re.sub(r"[\W_]+", "", "".join(c for c in text if not unicodedata.combining(c)))


def plain_number(number: str) -> str:
    """A seedling number without case, every separator one dash (22.4 is not 2.24)."""
    return re.sub(r"[^a-z0-9]+", "-", number.casefold()).strip("-")
