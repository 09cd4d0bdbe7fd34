"""Readings in the store, and the records made of them with the corrections laid over."""

from collections.abc import Iterable

from diary.linking.document import Clip, Reading, Suggestion
from diary.records.clip_rows import load_clips, replace_clips
from diary.records.codec import from_json, to_json
from diary.records.correction_rows import corrections_about
from diary.records.plant_links import link_plants
from diary.records.record import RecordClip, RecordingId
from diary.records.resolve import resolve
from diary.records.store import Store, now
from diary.records.words import load_transcript
from diary.speech.transcript import Transcript


def save_reading(
    store: Store, recording_id: RecordingId, reading: Reading, *, reader: str, words_from: str
) -> None:
    """Keep what was understood of a recording; the caller refreshes, in one transaction."""
    store.db.execute(
        "INSERT OR REPLACE INTO readings "
        "(recording, reader, words_from, made_at, body, suggestions) VALUES (?, ?, ?, ?, ?, ?)",
        [
            recording_id,
            reader,
            words_from,
            now(),
            to_json(reading.clips),
            to_json(reading.suggestions),
        ],
    )


def load_reading(store: Store, recording_id: RecordingId) -> Reading:
    """What was understood of a recording, before corrections; empty if not yet read."""
    row = store.db.execute(
        "SELECT body, suggestions FROM readings WHERE recording = ?", [recording_id]
    ).fetchone()
    if row is None:
        return Reading(clips=())
    return Reading(
        clips=from_json(row[0], tuple[Clip, ...]),
        suggestions=from_json(row[1], tuple[Suggestion, ...]),
    )


def all_suggestions(store: Store) -> list[tuple[RecordingId, Suggestion]]:
    """What was heard anywhere that belongs into the register."""
    return [
        (RecordingId(recording_id), suggestion)
        for recording_id, body in store.db.execute(
            "SELECT r.recording, r.suggestions FROM readings r JOIN recordings g "
            "ON g.id = r.recording AND g.removed_at IS NULL WHERE r.suggestions != '[]' "
            "ORDER BY g.recorded, g.added_at"
        )
        for suggestion in from_json(body, tuple[Suggestion, ...])
    ]


def walk_of(store: Store, recording_id: RecordingId) -> RecordingId:
    """The first recording of the walk that this one is a part of."""
    seen = {recording_id}
    while True:
        row = store.db.execute(
            "SELECT joins FROM recordings WHERE id = ?", [recording_id]
        ).fetchone()
        if row is None or row[0] is None or row[0] in seen:
            return recording_id
        recording_id = RecordingId(row[0])
        seen.add(recording_id)


def refresh(store: Store, recording_ids: Iterable[RecordingId]) -> None:
    """Make the records of these recordings anew; the caller holds the transaction."""
    for recording_id in recording_ids:
        row = store.db.execute(
            "SELECT r.reader FROM recordings g LEFT JOIN readings r ON r.recording = g.id "
            "WHERE g.id = ?",
            [recording_id],
        ).fetchone()
        if row is None:
            continue  # corrections of a recording that is not in this diary (yet)
        resolved = resolve(
            load_reading(store, recording_id),
            corrections_about(store, recording_id),
            recording=recording_id,
            transcript=load_transcript(store, recording_id) or Transcript(words=()),
            walk=walk_of(store, recording_id),
        )
        replace_clips(store, recording_id, resolved.clips, reader=row[0] or "")
        store.db.execute("DELETE FROM placements WHERE recording = ?", [recording_id])
        store.db.conn.executemany(
            "INSERT OR REPLACE INTO placements (correction, recording, state) VALUES (?, ?, ?)",
            [
                (correction_id, recording_id, state)
                for state, ids in (("applied", resolved.applied), ("unplaced", resolved.unplaced))
                for correction_id in ids
            ],
        )
    link_plants(store)


def clips(store: Store, recording_id: RecordingId) -> tuple[RecordClip, ...]:
    """The clips of a recording with corrections applied, in order of time."""
    return load_clips(store, "c.recording = ?", [recording_id])
