"""sheet, reel, export, archive, restore and check, run as a person would."""

import json
from pathlib import Path

import av
from pypdf import PdfReader

from tests.cli.conftest import WALK, Run
from tests.export.test_reel import film


def test_sheet_as_pdf_and_html(run: Run, walk: Path, tmp_path: Path) -> None:
    said = run("sheet", "23-04").output
    assert "23-04: 'Tansy Wharf' \u00d7 'Wexholt Plum'" in said
    assert "Base of the petals, throat: white" in said
    text = PdfReader(tmp_path / "23-04.pdf").pages[0].extract_text()
    assert "dark maroon" in text
    run("sheet", "23-04", "--out", "sheets/one.html")
    assert "dark maroon" in (tmp_path / "sheets" / "one.html").read_text("utf-8")
    assert json.loads(run("sheet", "23-04", "--json").stdout)["sheet"]["title"] == "23-04"
    run("sheet", "23-04", "--out", "one.docx", code=2)
    run("sheet", "99-99", code=7)


def test_reel_of_a_filmed_plant(run: Run, tmp_path: Path) -> None:
    path = film(tmp_path / "bench film.mp4", (320, 180), beep_s=5.0, length_s=24)
    path.with_suffix(".vtt").write_text(WALK)
    run("add", path, "--captions", "--date", "2031-06-02")
    said = run("reel", "23-04", "--out", "reels/one.mp4").output
    assert "23-04, 2031-06-02" in said
    with av.open(str(tmp_path / "reels" / "one.mp4")) as made:
        assert made.duration / 1_000_000 > 12
        assert len(made.streams) == 3
    captions = (tmp_path / "reels" / "one.vtt").read_text("utf-8")
    assert captions.startswith("WEBVTT")
    assert "maroon" in captions
    assert "Next is" not in captions
    sheet = run("sheet", "23-04").output
    assert "written" in sheet
    assert PdfReader(tmp_path / "23-04.pdf").pages[0].images


def test_a_plant_that_was_never_filmed_has_no_reel(run: Run, walk: Path) -> None:
    assert "There is no film of 23-04" in run("reel", "23-04", code=7).output


def test_export_to_the_screen_and_to_files(run: Run, walk: Path, tmp_path: Path) -> None:
    assert run("export", "chapter-lines", "bench-walk").output.startswith("0:00 ")
    assert "WEBVTT" in run("export", "webvtt", "bench-walk").output
    assert "23-04" in run("export", "csv").output
    assert "written: out/diary.xlsx" in run("export", "xlsx", "--out", "out/diary.xlsx").output
    run("export", "brapi", "--out", "brapi")
    assert json.loads((tmp_path / "brapi" / "germplasm.json").read_text("utf-8"))["result"]["data"]
    told = json.loads(run("export", "brapi", "--json").stdout)
    assert "observations.json" in {file["name"] for file in told["files"]}
    run("export", "xlsx", code=2)
    run("export", "docx", code=2)
    run("export", "webvtt", code=2)


def test_a_note_has_no_times_for_captions(run: Run, tmp_path: Path) -> None:
    (tmp_path / "note.txt").write_text("23-04 has a white throat.\n")
    run("add", "note.txt", "--date", "2031-06-02")
    assert "it has no times" in run("export", "srt", "note", code=2).output
    assert "23-04" in run("export", "csv", "--table", "observations").output


def test_archive_restore_and_check(run: Run, walk: Path, tmp_path: Path) -> None:
    assert "1 of 1 recordings" in run("archive", "kept.zip", "--recordings").output
    assert "all as archived" in run("restore", "kept.zip", "again").output
    first = json.loads(run("seedling", "23-04", "--json").stdout)
    second = json.loads(run("seedling", "23-04", "--json", "--diary", "again").stdout)
    assert first == second
    assert "All is well." in run("check", "--diary", "again", "--recordings").output
    run("restore", "kept.zip", "again", code=6)


def test_check_tells_of_a_lost_recording(run: Run, walk: Path) -> None:
    assert json.loads(run("check", "--json").stdout)["findings"] == []
    walk.write_text("WEBVTT\n\nsomething else\n")
    said = run("check", "--recordings", code=6).output
    assert "LOST?  changed media" in said
