"""Every command of the spine, run as a person would, with what it prints and leaves behind."""

import json
import os
import subprocess
import sys
from pathlib import Path

import click
import pytest

from diary.cli import main
from diary.records.corrections import SetValue
from diary.records.journal import correct
from diary.records.pages import plant_page
from diary.records.record import Span
from diary.records.store import Store, open_store
from tests.cli.conftest import REGISTER, Run


def the_store(tmp_path: Path) -> Store:
    return open_store(tmp_path / "home")


def test_add_says_what_came_of_it_and_adds_nothing_twice(run: Run, walk: Path) -> None:
    again = run("add", walk)
    assert "bench-walk: here already (2031-06-02, 2 plants in 2 clips)" in again.output
    added = json.loads(run("add", walk, "--json").stdout)
    assert (added[0]["new"], added[0]["recording"]["recorded"]) == (False, "2031-06-02")


def test_recordings_and_one_of_them(run: Run, walk: Path) -> None:
    assert "bench-walk  2031-06-02" in run("recordings").output
    run("recording", "bench-walk", "--title", "Sunday round", "--date", "2031-06-03")
    shown = run("recording", "sunday round").output
    assert "filmed: 2031-06-03 (corrected)" in shown
    clip = json.loads(run("seedling", "23-04", "--json").stdout)["clips"][0]
    assert clip["moment"]["day"] == "2031-06-03"
    run("recording", "bench-walk", "remove")
    assert "No recordings yet" in run("recordings").output
    assert "removed" in run("recordings", "--all").output
    run("recording", "nothing", code=7)


def test_a_seedlings_page(run: Run, walk: Path, tmp_path: Path) -> None:
    store = the_store(tmp_path)
    record = next(r for r in plant_page(store, "23-04").records if r.value == 45)
    moment = record.moment
    at = Span(recording=moment.recording, start_ms=moment.start_ms, end_ms=moment.end_ms)
    correct(store, SetValue(value=50), at=at)
    store.close()
    output = run("seedling", "23-04").output
    assert "cross: Tansy Wharf x Wexholt Plum (seed parent first)" in output
    assert "colour of throat: white (said once, on 2 June 2031)" in output
    assert "bloom diameter: 50 mm (your correction (heard: 45 mm))" in output
    assert "2031-06-02  bench-walk@0:00 to 0:" in output
    assert "“First up is 23-04, that's Tansy Wharf by Wexholt Plum." in output
    assert "[about, corrected; heard 45 mm]" in output
    page = json.loads(run("seedling", "23-04", "--json").stdout)
    assert page["seedling"]["seed_parent"] == "Tansy Wharf"
    assert {"trait", "value", "why", "sources"} <= set(page["beliefs"][0])
    missing = run("seedling", "23-4", code=7)
    assert "Did you mean 23-04" in missing.output
    assert missing.output.count("\n") == 1


def test_find(run: Run, walk: Path) -> None:
    assert "colour of throat: white" in run("find", "white", "throat").output
    assert "23-04" in run("find", "bloom over 40 mm").output
    assert "Nothing found" in run("find", "zebra").output
    hits = json.loads(run("find", "salmon", "--json").stdout)["hits"]
    assert {hit["plant"]["key"] for hit in hits} == {"23-05"}


def test_play_prints_media_fragments(run: Run, walk: Path) -> None:
    address = run("play", "23-05", "--print").output.strip()
    path, _, fragment = address.partition("#t=")
    assert path == str(walk).replace(" ", "%20")
    start, end = (float(one) for one in fragment.split(","))
    assert 14 <= start <= 16
    assert 18 < end <= 24
    assert run("play", "bench-walk@0:20", "--print").output.strip() == address
    run("play", "bench-walk@9:00", "--print", code=7)
    assert json.loads(run("play", "23-05", "--json").stdout)[0]["address"] == address


