"""Listening end to end with the real `base` model: times, resuming, crashes, cancelling."""

import os
import resource
import signal
import subprocess
import sys
import time
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

from diary.errors import Cancelled, MediaError
from diary.media.decode import RATE
from diary.speech.block import Block, block_from_json, block_to_json
from diary.speech.hints import Hints
from diary.speech.recognise import Progress, Recognised, recognise
from diary.speech.settings import Effort, SpeechSettings
from tests.speech.conftest import BENCH

KILLED_AFTER_A_BLOCK = """
import os, signal, sys
from pathlib import Path
from diary.speech.block import block_to_json
from diary.speech.hints import Hints
from diary.speech.recognise import recognise

def keep(block):
    with open(sys.argv[2], "a", encoding="utf-8") as out:
        out.write(block_to_json(block) + "\\n")
    if block.index == int(sys.argv[3]):
        os.kill(os.getpid(), signal.SIGKILL)

recognise(Path(sys.argv[1]), on_block=keep)
"""


def children() -> list[int]:
    """The processes started by this thread and still there (Linux)."""
    text = Path(f"/proc/{os.getpid()}/task/{os.getpid()}/children").read_text()
    return [int(pid) for pid in text.split()]


@pytest.fixture(scope="session")
def heard(long_walk: Path) -> Recognised:
    """The three-block walk, heard without interruption."""
    return recognise(long_walk)


def test_words_come_out_with_case_punctuation_and_true_times(heard: Recognised) -> None:
    text = heard.transcript.text
    assert text.count("First on the left is") == 3
    assert "The upper petals are a deep burgundy, and the lower petals are a soft pink." in text
    words = heard.transcript.words
    firsts = [word.start_ms for word in words if word.text == "First"]
    assert firsts == pytest.approx([5900, 330_900, 640_900], abs=300)
    assert all(before.start_ms <= after.start_ms for before, after in pairwise(words))
    assert all(word.confidence is not None and 0 <= word.confidence <= 1 for word in words)
    assert heard.transcript.duration_ms == pytest.approx(655_000, abs=50)


def test_blocks_follow_each_other_and_are_cut_in_silence(heard: Recognised) -> None:
    assert [block.index for block in heard.blocks] == [0, 1, 2]
    assert heard.blocks[0].start_ms == 0
    for before, after in pairwise(heard.blocks):
        assert before.end_ms == after.start_ms
        assert before.end_ms - before.start_ms <= 300_000
    edges = {block.end_ms for block in heard.blocks[:-1]}
    assert not any(
        word.start_ms <= edge < word.end_ms for edge in edges for word in heard.transcript.words
    )


def test_a_block_survives_json(heard: Recognised) -> None:
    for block in heard.blocks:
        assert block_from_json(block_to_json(block)) == block


def test_kill_and_resume_equals_an_uninterrupted_run(
    long_walk: Path, heard: Recognised, tmp_path: Path
) -> None:
    stored = tmp_path / "blocks.jsonl"
    command = [sys.executable, "-c", KILLED_AFTER_A_BLOCK, str(long_walk), str(stored), "0"]
    killed = subprocess.run(command, check=False)
    assert killed.returncode == -signal.SIGKILL
    kept = [block_from_json(line) for line in stored.read_text("utf-8").splitlines()]
    assert [block.index for block in kept] == [0]
    fresh: list[Block] = []
    resumed = recognise(long_walk, done_blocks=kept, on_block=fresh.append)
    assert [block.index for block in fresh] == [1, 2]
    assert resumed == heard


def test_the_listening_process_dies_with_its_parent(long_walk: Path, tmp_path: Path) -> None:
    script = KILLED_AFTER_A_BLOCK.replace(
        "recognise(Path", "import threading\nprint(os.getpid(), flush=True)\nrecognise(Path"
    )
    command = [sys.executable, "-c", script, str(long_walk), str(tmp_path / "b"), "99"]
    parent = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    assert parent.stdout is not None
    pid = int(parent.stdout.readline())
    listing = Path(f"/proc/{pid}/task/{pid}/children")
    child = _wait_for(lambda: listing.read_text().split())[0]
    parent.kill()
    parent.wait()
    parent.stdout.close()
    assert _wait_for(lambda: not Path(f"/proc/{child}").exists() or _is_zombie(child))


def _wait_for(look, within_s: float = 20.0):
    until = time.monotonic() + within_s
    while time.monotonic() < until:
        if found := look():
            return found
        time.sleep(0.05)
    raise AssertionError("it did not happen")


def _is_zombie(pid: str) -> bool:
    return Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()[0] == "Z"


