"""Which column of a breeder's own table is which field of the register, by its heading. Pure."""

import re
from collections.abc import Sequence

KEYS = {"seedlings": "number", "crosses": "code", "names": "name"}

# field: headings it goes by, as letters only (common practice; no source)
SAID: dict[str, dict[str, tuple[str, ...]]] = {
    "seedlings": {
        "number": ("number", "no", "nr", "num", "seedling", "seedlingnumber", "seedlingno",
                   "label", "id", "plant"),
        "cross": ("cross", "crosscode", "family", "crossing", "crossno"),
        "seed_parent": ("seedparent", "mother", "female", "podparent", "pod", "mum", "seed"),
        "pollen_parent": ("pollenparent", "father", "male", "pollen", "dad"),
        "sown": ("sown", "datesown", "sowingdate", "sowndate", "sowing"),
        "pricked_out": ("prickedout", "prickout", "datepricked", "transplanted"),
        "first_flower": ("firstflower", "firstbloom", "flowered", "firstflowered", "firstflowering",
                         "dateflowered"),
        "place": ("place", "location", "bench", "where", "position", "spot"),
        "status": ("status", "state", "decision", "verdict"),
        "status_day": ("statusday", "statusdate", "decided"),
        "status_reason": ("statusreason", "reason", "why"),
        "name": ("name", "named", "cultivar", "cultivarname"),
        "note": ("note", "notes", "remark", "remarks", "comment", "comments"),
    },
    "crosses": {
        "code": ("code", "cross", "crosscode", "crossno", "number", "id"),
        "seed_parent": ("seedparent", "mother", "female", "podparent", "pod", "mum"),
        "pollen_parent": ("pollenparent", "father", "male", "pollen", "dad"),
        "day": ("day", "date", "crossed", "datecrossed", "made"),
        "seeds_sown": ("seedssown", "sown", "seeds", "numbersown"),
        "germinated": ("germinated", "up", "cameup", "germination"),
        "note": ("note", "notes", "remark", "remarks", "comment", "comments"),
    },
    "names": {
        "name": ("name", "cultivar", "plant", "cultivarname", "variety"),
        "synonyms": ("synonyms", "synonym", "alsoknownas", "othernames", "aka"),
        "mishearings": ("mishearings", "mishearing", "heardas", "misheard"),
        "seed_parent": ("seedparent", "mother", "female", "podparent", "pod", "mum"),
        "pollen_parent": ("pollenparent", "father", "male", "pollen", "dad"),
        "note": ("note", "notes", "remark", "remarks", "comment", "comments"),
    },
}  # fmt: skip


def guess_columns(headings: Sequence[str], table: str) -> tuple[tuple[str, str | None], ...]:
    """Each heading with the field it is taken for; None where no field goes by that name.

    A field is given once: to the heading that says it best, the first among equals.
    """
    said = SAID[table]
    rank: dict[str, tuple[int, int]] = {}
    for index, heading in enumerate(headings):
        letters = re.sub(r"[^a-z]", "", heading.casefold())
        for field, words in said.items():
            if letters in words:
                best = rank.get(field)
                place = words.index(letters)
                if best is None or place < best[0]:
                    rank[field] = (place, index)
    by_index = {index: field for field, (_, index) in rank.items()}
    return tuple((heading, by_index.get(index)) for index, heading in enumerate(headings))


def guess_table(headings: Sequence[str]) -> str:
    """Whether headings are those of seedlings, crosses or names: where most are known."""
    scores = {
        table: sum(field is not None for _, field in guess_columns(headings, table))
        + 2 * any(field == KEYS[table] for _, field in guess_columns(headings, table))
        for table in SAID
    }
    return max(SAID, key=lambda table: scores[table])


def told_apart(headings: Sequence[str]) -> list[str]:
    """The headings, each filled in and unlike the others, so that no cell is lost."""
    apart: list[str] = []
    for index, heading in enumerate(headings, start=1):
        name, count = heading or f"column {index}", 1
        while name in apart:
            count += 1
            name = f"{heading or 'column'} ({count})"
        apart.append(name)
    return apart
