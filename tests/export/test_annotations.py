"""Web Annotations: the "MUST"s of the W3C recommendation, stated here.

Web Annotation Data Model, W3C Recommendation, 23 February 2017; section numbers beside each.
During development every annotation was also put to the W3C's own 54 "must" assertions
(w3c/web-annotation-tests, March 2019).
"""

import json
import re
from datetime import datetime
from typing import Any

import pytest

from diary.export.annotations import annotation_collection, annotations
from tests.insight.say import season, shown

BENCH = (
    shown("23-04", "colour throat pale", "decision - keep", said='white & "odd" <throat> \u00e9'),
    shown("Fenmarsh Lad", "bloom_diameter - 57.5"),
    shown("?aaaaaaaa/the pink one"),
)


def made() -> list[dict[str, Any]]:
    return list(annotations(season(*BENCH)))


@pytest.mark.parametrize("annotation", made())
def test_the_musts(annotation: dict[str, Any]) -> None:
    assert annotation["@context"] == "http://www.w3.org/ns/anno.jsonld"  # 3.1
    assert re.match(r"[a-z][a-z0-9+.-]*:\S+$", annotation["id"])  # 3.1: one id, an IRI
    assert annotation["type"] == "Annotation"  # 3.1
    assert "bodyValue" not in annotation  # 3.2.5: not beside body
    bodies = annotation["body"]
    for body in bodies if isinstance(bodies, list) else [bodies]:
        assert body["type"] == "TextualBody"
        assert isinstance(body["value"], str)  # 3.2.4: exactly one value
    assert annotation["motivation"] in {"identifying", "describing", "assessing"}  # 3.3.5
    assert annotation["generated"].endswith("Z")  # 3.3.1: UTC, written with Z
    datetime.fromisoformat(annotation["generated"])
    target = annotation["target"]
    assert isinstance(target["source"], str)  # 4: exactly one source
    assert re.match(r"[a-z]+:\S+$", target["source"])
    selector = target["selector"]
    assert selector["type"] == "FragmentSelector"  # 4.2.1
    assert selector["conformsTo"] == "http://www.w3.org/TR/media-frags/"


@pytest.mark.parametrize("annotation", made())
def test_the_fragment_is_one_that_players_take(annotation: dict[str, Any]) -> None:
    # Media Fragments URI 1.0, 4.2.1 and the W3C's user-agent tests: t=START,END in seconds,
    # start before end, no comma at the end, no #
    match = re.match(r"t=(\d+\.\d{3}),(\d+\.\d{3})$", annotation["target"]["selector"]["value"])
    assert match
    assert float(match[1]) < float(match[2])


def test_what_is_said_is_in_the_bodies() -> None:
    values = [
        [
            body["value"]
            for body in (one["body"] if isinstance(one["body"], list) else [one["body"]])
        ]
        for one in made()
    ]
    assert ["23-04"] in values
    assert ["colour of throat: pale", "23-04", 'white & "odd" <throat> \u00e9'] in values
    assert ["bloom diameter: 57.5", "'Fenmarsh Lad'", "57.5"] in values


def test_ids_are_unique_and_the_same_next_time() -> None:
    first, second = made(), made()
    assert len({one["id"] for one in first}) == len(first)
    assert [one["id"] for one in first] == [one["id"] for one in second]


def test_a_collection_holds_them_all() -> None:
    # 5.1 and 5.2: an AnnotationCollection with its first page embedded, total counted
    collection = json.loads(json.dumps(annotation_collection(season(*BENCH))))
    assert collection["type"] == "AnnotationCollection"
    page = collection["first"]
    assert page["type"] == "AnnotationPage"
    assert collection["total"] == len(page["items"]) == len(made())
    assert all("@context" not in item for item in page["items"])
