"""What can be chosen when an observation is put right: the vocabulary's traits, parts, words."""

import tomllib
from functools import cache
from importlib.resources import files

# traits that are measured, and counted: by the reading contract
LENGTHS = (
    "bloom_diameter",
    "head_diameter",
    "plant_height",
    "plant_spread",
    "stem_length",
    "leaf_width",
)
COUNTS = (
    "count_heads",
    "count_buds",
    "count_seeds_sown",
    "count_germinated",
    "count_cuttings",
    "count_shoots",
)
PLANTS = ("seed_parent", "pollen_parent", "sport_of", "similar_to")
UNITS = ("mm", "cm", "m", "in", "ft")


def _data(name: str) -> dict[str, dict[str, object]]:
    return tomllib.loads((files("diary") / "data" / f"{name}.toml").read_text("utf-8"))


@cache
def values_by_trait() -> dict[str, tuple[str, ...]]:
    """Every trait in the order of a page's choice, with its words (none: a number or a name)."""
    words: dict[str, list[str]] = {
        "colour": list(_data("colours")["words"]),
        "marking": [part for part, entry in _data("parts").items() if entry["kind"] == "marking"],
    }
    for trait, values in _data("traits").items():
        words.setdefault(trait, []).extend(values)
    words["decision"] = list(_data("decisions"))
    plain = {trait: tuple(found) for trait, found in words.items()}
    return plain | dict.fromkeys((*LENGTHS, *COUNTS, *PLANTS), ())


@cache
def parts() -> tuple[str, ...]:
    """The parts that can have a colour."""
    return tuple(_data("parts"))


@cache
def modifiers() -> tuple[str, ...]:
    """The words that shade a colour."""
    return tuple(_data("colours").get("modifiers", {}))
