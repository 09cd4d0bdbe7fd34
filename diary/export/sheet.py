"""The description sheet of one plant: what is known of it, in the order of variety descriptions.

The order of organs follows the variety descriptions of pelargoniums that the Canadian Food
Inspection Agency published under the Plant Breeders' Rights Act (regals 1998-2008, zonals
2005-2011), whose headings follow the UPOV characteristics: plant, stem, leaf, inflorescence,
floret, upper petals, lower petals, base of the petals. Pure.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from diary.insight.description import MARKINGS
from diary.insight.names import formula, written
from diary.insight.overview import Overview
from diary.linking.document import Band, PlantKind
from diary.records.beliefs import Belief
from diary.records.pages import PlantPage
from diary.records.record import Moment, Record

UPPER, LOWER = "upper petals", "lower petals"

# section: the traits it gathers, as (label, trait, part), in order
_SECTIONS: tuple[tuple[str, tuple[tuple[str, str, str | None], ...]], ...] = (
    (
        "Plant",
        (
            ("growth habit", "habit", None),
            ("height", "plant_height", None),
            ("width", "plant_spread", None),
            ("side shoots", "count_shoots", None),
        ),
    ),
    ("Stem", (("colour", "colour", "stem"), ("length of flower stem", "stem_length", None))),
    (
        "Leaf",
        (
            ("character", "foliage", None),
            ("colour", "colour", "leaf"),
            ("zone", "colour", "zone"),
            ("width", "leaf_width", None),
        ),
    ),
    (
        "Inflorescence",
        (
            ("time and freedom of flowering", "flowering", None),
            ("diameter of the head", "head_diameter", None),
            ("heads", "count_heads", None),
            ("buds", "count_buds", None),
            ("colour of the bud", "colour", "bud"),
        ),
    ),
    (
        "Flower",
        (
            ("form", "bloom_form", None),
            ("size", "bloom_size", None),
            ("diameter", "bloom_diameter", None),
            ("colour", "colour", "bloom"),
            ("ground colour", "colour", "base"),
            ("reverse", "colour", "reverse"),
        ),
    ),
    (
        "Base of the petals",
        (
            ("throat", "colour", "throat"),
            ("centre", "colour", "centre"),
        ),
    ),
    ("Scent", (("scent", "scent", None),)),
    ("Health", (("seen", "health", None),)),
)
_PETALS_GO_BEFORE = "Base of the petals"


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLine:
    """One characteristic: what it is, its state in words, and where each was said."""

    label: str
    state: str
    doubt: str | None
    moments: tuple[Moment, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetSection:
    """The characteristics of one organ."""

    organ: str
    lines: tuple[SheetLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantSheet:
    """All that goes on a sheet, but for the pictures.

    `parentage` is written seed parent first; `facts` are pairs from the register. `moments`
    are the clips, oldest first.
    """

    title: str
    group: str | None
    parentage: str
    facts: tuple[tuple[str, str], ...]
    sections: tuple[SheetSection, ...]
    moments: tuple[Moment, ...]


def plant_sheet(overview: Overview, page: PlantPage) -> PlantSheet:
    """Set out one plant's page in the order of a variety description."""
    summary = next((one for one in overview.plants if one.plant.key == page.plant.key), None)
    seed, pollen = overview.parents(summary) if summary else (None, None)
    sports = [belief for belief in page.beliefs if belief.trait == "sport_of"]
    parentage = formula(_name(overview, seed), _name(overview, pollen))
    if sports:
        parentage = f"sport of {written(str(sports[0].value))}"
    elif pollen is None and any(b.value == "open" for b in page.beliefs):
        parentage = f"{written(_name(overview, seed) or 'unknown')}, open pollinated"
    return PlantSheet(
        title=_title(page),
        group=_group(overview, page),
        parentage=parentage,
        facts=_facts(overview, page),
        sections=tuple(_sections(page)),
        moments=tuple(clip.moment for clip in page.clips),
    )


def _name(overview: Overview, key: str | None) -> str | None:
    return None if key is None else overview.title(key)


