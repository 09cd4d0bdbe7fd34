"""Clips and records as rows of the store: written by `refresh`, read by every view."""

from collections.abc import Iterable, Sequence
from datetime import date
from typing import Any

from diary.linking.document import Band, Evidence, PlantKind
from diary.records.codec import from_json, to_json
from diary.records.record import Heard, Moment, Origin, PlantRef, Record, RecordClip, RecordingId
from diary.records.store import Store

_CLIPS = (
    "recording, reader, own_key, own_kind, start_ms, end_ms, day, text, confidence, band, "
    "origin, heard_plant, evidence, corrections"
)
_RECORDS = (
    "clip, recording, proposal, trait, part, value, unit, modifiers, petals, day, start_ms, "
    "end_ms, text, hedged, negated, confidence, band, origin, heard, evidence, corrections, "
    "doubtful"
)

# by their text: looking an Enum up by value is a fifth of the time of loading a season
_BANDS = {band.value: band for band in Band}
_ORIGINS = {origin.value: origin for origin in Origin}
_KINDS = {kind.value: kind for kind in PlantKind}


def _marks(columns: str) -> str:
    return ", ".join("?" for _ in columns.split(","))


def replace_clips(
    store: Store, recording_id: RecordingId, clips: Iterable[RecordClip], *, reader: str
) -> None:
    """Put these clips in the place of a recording's; the caller holds the transaction."""
    store.db.execute("DELETE FROM clips WHERE recording = ?", [recording_id])
    for clip in clips:
        moment = clip.moment
        row = (
            recording_id,
            reader,
            clip.plant.key,
            clip.plant.kind.value,
            moment.start_ms,
            moment.end_ms,
            moment.day.isoformat() if moment.day else None,
            moment.text,
            clip.confidence,
            clip.band.value,
            clip.origin.value,
            clip.heard_plant,
            to_json(clip.evidence),
            to_json(clip.corrections),
        )
        cursor = store.db.conn.execute(
            f"INSERT INTO clips ({_CLIPS}) VALUES ({_marks(_CLIPS)})", row
        )
        clip_id = cursor.lastrowid
        store.db.conn.executemany(
            f"INSERT INTO records ({_RECORDS}) VALUES ({_marks(_RECORDS)})",
            [
                _record_row(clip_id, record, proposal=proposal)
                for proposal, records in ((False, clip.records), (True, clip.proposals))
                for record in records
            ],
        )


def _record_row(clip_id: int | None, record: Record, *, proposal: bool) -> tuple[Any, ...]:
    moment = record.moment
    return (
        clip_id,
        moment.recording,
        int(proposal),
        record.trait,
        record.part,
        record.value,
        record.unit,
        to_json(record.modifiers),
        to_json(record.on),
        moment.day.isoformat() if moment.day else None,
        moment.start_ms,
        moment.end_ms,
        moment.text,
        int(record.hedged),
        int(record.negated),
        record.confidence,
        record.band.value,
        record.origin.value,
        to_json(record.heard),
        to_json(record.evidence),
        to_json(record.corrections),
        int(record.doubtful),
    )


def load_clips(
    store: Store, where: str = "1", values: Sequence[object] = ()
) -> tuple[RecordClip, ...]:
    """The clips that `where` chooses (columns of c, a clip, and k, its plant), by day and time.

    Clips of removed recordings are left out.
    """
    chosen = (
        "JOIN plant_keys k ON k.own_key = c.own_key "
        "JOIN recordings g ON g.id = c.recording AND g.removed_at IS NULL "
        f"WHERE {where}"
    )
    records: dict[int, list[tuple[bool, Record]]] = {}
    for row in store.db.execute(
        "SELECT r.clip, r.proposal, k.kind, k.key, k.title, r.recording, r.start_ms, r.end_ms, "
        "r.day, r.text, r.trait, r.value, r.part, r.unit, r.modifiers, r.petals, r.hedged, "
        "r.negated, r.confidence, r.band, r.origin, r.doubtful, r.heard, r.evidence, "
        f"r.corrections FROM clips c JOIN records r ON r.clip = c.id {chosen} "
        "ORDER BY r.start_ms, r.id",
        values,
    ):
        records.setdefault(row[0], []).append((bool(row[1]), record_of(row[2:])))
    clips = store.db.execute(
        "SELECT c.id, k.kind, k.key, k.title, c.recording, c.start_ms, c.end_ms, c.day, c.text, "
        "c.confidence, c.band, c.origin, c.heard_plant, c.evidence, c.corrections "
        f"FROM clips c {chosen} ORDER BY c.day IS NULL, c.day, g.added_at, c.recording, c.start_ms",
        values,
    )
    return tuple(_clip(row, records.get(row[0], [])) for row in clips)


def _clip(row: tuple[Any, ...], records: list[tuple[bool, Record]]) -> RecordClip:
    return RecordClip(
        plant=plant_of(row[1:4]),
        moment=moment_of(row[4:9]),
        confidence=row[9],
        band=_BANDS[row[10]],
        origin=_ORIGINS[row[11]],
        heard_plant=row[12],
        evidence=from_json(row[13], Evidence) if row[13] != "null" else None,
        corrections=from_json(row[14], tuple[str, ...]),
        records=tuple(record for proposal, record in records if not proposal),
        proposals=tuple(record for proposal, record in records if proposal),
    )


def plant_of(row: Sequence[Any]) -> PlantRef:
    """From kind, key, title."""
    return PlantRef(kind=_KINDS[row[0]], key=row[1], title=row[2])


def moment_of(row: Sequence[Any]) -> Moment:
    """From recording, start_ms, end_ms, day, text."""
    return Moment(
        recording=RecordingId(row[0]),
        start_ms=row[1],
        end_ms=row[2],
        day=date.fromisoformat(row[3]) if row[3] else None,
        text=row[4],
    )


def record_of(row: Sequence[Any]) -> Record:
    """From the columns of a plant, a moment, then trait ... doubtful, and as far as there are
    any: heard, evidence, corrections."""
    heard = row[20] if len(row) > 20 else "null"
    evidence = row[21] if len(row) > 21 else "null"
    corrections = row[22] if len(row) > 22 else "[]"
    return Record(
        plant=plant_of(row[0:3]),
        moment=moment_of(row[3:8]),
        trait=row[8],
        value=row[9],
        part=row[10],
        unit=row[11],
        modifiers=from_json(row[12], tuple[str, ...]) if row[12] != "[]" else (),
        on=from_json(row[13], tuple[str, ...]) if row[13] != "[]" else (),
        hedged=bool(row[14]),
        negated=bool(row[15]),
        confidence=row[16],
        band=_BANDS[row[17]],
        origin=_ORIGINS[row[18]],
        doubtful=bool(row[19]),
        heard=from_json(heard, Heard) if heard != "null" else None,
        evidence=from_json(evidence, Evidence) if evidence != "null" else None,
        corrections=from_json(corrections, tuple[str, ...]),
    )
