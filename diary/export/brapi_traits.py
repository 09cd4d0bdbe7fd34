"""Traits and what was observed in the terms of BrAPI 2.1 (phenotyping module). Pure.

Plant Ontology and Trait Ontology ids by Planteome's releases (CC BY 4.0): PO of 9 January
2026, TO. There are none for upper petals, throat or markings.
"""

from collections.abc import Iterator
from typing import Any

from diary.export.brapi_ids import db_id, name_of
from diary.export.brapi_plants import crop
from diary.insight.description import LENGTHS
from diary.insight.overview import Overview
from diary.linking.document import PlantKind
from diary.records.record import Record

_OBO = "http://purl.obolibrary.org/obo/"
_TRAIT_TERMS = {
    ("colour", "bloom"): "TO_0000537",
    ("colour", "leaf"): "TO_0000326",
    ("bloom_diameter", None): "TO_0000858",
    ("bloom_form", None): "TO_0000859",
    ("head_diameter", None): "TO_0000802",
    ("plant_height", None): "TO_0000207",
}
_ENTITY_TERMS = {
    "bloom": "PO_0009046",
    "upper petals": "PO_0009032",
    "lower petals": "PO_0009032",
    "edge": "PO_0025008",
    "bud": "PO_0000056",
    "leaf": "PO_0025034",
    "whole plant": "PO_0000003",
    "inflorescence": "PO_0009049",
}
_ENTITIES = {
    "bloom_form": ("bloom", "form"),
    "bloom_size": ("bloom", "size"),
    "bloom_diameter": ("bloom", "diameter"),
    "head_diameter": ("inflorescence", "diameter"),
    "plant_height": ("whole plant", "height"),
    "plant_spread": ("whole plant", "spread"),
    "stem_length": ("stem", "length"),
    "leaf_width": ("leaf", "width"),
    "marking": ("bloom", "marking"),
    "foliage": ("leaf", "character"),
    "scent": ("bloom", "scent"),
}
_PARENTAGE = frozenset({"seed_parent", "pollen_parent", "sport_of", "pollination", "similar_to"})
_CLASSES = {"flowering": "phenological", "health": "biotic stress"}


def _wanted(record: Record) -> bool:
    return not record.negated and record.trait not in _PARENTAGE


def _variable(record: Record) -> tuple[str, str | None]:
    return record.trait, record.part


def variable_name(trait: str, part: str | None) -> str:
    """What a variable is called: "colour of throat", "bloom diameter"."""
    plain = trait.replace("_", " ")
    return f"{plain} of {part}" if part else plain


def variable_id(trait: str, part: str | None) -> str:
    """The id of the variable of this trait (of this part)."""
    return db_id("variable", trait, part or "")


def observation_variables(overview: Overview) -> Iterator[dict[str, Any]]:
    """A variable for each trait (of each part) that was observed."""
    seen: dict[tuple[str, str | None], set[str]] = {}
    for records in overview.records.values():
        for record in filter(_wanted, records):
            seen.setdefault(_variable(record), set()).add(str(record.value))
    for (trait, part), values in sorted(seen.items(), key=lambda one: (one[0][0], one[0][1] or "")):
        name = variable_name(trait, part)
        entity, attribute = _ENTITIES.get(trait, (part or "whole plant", trait.replace("_", " ")))
        if part is not None:
            entity = part
        described: dict[str, Any] = {
            "traitDbId": db_id("trait", trait, part or ""),
            "traitName": name,
            "traitClass": _CLASSES.get(trait, "morphological"),
            "entity": entity,
            "attribute": attribute,
        }
        if entity in _ENTITY_TERMS:
            described["entityPUI"] = _OBO + _ENTITY_TERMS[entity]
        if (trait, part) in _TRAIT_TERMS:
            described["traitPUI"] = _OBO + _TRAIT_TERMS[trait, part]
        yield {
            "observationVariableDbId": variable_id(trait, part),
            "observationVariableName": name,
            "commonCropName": crop(overview),
            "language": "en",
            "trait": described,
            "method": _method(trait),
            "scale": _scale(trait, part, values),
        }


