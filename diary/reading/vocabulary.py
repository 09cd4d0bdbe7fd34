"""The words a breeder uses, loaded from the TOML files in data/ and checked."""

from dataclasses import dataclass
from functools import cache


@dataclass(frozen=True, slots=True, kw_only=True)
class Vocabulary:
    """All terms, once loaded."""


@cache
def load_vocabulary() -> Vocabulary:
    """The vocabulary that comes with the program."""
    return Vocabulary()