def test_play_opens_a_player_at_the_moment(
    run: Run, walk: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    player = tmp_path / "bin" / "mpv"
    player.parent.mkdir()
    player.write_text(f'#!/bin/sh\necho "$@" > "{tmp_path}/played"\n')
    player.chmod(0o755)
    monkeypatch.setenv("PATH", f"{player.parent}{os.pathsep}{os.environ['PATH']}")
    run("play", "23-05")
    told = (tmp_path / "played").read_text()
    assert told.startswith("--start=1")
    assert str(walk) in told


def test_register_in_and_out(run: Run, walk: Path, tmp_path: Path) -> None:
    assert run("register", "export").stdout == REGISTER
    (tmp_path / "new.csv").write_text(REGISTER.replace("2030", "2029"))
    asked = run("register", "import", "new.csv", given="n\n").output
    assert "sown -> sown" in asked
    assert "1 fields left as they were" in asked
    assert run("register", "export").stdout == REGISTER
    run("register", "import", "new.csv", "--dry-run")
    assert run("register", "export").stdout == REGISTER
    run("register", "import", "new.csv", given="y\n")
    assert "2029" in run("register", "export").stdout
    run("register", "export", "out.csv")
    assert (tmp_path / "out.csv").read_text() == REGISTER.replace("2030", "2029")
    assert "there already" in run("register", "export", "out.csv", code=2).output
    (tmp_path / "odd.csv").write_text("Plant,Mum\n23-9,Tansy Wharf\n")
    plan = json.loads(
        run("register", "import", "odd.csv", "--column", "Plant=number", "--json").stdout
    )
    assert plan["plan"]["new"] == ["23-9"]


def test_corrections_are_listed_undone_and_carried(run: Run, walk: Path, tmp_path: Path) -> None:
    store = the_store(tmp_path)
    record = next(r for r in plant_page(store, "23-04").records if r.value == 45)
    moment = record.moment
    at = Span(recording=moment.recording, start_ms=moment.start_ms, end_ms=moment.end_ms)
    correct(store, SetValue(value=50), at=at)
    store.close()
    assert "applied" in run("corrections", "list").output
    assert "Undone: 50" in run("corrections", "undo").output
    assert "Done again: 50" in run("corrections", "redo").output
    run("corrections", "export", "mine.jsonl")
    assert len((tmp_path / "mine.jsonl").read_text().splitlines()) == 3
    other = tmp_path / "other"
    assert "3 new" in run("--diary", other, "corrections", "import", "mine.jsonl").output
    assert "3 were here" in run("corrections", "import", "mine.jsonl", "--diary", other).output
    listed = json.loads(run("corrections", "list", "--json").stdout)
    assert listed[0]["kind"] == "SetValue"


def test_format_and_reading_again(run: Run, walk: Path) -> None:
    assert "as in the register" in run("format").output
    assert "like R23/104" in run("format", "R23/104").output
    run("format", "--clear")
    run("format", "none", code=2)
    assert "bench-walk: 2 plants in 2 clips" in run("read-again").output
    run("read-again", "bench-walk", "--json")


def test_no_diary_yet(run: Run) -> None:
    told = run("recordings", code=6)
    assert "no diary here yet" in told.output
    assert told.output.count("\n") == 1


def commands(group: click.Group, path: tuple[str, ...] = ()) -> list[tuple[str, ...]]:
    found = []
    for name, command in group.commands.items():
        if isinstance(command, click.Group):
            found += commands(command, (*path, name))
        else:
            found.append((*path, name))
    return found


@pytest.mark.parametrize("path", commands(main), ids=" ".join)
def test_help_shows_an_example(run: Run, path: tuple[str, ...]) -> None:
    output = run(*path, "--help").output
    assert f"diary {' '.join(path)}" in output.partition("Example")[2], "no example"


def test_the_menu_is_there_without_loading_anything_heavy() -> None:
    check = (
        "import sys, diary.cli; "
        "print([name for name in ('spacy', 'faster_whisper', 'av', 'numpy', 'sqlite_utils') "
        "if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", check], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_what_becomes_of_a_seedling(run: Run, walk: Path) -> None:
    run("register", "renumber", "23-04", "24-11")
    assert run("seedling", "23-04").output.startswith("24-11\n")
    run("register", "name", "24-11", "Quill Harbour")
    assert run("seedling", "quill harbour").output.startswith("24-11 'Quill Harbour'\n")
    told = run("register", "status", "24-11", "keep", "--date", "2031-06-02", "--reason", "picotee")
    assert "2031-06-02: keep (picotee)" in told.output
    run("register", "merge", "23-05", "24-11")
    assert len(json.loads(run("seedling", "24-11", "--json").stdout)["clips"]) == 2
    run("corrections", "undo")
    assert len(json.loads(run("seedling", "24-11", "--json").stdout)["clips"]) == 1
    run("register", "status", "nothing", "keep", code=7)
