"""A trait that is wanted ("white throat", "bloom over 50 mm"), and whether a plant has it. Pure.

The words are the vocabulary's own: the headings of its colours, parts and traits.
"""

import re
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from diary.errors import UsageError
from diary.insight.description import LENGTHS, MARKINGS, NOT_FLOWER
from diary.records.beliefs import Belief

_BOUND = re.compile(
    r"\b(over|above|under|below)\s+(\d+(?:\.\d+)?)\s*(mm|cm|inch|inches|in)?\b", re.IGNORECASE
)
# 1 inch = 25.4 mm exactly (international yard and pound agreement, 1959)
_MM = {"mm": 1.0, "cm": 10.0, "in": 25.4, "inch": 25.4, "inches": 25.4}
_FILLERS = frozenset({"a", "an", "the", "with", "on", "in", "of", "flower", "flowers", "plant"})
_LENGTH_WORDS = {
    "bloom": "bloom_diameter",
    "head": "head_diameter",
    "truss": "head_diameter",
    "height": "plant_height",
    "spread": "plant_spread",
    "stem": "stem_length",
    "leaf": "leaf_width",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """One trait wanted. `marking` is asked for whether it has a colour of its own or not."""

    text: str
    trait: str
    value: str | None = None
    part: str | None = None
    modifiers: frozenset[str] = frozenset()
    over: float | None = None
    under: float | None = None


@cache
def _terms() -> tuple[frozenset[str], frozenset[str], tuple[str, ...], dict[str, tuple[str, ...]]]:
    """Colour words, their modifiers, parts (longest first), and the traits of each value."""
    colours, parts, traits = (
        tomllib.loads((files("diary") / "data" / f"{name}.toml").read_text("utf-8"))
        for name in ("colours", "parts", "traits")
    )
    by_value: dict[str, list[str]] = {}
    for trait, values in traits.items():
        for value in values:
            by_value.setdefault(value, []).append(trait)
    return (
        frozenset(colours["words"]),
        frozenset(colours["modifiers"]),
        tuple(sorted(parts, key=len, reverse=True)),
        {value: tuple(found) for value, found in by_value.items()},
    )


def wanted(text: str) -> Wanted:
    """Understand what is wanted. Raises UsageError where no trait can be made out."""
    said = " ".join(text.casefold().replace("_", " ").split())
    bound = _BOUND.search(said)
    if bound:
        rest = said[: bound.start()] + said[bound.end() :]
        trait = next((_LENGTH_WORDS[word] for word in rest.split() if word in _LENGTH_WORDS), None)
        if trait is None:
            raise UsageError(f"{text!r}: the size of what? One of: {', '.join(_LENGTH_WORDS)}.")
        length = float(bound[2]) * _MM[(bound[3] or "mm").lower()]
        more = bound[1] in ("over", "above")
        return Wanted(
            text=said,
            trait=trait,
            over=length if more else None,
            under=None if more else length,
        )
    colours, modifiers, parts, traits = _terms()
    part = next((name for name in parts if re.search(rf"\b{name}\b", said)), None)
    words = [word for word in said.replace(part or "\0", " ").split() if word not in _FILLERS]
    colour = next((word for word in words if word in colours), None)
    if colour is not None:
        shades = frozenset(word for word in words if word in modifiers)
        return Wanted(text=said, trait="colour", value=colour, part=part, modifiers=shades)
    if part in MARKINGS:
        return Wanted(text=said, trait="marking", value=part)
    for word in words:
        if word in traits:
            # "scented" is a scent, unless the leaf is named; "open" is a form unless a habit is
            found = traits[word]
            if part == "leaf" and "foliage" in found:
                return Wanted(text=said, trait="foliage", value=word)
            named = next((trait for trait in found if trait in words), None)
            first = "scent" if "scent" in found else found[0]
            return Wanted(text=said, trait=named or first, value=word)
    raise UsageError(
        f"{text!r} names no colour, marking, form or habit that is kept. "
        "Say it like: 'white throat', 'frilled', 'compact', 'bloom over 50 mm'."
    )


def has(beliefs: Iterable[Belief], want: Wanted) -> bool | None:
    """Whether a plant has what is wanted; None where nothing was said of that trait and part."""
    spoken = False
    for belief in beliefs:
        trait = belief.trait
        if want.trait in LENGTHS:
            if trait != want.trait or not isinstance(belief.value, int | float):
                continue
            spoken = True
            if want.over is not None and belief.value > want.over:
                return True
            if want.under is not None and belief.value < want.under:
                return True
        elif want.trait == "marking":
            mark = belief.part if trait == "colour" else str(belief.value)
            if trait not in ("colour", "marking") or mark is None or mark in NOT_FLOWER:
                continue
            # whoever described a flower's colours would have spoken of its markings
            spoken = True
            if mark == want.value:
                return True
        elif trait == want.trait and (want.part is None or belief.part == want.part):
            spoken = True
            if belief.value == want.value and want.modifiers <= set(belief.modifiers):
                return True
    return False if spoken else None
