"""Plants, crosses and pedigrees in the terms of BrAPI 2.1 (germplasm module). Pure.

BrAPI 2.1 of 1 July 2022 (plantbreeding/API, `Specification/BrAPI-Germplasm`); MCPD 2.1
(FAO/Bioversity, December 2015) for the status codes, with their fit to a breeder's bench ours.
"""

import re
from collections.abc import Iterator
from typing import Any

from diary.export.brapi_ids import db_id, name_of, pui
from diary.insight.names import purdy
from diary.insight.overview import Overview
from diary.insight.pedigree import Pedigree
from diary.insight.progeny import CrossProgeny, progeny
from diary.linking.document import PlantKind
from diary.records.pages import PlantSummary

PROJECT = "All crosses of this diary"
# MCPD 19 SAMPSTAT
SEGREGATING, CLONAL_SELECTION, MUTANT, IMPROVED_CULTIVAR, OTHER = "415", "416", "421", "500", "999"
_WHOLE_DAY = re.compile(r"\d{4}-\d{2}-\d{2}$")


def crop(overview: Overview) -> str:
    """What is grown: the plant group of most recordings."""
    groups = [walk.recording.group for walk in overview.walks if walk.recording.group]
    return max(sorted(set(groups)), key=groups.count, default="ornamental plant")


def germplasm(overview: Overview) -> Iterator[dict[str, Any]]:
    """Every plant, and every parent that is only known by its name."""
    by_key = {plant.plant.key: plant for plant in overview.plants}
    synonyms = {entry.name: entry.synonyms for entry in overview.named}
    pedigree = overview.pedigree()
    genus = crop(overview)
    for key in sorted({*pedigree.entries, *by_key}):
        plant = by_key.get(key)
        title = overview.title(key)
        entry: dict[str, Any] = {
            "germplasmDbId": db_id("germplasm", key),
            "germplasmName": name_of(title),
            "germplasmPUI": pui("germplasm", key),
            "defaultDisplayName": name_of(title),
            "commonCropName": genus,
            "biologicalStatusOfAccessionCode": _status(overview, key, plant),
            "pedigree": _pedigree_text(overview, pedigree, key),
            "synonyms": [
                {"synonym": name, "type": kind} for name, kind in _synonyms(plant, synonyms, key)
            ],
            "additionalInfo": _more(overview, plant),
        }
        if " " not in genus:
            entry["genus"] = genus.capitalize()
        yield {field: value for field, value in entry.items() if value not in (None, {}, [])}


def _status(overview: Overview, key: str, plant: PlantSummary | None) -> str:
    if plant is None or plant.plant.kind is PlantKind.CULTIVAR:
        return IMPROVED_CULTIVAR
    if plant.values("sport_of"):
        return MUTANT
    if plant.seedling is not None and plant.seedling.name:
        return IMPROVED_CULTIVAR
    fate = overview.decisions[key].fate
    if fate is not None and fate.value == "keep":
        return CLONAL_SELECTION
    return OTHER if plant.plant.kind is PlantKind.UNNAMED else SEGREGATING


def _pedigree_text(overview: Overview, pedigree: Pedigree, key: str) -> str | None:
    entry = pedigree.of(key)
    if entry.seed_parent is None and entry.pollen_parent is None:
        return None
    sides = (entry.seed_parent, entry.pollen_parent)
    return "/".join(overview.title(side) if side else "UNKNOWN" for side in sides)


def _synonyms(
    plant: PlantSummary | None, synonyms: dict[str, tuple[str, ...]], key: str
) -> Iterator[tuple[str, str]]:
    for name in synonyms.get(key, ()):
        yield name, "synonym"
    if plant is not None and plant.seedling is not None:
        for number in plant.seedling.former:
            yield number, "former number"
        if plant.seedling.name:
            yield plant.seedling.name, "cultivar name"


def _more(overview: Overview, plant: PlantSummary | None) -> dict[str, str]:
    """What BrAPI has no field for; all values as text, as the standard asks."""
    if plant is None or plant.seedling is None:
        return {}
    seedling = plant.seedling
    fate = overview.decisions[plant.plant.key].fate
    found = {
        "sown": seedling.sown,
        "prickedOut": seedling.pricked_out,
        "firstFlower": seedling.first_flower,
        "place": seedling.place,
        "decision": fate.value if fate else None,
        "note": seedling.note,
        **dict(seedling.extra),
    }
    return {name: value for name, value in found.items() if value}


