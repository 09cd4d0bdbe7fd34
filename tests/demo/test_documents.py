"""The outputs shown in DEVELOPERS.md are what the commands print on the demo's diary."""

import re
import shlex
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.demo.conftest import run_diary

DOCUMENT = Path(__file__).resolve().parents[2] / "DEVELOPERS.md"
LEFT_OUT = "…"  # a line of this alone stands for any number of lines
SHOWN = [
    (command, body)
    for block in re.findall(r"```console\n(.*?)```", DOCUMENT.read_text(encoding="utf-8"), re.S)
    for command, body in re.findall(r"\$ diary (.*?)\n(.*?)(?=^\$ |\Z)", block, re.S | re.M)
]


def _lines(text: str) -> list[str]:
    return [line.rstrip() for line in text.strip().splitlines()]


@pytest.mark.parametrize(("command", "body"), SHOWN, ids=[command for command, _ in SHOWN])
def test_shown_output_is_true(diary: Callable[..., str], command: str, body: str) -> None:
    words = shlex.split(command)
    # reading a file without a diary takes no --diary
    printed = _lines(run_diary(*words) if words[0] == "extract" else diary(*words))
    pieces = [_lines(piece) for piece in re.split(rf"^{LEFT_OUT}$", body, flags=re.M)]
    at = 0
    for number, piece in enumerate(pieces):
        found = [i for i in range(at, len(printed) + 1) if printed[i : i + len(piece)] == piece]
        assert found, f"not printed: {piece}"
        assert number or found[0] == 0
        at = found[0] + len(piece)
    assert body.strip().endswith(LEFT_OUT) or at == len(printed)


def test_every_command_is_told_of() -> None:
    from diary.cli import main

    told = DOCUMENT.read_text(encoding="utf-8")
    told += (DOCUMENT.parent / "README.md").read_text(encoding="utf-8")
    assert [name for name in main.commands if not re.search(rf"diary {name}\b", told)] == []