def _title(page: PlantPage) -> str:
    """A number bare, a name in single quotes, a named seedling with both."""
    if page.plant.kind is PlantKind.UNNAMED:
        return page.plant.title.lstrip("?")
    if page.seedling is not None and page.seedling.name:
        return f"{written(page.seedling.name)} ({page.seedling.number})"
    return written(page.plant.title)


def _group(overview: Overview, page: PlantPage) -> str | None:
    seen = {clip.moment.recording for clip in page.clips}
    groups = [one.recording.group for one in overview.walks if one.recording.id in seen]
    return next((group for group in groups if group), None)


def _facts(overview: Overview, page: PlantPage) -> tuple[tuple[str, str], ...]:
    seedling = page.seedling
    decisions = overview.decisions.get(page.plant.key)
    fate = decisions.fate if decisions else None
    decided = None
    if fate is not None:
        decided = fate.value + (f" ({fate.day.isoformat()})" if fate.day else "")
    facts = [
        ("Cross", page.cross.code if page.cross else None),
        ("Sown", seedling.sown if seedling else None),
        ("Pricked out", seedling.pricked_out if seedling else None),
        ("First flower", seedling.first_flower if seedling else None),
        ("Place", seedling.place if seedling else None),
        ("Decision", decided),
        ("Also", ", ".join(task.value for task in decisions.tasks) if decisions else None),
        ("Note", seedling.note if seedling else None),
    ]
    return tuple((label, value) for label, value in facts if value)


def _sections(page: PlantPage) -> Iterable[SheetSection]:
    for organ, wanted in _SECTIONS:
        if organ == _PETALS_GO_BEFORE:
            yield from _petals(page)
        lines = []
        for label, trait, part in wanted:
            found = [b for b in page.beliefs if b.trait == trait and part in (None, b.part)]
            if found:
                lines.append(_line(label, found))
        if lines:
            yield SheetSection(organ=organ, lines=tuple(lines))


def _petals(page: PlantPage) -> Iterable[SheetSection]:
    """Upper petals, lower petals, and the markings of which it was not said where they lie."""
    placed: set[str] = set()
    for organ in (UPPER, LOWER):
        lines = []
        for mark in MARKINGS:
            if mark != "edge" and organ in _lies_on(page.records, mark):
                placed.add(mark)
                lines.append(_line(f"marking: {mark}", _marking(page.beliefs, mark)))
        for label, part in (("colour", organ),):
            found = [b for b in page.beliefs if b.trait == "colour" and b.part == part]
            if found:
                lines.append(_line(label, found))
        if lines:
            yield SheetSection(organ=organ.capitalize(), lines=tuple(lines))
    rest = [
        _line("margin" if mark == "edge" else mark, found)
        for mark in MARKINGS
        if mark not in placed and (found := _marking(page.beliefs, mark))
    ]
    if rest:
        yield SheetSection(organ="Markings", lines=tuple(rest))


def _lies_on(records: Iterable[Record], mark: str) -> set[str]:
    """The petals on which a marking was said to lie."""
    return {
        petals
        for record in records
        if mark in (record.part, record.value) and not record.negated
        for petals in record.on
    }


def _marking(beliefs: Iterable[Belief], mark: str) -> list[Belief]:
    """What is believed of a marking: its colour if it has one, else that it is there."""
    found = list(beliefs)
    coloured = [b for b in found if b.trait == "colour" and b.part == mark]
    return coloured or [b for b in found if b.trait == "marking" and b.value == mark]


def _line(label: str, beliefs: list[Belief]) -> SheetLine:
    states = ", ".join(_state(belief) for belief in beliefs) or "present"
    doubts = [belief.conflict for belief in beliefs if belief.conflict]
    return SheetLine(
        label=label,
        state=states,
        doubt="; ".join(dict.fromkeys(doubts)) or None,
        moments=tuple(moment for belief in beliefs for moment in belief.sources[:1]),
    )


def _state(belief: Belief) -> str:
    if belief.trait == "marking":
        said = "present"
    elif isinstance(belief.value, int | float):
        said = f"{belief.value:g} mm" if belief.unit == "mm" else f"{belief.value:g}"
    else:
        said = " ".join((*belief.modifiers, belief.value.replace("_", " ")))
    return said if belief.band is Band.SURE else f"{said} (?)"
