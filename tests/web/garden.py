"""An invented diary for the pages: two films, a memo and a note, read by hand. Nothing real."""

from datetime import date
from pathlib import Path
from typing import Any

from diary.linking.document import (
    Band,
    Clip,
    Observation,
    Plant,
    PlantKind,
    Reading,
    Suggestion,
    Value,
)
from diary.media.probe import probe
from diary.records.readings import refresh, save_reading
from diary.records.record import RecordingId
from diary.records.recordings import Recording, content_hash, enter_recording
from diary.records.register import (
    Cross,
    NamedPlant,
    Seedling,
    save_cross,
    save_named_plant,
    save_seedling,
)
from diary.records.store import Store, open_store
from diary.records.words import save_transcript
from diary.speech.transcript import Transcript
from tests.records.making import clip, observation, seedling, talk, unnamed
from tests.web.film import film, sound

JUNE, JULY = date(2031, 6, 2), date(2031, 7, 9)
SALMON, MAROON, CREAM = (248, 131, 121), (114, 47, 55), (240, 234, 214)
WHITE, PINK, LEMON, PURPLE = (243, 242, 238), (222, 140, 160), (250, 218, 94), (135, 86, 146)

# a word each half second: 20 words are 10 s
TALK_JUNE = (
    "Right then first up this morning is twenty three oh four. It is a lovely deep salmon with a "
    "dark maroon blotch. "
    "About four and a half centimetres across and very compact indeed. I will keep that one for "
    "certain this year again. "
    "Next one along is twenty three oh seven here. White with a cream throat and a lemon eye in "
    "the middle. Perhaps double. "
    "This one has lost its label I am afraid to say. It is pink all over and quite leggy so we "
    "watch it."
)
TALK_JULY = (
    "Back at twenty three oh four in July now and still salmon. Four heads open today and it has "
    "got a bit of rust underneath. "
    "And twenty three eleven has opened its first flower today. Purple with dark feathering on it. "
    "That is one for the show bench I think."
)
TALK_MEMO = "A note on twenty three oh nine which I forgot to film. Scarlet and single this time."


def starts(talked: str, quote: str) -> int:
    """When these words begin, in ms."""
    words, wanted = talked.split(), quote.split()
    return 500 * next(n for n in range(len(words)) if words[n : n + len(wanted)] == wanted)


def said(talked: str, quote: str, trait: str, value: Value, **more: Any) -> Observation:
    """An observation at the place of its words (the first such place)."""
    at = starts(talked, quote)
    end = at + 500 * len(quote.split())
    return observation(trait, value, at, end, text=quote, **more)


def _enter(store: Store, path: Path, kind: str, day: date, title: str) -> Recording:
    length = probe(path).duration_ms if kind in ("video", "audio") else None
    return enter_recording(
        store,
        path,
        recording_id=RecordingId(content_hash(path)),
        kind=kind,
        duration_ms=length,
        recorded=day,
        recorded_from="container",
        title=title,
        group="pelargonium",
    )


def read(
    store: Store,
    recording: Recording,
    words: Transcript,
    *clips: Clip,
    suggestions: tuple[Suggestion, ...] = (),
) -> None:
    """Put words and a reading of them into the store."""
    save_transcript(store, recording.id, words, words_from="base")
    with store.db.atomic():
        reading = Reading(clips=clips, suggestions=suggestions)
        save_reading(store, recording.id, reading, reader="1", words_from="base")
        refresh(store, [recording.id])


def plant_garden(folder: Path) -> Path:
    """Make the diary under `folder`; returns its own folder."""
    store = open_store(folder / "diary")
    try:
        _register(store)
        _june(store, folder)
        _july(store, folder)
        _memo(store, folder)
    finally:
        store.close()
    return folder / "diary"


def _register(store: Store) -> None:
    for name in ("Copper Lantern", "Fenmarsh Lad", "Quill Harbour"):
        save_named_plant(store, NamedPlant(name=name))
    save_cross(
        store,
        Cross(code="23", seed_parent="Fenmarsh Lad", pollen_parent="Copper Lantern",
              day="2030-07", seeds_sown=24, germinated=17),
    )  # fmt: skip
    for number in ("23-04", "23-07", "23-09", "23-11"):
        save_seedling(store, Seedling(number=number, cross="23", sown="2030-11", place="bench 2"))


