"""Archive and restore: the same diary comes back, and a damaged archive writes nothing."""

import hashlib
import json
import zipfile
from dataclasses import replace
from pathlib import Path

import pytest

from diary.errors import StoreError, UsageError
from diary.export.archive import MANIFEST, make_archive, read_manifest, restore
from diary.export.cells import ENCODING, from_csv
from diary.insight.overview import overview
from diary.records.journal import export_lines, journal
from diary.records.pages import plants
from diary.records.recordings import locate, recordings
from diary.records.register import crosses, seedlings
from diary.records.store import DATABASE_NAME, Store, open_store


@pytest.fixture
def archived(diary_store: Store, tmp_path: Path) -> Path:
    return make_archive(diary_store, tmp_path / "kept" / "diary.zip").path


def rewritten(archive: Path, change: dict[str, bytes | None]) -> Path:
    """A copy of an archive with files replaced (None: left out)."""
    out = archive.with_name("changed.zip")
    with zipfile.ZipFile(archive) as old, zipfile.ZipFile(out, "w") as new:
        for name in old.namelist():
            content = change.get(name, old.read(name))
            if content is not None:
                new.writestr(name, content)
    return out


def test_the_same_diary_comes_back(diary_store: Store, archived: Path, tmp_path: Path) -> None:
    folder = tmp_path / "again"
    restore(archived, folder)
    back = open_store(folder, create=False)
    try:
        assert plants(back) == plants(diary_store)
        assert journal(back) == journal(diary_store)
        assert list(export_lines(back)) == list(export_lines(diary_store))
        assert (seedlings(back), crosses(back)) == (seedlings(diary_store), crosses(diary_store))
        assert recordings(back) == recordings(diary_store)
        assert overview(back).records == overview(diary_store).records
        assert (back.stills / "one.jpg").read_bytes() == b"\xff\xd8 a still \xff\xd9"
    finally:
        back.close()


def test_every_file_is_in_the_manifest_with_its_checksum(archived: Path) -> None:
    with zipfile.ZipFile(archived) as bundle:
        held = json.loads(bundle.read(MANIFEST))
        assert {file["name"] for file in held["files"]} == set(bundle.namelist()) - {MANIFEST}
        for file in held["files"]:
            content = bundle.read(file["name"])
            assert hashlib.sha256(content).hexdigest() == file["sha256"]
            assert len(content) == file["bytes"]


def test_it_can_be_read_without_the_program(archived: Path) -> None:
    with zipfile.ZipFile(archived) as bundle:
        text = bundle.read("readable/observations.csv").decode(ENCODING)
        table = from_csv(text)
        values = {row[table.headings.index("trait")]: row for row in table.rows}
        # the breeder's correction, not what was heard
        assert values["bloom_diameter"][table.headings.index("value")] == "50"
        assert b"24-11A" in bundle.read("readable/register-seedlings.csv")
        (event,) = bundle.read("readable/corrections.jsonl").decode("utf-8").splitlines()
        assert json.loads(event)
        assert b"diary restore" in bundle.read("README.txt")


def test_recordings_come_along_when_asked(diary_store: Store, tmp_path: Path) -> None:
    made = make_archive(diary_store, tmp_path / "all.zip", media=True)
    assert made.missing == ()
    originals = [locate(diary_store, one.id) for one in recordings(diary_store)]
    contents = [path.read_bytes() for path in originals]
    for path in originals:
        path.unlink()
    folder = tmp_path / "elsewhere" / "again"
    restore(made.path, folder)
    back = open_store(folder, create=False)
    try:
        found = [locate(back, one.id) for one in recordings(back)]
        assert [path.read_bytes() for path in found] == contents
        assert all(path.is_relative_to(folder) for path in found)
    finally:
        back.close()


def test_a_lost_recording_is_named_and_the_rest_kept(diary_store: Store, tmp_path: Path) -> None:
    one = recordings(diary_store)[0]
    locate(diary_store, one.id).unlink()
    made = make_archive(diary_store, tmp_path / "all.zip", media=True)
    assert len(made.missing) == 1
    assert one.name in made.missing[0]
    assert sum(kept.file is not None for kept in made.recordings) == 1


@pytest.mark.parametrize(
    ("name", "content", "message"),
    [
        (DATABASE_NAME, b"nonsense", "damaged"),
        ("stills/one.jpg", b"\xff\xd8 A still \xff\xd9", "damaged"),
        ("stills/one.jpg", None, "missing"),
        (MANIFEST, None, "no archive of a diary"),
        (MANIFEST, b"{}", "no archive of a diary"),
        (MANIFEST, b'{"format": 99, "program": "9.0"}', "newer version"),
    ],
)
def test_a_damaged_archive_writes_nothing(
    archived: Path, tmp_path: Path, name: str, content: bytes | None, message: str
) -> None:
    broken = rewritten(archived, {name: content})
    folder = tmp_path / "new" / "again"
    with pytest.raises(StoreError, match=message):
        restore(broken, folder)
    assert not folder.exists()
    assert not folder.parent.exists() or list(folder.parent.iterdir()) == []


def test_bytes_flipped_in_the_file_are_noticed(archived: Path, tmp_path: Path) -> None:
    raw = bytearray(archived.read_bytes())
    middle = len(raw) // 3
    raw[middle] ^= 0xFF
    raw[middle + 1] ^= 0xFF
    archived.write_bytes(bytes(raw))
    with pytest.raises(StoreError):
        restore(archived, tmp_path / "again")
    assert not (tmp_path / "again").exists()


def test_a_made_up_archive_cannot_write_outside(archived: Path, tmp_path: Path) -> None:
    evil = b"evil"
    held = read_manifest(archived)
    for name in ("../evil.txt", "/evil.txt", "a/../../evil.txt", "c:evil.txt", "a\\evil.txt"):
        first = replace(held.files[0], name=name, bytes=4, sha256=hashlib.sha256(evil).hexdigest())
        manifest = {
            "format": 1,
            "program": "0",
            "made_at": "",
            "files": [{"name": first.name, "bytes": first.bytes, "sha256": first.sha256}],
            "recordings": [],
        }
        bad = tmp_path / "bad.zip"
        with zipfile.ZipFile(bad, "w") as bundle:
            bundle.writestr(name, evil)
            bundle.writestr(MANIFEST, json.dumps(manifest))
        with pytest.raises(StoreError, match="outside the diary"):
            restore(bad, tmp_path / "deep" / "again")
    assert not list(tmp_path.rglob("*evil*"))


def test_a_folder_in_use_is_not_touched(archived: Path, tmp_path: Path) -> None:
    folder = tmp_path / "used"
    folder.mkdir()
    (folder / "mine.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(StoreError, match="not empty"):
        restore(archived, folder)
    assert (folder / "mine.txt").read_text("utf-8") == "mine"


def test_something_else_is_no_archive(tmp_path: Path) -> None:
    other = tmp_path / "other.zip"
    other.write_bytes(b"PK nothing")
    with pytest.raises(StoreError, match="no archive"):
        restore(other, tmp_path / "again")


def test_an_archive_is_a_file(diary_store: Store, tmp_path: Path) -> None:
    with pytest.raises(UsageError, match="name a file"):
        make_archive(diary_store, tmp_path)
