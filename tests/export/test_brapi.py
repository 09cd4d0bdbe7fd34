"""BrAPI 2.1: required fields, enumerations and references, stated here.

Source: BrAPI 2.1 (released 1 July 2022), plantbreeding/API, `Specification/`; during development
the documents were also put to the JSON Schemas of plantbreeding/brapi-schema-tools (June 2026).
"""

import json
import re
from typing import Any

import pytest

from diary.export.brapi import CALLS, brapi_documents
from diary.records.register import Cross, NamedPlant, Seedling
from tests.insight.say import season, shown

REQUIRED = {
    "germplasm": ("germplasmDbId", "germplasmName", "germplasmPUI", "commonCropName"),
    "crossingprojects": ("crossingProjectDbId", "crossingProjectName"),
    "crosses": ("crossDbId",),
    "pedigree": ("germplasmDbId", "germplasmName"),
    "variables": (
        "observationVariableDbId",
        "observationVariableName",
        "trait",
        "method",
        "scale",
    ),
    "observationunits": ("observationUnitDbId", "observationUnitName"),
    "observations": ("observationDbId", "value", "observationVariableDbId", "germplasmDbId"),
}
CROSS_TYPES = {
    "BIPARENTAL",
    "SELF",
    "OPEN_POLLINATED",
    "BULK",
    "BULK_SELFED",
    "BULK_OPEN_POLLINATED",
    "DOUBLE_HAPLOID",
}
DATA_TYPES = {"Code", "Date", "Duration", "Nominal", "Numerical", "Ordinal", "Text"}


@pytest.fixture(scope="module")
def documents() -> dict[str, list[dict[str, Any]]]:
    overview = season(
        shown(
            "17.3",
            "colour throat yellow pale",
            "bloom_diameter - 57.5",
            "decision - keep",
            "count_heads - 3",
            "similar_to - 22.6",
        ),
        shown("22.4", "bloom_size - large", said="whopper"),
        shown("9.2", "pollination - open"),
        shown("?aaaaaaaa/the sport", "sport_of - Nettlefold", "colour edge white"),
        seedlings=(
            Seedling(
                number="17.3",
                cross="17",
                seed_parent="Lady Wexcombe",
                pollen_parent="Inkwell Lane",
                former=("17/3",),
                sown="2029-03",
                extra=(("pot", "9 cm"),),
            ),
            Seedling(number="22.4", seed_parent="17.3", pollen_parent="17.3"),
            Seedling(number="9.2", seed_parent="Thrumby Bell"),
        ),
        crosses=(
            Cross(
                code="17",
                seed_parent="Lady Wexcombe",
                pollen_parent="Inkwell Lane",
                day="2028-06-02",
                seeds_sown=60,
                germinated=41,
            ),
        ),
        named=(NamedPlant(name="Inkwell Lane", synonyms=("Inky",)),),
    )
    answers = json.loads(json.dumps(brapi_documents(overview)))
    assert tuple(answers) == CALLS
    for answer in answers.values():
        pages = answer["metadata"]["pagination"]
        assert (pages["currentPage"], pages["totalPages"]) == (0, 1)
        assert pages["totalCount"] == len(answer["result"]["data"])
        assert answer["metadata"]["status"] == []
        assert answer["metadata"]["datafiles"] == []
    return {name: answer["result"]["data"] for name, answer in answers.items()}


def fields(value: Any) -> set[str]:
    """Every field name in a document."""
    if isinstance(value, dict):
        return set(value) | {name for one in value.values() for name in fields(one)}
    if isinstance(value, list):
        return {name for one in value for name in fields(one)}
    return set()


@pytest.mark.parametrize("call", CALLS)
def test_required_fields_are_filled(documents: dict[str, Any], call: str) -> None:
    assert documents[call]
    for row in documents[call]:
        for field in REQUIRED[call]:
            assert row.get(field), (call, field, row)
        assert not fields(row) & {"referenceID", "min", "max"}


def test_ids_are_unique_and_references_lead_somewhere(documents: dict[str, Any]) -> None:
    plants = {row["germplasmDbId"] for row in documents["germplasm"]}
    assert len(plants) == len(documents["germplasm"])
    variables = {row["observationVariableDbId"] for row in documents["variables"]}
    units = {row["observationUnitDbId"] for row in documents["observationunits"]}
    for row in documents["observations"]:
        assert row["germplasmDbId"] in plants
        assert row["observationVariableDbId"] in variables
        assert row["observationUnitDbId"] in units
    for row in documents["crosses"]:
        for side in ("parent1", "parent2"):
            assert side not in row or row[side]["germplasmDbId"] in plants
    for row in documents["pedigree"]:
        for other in (*row["parents"], *row["progeny"]):
            assert other["germplasmDbId"] in plants


