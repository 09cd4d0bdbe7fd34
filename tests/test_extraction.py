"""The extraction document: read from files, printed by the contract."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from diary.cli import main
from diary.errors import UsageError
from diary.extraction import document, explained, extract, load_known

WALK = """WEBVTT

00:00:01.000 --> 00:00:04.000
Right, first up is twenty-three oh four.

00:00:04.500 --> 00:00:09.000
About four and a half centimetres across, with a dark maroon blotch.

00:00:09.500 --> 00:00:13.000
And this one has lost its label. It's a lovely salmon pink.
"""


@pytest.fixture
def files(tmp_path: Path) -> dict[str, Path]:
    """Captions, a register and names."""
    found = {
        "walk": tmp_path / "walk.vtt",
        "register": tmp_path / "register.csv",
        "names": tmp_path / "names.txt",
    }
    found["walk"].write_text(WALK, encoding="utf-8")
    found["register"].write_text(
        "number,seed_parent,pollen_parent,sown,status\n"
        "23-04,Fenmarsh Lad,Copper Lantern,2030-01-12,\n23-11,,,,\n",
        encoding="utf-8",
    )
    found["names"].write_text("Fenmarsh Lad\n\nCopper Lantern\n", encoding="utf-8")
    return found


def _document(files: dict[str, Path], recorded: date | None = date(2031, 6, 2)) -> dict[str, Any]:
    known = load_known(files["register"], files["names"])
    transcript, reading, day = extract(files["walk"], known=known, recorded=recorded)
    return document(files["walk"].name, transcript, reading, day)


def test_a_walk_by_the_contract(files: dict[str, Path]) -> None:
    told = _document(files)
    assert told["recording"] == {
        "source": "walk.vtt",
        "recorded": "2031-06-02",
        "duration": 13.0,
    }
    first, second = told["clips"]
    assert first["plant"]["kind"] == "seedling"
    assert first["plant"]["number"] == "23-04"
    assert first["plant"]["on_record"]
    assert first["date"] == "2031-06-02"
    by_trait = {o["trait"]: o for o in first["observations"]}
    size, colour = by_trait["bloom_diameter"], by_trait["colour"]
    assert (size["value"], size["unit"], size["hedged"]) == (45, "mm", True)
    assert (colour["part"], colour["value"], colour["modifiers"]) == ("blotch", "maroon", ["dark"])
    assert second["plant"]["kind"] == "unnamed"
    assert second["plant"]["label"]
    assert second["plant"]["number"] is None


def test_times_are_seconds_and_quotes_are_verbatim(files: dict[str, Path]) -> None:
    said = " ".join(line for line in WALK.split("\n") if "-->" not in line)
    for clip in _document(files)["clips"]:
        assert 0 <= clip["start"] < clip["end"] <= 13.0
        for o in clip["observations"]:
            assert clip["start"] <= o["start"] <= o["end"] <= clip["end"]
            assert o["text"] in said
            assert o["band"] in ("sure", "likely")
        assert all(o["band"] == "unsure" for o in clip["proposals"])


def test_the_day_may_be_unknown_or_in_the_file_s_name(files: dict[str, Path]) -> None:
    assert _document(files, None)["clips"][0]["date"] is None
    named = files["walk"].with_name("walk 2031-06-14.vtt")
    named.write_text(WALK, encoding="utf-8")
    assert _document({**files, "walk": named}, None)["clips"][0]["date"] == "2031-06-14"


def test_a_note_has_lines_for_times(tmp_path: Path) -> None:
    note = tmp_path / "bench.txt"
    note.write_text("23-04\nSalmon pink, zoned leaf.\n\n23-11\nRed.\n", encoding="utf-8")
    register = tmp_path / "register.csv"
    register.write_text("number\n23-04\n23-11\n", encoding="utf-8")
    transcript, reading, day = extract(note, known=load_known(register, None), recorded=None)
    told = document(note.name, transcript, reading, day)
    assert told["recording"]["duration"] is None
    assert [c["plant"]["number"] for c in told["clips"]] == ["23-04", "23-11"]
    assert told["clips"][1]["start"] == 3
    assert {o["value"] for o in told["clips"][0]["observations"]} == {"salmon", "zoned"}


def test_reasons_are_given_for_everything(files: dict[str, Path]) -> None:
    known = load_known(files["register"], files["names"])
    _, reading, _ = extract(files["walk"], known=known, recorded=None)
    lines = explained(reading).splitlines()
    told = sum(1 + len(c.observations) + len(c.proposals) for c in reading.clips)
    assert len(lines) == told
    assert any("23-04" in line and "first up is twenty-three" in line for line in lines)
    for clip in reading.clips:
        for o in clip.observations:
            assert any(o.evidence.rule in line and o.text in line for line in lines)


def test_a_register_without_numbers_is_refused(tmp_path: Path) -> None:
    register = tmp_path / "register.csv"
    register.write_text("plant,colour\n23-04,red\n", encoding="utf-8")
    with pytest.raises(UsageError, match="no column 'number'"):
        load_known(register, None)
    with pytest.raises(UsageError, match="cannot be read"):
        load_known(tmp_path / "none.csv", None)


def test_the_command_prints_json_and_stores_nothing(
    files: dict[str, Path], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    home = tmp_path / "home"
    monkeypatch.setenv("DIARY_HOME", str(home))
    arguments = ["--register", str(files["register"]), "--cultivars", str(files["names"])]
    ran = CliRunner().invoke(main, ["extract", str(files["walk"]), *arguments, "--json"])
    assert ran.exit_code == 0
    assert json.loads(ran.output)["clips"][0]["plant"]["number"] == "23-04"
    assert not home.exists()


def test_a_missing_file_is_told_in_one_line(tmp_path: Path) -> None:
    ran = CliRunner().invoke(main, ["extract", str(tmp_path / "none.vtt")])
    assert ran.exit_code == UsageError.exit_code
    assert "no such file" in ran.output
    assert len(ran.output.strip().splitlines()) == 1
