"""What a file says of itself."""

import hashlib
import time
from datetime import datetime
from pathlib import Path

import pytest

from diary.errors import MediaError
from diary.media.clockface import local_moment, moment_in_name
from diary.media.probe import probe
from tests.media.conftest import Make, beeps


def test_probe_tells_length_tracks_and_hash(make_media: Make) -> None:
    path = make_media("walk.mp4", beeps(3.0, (1.0,)), film_s=3.0)
    info = probe(path)
    assert info.hash == hashlib.sha256(path.read_bytes()).hexdigest()
    assert info.duration_ms == pytest.approx(3000, abs=60)
    assert info.has_picture
    assert info.has_sound
    assert (info.video_codec, info.audio_codec) == ("h264", "aac")
    assert not probe(make_media("memo.m4a", beeps(1.0, ()))).has_picture
    assert not probe(make_media("mute.mp4", film_s=1.0)).has_sound


def test_creation_time_is_given_in_local_time(
    make_media: Make, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TZ", "Etc/GMT-10")  # ten hours ahead of UTC
    time.tzset()
    try:
        path = make_media(
            "x.mp4", beeps(1.0, ()), tags={"creation_time": "2031-06-02T20:30:00.000000Z"}
        )
        assert probe(path).recorded == datetime(2031, 6, 3, 6, 30)
    finally:
        monkeypatch.undo()
        time.tzset()


def test_date_in_the_name_stands_in(make_media: Make) -> None:
    path = make_media("VID_20310602_101112.mkv", beeps(1.0, ()), codec="flac")
    assert probe(path).recorded == datetime(2031, 6, 2, 10, 11, 12)
    assert probe(make_media("memo.mkv", beeps(1.0, ()), codec="flac")).recorded is None


@pytest.mark.parametrize(
    ("name", "moment"),
    [
        ("20310602.mp4", datetime(2031, 6, 2)),
        ("2031-06-02 10.11.12.mov", datetime(2031, 6, 2, 10, 11, 12)),
        ("clip 2031-06-02 at 10.11.12.mp4", datetime(2031, 6, 2, 10, 11, 12)),
        ("02.06.2031 walk.mp4", datetime(2031, 6, 2)),
        ("06-22-2031.mp4", datetime(2031, 6, 22)),
        ("walk 2 June 2031.m4a", datetime(2031, 6, 2)),
        ("June 2nd, 2031.wav", datetime(2031, 6, 2)),
        ("IMG_1234.mov", None),
        ("23-04 and 2311.mp4", None),
        ("31.02.2031.mp4", None),
    ],
)
def test_moment_in_name(name: str, moment: datetime | None) -> None:
    assert moment_in_name(name) == moment


@pytest.mark.parametrize("text", ["1904-01-01T00:00:00Z", "1970-01-01T00:00:00Z", "2031", "soon"])
def test_a_clock_that_was_never_set_is_no_date(text: str) -> None:
    assert local_moment(text) is None


def test_an_offset_keeps_the_clock_of_the_place() -> None:
    assert local_moment("2031-06-02T10:00:00+0200") == datetime(2031, 6, 2, 10)


def test_probe_of_no_media_is_one_line(tmp_path: Path) -> None:
    path = tmp_path / "text.mp4"
    path.write_text("hello")
    with pytest.raises(MediaError, match=r"text\.mp4 is not a recording"):
        probe(path)
