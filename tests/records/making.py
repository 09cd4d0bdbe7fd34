"""Recordings, readings and corrections made by hand, so that records are tested alone."""

from datetime import date
from pathlib import Path

from diary.linking.document import (
    Band,
    Clip,
    Evidence,
    Observation,
    Plant,
    PlantKind,
    Reading,
    Suggestion,
    Value,
)
from diary.records.corrections import Change, Correction, Seen
from diary.records.readings import refresh, save_reading
from diary.records.record import RecordingId, Span
from diary.records.recordings import Recording, enter_recording
from diary.records.store import Store
from diary.records.words import save_transcript
from diary.speech.transcript import Transcript, Word

RECORDING = RecordingId("a" * 64)
JUNE_2 = date(2031, 6, 2)
JUNE_20 = date(2031, 6, 20)
WHY = Evidence(rule="by hand", words="", score=1.0)


def seedling(number: str) -> Plant:
    return Plant(kind=PlantKind.SEEDLING, number=number)


def unnamed(label: str) -> Plant:
    return Plant(kind=PlantKind.UNNAMED, label=label)


def observation(
    trait: str,
    value: Value,
    start_ms: int,
    end_ms: int,
    *,
    part: str | None = None,
    unit: str | None = None,
    text: str = "",
    band: Band = Band.SURE,
    modifiers: tuple[str, ...] = (),
) -> Observation:
    return Observation(
        trait=trait,
        value=value,
        part=part,
        unit=unit,
        modifiers=modifiers,
        text=text,
        first_word=0,
        last_word=0,
        start_ms=start_ms,
        end_ms=end_ms,
        confidence=0.9 if band is Band.SURE else 0.6,
        band=band,
        evidence=WHY,
    )


def clip(
    plant: Plant,
    start_ms: int,
    end_ms: int,
    *observations: Observation,
    day: date | None = JUNE_2,
    proposals: tuple[Observation, ...] = (),
    band: Band = Band.SURE,
) -> Clip:
    return Clip(
        start_ms=start_ms,
        end_ms=end_ms,
        first_word=0,
        last_word=0,
        day=day,
        plant=plant,
        confidence=0.9 if band is Band.SURE else 0.6,
        band=band,
        observations=observations,
        proposals=proposals,
        evidence=WHY,
    )


def talk(text: str, *, every_ms: int = 500) -> Transcript:
    """Words at even times; a full stop ends a segment."""
    words, starts, fresh = [], [], True
    for index, said in enumerate(text.split()):
        if fresh:
            starts.append(index)
        fresh = said.endswith(".")
        words.append(Word(text=said, start_ms=index * every_ms, end_ms=(index + 1) * every_ms))
    return Transcript(
        words=tuple(words),
        segment_starts=tuple(starts),
        duration_ms=len(words) * every_ms,
    )


def stored(
    store: Store,
    name: str,
    words: Transcript,
    *clips: Clip,
    day: date | None = JUNE_2,
    suggestions: tuple[Suggestion, ...] = (),
) -> Recording:
    """Put a recording that was read into the store; its file is a real one, beside the diary."""
    path = store.folder.parent / f"{name}.vtt"
    path.write_text(f"WEBVTT\n\n{name}\n", encoding="utf-8")
    from diary.media.probe import content_hash

    recording_id = RecordingId(content_hash(path))
    one = enter_recording(
        store,
        path,
        recording_id=recording_id,
        kind="captions",
        duration_ms=words.duration_ms,
        recorded=day,
        recorded_from="given" if day else None,
    )
    save_transcript(store, recording_id, words, words_from="captions")
    reread(store, recording_id, Reading(clips=clips, suggestions=suggestions))
    return one


def reread(store: Store, recording_id: RecordingId, reading: Reading) -> None:
    """As if read again, with this outcome."""
    with store.db.atomic():
        save_reading(store, recording_id, reading, reader="test", words_from="captions")
        refresh(store, [recording_id])


def event(
    number: int,
    change: Change,
    start_ms: int | None = None,
    end_ms: int = 0,
    *,
    seen: Seen | None = None,
) -> Correction:
    span = None
    if start_ms is not None:
        span = Span(recording=RECORDING, start_ms=start_ms, end_ms=end_ms)
    return Correction(
        id=f"{number:06d}",
        made_at="2031-06-03T10:00:00+00:00",
        made_by="breeder",
        span=span,
        change=change,
        seen=seen or Seen(),
    )


def csv_file(folder: Path, text: str, name: str = "register.csv") -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8", newline="")
    return path
