"""`diary check`: what is lost is told apart from what only wants a look."""

from pathlib import Path

from diary.export.integrity import check
from diary.linking.document import Reading
from diary.records.recordings import locate, recordings
from diary.records.register import Cross, Seedling, save_cross, save_seedling
from diary.records.store import DATABASE_NAME, Store, open_store
from tests.records.making import reread


def kinds(store: Store, *, media: bool = False) -> list[str]:
    return [finding.kind for finding in check(store, media=media).findings]


def test_a_good_diary_is_sound(diary_store: Store) -> None:
    report = check(diary_store, media=True)
    assert (report.findings, report.sound) == ((), True)
    assert (report.recordings, report.corrections, report.plants) == (2, 1, 3)


def test_a_lost_recording_is_serious_and_named(diary_store: Store) -> None:
    path = locate(diary_store, recordings(diary_store)[0].id)
    path.unlink()
    report = check(diary_store)
    assert [finding.kind for finding in report.findings] == ["media"]
    assert str(path) in report.findings[0].text
    assert not report.sound


def test_a_moved_recording_is_found_again(diary_store: Store) -> None:
    path = locate(diary_store, recordings(diary_store)[0].id)
    moved = path.parent / "moved" / "renamed.vtt"
    moved.parent.mkdir()
    path.rename(moved)
    assert kinds(diary_store) == []


def test_a_changed_recording_is_noticed_when_asked(diary_store: Store) -> None:
    path = locate(diary_store, recordings(diary_store)[0].id)
    path.write_bytes(path.read_bytes().swapcase())
    assert kinds(diary_store) == []
    assert kinds(diary_store, media=True) == ["changed media"]


def test_an_unplaced_correction_is_listed_and_not_serious(diary_store: Store) -> None:
    walk = next(one for one in recordings(diary_store) if one.name == "walk")
    reread(diary_store, walk.id, Reading(clips=()))
    report = check(diary_store)
    assert [finding.kind for finding in report.findings] == ["unplaced"]
    assert "SetValue" in report.findings[0].text
    assert "0:01" in report.findings[0].text
    assert report.sound


def test_what_cannot_be_in_the_register_is_told(diary_store: Store) -> None:
    save_cross(diary_store, Cross(code="12", seeds_sown=4, germinated=9))
    save_seedling(diary_store, Seedling(number="24-12A", cross="99"))
    save_seedling(diary_store, Seedling(number="1", seed_parent="2"))
    save_seedling(diary_store, Seedling(number="2", seed_parent="1"))
    texts = " ".join(finding.text for finding in check(diary_store).findings)
    assert "9 germinated of 4 sown" in texts
    assert "24-12A names cross 99" in texts
    assert "own ancestor" in texts


def test_a_damaged_database_is_found(diary_store: Store, tmp_path: Path) -> None:
    copy = tmp_path / "copy"
    copy.mkdir()
    from diary.records.upkeep import copy_database

    copy_database(diary_store, copy / DATABASE_NAME)
    raw = bytearray((copy / DATABASE_NAME).read_bytes())
    page = 4096
    # the last pages hold rows and indexes: scramble them, leave the schema readable
    for place in range(len(raw) - 6 * page, len(raw), 7):
        raw[place] ^= 0x5A
    (copy / DATABASE_NAME).write_bytes(bytes(raw))
    store = open_store(copy, create=False)
    try:
        report = check(store)
    finally:
        store.close()
    assert not report.sound
    assert {finding.kind for finding in report.findings} == {"database"}
