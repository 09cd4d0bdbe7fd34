"""The order of the stages and nothing else: a file in, a recording read and stored."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from diary.errors import MediaError
from diary.media.clockface import moment_in_name
from diary.media.kind import SourceKind, captions_beside, kind_of
from diary.media.probe import content_hash, probe
from diary.reading.known import Known
from diary.records.joined import join, part_of
from diary.records.known import known
from diary.records.readings import refresh, save_reading
from diary.records.record import RecordingId
from diary.records.recordings import (
    Recording,
    enter_recording,
    locate,
    recording,
    recordings,
    walk,
)
from diary.records.store import Store
from diary.records.words import blocks, load_transcript, save_block, save_transcript, trim_blocks
from diary.speech.hints import Hints
from diary.speech.settings import SpeechSettings
from diary.speech.transcript import Transcript


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a long step has come.

    `stage` is "looking", "listening", "reading" or "done". `share` is 0..1 of the audio's
    time, which lasts `length_ms`; `speed` is seconds of audio a second of work; `left_s` is
    the time left. None where not known.
    """

    stage: str
    name: str
    share: float | None = None
    length_ms: int | None = None
    speed: float | None = None
    left_s: float | None = None


Report = Callable[[Progress], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Added:
    """What adding a file did. `new` is false if the same content was here already.

    `missing` are sentences about stretches that could not be heard.
    """

    recording: Recording
    new: bool
    missing: tuple[str, ...] = ()


def add(
    store: Store,
    path: Path,
    *,
    speech: SpeechSettings | None = None,
    recorded: date | None = None,
    title: str | None = None,
    group: str | None = None,
    use_captions: bool = False,
    report: Report | None = None,
) -> Added:
    """Add a recording, captions or a note; go on with one that was interrupted.

    Idempotent by content. `use_captions` takes captions of the same name beside a media
    file instead of recognition. Raises MediaError, ModelError, StoreError.
    """
    tell = report or _nobody
    path = path.expanduser().absolute()
    if not path.is_file():
        raise MediaError(f"{path}: no such file. Check the name, or whether the card is in.")
    tell(Progress(stage="looking", name=path.name))
    one = _known(store, RecordingId(content_hash(path)))
    new = one is None
    if one is None or one.removed:
        one = _enter(store, path, recorded=recorded, title=title, group=group)
        new = True
    elif one.path != path and not one.path.is_file():
        one = _enter(store, path)  # it was moved: note where it is now
    missing: tuple[str, ...] = ()
    if not one.complete:
        missing = _listen(store, one, path, speech=speech, use_captions=use_captions, tell=tell)
    if not one.complete or one.reader is None or new:
        tell(Progress(stage="reading", name=one.name))
        _read(store, one.id, known(store))
    tell(Progress(stage="done", name=one.name, share=1.0))
    return Added(recording=recording(store, one.id), new=new, missing=missing)


def read_again(
    store: Store,
    which: RecordingId | None = None,
    *,
    speech: SpeechSettings | None = None,
    report: Report | None = None,
) -> tuple[Recording, ...]:
    """Read the words anew (all recordings, or one); every correction is kept.

    With `speech`, media files are listened to again first; what was heard before is kept
    until the new words are all there.
    """
    tell = report or _nobody
    chosen = [recording(store, which)] if which else list(recordings(store))
    for one in chosen:
        listened_to = one.kind in ("video", "audio")
        if listened_to and (speech is not None or not one.complete):
            path = locate(store, one.id)
            _listen(store, one, path, speech=speech, use_captions=False, tell=tell)
    on_record = known(store)
    done: set[RecordingId] = set()
    for one in chosen:
        if one.id not in done:
            tell(Progress(stage="reading", name=one.name))
            done |= _read(store, one.id, on_record)
    for one in chosen:
        tell(Progress(stage="done", name=one.name, share=1.0))
    return tuple(recording(store, one.id) for one in chosen)


def _nobody(progress: Progress) -> None:
    """Nobody wants to know."""


def _known(store: Store, recording_id: RecordingId) -> Recording | None:
    return next((one for one in recordings(store, removed=True) if one.id == recording_id), None)


def _enter(
    store: Store,
    path: Path,
    *,
    recorded: date | None = None,
    title: str | None = None,
    group: str | None = None,
) -> Recording:
    named = moment_in_name(path.name)
    in_name = named.date() if named else None
    kind, duration_ms, day, told_by = kind_of(path).value, None, in_name, "file name"
    if kind_of(path) is SourceKind.MEDIA:
        info = probe(path)
        if not info.has_sound:
            raise MediaError(f"{path}: has no sound, so nothing can be heard in it.")
        kind, duration_ms = "video" if info.has_picture else "audio", info.duration_ms
        day = info.recorded.date() if info.recorded else None
        told_by = "file name" if info.recorded == named else "container"
    if recorded is not None:
        day, told_by = recorded, "given"
    return enter_recording(
        store,
        path,
        recording_id=RecordingId(content_hash(path)),
        kind=kind,
        duration_ms=duration_ms,
        recorded=day,
        recorded_from=told_by if day else None,
        title=title,
        group=group,
    )


def _listen(
    store: Store,
    one: Recording,
    path: Path,
    *,
    speech: SpeechSettings | None,
    use_captions: bool,
    tell: Report,
) -> tuple[str, ...]:
    """Put the words of a recording into the store; says what could not be heard."""
    from diary.speech.captions import read_captions
    from diary.speech.notes import read_note

    beside = captions_beside(path) if use_captions else None
    if one.kind == "note":
        save_transcript(store, one.id, read_note(path), words_from="note")
    elif one.kind == "captions":
        save_transcript(store, one.id, read_captions(path), words_from="captions")
    elif beside is not None:
        save_transcript(store, one.id, read_captions(beside), words_from="captions")
    else:
        return _recognise(store, one, path, speech=speech or SpeechSettings(), tell=tell)
    return ()


def _recognise(
    store: Store, one: Recording, path: Path, *, speech: SpeechSettings, tell: Report
) -> tuple[str, ...]:
    from diary.speech import recognise as recognition

    def passed_on(progress: recognition.Progress) -> None:
        share = progress.done_ms / progress.total_ms if progress.total_ms else None
        tell(
            Progress(
                stage="listening",
                name=one.name,
                share=share,
                length_ms=progress.total_ms,
                speed=progress.speed,
                left_s=progress.left_s,
            )
        )

    heard = recognition.recognise(
        path,
        settings=speech,
        hints=hints(known(store)),
        done_blocks=blocks(store, one.id),
        on_block=lambda block: save_block(store, one.id, block),
        on_progress=passed_on,
    )
    trim_blocks(store, one.id, len(heard.blocks))
    save_transcript(store, one.id, heard.transcript, words_from=speech.model)
    return heard.missing


def hints(on_record: Known) -> Hints:
    """What is on record, as a help to hearing."""
    seedlings = on_record.seedlings
    parents = [
        parent for one in seedlings for parent in (one.seed_parent, one.pollen_parent) if parent
    ]
    numbers = [one.number for one in seedlings]
    names = [
        *(name for plant in on_record.names for name in (plant.name, *plant.synonyms)),
        *(one.name for one in seedlings if one.name),
        *(parent for parent in parents if parent not in numbers),
    ]
    misheard = [(heard, plant.name) for plant in on_record.names for heard in plant.mishearings]
    misheard += [(one.heard, one.meant) for one in on_record.mishearings]
    return Hints(
        names=tuple(dict.fromkeys(names)),
        numbers=tuple(dict.fromkeys(numbers)),
        mishearings=tuple(dict.fromkeys(misheard)),
    )


def _read(store: Store, recording_id: RecordingId, on_record: Known) -> set[RecordingId]:
    """Read the walk that a recording is a part of; the ids of all its parts."""
    from diary.linking.read import READER_VERSION, read_talk
    from diary.reading.vocabulary import load_vocabulary

    parts: list[tuple[Recording, Transcript]] = []
    for one in walk(store, recording_id) or (recording(store, recording_id),):
        words = load_transcript(store, one.id)
        if words is not None and (not parts or words.clock is parts[0][1].clock):
            parts.append((one, words))
    if recording_id not in {one.id for one, _ in parts}:
        own = load_transcript(store, recording_id)
        parts = [(recording(store, recording_id), own)] if own is not None else []
    if not parts:
        return {recording_id}
    own_words = store.folder / "vocabulary"
    talk, places = join([words for _, words in parts])
    reading = read_talk(
        talk if len(parts) > 1 else parts[0][1],
        load_vocabulary(own_words if own_words.is_dir() else None),
        on_record,
        recorded=next((one.recorded for one, _ in parts if one.recorded), None),
    )
    with store.db.atomic():
        for (one, _), place in zip(parts, places, strict=True):
            save_reading(
                store,
                one.id,
                part_of(reading, place) if len(parts) > 1 else reading,
                reader=READER_VERSION,
                words_from=one.words_from or "",
            )
        refresh(store, [one.id for one, _ in parts])
    return {one.id for one, _ in parts}
