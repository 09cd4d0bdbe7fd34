"""`diary demo` run once, as a person would, with the real speech model."""

import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from diary.records.store import Store, open_store


@dataclass(frozen=True, slots=True, kw_only=True)
class Demo:
    """The demo's diary and what the command printed."""

    folder: Path
    output: str


def run_diary(*arguments: object) -> str:
    """What a `diary` command prints; fails where it fails."""
    done = subprocess.run(
        [sys.executable, "-m", "diary", *map(str, arguments)],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    assert done.returncode == 0, f"diary {arguments}: {done.stderr}"
    return done.stdout


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Demo:
    folder = tmp_path_factory.mktemp("demo") / "diary"
    return Demo(folder=folder, output=run_diary("demo", "--diary", folder))


@pytest.fixture
def diary(demo: Demo) -> Callable[..., str]:
    """Run a command on the demo's diary."""
    return lambda *arguments: run_diary(*arguments, "--diary", demo.folder)


@pytest.fixture(scope="session")
def store(demo: Demo) -> Iterator[Store]:
    opened = open_store(demo.folder)
    yield opened
    opened.close()
