"""What was said, as W3C Web Annotations on stretches of the recordings. Pure.

Web Annotation Data Model, W3C Recommendation of 23 February 2017; a stretch is a fragment
selector by Media Fragments URI 1.0 (25 September 2012), always `t=START,END` in seconds.
"""

from collections.abc import Iterator
from typing import Any
from uuid import UUID, uuid5

from diary.insight.names import written
from diary.insight.overview import Overview
from diary.linking.document import PlantKind
from diary.records.record import PlantRef, Record, RecordClip
from diary.records.recordings import Recording

CONTEXT = "http://www.w3.org/ns/anno.jsonld"
MEDIA_FRAGMENTS = "http://www.w3.org/TR/media-frags/"

# names everything this program exports; chosen once, at random
NAMESPACE = UUID("6f0b7c52-5f0d-4d44-9c4e-8f3f1b2f6f27")


def annotation_collection(overview: Overview) -> dict[str, Any]:
    """All annotations as an AnnotationCollection of one page (section 5)."""
    items = list(annotations(overview))
    own_id = _urn("collection", *(walk.recording.id for walk in overview.walks))
    page: dict[str, Any] = {
        "id": f"{own_id}#page1",
        "type": "AnnotationPage",
        "startIndex": 0,
        "items": [{key: item[key] for key in item if key != "@context"} for item in items],
    }
    return {
        "@context": CONTEXT,
        "id": own_id,
        "type": "AnnotationCollection",
        "label": "What was said of each plant",
        "total": len(items),
        "first": page,
    }


def annotations(overview: Overview) -> Iterator[dict[str, Any]]:
    """One annotation a clip (which plant it shows) and one an observation, by time."""
    for walk in overview.walks:
        if walk.recording.kind not in ("video", "audio"):
            continue  # a note or a caption file has no stretch of media to point at
        for clip in walk.clips:
            yield _of_clip(walk.recording, clip)
            for record in clip.records:
                if not record.negated:
                    yield _of_record(walk.recording, record)


def _of_clip(recording: Recording, clip: RecordClip) -> dict[str, Any]:
    return _annotation(
        recording,
        clip.moment.start_ms,
        clip.moment.end_ms,
        motivation="identifying",
        key=("clip", clip.plant.key),
        bodies=[_text(_plant(clip.plant), "identifying")],
    )


def _of_record(recording: Recording, record: Record) -> dict[str, Any]:
    said = _said(record)
    bodies = [_text(said, "describing"), _text(_plant(record.plant), "identifying")]
    if record.moment.text:
        bodies.append(_text(record.moment.text, "commenting"))
    return _annotation(
        recording,
        record.moment.start_ms,
        record.moment.end_ms,
        motivation="assessing" if record.trait == "decision" else "describing",
        key=("record", record.plant.key, said),
        bodies=bodies,
    )


def _annotation(
    recording: Recording,
    start_ms: int,
    end_ms: int,
    *,
    motivation: str,
    key: tuple[str, ...],
    bodies: list[dict[str, Any]],
) -> dict[str, Any]:
    value = f"t={start_ms / 1000:.3f},{max(end_ms, start_ms + 1) / 1000:.3f}"
    return {
        "@context": CONTEXT,
        "id": _urn(recording.id, str(start_ms), str(end_ms), *key),
        "type": "Annotation",
        "motivation": motivation,
        "generated": utc(recording.added_at),
        "body": bodies[0] if len(bodies) == 1 else bodies,
        "target": {
            "type": "SpecificResource",
            "source": recording.path.absolute().as_uri(),
            "selector": {
                "type": "FragmentSelector",
                "conformsTo": MEDIA_FRAGMENTS,
                "value": value,
            },
        },
    }


def _text(value: str, purpose: str) -> dict[str, Any]:
    return {
        "type": "TextualBody",
        "value": value,
        "format": "text/plain",
        "language": "en",
        "purpose": purpose,
    }


def _plant(plant: PlantRef) -> str:
    return plant.title if plant.kind is PlantKind.UNNAMED else written(plant.title)


def _said(record: Record) -> str:
    """An observation in words: "colour of throat: pale lemon", "bloom diameter: 50 mm"."""
    name = record.trait.replace("_", " ") + (f" of {record.part}" if record.part else "")
    unit = f" {record.unit}" if record.unit and record.unit != "count" else ""
    value = f"{record.value:g}" if isinstance(record.value, float) else str(record.value)
    shade = " ".join((*record.modifiers, value))
    return f"{name}: {shade}{unit}"


def utc(stamp: str) -> str:
    """An ISO 8601 time in UTC, ending in Z as the model asks (3.3.1)."""
    return stamp.replace("+00:00", "").removesuffix("Z") + "Z"


def _urn(*parts: str) -> str:
    """The same name for the same thing, at every export."""
    return f"urn:uuid:{uuid5(NAMESPACE, chr(31).join(parts))}"