def _method(trait: str) -> dict[str, Any]:
    kind, how = "Estimation", "said while looking at the plant"
    if trait in LENGTHS:
        kind, how = "Measurement", "said while looking at or measuring the plant"
    elif trait.startswith("count_"):
        kind, how = "Counting", "counted aloud"
    return {
        "methodDbId": db_id("method", kind),
        "methodName": f"{kind} while filming",
        "methodClass": kind,
        "description": f"{how}; read from the recording",
    }


def _scale(trait: str, part: str | None, values: set[str]) -> dict[str, Any]:
    scale: dict[str, Any] = {"scaleDbId": db_id("scale", trait, part or "")}
    if trait in LENGTHS:
        return scale | {
            "scaleName": "millimetres",
            "dataType": "Numerical",
            "units": "mm",
            "validValues": {"minimumValue": "0"},
        }
    if trait.startswith("count_"):
        return scale | {
            "scaleName": "count",
            "dataType": "Numerical",
            "units": "count",
            "decimalPlaces": 0,
            "validValues": {"minimumValue": "0"},
        }
    ordinal = trait == "bloom_size"
    categories = ["small", "medium", "large"] if ordinal else sorted(values)
    return scale | {
        "scaleName": f"{variable_name(trait, part)}, in words",
        "dataType": "Ordinal" if ordinal else "Nominal",
        "validValues": {"categories": [{"label": one, "value": one} for one in categories]},
    }


def observation_units(overview: Overview) -> Iterator[dict[str, Any]]:
    """Each plant is one unit, of level "plant"."""
    for plant in overview.plants:
        if any(map(_wanted, overview.records.get(plant.plant.key, ()))):
            yield {
                "observationUnitDbId": db_id("unit", plant.plant.key),
                "observationUnitName": name_of(plant.plant.title),
                "germplasmDbId": db_id("germplasm", plant.plant.key),
                "germplasmName": name_of(plant.plant.title),
                "observationUnitPosition": {"observationLevel": {"levelName": "plant"}},
                "additionalInfo": {
                    "numbered": "no" if plant.plant.kind is PlantKind.UNNAMED else "yes"
                },
            }


def observations(overview: Overview) -> Iterator[dict[str, Any]]:
    """Every observation; its value always text, its moment and words in additionalInfo."""
    names = {walk.recording.id: walk.recording.name for walk in overview.walks}
    for key in sorted(overview.records):
        for record in filter(_wanted, overview.records[key]):
            moment = record.moment
            value = f"{record.value:g}" if isinstance(record.value, float) else str(record.value)
            entry: dict[str, Any] = {
                "observationDbId": db_id(
                    "observation", key, record.trait, record.part or "", value,
                    moment.recording, str(moment.start_ms),
                ),
                "germplasmDbId": db_id("germplasm", key),
                "germplasmName": name_of(record.plant.title),
                "observationUnitDbId": db_id("unit", key),
                "observationUnitName": name_of(record.plant.title),
                "observationVariableDbId": variable_id(record.trait, record.part),
                "observationVariableName": variable_name(record.trait, record.part),
                "value": value,
                "additionalInfo": {
                    "words": moment.text,
                    "recording": names.get(moment.recording, moment.recording),
                    "fragment": f"t={moment.start_ms / 1000:.3f},{moment.end_ms / 1000:.3f}",
                    "modifiers": " ".join(record.modifiers),
                    "hedged": "yes" if record.hedged else "no",
                    "origin": record.origin.value,
                },
            }  # fmt: skip
            if moment.day is not None:
                entry["observationTimeStamp"] = f"{moment.day.isoformat()}T00:00:00Z"
                year = str(moment.day.year)
                entry["season"] = {"seasonDbId": year, "seasonName": year, "year": moment.day.year}
            yield entry
