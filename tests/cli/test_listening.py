"""How hard to listen, in which language, and how long that will take."""

import json
from pathlib import Path

import pytest

from diary.cli.progress import ProgressLine
from diary.pipeline import Progress
from diary.speech.settings import Effort, SpeechSettings
from tests.cli.conftest import Run

SPOKEN = Path(__file__).parents[1] / "speech" / "clips" / "bench.opus"


@pytest.mark.parametrize("effort", ["draft", "careful"])
def test_every_effort_hears_the_same_plant(run: Run, effort: str) -> None:
    heard = json.loads(run("extract", SPOKEN, "--effort", effort, "--json").stdout)
    assert {clip["plant"]["number"] for clip in heard["clips"]} == {"23-04"}


def test_another_language_is_passed_on(run: Run) -> None:
    run("add", SPOKEN, "--language", "any")
    assert "burgundy" in run("seedling", "23-04").stdout
    assert "no-such" in run("add", SPOKEN, "--effort", "no-such", code=2).output


@pytest.mark.parametrize(("minutes", "told"), [(9, False), (62, True)])
def test_a_long_recording_says_beforehand_how_long_it_will_take(
    capsys: pytest.CaptureFixture[str], minutes: int, told: bool
) -> None:
    line = ProgressLine("walk.mp4", SpeechSettings(effort=Effort.DRAFT))
    for share in (0.0, 0.5):
        line.show(Progress(stage="listening", name="walk", share=share, length_ms=minutes * 60_000))
    said = [row for row in capsys.readouterr().err.splitlines() if "of sound, about" in row]
    assert bool(said) is told
    assert len(said) <= 1
    if told:
        assert "--effort draft (normal" in said[0]
        assert "careful" in said[0]