def crossing_projects(overview: Overview) -> Iterator[dict[str, Any]]:
    """One project holds all crosses."""
    yield {
        "crossingProjectDbId": db_id("project"),
        "crossingProjectName": PROJECT,
        "commonCropName": crop(overview),
    }


def crosses(overview: Overview) -> Iterator[dict[str, Any]]:
    """Every cross, seed parent first."""
    days = {cross.code: cross.day for cross in overview.crosses}
    open_pollinated = {
        plant.plant.key
        for plant in overview.plants
        if any(belief.value == "open" for belief in plant.values("pollination"))
    }
    for cross in progeny(overview):
        entry: dict[str, Any] = {
            "crossDbId": db_id(
                "cross", cross.code or "", cross.seed_parent or "", cross.pollen_parent or ""
            ),
            "crossName": name_of(cross.code or cross.formula),
            "crossingProjectDbId": db_id("project"),
            "crossingProjectName": PROJECT,
            "crossType": _cross_type(cross, open_pollinated),
            "parent1": _parent(overview, cross.seed_parent, "FEMALE"),
            "parent2": _parent(overview, cross.pollen_parent, "MALE"),
            "crossAttributes": [
                {"crossAttributeName": name, "crossAttributeValue": str(value)}
                for name, value in (
                    ("seeds sown", cross.sown),
                    ("germinated", cross.germinated),
                    ("seedlings", len(cross.plants)),
                    ("flowered", cross.flowered.count),
                    ("kept", cross.kept.count),
                )
                if value is not None
            ],
        }
        if entry["crossType"] == "SELF":
            entry["parent1"]["parentType"] = "SELF"
            entry["parent2"] = None
        day = days.get(cross.code or "")
        if day and _WHOLE_DAY.match(day):
            event = {"pollinationTimeStamp": f"{day}T00:00:00Z", "pollinationSuccessful": True}
            if cross.germinated == 0:
                event["pollinationSuccessful"] = False
            entry["pollinationEvents"] = [event]
        yield {field: value for field, value in entry.items() if value is not None}


def _cross_type(cross: CrossProgeny, open_pollinated: set[str]) -> str | None:
    if cross.seed_parent is not None and cross.seed_parent == cross.pollen_parent:
        return "SELF"
    if cross.pollen_parent is None and any(one.key in open_pollinated for one in cross.plants):
        return "OPEN_POLLINATED"
    both = cross.seed_parent is not None and cross.pollen_parent is not None
    return "BIPARENTAL" if both else None


def _parent(overview: Overview, key: str | None, kind: str) -> dict[str, Any] | None:
    if key is None:
        return None
    return {
        "germplasmDbId": db_id("germplasm", key),
        "germplasmName": name_of(overview.title(key)),
        "parentType": kind,
    }


def pedigree_nodes(overview: Overview) -> Iterator[dict[str, Any]]:
    """Every plant with its parents and progeny; a sport's parent is CLONAL."""
    pedigree = overview.pedigree()
    children: dict[str, list[tuple[str, str]]] = {}
    for entry in pedigree.entries.values():
        for parent, kind in _roles(pedigree, entry.plant):
            children.setdefault(parent, []).append((entry.plant, kind))
    for key in sorted(pedigree.entries):
        parents = [
            {
                "germplasmDbId": db_id("germplasm", parent),
                "germplasmName": name_of(overview.title(parent)),
                "parentType": kind,
            }
            for parent, kind in _roles(pedigree, key)
        ]
        node: dict[str, Any] = {
            "germplasmDbId": db_id("germplasm", key),
            "germplasmName": name_of(overview.title(key)),
            "parents": parents,
            "progeny": [
                {
                    "germplasmDbId": db_id("germplasm", child),
                    "germplasmName": name_of(overview.title(child)),
                    "parentType": kind,
                }
                for child, kind in sorted(children.get(key, ()))
            ],
        }
        if parents:
            node["pedigreeString"] = purdy(pedigree, key)
        yield node


def _roles(pedigree: Pedigree, key: str) -> list[tuple[str, str]]:
    entry = pedigree.of(key)
    if entry.sport_of is not None:
        return [(entry.sport_of, "CLONAL")]
    if entry.seed_parent is not None and entry.seed_parent == entry.pollen_parent:
        return [(entry.seed_parent, "SELF")]
    sides = ((entry.seed_parent, "FEMALE"), (entry.pollen_parent, "MALE"))
    return [(parent, kind) for parent, kind in sides if parent is not None]