def test_observations_are_text_with_iso_times(documents: dict[str, Any]) -> None:
    values = {row["observationVariableName"]: row["value"] for row in documents["observations"]}
    assert values["bloom diameter"] == "57.5"
    assert values["count heads"] == "3"
    for row in documents["observations"]:
        assert isinstance(row["value"], str)
        assert re.match(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$", row["observationTimeStamp"])
        assert row["season"]["seasonDbId"] == "2031"
        assert all(isinstance(value, str) for value in row["additionalInfo"].values())
    assert "similar to" not in values


def test_variables_have_scales_of_the_standard(documents: dict[str, Any]) -> None:
    scales = {row["observationVariableName"]: row["scale"] for row in documents["variables"]}
    assert {scale["dataType"] for scale in scales.values()} <= DATA_TYPES
    assert scales["bloom diameter"]["units"] == "mm"
    assert scales["bloom size"]["dataType"] == "Ordinal"
    colours = scales["colour of throat"]["validValues"]["categories"]
    assert colours == [{"label": "yellow", "value": "yellow"}]
    traits = {row["observationVariableName"]: row["trait"] for row in documents["variables"]}
    assert traits["colour of throat"]["entity"] == "throat"
    # Trait Ontology: flower diameter
    assert traits["bloom diameter"]["traitPUI"].endswith("TO_0000858")
    methods = {row["method"]["methodClass"] for row in documents["variables"]}
    assert methods <= {"Measurement", "Counting", "Estimation", "Computation"}


def test_crosses_by_kind(documents: dict[str, Any]) -> None:
    crosses = {row["crossName"]: row for row in documents["crosses"]}
    assert {row["crossType"] for row in crosses.values()} <= CROSS_TYPES
    first = crosses["17"]
    assert first["crossType"] == "BIPARENTAL"
    assert (first["parent1"]["parentType"], first["parent2"]["parentType"]) == ("FEMALE", "MALE")
    assert first["parent1"]["germplasmName"] == "Lady Wexcombe"
    # the time stamp belongs to the event; on the cross itself it is deprecated in 2.1
    assert first["pollinationEvents"][0]["pollinationTimeStamp"] == "2028-06-02T00:00:00Z"
    assert "pollinationTimeStamp" not in first
    assert {"crossAttributeName": "seeds sown", "crossAttributeValue": "60"} in first[
        "crossAttributes"
    ]
    assert crosses["17.3 selfed"]["crossType"] == "SELF"
    assert crosses["17.3 selfed"]["parent1"]["parentType"] == "SELF"
    open_pollinated = crosses["'Thrumby Bell' \u00d7 unknown"]
    assert open_pollinated["crossType"] == "OPEN_POLLINATED"
    assert "parent2" not in open_pollinated


def test_germplasm_status_and_pedigree(documents: dict[str, Any]) -> None:
    # MCPD 2.1, 19 SAMPSTAT: 415 segregating, 416 clonal selection, 421 mutant, 500 cultivar
    plants = {row["germplasmName"]: row for row in documents["germplasm"]}
    codes = {name: row["biologicalStatusOfAccessionCode"] for name, row in plants.items()}
    assert codes["17.3"] == "416"
    assert codes["22.4"] == "415"
    assert codes["?aaaaaaaa/the sport"] == "421"
    assert codes["Inkwell Lane"] == "500"
    assert plants["17.3"]["pedigree"] == "Lady Wexcombe/Inkwell Lane"
    assert plants["9.2"]["pedigree"] == "Thrumby Bell/UNKNOWN"
    assert plants["17.3"]["synonyms"] == [{"synonym": "17/3", "type": "former number"}]
    assert plants["17.3"]["additionalInfo"]["pot"] == "9 cm"
    assert plants["Inkwell Lane"]["synonyms"] == [{"synonym": "Inky", "type": "synonym"}]
    assert plants["17.3"]["commonCropName"] == "pelargonium"


def test_pedigree_nodes(documents: dict[str, Any]) -> None:
    nodes = {row["germplasmName"]: row for row in documents["pedigree"]}
    selfed = nodes["22.4"]
    assert [parent["parentType"] for parent in selfed["parents"]] == ["SELF"]
    # Purdy notation (Crop Science 8, 1968, 405-406)
    assert selfed["pedigreeString"] == "Lady Wexcombe/Inkwell Lane//Lady Wexcombe/Inkwell Lane"
    sport = nodes["?aaaaaaaa/the sport"]
    assert [parent["parentType"] for parent in sport["parents"]] == ["CLONAL"]
    assert {child["germplasmName"] for child in nodes["Inkwell Lane"]["progeny"]} == {"17.3"}
