"""An invented diary for the pages: two films, a memo and a note, read by hand. Nothing real."""

from datetime import date
from pathlib import Path

from diary.linking.document import Band, Clip, Plant, PlantKind, Reading, Suggestion
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
    "dark maroon blotch. "  # 0 .. 10 s
    "About four and a half centimetres across and very compact indeed. I will keep that one for "
    "certain this year again. "  # .. 20 s
    "Next one along is twenty three oh seven here. White with a cream throat and a lemon eye in "
    "the middle. Perhaps double. "  # .. 31 s
    "This one has lost its label I am afraid to say. It is pink all over and quite leggy so we "
    "watch it."
)
TALK_JULY = (
    "Back at twenty three oh four in July now and still salmon. Four heads open today and it has "
    "got a bit of rust underneath. "
    "And twenty three eleven has opened its first flower today. Purple with dark feathering on it. "
    "That is one for the show bench I think."
)


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
        [(SALMON, MAROON, 20), (WHITE, LEMON, 11), (PINK, PINK, 12)],
    )
    recording = _enter(store, path, "video", JUNE, "Bench walk, early June")
    read(
        store,
        recording,
        talk(TALK_JUNE),
        clip(
            seedling("23-04"), 0, 20_000,
            observation("colour", "salmon", 7000, 8000, part="bloom", text="deep salmon",
                        modifiers=("deep",)),
            observation("colour", "maroon", 9000, 10_500, part="blotch", text="dark maroon blotch.",
                        modifiers=("dark",)),
            observation("bloom_diameter", 45.0, 10_500, 14_000, unit="mm",
                        text="About four and a half centimetres across"),
            observation("habit", "compact", 14_500, 15_500, text="very compact"),
            observation("decision", "keep", 16_500, 18_500, text="I will keep that one"),
        ),
        clip(
            seedling("23-07"), 20_500, 31_000,
            observation("colour", "white", 24_000, 24_500, part="bloom", text="White"),
            observation("colour", "cream", 25_500, 26_500, part="throat", text="cream throat"),
            observation("colour", "lemon", 27_500, 28_500, part="eye", text="lemon eye",
                        band=Band.LIKELY),
            proposals=(
                observation("bloom_form", "double", 30_000, 31_000, text="Perhaps double.",
                            band=Band.UNSURE),
            ),
        ),
        clip(
            unnamed("pink, leggy"), 31_000, 43_000,
            observation("colour", "pink", 37_000, 38_500, part="bloom", text="pink all over"),
            observation("habit", "leggy", 39_500, 40_000, text="leggy"),
            observation("decision", "watch", 40_500, 42_000, text="we watch it.",
                        band=Band.LIKELY),
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
            observation("colour", "salmon", 5500, 6000, part="bloom", text="salmon."),
            observation("count_heads", 4, 6000, 7500, unit="count", text="Four heads open"),
            observation("health", "rust", 10_500, 12_000, text="rust underneath."),
            day=JULY,
        ),
        clip(
            seedling("23-11"), 12_500, 25_000,
            observation("flowering", "first_flower", 15_000, 17_000, text="first flower today."),
            observation("colour", "purple", 17_500, 18_000, part="bloom", text="Purple"),
            observation("marking", "feathering", 18_500, 19_500, text="dark feathering"),
            observation("decision", "show", 22_500, 24_500, text="the show bench"),
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
        talk("A note on twenty three oh nine which I forgot to film. Scarlet and single this time."),
        clip(
            seedling("23-09"), 0, 8000,
            observation("colour", "scarlet", 5500, 6000, part="bloom", text="Scarlet"),
            observation("bloom_form", "single", 6500, 7000, text="single"),
            day=JULY, band=Band.LIKELY,
        ),
    )  # fmt: skip
