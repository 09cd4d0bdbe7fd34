"""Recordings: found by any name, found again when moved, addressed by media fragments."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from diary.errors import NotFound, UsageError
from diary.linking.document import PlantKind, Reading
from diary.records.joined import join, part_of
from diary.records.recordings import (
    change_recording,
    locate,
    media_fragment,
    recording,
    recordings,
    remove_recording,
    walk,
)
from diary.records.store import Store
from tests.records.making import JUNE_2, JUNE_20, clip, observation, seedling, stored, talk

WORDS = talk("this is one. " * 10)


def test_a_recording_goes_by_name_title_file_and_hash(store: Store) -> None:
    one = stored(store, "bench walk", WORDS)
    assert one.name == "bench-walk"
    change_recording(store, one.id, title="Sunday round", group="pelargonium", recorded=JUNE_20)
    for which in ("bench-walk", "BENCH-WALK", "sunday round", "bench walk.vtt", one.id[:6]):
        assert recording(store, which).id == one.id
    again = recording(store, "bench-walk")
    assert (again.group, again.recorded, again.recorded_from) == (
        "pelargonium",
        JUNE_20,
        "corrected",
    )
    with pytest.raises(NotFound, match="diary recordings"):
        recording(store, "nothing")


def test_a_moved_file_is_found_by_its_content(store: Store, tmp_path: Path) -> None:
    one = stored(store, "walk", WORDS)
    away = tmp_path / "2031" / "june"
    away.mkdir(parents=True)
    (away / "other.vtt").write_bytes(b"x" * one.path.stat().st_size)
    moved = Path(shutil.move(one.path, away / "renamed.vtt"))
    assert locate(store, one.id) == moved
    assert recording(store, "walk").path == moved
    moved.unlink()
    with pytest.raises(NotFound, match="Bring it back"):
        locate(store, one.id)


def test_media_fragments() -> None:
    # W3C Media Fragments URI 1.0 (basic), 4.2.1: "t=10,20" is [10 s, 20 s), npt in seconds
    # with a decimal fraction where there is one
    path = Path("/clips/walk 1#2.mp4")
    assert media_fragment(path, 10_000, 20_000) == "/clips/walk%201%232.mp4#t=10,20"
    assert media_fragment(path, 120_500, 121_050).endswith("#t=120.5,121.05")
    assert media_fragment(path, 0, 7).endswith("#t=0,0.007")


def test_the_oldest_walk_comes_first_and_removed_ones_are_hidden(store: Store) -> None:
    late = stored(store, "late", WORDS, day=JUNE_20)
    stored(store, "unknown", WORDS, day=None)
    stored(store, "early", WORDS, day=JUNE_2)
    assert [one.name for one in recordings(store)] == ["early", "late", "unknown"]
    remove_recording(store, late.id)
    assert [one.name for one in recordings(store)] == ["early", "unknown"]
    assert recording(store, "late").removed


def test_files_of_one_walk(store: Store) -> None:
    one, two, three = (stored(store, name, WORDS) for name in ("one", "two", "three"))
    change_recording(store, two.id, joins=one.id)
    change_recording(store, three.id, joins=two.id)
    for part in (one, two, three):
        assert [each.name for each in walk(store, part.id)] == ["one", "two", "three"]
    with pytest.raises(UsageError, match="join itself"):
        change_recording(store, one.id, joins=three.id)


def test_a_clip_over_the_border_is_one_in_each_file() -> None:
    first, second = talk("a b c d."), talk("e f g h.")
    joined, parts = join([first, second])
    assert joined.text == "a b c d. e f g h."
    assert joined.segment_starts == (0, 4)
    assert joined.words[4].start_ms == 2000
    scent = replace(observation("scent", "scented", 2200, 2800), first_word=4, last_word=5)
    over = replace(clip(seedling("23-04"), 1000, 3000, scent), first_word=2, last_word=5)
    one, two = (part_of(Reading(clips=(over,)), part) for part in parts)
    assert [(c.start_ms, c.end_ms, c.first_word, c.last_word) for c in one.clips] == [
        (1000, 2000, 2, 3)
    ]
    assert [(c.start_ms, c.end_ms, c.first_word, c.last_word) for c in two.clips] == [
        (0, 1000, 0, 1)
    ]
    assert one.clips[0].observations == ()
    assert [(o.start_ms, o.first_word) for o in two.clips[0].observations] == [(200, 0)]
    assert two.clips[0].plant.kind is PlantKind.SEEDLING
