"""How far two named colours lie apart, by CIEDE2000 on published values of the words. Pure.

The words and their sources are data/swatches.toml. A word that is not there has no colour:
distances to it are None, and whoever compares leaves them out.
"""

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

from diary.errors import VocabularyError

Lab = tuple[float, float, float]

_FILE = "swatches.toml"


@dataclass(frozen=True, slots=True, kw_only=True)
class Swatch:
    """A colour word, its sRGB as "#rrggbb", and where that was published."""

    word: str
    srgb: str
    source: str
    also: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """What a modifier does to lightness and chroma (data/swatches.toml says how)."""

    lighter: float = 0.0
    darker: float = 1.0
    chroma: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Swatches:
    """All words with a published colour, and the modifiers."""

    words: dict[str, Swatch]
    modifiers: dict[str, Shift]


@cache
def load_swatches() -> Swatches:
    """The swatches that come with the program. Raises VocabularyError with file and key."""
    table = tomllib.loads((files("diary") / "data" / _FILE).read_text("utf-8"))
    return parse_swatches(table)


def parse_swatches(table: dict[str, Any]) -> Swatches:
    """Check a loaded table and turn it into values."""
    words = {}
    for word, entry in table.get("words", {}).items():
        for value in (entry.get("srgb", ""), *entry.get("also", ())):
            digits = value.removeprefix("#")
            if len(value) != 7 or len(digits) != 6 or not _is_hex(digits):
                raise VocabularyError(f"{_FILE}: words.{word}: {value!r} is not '#rrggbb'")
        if not entry.get("source"):
            raise VocabularyError(f"{_FILE}: words.{word}: say in `source` where it is published")
        words[word] = Swatch(
            word=word,
            srgb=entry["srgb"],
            source=entry["source"],
            also=tuple(entry.get("also", ())),
        )
    try:
        shifts = {name: Shift(**entry) for name, entry in table.get("modifiers", {}).items()}
    except TypeError as error:
        raise VocabularyError(f"{_FILE}: modifiers: {error}") from error
    return Swatches(words=words, modifiers=shifts)


def _is_hex(digits: str) -> bool:
    return all(digit in "0123456789abcdefABCDEF" for digit in digits)


@cache
def lab_of(word: str, modifiers: tuple[str, ...] = ()) -> Lab | None:
    """CIE L*a*b* (D65) of a colour word as modified ("dark", "wine"), or None if unknown."""
    from coloraide import Color  # slow to import

    swatches = load_swatches()
    swatch = swatches.words.get(word)
    if swatch is None:
        return None
    lightness, chroma, hue = Color(swatch.srgb).convert("lch-d65").coords()
    for modifier in modifiers:
        shift = swatches.modifiers.get(modifier, Shift())
        lightness = lightness * shift.darker + (100 - lightness * shift.darker) * shift.lighter
        chroma *= shift.chroma
    # an achromatic colour has no hue
    modified = Color("lch-d65", [lightness, chroma, 0.0 if hue != hue else hue])
    first, second, third = modified.convert("lab-d65").coords()
    return (first, second, third)


@cache
def srgb_of(word: str, modifiers: tuple[str, ...] = ()) -> str | None:
    """The colour to show for a word as modified, as "#rrggbb", or None if unknown."""
    from coloraide import Color  # slow to import

    if (lab := lab_of(word, modifiers)) is None:
        return None
    return Color("lab-d65", list(lab)).convert("srgb").fit("srgb").to_string(hex=True)


def delta_e(first: Lab, second: Lab) -> float:
    """CIEDE2000 colour difference (CIE 142-2001; Sharma, Wu and Dalal 2005), kL = kC = kH = 1."""
    from coloraide import Color

    one, other = Color("lab-d65", list(first)), Color("lab-d65", list(second))
    return float(one.delta_e(other, method="2000"))


@cache
def colour_distance(
    first: str,
    second: str,
    first_modifiers: tuple[str, ...] = (),
    second_modifiers: tuple[str, ...] = (),
) -> float | None:
    """CIEDE2000 between two colours as said; None where a word has no published value.

    Nobody repeats every "deep" and "pale": a colour said without modifiers is compared with
    the bare word of the other.
    """
    if not first_modifiers or not second_modifiers:
        first_modifiers = second_modifiers = ()
    one, other = lab_of(first, first_modifiers), lab_of(second, second_modifiers)
    if one is None or other is None:
        return None
    return delta_e(one, other)
