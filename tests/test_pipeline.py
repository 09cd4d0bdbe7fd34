"""A file in, a recording read and stored: captions, notes, sound; interrupted and gone on with."""

import os
import signal
import subprocess
import sys
import time
import wave
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import numpy as np
import pytest

from diary.errors import MediaError, ModelError
from diary.linking.document import PlantKind
from diary.media.decode import RATE, Sound
from diary.pipeline import Progress, add, hints, read_again
from diary.records.corrections import SetSeedling, SetValue
from diary.records.journal import correct, unplaced
from diary.records.known import known
from diary.records.pages import plant_page, plants
from diary.records.record import Span
from diary.records.recordings import (
    change_recording,
    clips,
    recording,
    recordings,
    remove_recording,
    transcript,
)
from diary.records.register import NamedPlant, Seedling, save_named_plant, save_seedling
from diary.records.register_rows import bump_revision
from diary.records.store import DATABASE_NAME, Store, open_store
from diary.records.words import blocks
from diary.speech.settings import SpeechSettings

SPOKEN = Path(__file__).parent / "speech" / "clips" / "bench.opus"

WALK = """WEBVTT

00:00.000 --> 00:04.000
First up is 23-04, that's Tansy Wharf by Wexholt Plum.

00:04.000 --> 00:09.000
It has a white throat and a dark maroon blotch.

00:09.000 --> 00:14.000
The bloom is about four and a half centimetres across, and that's a keeper.

00:14.000 --> 00:18.000
Next is 23-05.

00:18.000 --> 00:24.000
A soft salmon pink. This one's for the compost.
"""


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path / "diary")
    for number in ("23-04", "23-05"):
        save_seedling(opened, Seedling(number=number))
    yield opened
    opened.close()


def captions(tmp_path: Path, text: str = WALK, name: str = "walk.vtt") -> Path:
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    return path


def believed(store: Store, number: str) -> set[tuple[str, str | None, object]]:
    return {(one.trait, one.part, one.value) for one in plant_page(store, number).beliefs}


def test_captions_become_clips_of_seedlings(store: Store, tmp_path: Path) -> None:
    added = add(store, captions(tmp_path), recorded=date(2031, 6, 2))
    one = added.recording
    assert added.new
    assert (one.kind, one.words_from, one.clips, one.plants) == ("captions", "captions", 2, 2)
    assert believed(store, "23-04") >= {
        ("colour", "throat", "white"),
        ("colour", "blotch", "maroon"),
        ("bloom_diameter", None, 45),
        ("decision", None, "keep"),
    }
    first = plant_page(store, "23-04").clips[0]
    assert first.moment.start_ms <= 2000
    assert first.moment.day == date(2031, 6, 2)
    assert ("decision", None, "discard") in believed(store, "23-05")


def test_the_same_content_is_added_once(store: Store, tmp_path: Path) -> None:
    first = add(store, captions(tmp_path))
    before = list(store.db.iterdump())
    again = add(store, captions(tmp_path))
    copy = add(store, captions(tmp_path, name="copy.vtt"))
    assert (first.new, again.new, copy.new) == (True, False, False)
    assert list(store.db.iterdump()) == before
    assert len(recordings(store)) == 1


def test_a_typed_note_has_lines_and_days(store: Store, tmp_path: Path) -> None:
    note = tmp_path / "note.txt"
    note.write_text("2 June 2031\n23-04 has a white throat.\n23-05 is a keeper.\n")
    one = add(store, note).recording
    assert (one.kind, one.words_from, one.duration_ms) == ("note", "note", None)
    page = plant_page(store, "23-05")
    assert page.clips[0].moment.start_ms // 1000 == 2
    assert page.clips[0].moment.day == date(2031, 6, 2)


def test_reading_again_keeps_corrections_and_uses_what_is_new_on_record(
    store: Store, tmp_path: Path
) -> None:
    text = WALK.replace("Tansy Wharf", "Tansy Worf")
    one = add(store, captions(tmp_path, text)).recording
    record = next(r for r in plant_page(store, "23-04").records if r.trait == "bloom_diameter")
    at = Span(recording=one.id, start_ms=record.moment.start_ms, end_ms=record.moment.end_ms)
    correct(store, SetValue(value=50), at=at)
    second = clips(store, one.id)[1].moment
    correct(
        store,
        SetSeedling(kind=PlantKind.SEEDLING, title="23-06"),
        at=Span(recording=one.id, start_ms=second.start_ms, end_ms=second.end_ms),
    )
    save_named_plant(store, NamedPlant(name="Tansy Wharf", mishearings=("Tansy Worf",)))
    save_named_plant(store, NamedPlant(name="Wexholt Plum"))
    assert [again.id for again in read_again(store)] == [one.id]
    assert ("bloom_diameter", None, 50) in believed(store, "23-04")
    assert ("seed_parent", None, "Tansy Wharf") in believed(store, "23-04")
    assert [clip.plant.key for clip in clips(store, one.id)] == ["23-04", "23-06"]
    assert unplaced(store) == ()


def test_everything_derived_can_be_dropped_and_made_again(store: Store, tmp_path: Path) -> None:
    one = add(store, captions(tmp_path), recorded=date(2031, 6, 2)).recording
    before = plants(store), clips(store, one.id)
    with store.db.atomic():
        for table in ("records", "clips", "readings", "plant_keys", "placements"):
            store.db.execute(f"DELETE FROM {table}")
        bump_revision(store)
    assert all(not row.clips for row in plants(store))
    read_again(store)
    assert (plants(store), clips(store, one.id)) == before


