"""Every format from an open diary, by its name."""

import json
from pathlib import Path

import pytest

from diary.errors import NotFound, StoreError, UsageError
from diary.export.cells import ENCODING, from_csv
from diary.export.formats import DIARY_FORMATS, FORMATS, RECORDING_FORMATS, export, write_files
from diary.export.tables import TABLE_NAMES
from diary.records.store import Store


@pytest.mark.parametrize("name", FORMATS)
def test_each_format_has_content(diary_store: Store, name: str) -> None:
    files = export(diary_store, name, which="walk" if name in RECORDING_FORMATS else None)
    assert files
    assert all(file.content and file.media_type for file in files)
    assert name in DIARY_FORMATS or files[0].name.startswith("walk.")


@pytest.mark.parametrize("table", TABLE_NAMES)
def test_each_table_is_square(diary_store: Store, table: str) -> None:
    (file,) = export(diary_store, "csv", table=table)
    read = from_csv(file.content.decode(ENCODING))
    assert read.rows
    assert {len(row) for row in read.rows} == {len(read.headings)}


def test_the_plants_table_says_what_is_believed(diary_store: Store) -> None:
    (file,) = export(diary_store, "csv")
    read = from_csv(file.content.decode(ENCODING))
    row = dict(zip(read.headings, read.rows[0], strict=True))
    assert row["plant"] == "24-11A"
    assert row["seed parent"] == "Merrowdown Silk"
    assert row["bloom diameter mm"] == "50"
    assert row["decision"] == "keep"
    assert row["colours"] == "upper petals: wine"


def test_chapters_of_a_walk(diary_store: Store) -> None:
    (file,) = export(diary_store, "chapters", which="walk")
    assert "00:00:00.000 --> 00:00:10.000\n24-11A" in file.content.decode("utf-8")


def test_brapi_is_a_file_a_call(diary_store: Store) -> None:
    files = {file.name: json.loads(file.content) for file in export(diary_store, "brapi")}
    values = {
        row["observationVariableName"]: row["value"]
        for row in files["observations.json"]["result"]["data"]
    }
    assert values["bloom diameter"] == "50"


@pytest.mark.parametrize(
    ("name", "which", "table", "error", "message"),
    [
        ("docx", None, "plants", UsageError, r"There are: csv, xlsx"),
        ("csv", None, "pots", UsageError, r"There are: plants"),
        ("webvtt", None, "plants", UsageError, r"Name the recording"),
        ("webvtt", "nothing", "plants", NotFound, r"nothing"),
    ],
)
def test_what_cannot_be_exported_is_said(
    diary_store: Store,
    name: str,
    which: str | None,
    table: str,
    error: type[Exception],
    message: str,
) -> None:
    with pytest.raises(error, match=message):
        export(diary_store, name, which=which, table=table)


def test_files_go_where_they_are_asked_to(diary_store: Store, tmp_path: Path) -> None:
    one = write_files(export(diary_store, "csv"), tmp_path / "out" / "mine.csv")
    assert one == (tmp_path / "out" / "mine.csv",)
    into = write_files(export(diary_store, "csv"), tmp_path / "out")
    assert into == (tmp_path / "out" / "plants.csv",)
    many = write_files(export(diary_store, "brapi"), tmp_path / "brapi")
    assert {path.name for path in many} >= {"germplasm.json", "crosses.json"}
    assert not list(tmp_path.rglob("*.partial"))


def test_a_place_that_cannot_be_written_is_said(diary_store: Store, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x", encoding="utf-8")
    with pytest.raises(StoreError, match="could not be written"):
        write_files(export(diary_store, "csv"), tmp_path / "file" / "mine.csv")
