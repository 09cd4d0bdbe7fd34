"""The time that listening will take, as remembered from runs on this machine."""

from pathlib import Path

from diary.speech.settings import Effort, SpeechSettings
from diary.speech.speed import is_measured, remember, speed_of

NORMAL = SpeechSettings(threads=2)


def test_a_guess_until_the_first_run_then_what_was_measured(tmp_path: Path) -> None:
    assert not is_measured(NORMAL, folder=tmp_path)
    assert speed_of(NORMAL, folder=tmp_path) > 0
    remember(NORMAL, 8.0, folder=tmp_path)
    assert is_measured(NORMAL, folder=tmp_path)
    assert speed_of(NORMAL, folder=tmp_path) == 8.0
    remember(NORMAL, 4.0, folder=tmp_path)
    assert 4.0 < speed_of(NORMAL, folder=tmp_path) < 8.0


def test_each_effort_and_model_has_its_own_speed(tmp_path: Path) -> None:
    remember(NORMAL, 8.0, folder=tmp_path)
    careful = SpeechSettings(threads=2, effort=Effort.CAREFUL)
    assert not is_measured(careful, folder=tmp_path)
    guesses = [
        speed_of(SpeechSettings(threads=2, effort=effort), folder=tmp_path / "none")
        for effort in (Effort.DRAFT, Effort.NORMAL, Effort.CAREFUL)
    ]
    assert guesses == sorted(guesses, reverse=True)


def test_a_damaged_or_read_only_memory_is_no_reason_to_fail(tmp_path: Path) -> None:
    (tmp_path / "speed.json").write_text("[not json")
    assert not is_measured(NORMAL, folder=tmp_path)
    remember(NORMAL, 5.0, folder=tmp_path / "nowhere")
    assert not is_measured(NORMAL, folder=tmp_path / "nowhere")