def _june(store: Store, folder: Path) -> None:
    path = film(
        folder / "bench walk.mp4",
        [(SALMON, MAROON, 21), (WHITE, LEMON, 12), (PINK, PINK, 12)],
    )
    recording = _enter(store, path, "video", JUNE, "Bench walk, early June")
    read(
        store,
        recording,
        talk(TALK_JUNE),
        clip(
            seedling("23-04"), 0, starts(TALK_JUNE, "Next one"),
            said(TALK_JUNE, "deep salmon", "colour", "salmon", part="bloom", modifiers=("deep",)),
            said(TALK_JUNE, "dark maroon blotch.", "colour", "maroon", part="blotch",
                 modifiers=("dark",)),
            said(TALK_JUNE, "About four and a half centimetres across", "bloom_diameter", 45.0,
                 unit="mm"),
            said(TALK_JUNE, "very compact", "habit", "compact"),
            said(TALK_JUNE, "I will keep that one", "decision", "keep"),
        ),
        clip(
            seedling("23-07"), starts(TALK_JUNE, "Next one"), starts(TALK_JUNE, "This one"),
            said(TALK_JUNE, "White", "colour", "white", part="bloom"),
            said(TALK_JUNE, "cream throat", "colour", "cream", part="throat"),
            said(TALK_JUNE, "lemon eye", "colour", "lemon", part="eye", band=Band.LIKELY),
            proposals=(
                said(TALK_JUNE, "Perhaps double.", "bloom_form", "double", band=Band.UNSURE),
            ),
        ),
        clip(
            unnamed("pink, leggy"), starts(TALK_JUNE, "This one"), 44_500,
            said(TALK_JUNE, "pink all over", "colour", "pink", part="bloom"),
            said(TALK_JUNE, "leggy", "habit", "leggy"),
            said(TALK_JUNE, "we watch it.", "decision", "watch", band=Band.LIKELY),
        ),
    )  # fmt: skip


def _july(store: Store, folder: Path) -> None:
    path = film(folder / "july.mp4", [(SALMON, MAROON, 12), (PURPLE, MAROON, 13)])
    recording = _enter(store, path, "video", JULY, "Bench walk, July")
    read(
        store,
        recording,
        talk(TALK_JULY),
        clip(
            seedling("23-04"), 0, 12_500,
            said(TALK_JULY, "salmon.", "colour", "salmon", part="bloom"),
            said(TALK_JULY, "Four heads open", "count_heads", 4, unit="count"),
            said(TALK_JULY, "rust underneath.", "health", "rust"),
            day=JULY,
        ),
        clip(
            seedling("23-11"), 12_500, 25_000,
            said(TALK_JULY, "first flower today.", "flowering", "first_flower"),
            said(TALK_JULY, "Purple", "colour", "purple", part="bloom"),
            said(TALK_JULY, "dark feathering", "marking", "feathering"),
            said(TALK_JULY, "the show bench", "decision", "show"),
            day=JULY,
        ),
        suggestions=(
            Suggestion(kind="first_flower", value="2031-07-09",
                       plant=Plant(kind=PlantKind.SEEDLING, number="23-11"), day=JULY,
                       text="has opened its first flower today.", start_ms=14_000, end_ms=17_000),
        ),
    )  # fmt: skip


def _memo(store: Store, folder: Path) -> None:
    path = sound(folder / "memo.m4a", 12)
    recording = _enter(store, path, "audio", JULY, "Memo by the door")
    read(
        store,
        recording,
        talk(TALK_MEMO),
        clip(
            seedling("23-09"), 0, 8000,
            said(TALK_MEMO, "Scarlet", "colour", "scarlet", part="bloom"),
            said(TALK_MEMO, "single", "bloom_form", "single"),
            day=JULY, band=Band.LIKELY,
        ),
    )  # fmt: skip
