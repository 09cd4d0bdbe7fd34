"""Corrections as rows: loaded and added to, never changed. The database sees to that itself."""

import secrets
import time
from typing import Any

from diary.records.codec import from_json, to_json
from diary.records.corrections import KINDS, Correction, Seen
from diary.records.record import RecordingId, Span
from diary.records.store import Store

_COLUMNS = "id, made_at, made_by, recording, start_ms, end_ms, kind, change, seen"


def _correction(row: tuple[Any, ...]) -> Correction:
    identity, made_at, made_by, recording, start_ms, end_ms, kind, change, seen = row
    span = None
    if recording is not None:
        span = Span(recording=RecordingId(recording), start_ms=start_ms, end_ms=end_ms)
    return Correction(
        id=identity,
        made_at=made_at,
        made_by=made_by,
        span=span,
        change=from_json(change, KINDS[kind]),
        seen=from_json(seen, Seen),
    )


def all_corrections(store: Store) -> tuple[Correction, ...]:
    """Every event, oldest first."""
    rows = store.db.execute(f"SELECT {_COLUMNS} FROM corrections ORDER BY id")
    return tuple(_correction(row) for row in rows)


def corrections_about(store: Store, recording_id: RecordingId) -> tuple[Correction, ...]:
    """The events that point into one recording, and every Withdraw, oldest first."""
    rows = store.db.execute(
        f"SELECT {_COLUMNS} FROM corrections WHERE recording = ? OR kind = 'Withdraw' ORDER BY id",
        [recording_id],
    )
    return tuple(_correction(row) for row in rows)


def corrections_of_kind(store: Store, *kinds: str) -> tuple[Correction, ...]:
    """The events of these kinds, and every Withdraw, oldest first."""
    marks = ", ".join("?" for _ in kinds)
    rows = store.db.execute(
        f"SELECT {_COLUMNS} FROM corrections "
        f"WHERE kind IN ({marks}) OR kind = 'Withdraw' ORDER BY id",
        list(kinds),
    )
    return tuple(_correction(row) for row in rows)


def has_correction(store: Store, correction_id: str) -> bool:
    """Whether an event of this id is here."""
    found = store.db.execute("SELECT 1 FROM corrections WHERE id = ?", [correction_id])
    return found.fetchone() is not None


def append(store: Store, correction: Correction) -> None:
    """Add one event; the caller holds the transaction."""
    span = correction.span
    store.db.execute(
        f"INSERT INTO corrections ({_COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        [
            correction.id,
            correction.made_at,
            correction.made_by,
            span.recording if span else None,
            span.start_ms if span else None,
            span.end_ms if span else None,
            type(correction.change).__name__,
            to_json(correction.change),
            to_json(correction.seen),
        ],
    )


def next_id(store: Store) -> str:
    """An id later than every one here: milliseconds since 1970, and chance, in hex.

    Unique beyond this diary, so that journals of two diaries can be brought together.
    """
    last = store.db.execute("SELECT max(id) FROM corrections").fetchone()[0] or ""
    moment = time.time_ns() // 1_000_000
    if last[:12] >= f"{moment:012x}":
        moment = int(last[:12], 16) + 1  # a clock set back must not put events out of order
    return f"{moment:012x}-{secrets.token_hex(5)}"
