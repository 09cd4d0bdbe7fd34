"""The demo recordings themselves: real media, dated, small, and the picture follows the talk."""

import tomllib

import av
import numpy as np
import pytest

from tests.demo.answers import CLIPS, JUNE, MAY, MEMO, NAMES, answers

MOST_BYTES = 6_000_000
LOOKS = tomllib.loads((CLIPS / "looks.toml").read_text(encoding="utf-8"))


def test_they_are_small() -> None:
    assert sum(answers(name).path.stat().st_size for name in NAMES) < MOST_BYTES


@pytest.mark.parametrize("name", NAMES)
def test_they_are_what_a_camera_leaves(name: str) -> None:
    sheet = answers(name)
    with av.open(str(sheet.path)) as media:
        assert media.metadata["creation_time"].startswith(sheet.day.isoformat())
        assert media.streams.audio[0].codec_context.name == "aac"
        assert [one.codec_context.name for one in media.streams.video] == (
            [] if name == MEMO else ["h264"]
        )
        assert media.duration is not None
        assert sheet.times[-1][1] <= media.duration / 1e6 <= sheet.times[-1][1] + 2


@pytest.mark.parametrize("name", NAMES)
def test_scripts_and_times_belong_together(name: str) -> None:
    sheet = answers(name)
    utterances = sheet.script["utterances"]
    assert len(sheet.times) == len(utterances)
    assert list(sheet.times) == sorted(sheet.times)
    for clip in sheet.script["clips"]:
        for told in clip["observations"]:
            assert told["quote"] in utterances[told["u"]]


@pytest.mark.parametrize("name", [MAY, JUNE])
def test_the_flower_spoken_of_is_on_the_screen(name: str) -> None:
    sheet = answers(name)
    shares: dict[tuple[str, str], float] = {}
    moments = {
        clip["plant"]: sum(sheet.times[told["u"]]) / 2
        for clip in reversed(sheet.script["clips"])
        for told in reversed(clip["observations"])
        if told["trait"] == "colour"
    }
    for at, seconds in moments.items():
        picture = _frame(name, seconds)
        for plant in moments:
            shares[at, plant] = _share(picture, LOOKS[name][plant]["lower"])
    for plant in moments:
        assert shares[plant, plant] > 0.01
        elsewhere = [shares[at, plant] for at in moments if at != plant]
        assert shares[plant, plant] > 3 * float(np.median(elsewhere)), plant


def _frame(name: str, seconds: float) -> np.ndarray:
    with av.open(str(answers(name).path)) as media:
        stream = media.streams.video[0]
        assert stream.time_base is not None
        media.seek(int(seconds / stream.time_base), stream=stream)
        for frame in media.decode(stream):
            if frame.time is not None and frame.time >= seconds:
                return frame.to_ndarray(format="rgb24")
    raise AssertionError(f"{name} has no picture at {seconds} s")


def _share(picture: np.ndarray, colour: str) -> float:
    """The share of the picture that is near a "#rrggbb" colour."""
    wanted = np.array([int(colour[n : n + 2], 16) for n in (1, 3, 5)])
    return float((np.abs(picture.astype(int) - wanted).sum(axis=2) < 40).mean())
