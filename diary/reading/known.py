"""What the breeder already has on record, as far as reading talk needs it. Pure values.

Built by records/ from the store, or by `diary extract` from two files.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownSeedling:
    """A seedling on record: its number as the breeder writes it, and its parents if known.

    `name` is set when the seedling has been named. A parent is a name or a number.
    """

    number: str
    seed_parent: str | None = None
    pollen_parent: str | None = None
    name: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownName:
    """A named plant, with other names it goes by and how it has been misheard."""

    name: str
    synonyms: tuple[str, ...] = ()
    mishearings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Mishearing:
    """It said `heard`, the breeder meant `meant` (any words: a name, a number, a term)."""

    heard: str
    meant: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """Everything on record that helps to understand talk. All of it may be incomplete.

    `number_format` is an example such as '23-04', set by the breeder; None means that the
    format is learnt from the seedlings' numbers.
    """

    seedlings: tuple[KnownSeedling, ...] = ()
    names: tuple[KnownName, ...] = ()
    mishearings: tuple[Mishearing, ...] = ()
    number_format: str | None = None
