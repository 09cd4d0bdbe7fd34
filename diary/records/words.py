"""The words of a recording in the store: blocks as they are heard, then the whole transcript."""

import json
from collections.abc import Iterator
from datetime import date

from diary.records.record import RecordingId
from diary.records.store import Store, now
from diary.speech.block import Block, block_from_json, block_to_json
from diary.speech.transcript import Clock, DateMark, Transcript, Word

LONGEST_UTTERANCE = 30  # words; what search shows as one place


def save_block(store: Store, recording_id: RecordingId, block: Block) -> None:
    """Keep one stretch that was heard, at once and for good."""
    with store.db.atomic():
        store.db.execute(
            "INSERT OR REPLACE INTO blocks (recording, position, end_ms, settings, hints, body) "
            "VALUES (?, ?, ?, ?, ?, ?)",
            [
                recording_id,
                block.index,
                block.end_ms,
                block.settings,
                block.hints,
                block_to_json(block),
            ],
        )


def blocks(store: Store, recording_id: RecordingId) -> tuple[Block, ...]:
    """The stretches heard so far, in order."""
    rows = store.db.execute(
        "SELECT body FROM blocks WHERE recording = ? ORDER BY position", [recording_id]
    )
    return tuple(block_from_json(body) for (body,) in rows)


def trim_blocks(store: Store, recording_id: RecordingId, count: int) -> None:
    """Drop blocks left from an earlier listening that went on for longer."""
    with store.db.atomic():
        store.db.execute(
            "DELETE FROM blocks WHERE recording = ? AND position >= ?", [recording_id, count]
        )


def save_transcript(
    store: Store, recording_id: RecordingId, words: Transcript, *, words_from: str
) -> None:
    """Keep the words of a whole recording, and make them findable."""
    with store.db.atomic():
        store.db.execute(
            "INSERT OR REPLACE INTO transcripts (recording, words_from, made_at, body) "
            "VALUES (?, ?, ?, ?)",
            [recording_id, words_from, now(), transcript_to_json(words)],
        )
        if words.clock is Clock.SECONDS and words.duration_ms is not None:
            store.db.execute(
                "UPDATE recordings SET duration_ms = ? WHERE id = ? AND duration_ms IS NULL",
                [words.duration_ms, recording_id],
            )
        store.db.execute("DELETE FROM utterances WHERE recording = ?", [recording_id])
        store.db.conn.executemany(
            "INSERT INTO utterances (recording, start_ms, end_ms, text) VALUES (?, ?, ?, ?)",
            [
                (recording_id, said[0].start_ms, said[-1].end_ms, " ".join(w.text for w in said))
                for said in utterances(words)
            ],
        )


def load_transcript(store: Store, recording_id: RecordingId) -> Transcript | None:
    """The words of a recording, None before they are all there."""
    row = store.db.execute(
        "SELECT body FROM transcripts WHERE recording = ?", [recording_id]
    ).fetchone()
    return None if row is None else transcript_from_json(row[0])


def utterances(words: Transcript) -> Iterator[tuple[Word, ...]]:
    """The transcript in segments, long ones cut."""
    starts = words.segment_starts or ((0,) if words.words else ())
    for first, after in zip(starts, (*starts[1:], len(words.words)), strict=True):
        for cut in range(first, after, LONGEST_UTTERANCE):
            yield words.words[cut : min(after, cut + LONGEST_UTTERANCE)]


def transcript_to_json(words: Transcript) -> str:
    """A transcript as compact JSON: an hour of talk is about half a megabyte."""
    return json.dumps(
        {
            "words": [[w.text, w.start_ms, w.end_ms, w.confidence] for w in words.words],
            "segment_starts": words.segment_starts,
            "duration_ms": words.duration_ms,
            "clock": words.clock.value,
            "dates": [[mark.at_ms, mark.day.isoformat()] for mark in words.dates],
        },
        ensure_ascii=False,
    )


def transcript_from_json(text: str) -> Transcript:
    """The transcript that `transcript_to_json` wrote."""
    row = json.loads(text)
    return Transcript(
        words=tuple(
            Word(text=said, start_ms=start, end_ms=end, confidence=confidence)
            for said, start, end, confidence in row["words"]
        ),
        segment_starts=tuple(row["segment_starts"]),
        duration_ms=row["duration_ms"],
        clock=Clock(row["clock"]),
        dates=tuple(
            DateMark(at_ms=at_ms, day=date.fromisoformat(day)) for at_ms, day in row["dates"]
        ),
    )
