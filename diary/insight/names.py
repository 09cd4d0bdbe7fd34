"""How plants and crosses are written: cultivar names in single quotes, seed parent x pollen. Pure.

Names of cultivars stand in single quotes (ICNCP, 9th ed. 2016, Art. 14); numbers of seedlings
are no names and take none. A cross puts the seed parent first with the multiplication sign
between (ICN Art. H.2.1 and Rec. H.2A.1).
"""

import re

from diary.insight.pedigree import Pedigree

# the sign alone: names may hold an x
CROSS_SIGN = "\u00d7"

_NUMBERED = re.compile(r"^[^\W\d_]{0,3}[\s./-]?\d", re.UNICODE)


def is_number(title: str) -> bool:
    """Whether a title is a seedling's number ("23-04", "R23/104", "K12") and not a name."""
    return bool(_NUMBERED.match(title))


def written(title: str) -> str:
    """A plant as it is written: 'Fenmarsh Lad' in quotes, 23-04 bare."""
    if is_number(title) or title.startswith(("?", "'")):
        return title
    return f"'{title}'"


def formula(seed_parent: str | None, pollen_parent: str | None) -> str:
    """A cross as it is written, seed parent first; "unknown" for a parent not on record."""
    if seed_parent is None and pollen_parent is None:
        return "parents unknown"
    if seed_parent is not None and seed_parent == pollen_parent:
        return f"{written(seed_parent)} selfed"
    seed = written(seed_parent) if seed_parent else "unknown"
    pollen = written(pollen_parent) if pollen_parent else "unknown"
    return f"{seed} {CROSS_SIGN} {pollen}"


def purdy(pedigree: Pedigree, plant: str, *, depth: int = 4) -> str:
    """The parentage in Purdy notation: "A/B//C" is (A x B) x C, female first.

    The notation is what BrAPI 2.1 asks for in `pedigreeString` (Purdy et al., Crop Science 8,
    1968, 405-406). A cross between crosses takes one slash more than the deeper of them.
    """
    return _purdy(pedigree, plant, depth)[0]


def _purdy(pedigree: Pedigree, plant: str, depth: int) -> tuple[str, int]:
    entry = pedigree.of(plant)
    if depth == 0 or (entry.seed_parent is None and entry.pollen_parent is None):
        return plant, 0
    seed, left = _side(pedigree, entry.seed_parent, depth)
    pollen, right = _side(pedigree, entry.pollen_parent, depth)
    level = max(left, right) + 1
    slash = "/" * level if level < 3 else f"/{level}/"
    return f"{seed}{slash}{pollen}", level


def _side(pedigree: Pedigree, parent: str | None, depth: int) -> tuple[str, int]:
    return ("UNKNOWN", 0) if parent is None else _purdy(pedigree, parent, depth - 1)
