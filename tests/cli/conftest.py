"""A diary in a folder of its own, and the command run on it as a person would."""

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from diary.cli import main

Run = Callable[..., Result]

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
REGISTER = "number,seed_parent,pollen_parent,sown,status\n23-04,Tansy Wharf,Wexholt Plum,2030,\n"


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """`diary ARGUMENTS`; fails the test on another exit code than `code`."""
    monkeypatch.setenv("DIARY_HOME", str(tmp_path / "home"))
    monkeypatch.chdir(tmp_path)

    def command(*arguments: object, code: int = 0, given: str | None = None) -> Result:
        result = CliRunner().invoke(main, [str(one) for one in arguments], input=given)
        assert result.exit_code == code, result.output
        return result

    return command


@pytest.fixture
def walk(run: Run, tmp_path: Path) -> Path:
    """A diary with two plants seen in one recording of 2 June 2031."""
    (tmp_path / "register.csv").write_text(REGISTER)
    (tmp_path / "cultivars.txt").write_text("Tansy Wharf\nWexholt Plum\n")
    path = tmp_path / "bench walk.vtt"
    path.write_text(WALK)
    run("register", "import", "register.csv")
    run("cultivars", "import", "cultivars.txt")
    run("add", path, "--date", "2031-06-02")
    return path