def test_a_crash_costs_one_block_and_is_reported(long_walk: Path, heard: Recognised) -> None:
    struck: list[int] = []

    def strike(progress: Progress) -> None:
        if progress.stage == "listen" and progress.done_ms == heard.blocks[1].start_ms:
            for pid in children():
                if pid not in struck:
                    struck.append(pid)
                    os.kill(pid, signal.SIGABRT)

    result = recognise(long_walk, done_blocks=heard.blocks[:1], on_progress=strike)
    assert len(struck) == 2  # the block was tried twice
    assert result.blocks[1].lost is not None
    assert result.blocks[1].words == ()
    assert result.blocks[2] == heard.blocks[2]
    assert any("Nothing could be heard from" in line for line in result.missing)


def test_one_crash_alone_costs_nothing(long_walk: Path, heard: Recognised) -> None:
    struck: list[int] = []

    def strike_once(progress: Progress) -> None:
        if progress.stage == "listen" and not struck:
            struck.extend(children())
            os.kill(struck[0], signal.SIGKILL)

    result = recognise(long_walk, done_blocks=heard.blocks[:2], on_progress=strike_once)
    assert struck
    assert result.blocks == heard.blocks


def test_cancelling_stops_soon_and_leaves_no_process(long_walk: Path) -> None:
    asked = []
    with pytest.raises(Cancelled):
        recognise(
            long_walk,
            on_progress=lambda progress: asked.append(progress.stage),
            cancelled=lambda: "listen" in asked,
        )
    assert children() == []


def test_blocks_of_other_settings_are_not_reused(long_walk: Path, heard: Recognised) -> None:
    draft = SpeechSettings(effort=Effort.DRAFT)
    assert draft.fingerprint != SpeechSettings().fingerprint
    assert SpeechSettings(threads=1).fingerprint == SpeechSettings(threads=2).fingerprint
    fresh: list[Block] = []

    def stop_after_first(block: Block) -> None:
        fresh.append(block)

    with pytest.raises(Cancelled):
        recognise(
            long_walk,
            settings=draft,
            done_blocks=heard.blocks,
            on_block=stop_after_first,
            cancelled=lambda: bool(fresh),
        )
    assert fresh[0].index == 0


def test_progress_counts_audio_time_up_to_the_end(long_walk: Path, heard: Recognised) -> None:
    told: list[Progress] = []
    recognise(long_walk, done_blocks=heard.blocks[:2], on_progress=told.append)
    assert {step.stage for step in told} == {"decode", "listen", "done"}
    assert [step.done_ms for step in told] == sorted(step.done_ms for step in told)
    assert told[-1].done_ms == told[-1].total_ms
    assert all(step.left_s is not None and step.left_s >= 0 for step in told)
    assert told[0].left_s > 0  # an estimate before anything has been heard


def test_names_on_record_are_spelt_right_and_others_do_not_creep_in() -> None:
    own = Hints(names=("Wexholt Plum", "Tansy Wharf"), numbers=("23-04", "22-11"))
    text = recognise(BENCH, hints=own).transcript.text
    assert "Tansy Wharf" in text
    assert "Wexholt Plum" in text
    assert "23-04" in text
    strangers = ("Inkwell Lane", "Merrowdown Silk", "Owlerby Clay", "Doubting Maud", "Nine Below")
    text = recognise(BENCH, hints=Hints(names=strangers, numbers=("23-04",))).transcript.text
    assert not any(name in text for name in strangers)
    assert "deep burgundy" in text


def test_a_silent_file_has_no_words_and_says_so(tmp_path: Path) -> None:
    path = _wav(tmp_path / "silent.wav", np.zeros(5 * RATE, dtype=np.int16))
    result = recognise(path)
    assert result.transcript.words == ()
    assert "No speech was found." in result.missing


def test_noise_alone_gives_no_words(tmp_path: Path) -> None:
    rng = np.random.default_rng(5)
    noise = (rng.standard_normal(40 * RATE) * 900).astype(np.int16)
    assert recognise(_wav(tmp_path / "fan.wav", noise)).transcript.words == ()


def test_a_film_without_sound_is_one_clear_line(tmp_path: Path) -> None:
    path = tmp_path / "empty.mp4"
    path.write_bytes(b"")
    with pytest.raises(MediaError, match="0 bytes"):
        recognise(path)


def test_three_hours_stay_under_a_gigabyte(bench: np.ndarray, tmp_path: Path) -> None:
    samples = np.zeros(3 * 3600 * 8000, dtype=np.int16)
    spoken = bench[::2]  # 8 kHz by leaving out every second sample: enough to be understood
    at = (3 * 3600 - 60) * 8000
    samples[at : at + len(spoken)] = spoken
    path = _wav(tmp_path / "day.wav", samples, rate=8000)
    del samples
    result = recognise(path)
    petals = next(word for word in result.transcript.words if word.text == "petals")
    assert petals.start_ms == pytest.approx((3 * 3600 - 60) * 1000 + 7600, abs=1500)
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss * 1024
    assert peak < 1.0e9


def _wav(path: Path, samples: np.ndarray, *, rate: int = RATE) -> Path:
    import wave

    with wave.open(str(path), "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(rate)
        out.writeframes(samples.tobytes())
    return path
