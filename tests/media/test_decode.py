"""Decoding any file with its true times: the odd files of the speech issue."""

import re
import struct
from pathlib import Path

import numpy as np
import pytest

from diary.errors import MediaError
from diary.media.decode import RATE, Sound
from tests.media.conftest import Make, beeps, found_beeps

AT = (1.0, 4.0, 7.5)


def decoded(path: Path) -> tuple[np.ndarray, tuple[str, ...]]:
    sound = Sound(path)
    samples = np.concatenate(list(sound))
    return samples, sound.report.sentences()


@pytest.mark.parametrize(
    ("name", "options"),
    [
        ("44k.m4a", {"rate": 44_100}),
        ("8k.wav", {"rate": 8_000, "codec": "pcm_s16le"}),
        ("surround.mkv", {"layout": "5.1", "codec": "ac3"}),
        ("stereo.opus", {"layout": "stereo", "codec": "libopus"}),
        ("plain.mp3", {"codec": "libmp3lame"}),
        ("film.mp4", {"film_s": 9.0}),
        ("film.mov", {"film_s": 9.0}),
        ("film.webm", {"codec": "libopus"}),
    ],
)
def test_every_format_keeps_the_times(make_media: Make, name: str, options: dict) -> None:
    rate = options.get("rate", 48_000)
    samples, missing = decoded(make_media(name, beeps(9.0, AT, rate=rate), **options))
    assert found_beeps(samples) == pytest.approx(AT, abs=0.06)
    assert len(samples) / RATE == pytest.approx(9.0, abs=0.15)
    assert missing == ()


def test_variable_frame_rate_film_keeps_the_times(make_media: Make) -> None:
    times = tuple(np.cumsum([0.03, 0.2, 0.05, 0.4] * 13).round(3).tolist())
    samples, _ = decoded(make_media("vfr.mp4", beeps(9.0, AT), film_times=times))
    assert found_beeps(samples) == pytest.approx(AT, abs=0.06)


def test_late_sound_keeps_the_clock_of_the_film(make_media: Make) -> None:
    path = make_media("late.mp4", beeps(9.0, AT), film_s=12.0, sound_at=3.0)
    samples, missing = decoded(path)
    assert found_beeps(samples) == pytest.approx([at + 3 for at in AT], abs=0.06)
    assert any("starts 0:03.0 into" in line for line in missing)


def test_a_hole_of_five_seconds_becomes_silence(make_media: Make) -> None:
    path = make_media("hole.mkv", beeps(14.0, (1.0, 4.0, 12.0)), codec="flac", hole=(5.0, 10.0))
    samples, missing = decoded(path)
    assert found_beeps(samples) == pytest.approx([1.0, 4.0, 12.0], abs=0.06)
    assert len(missing) == 1
    assert re.fullmatch(r"No sound from 0:05\.[01] to 0:10\.[01]\.", missing[0])


def test_damaged_packets_are_counted_and_the_rest_is_heard(make_media: Make) -> None:
    path = make_media("bad.mp4", beeps(9.0, AT), film_s=9.0)
    raw = bytearray(path.read_bytes())
    # AAC packets from 5 s to 6 s: overwritten in the media data, sizes and times untouched.
    for offset, size in packets_between(path, 5.0, 6.0):
        raw[offset : offset + size] = b"\xff" * size
    path.write_bytes(raw)
    samples, missing = decoded(path)
    assert found_beeps(samples) == pytest.approx(AT, abs=0.06)
    assert any("damaged piece" in line for line in missing)


def packets_between(path: Path, start: float, end: float) -> list[tuple[int, int]]:
    import av

    with av.open(str(path)) as container:
        return [
            (packet.pos, packet.size)
            for packet in container.demux(container.streams.audio[0])
            if packet.size
            and packet.pts is not None
            and start <= packet.pts * packet.time_base < end
        ]


def test_a_truncated_recording_gives_what_is_there_and_says_so(make_media: Make) -> None:
    path = make_media("cut.mkv", beeps(9.0, AT), codec="flac")
    path.write_bytes(path.read_bytes()[: path.stat().st_size // 2])
    samples, missing = decoded(path)
    assert found_beeps(samples)[0] == pytest.approx(1.0, abs=0.06)
    assert any("may have been cut off" in line for line in missing)


def test_a_silent_recording_is_silence_of_its_length(make_media: Make) -> None:
    samples, missing = decoded(make_media("silent.m4a", beeps(5.0, ())))
    assert not found_beeps(samples)
    assert len(samples) / RATE == pytest.approx(5.0, abs=0.1)
    assert missing == ()


def test_odd_input_is_one_clear_line(tmp_path: Path, make_media: Make) -> None:
    empty = tmp_path / "empty.mp4"
    empty.write_bytes(b"")
    text = tmp_path / "text.mp4"
    text.write_text("not a film")
    cut = tmp_path / "cut.mp4"
    whole = make_media("whole.mp4", beeps(2.0, (1.0,)), film_s=2.0)
    cut.write_bytes(whole.read_bytes()[:900])
    mute = make_media("mute.mp4", film_s=2.0)
    said = {
        empty: "0 bytes",
        text: "no media file",
        cut: "cut off",
        mute: "no sound track",
        tmp_path / "gone.mp4": "no file",
        tmp_path: "folder",
    }
    for path, words in said.items():
        with pytest.raises(MediaError, match=words) as error:
            list(Sound(path))
        assert str(path) in str(error.value)
        assert "\n" not in str(error.value)


def test_a_clock_that_starts_anywhere_is_brought_to_zero(make_media: Make) -> None:
    # MPEG transport streams (ISO/IEC 13818-1) start at any time; FFmpeg writes 1.4 s.
    samples, _ = decoded(make_media("camcorder.ts", beeps(9.0, AT), codec="mp2", film_s=9.0))
    assert found_beeps(samples) == pytest.approx(AT, abs=0.1)


def test_a_wav_that_claims_to_be_longer_still_reads(make_media: Make) -> None:
    path = make_media("claims.wav", beeps(3.0, (1.0,)), codec="pcm_s16le")
    raw = bytearray(path.read_bytes())
    at = raw.index(b"data")
    raw[at + 4 : at + 8] = struct.pack("<I", 0x7FFFFFFF)  # as recorders leave it at a power cut
    path.write_bytes(raw)
    samples, _ = decoded(path)
    assert found_beeps(samples) == pytest.approx([1.0], abs=0.06)