def test_a_removed_recording_can_be_added_again(store: Store, tmp_path: Path) -> None:
    path = captions(tmp_path)
    one = add(store, path).recording
    remove_recording(store, one.id)
    assert recordings(store) == ()
    assert add(store, path).new
    assert len(clips(store, one.id)) == 2


def test_the_plant_in_hand_goes_on_in_the_next_file(store: Store, tmp_path: Path) -> None:
    head, tail = WALK.split("00:09.000 --> 00:14.000")
    first = add(store, captions(tmp_path, head, "one.vtt"), recorded=date(2031, 6, 2)).recording
    second = add(
        store, captions(tmp_path, f"WEBVTT\n\n00:09.000 --> 00:14.000{tail}", "two.vtt")
    ).recording
    assert ("bloom_diameter", None, 45) not in believed(store, "23-04")
    change_recording(store, second.id, joins=first.id)
    read_again(store, second.id)
    assert ("bloom_diameter", None, 45) in believed(store, "23-04")
    joined = clips(store, second.id)[0]
    assert (joined.plant.key, joined.moment.day) == ("23-04", date(2031, 6, 2))
    assert joined.moment.end_ms <= 14_000


def test_what_cannot_be_added_is_told_and_leaves_nothing(store: Store, tmp_path: Path) -> None:
    broken = tmp_path / "broken.mp4"
    broken.write_bytes(b"no film at all")
    for path in (broken, tmp_path / "nothing.mp4"):
        with pytest.raises(MediaError, match=path.name):
            add(store, path)
    assert recordings(store, removed=True) == ()


def test_a_model_that_is_not_there_is_told_before_anything_is_heard(
    store: Store, tmp_path: Path
) -> None:
    with pytest.raises(ModelError):
        add(store, SPOKEN, speech=SpeechSettings(model="no-such-model"))
    assert add(store, SPOKEN, speech=SpeechSettings(model="tiny.en")).recording.complete


def test_what_is_on_record_helps_hearing(store: Store) -> None:
    save_seedling(store, Seedling(number="23-04", seed_parent="Tansy Wharf", pollen_parent="23-05"))
    save_named_plant(
        store, NamedPlant(name="Wexholt Plum", synonyms=("Old Plum",), mishearings=("wax halt",))
    )
    helped = hints(known(store))
    assert helped.names == ("Wexholt Plum", "Old Plum", "Tansy Wharf")
    assert helped.numbers == ("23-04", "23-05")
    assert helped.mishearings == (("wax halt", "Wexholt Plum"),)


def test_sound_with_captions_beside_it(store: Store, tmp_path: Path) -> None:
    sound = tmp_path / "walk.opus"
    sound.write_bytes(SPOKEN.read_bytes())
    captions(tmp_path)
    one = add(store, sound, use_captions=True).recording
    assert (one.kind, one.words_from) == ("audio", "captions")
    assert transcript(store, one.id).text.startswith("First up is 23-04")


def test_names_on_record_cost_no_words(store: Store) -> None:
    for name in ("Tansy Wharf", "Wexholt Plum"):
        save_named_plant(store, NamedPlant(name=name))
    one = add(store, SPOKEN).recording
    assert "First on the left" in transcript(store, one.id).text


def test_sound_is_listened_to_with_the_real_model(store: Store) -> None:
    told: list[Progress] = []
    one = add(store, SPOKEN, report=told.append).recording
    assert (one.kind, one.words_from, one.complete) == ("audio", "base", True)
    assert believed(store, "23-04") >= {
        ("colour", "upper petals", "burgundy"),
        ("colour", "lower petals", "pink"),
    }
    stages = list(dict.fromkeys(step.stage for step in told))
    assert stages == ["looking", "listening", "reading", "done"]
    shares = [step.share for step in told if step.stage == "listening" and step.share is not None]
    assert shares == sorted(shares)
    assert shares[-1] == pytest.approx(1, abs=0.01)


@pytest.fixture(scope="module")
def long_walk(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Seven minutes with two sentences at 5 s and at 330 s: two blocks at least."""
    said = np.concatenate(list(Sound(SPOKEN)))
    samples = np.zeros(420 * RATE, dtype=np.int16)
    for second in (5, 330):
        samples[second * RATE : second * RATE + len(said)] = said
    path = tmp_path_factory.mktemp("walk") / "walk.wav"
    with wave.open(str(path), "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(RATE)
        out.writeframes(samples.tobytes())
    return path


def test_killed_in_the_middle_it_goes_on_where_it_stopped(tmp_path: Path, long_walk: Path) -> None:
    folder = tmp_path / "diary"
    command = [sys.executable, "-m", "diary", "--diary", str(folder), "add", str(long_walk)]
    command += ["--model", "tiny.en"]
    running = subprocess.Popen(command, start_new_session=True)
    try:
        while not _blocks(folder):
            assert running.poll() is None, "it ended before a block was stored"
            time.sleep(0.05)
    finally:
        os.killpg(running.pid, signal.SIGKILL)
        running.wait()
    store = open_store(folder)
    one = recording(store, "walk")
    kept = blocks(store, one.id)
    assert not one.complete
    assert 0 < one.done_ms < 420_000
    store.close()
    subprocess.run(command, check=True)
    store = open_store(folder)
    done = recording(store, "walk")
    assert done.complete
    assert blocks(store, one.id)[: len(kept)] == kept
    text = transcript(store, one.id).text
    assert text.count("burgundy") == 2
    assert len(recordings(store)) == 1
    store.close()


def _blocks(folder: Path) -> int:
    if not (folder / DATABASE_NAME).is_file():
        return 0
    store = open_store(folder, create=False)
    try:
        return sum(len(blocks(store, one.id)) for one in recordings(store))
    finally:
        store.close()
