"""Reels: real films made on the spot, cut, joined and decoded again."""

import io
import struct
from fractions import Fraction
from pathlib import Path

import av
import numpy as np
import pytest
from PIL import Image

from diary.errors import Cancelled, MediaError
from diary.export.captions import Cue
from diary.export.reel import make_reel, reel_captions
from diary.export.reel_shot import Shot
from diary.media.stills import sharpest_still

RATE = 48_000


def film(path: Path, size: tuple[int, int] | None, *, beep_s: float, length_s: int = 6) -> Path:
    """Grey that grows lighter by the second, and one beep of .2 s; `size` None: sound alone."""
    with av.open(str(path), "w") as out:
        video = None
        if size is not None:
            video = out.add_stream("libx264", rate=10, options={"preset": "ultrafast", "g": "25"})
            video.width, video.height = size
            video.pix_fmt = "yuv420p"
        audio = out.add_stream("aac", rate=RATE, layout="mono")
        if video is not None:
            for number in range(length_s * 10):
                grey = np.full(
                    (size[1], size[0], 3), min(250, 20 + 30 * (number // 10)), dtype=np.uint8
                )
                frame = av.VideoFrame.from_ndarray(grey, format="rgb24")
                frame.pts, frame.time_base = number, Fraction(1, 10)
                out.mux(video.encode(frame))
            out.mux(video.encode(None))
        sound = np.zeros(length_s * RATE, dtype=np.float32)
        first = round(beep_s * RATE)
        sound[first : first + RATE // 5] = 0.5 * np.sin(
            2 * np.pi * 880 * np.arange(RATE // 5) / RATE
        )
        for place in range(0, len(sound), 1024):
            block = av.AudioFrame.from_ndarray(
                sound[None, place : place + 1024], format="fltp", layout="mono"
            )
            block.sample_rate, block.pts, block.time_base = RATE, place, Fraction(1, RATE)
            out.mux(audio.encode(block))
        out.mux(audio.encode(None))
    return path


def greys(path: Path) -> list[tuple[float, float]]:
    """The time of each picture and the mean of its middle."""
    with av.open(str(path)) as source:
        return [
            (float(frame.time), float(middle.mean()))
            for frame in source.decode(video=0)
            for middle in [
                frame.to_ndarray(format="gray")[
                    frame.height // 2 - 10 : frame.height // 2 + 10,
                    frame.width // 2 - 10 : frame.width // 2 + 10,
                ]
            ]
        ]


def beep_times(path: Path) -> list[float]:
    """When a beep begins."""
    with av.open(str(path)) as source:
        resampler = av.AudioResampler(format="fltp", layout="mono", rate=RATE)
        pieces = [
            piece.to_ndarray()[0]
            for frame in source.decode(audio=0)
            for piece in resampler.resample(frame)
        ]
    loud = np.convolve(np.abs(np.concatenate(pieces)), np.ones(480) / 480, mode="same") > 0.05
    starts = np.flatnonzero(np.diff(np.concatenate([[False], loud]).astype(np.int8)) == 1) / RATE
    return [float(start) for start in starts]


@pytest.fixture
def shots(tmp_path: Path) -> tuple[Shot, ...]:
    wide = film(tmp_path / "wide.mp4", (320, 180), beep_s=2.5)
    tall = film(tmp_path / "tall.mp4", (90, 160), beep_s=4.0)
    return (
        Shot(
            path=wide,
            start_ms=2000,
            end_ms=4000,
            title="23-04, 2031-06-02",
            captions=(
                Cue(start_ms=100, end_ms=1500, text="It's a keeper \u2014 & <lovely>"),
                Cue(start_ms=1500, end_ms=2000, text="two\nlines"),
            ),
        ),
        Shot(
            path=tall,
            start_ms=3500,
            end_ms=5000,
            title="23-04, 2031-06-09",
            captions=(Cue(start_ms=0, end_ms=1400, text="Back to it."),),
        ),
    )


def test_a_reel_is_its_clips_one_after_another(tmp_path: Path, shots: tuple[Shot, ...]) -> None:
    out = tmp_path / "reel.mp4"
    seen: list[tuple[int, int]] = []
    make_reel(shots, out, on_progress=lambda done, total: seen.append((done, total)))
    assert seen == [(2000, 3500), (3500, 3500)]
    with av.open(str(out)) as source:
        assert source.duration / 1_000_000 == pytest.approx(3.5, abs=0.1)
        video = source.streams.video[0]
        assert (video.codec_context.name, video.width, video.height) == ("h264", 320, 180)
        assert source.streams.audio[0].codec_context.name == "aac"
        assert source.streams.subtitles[0].codec_context.name == "mov_text"
    pictures = greys(out)
    # seconds 2 and 3 of the first film (grey 80, 110), then 3.5 to 5 of the second (110, 140)
    for at, expected in ((0.5, 80), (1.5, 110), (2.2, 110), (3.2, 140)):
        grey = min(pictures, key=lambda one: abs(one[0] - at))[1]
        assert grey == pytest.approx(expected, abs=6), at
    # sound stays with its picture: beeps at 2.5 of the first and 4.0 of the second film
    assert beep_times(out) == pytest.approx([0.5, 2.5], abs=0.05)


def test_captions_are_in_the_film(tmp_path: Path, shots: tuple[Shot, ...]) -> None:
    out = tmp_path / "reel.mp4"
    make_reel(shots, out)
    with av.open(str(out)) as source:
        stream = source.streams.subtitles[0]
        read = [
            (round(float(packet.pts * packet.time_base), 2), bytes(packet)[2:].decode("utf-8"))
            for packet in source.demux(stream)
            if packet.size > 2
        ]
    assert read == [
        (0.1, "It's a keeper \u2014 & <lovely>"),
        (1.5, "two\nlines"),
        (2.0, "Back to it."),
    ]
    assert [(cue.start_ms, cue.end_ms) for cue in reel_captions(shots)] == [
        (100, 1500),
        (1500, 2000),
        (2000, 3400),
    ]


def test_sound_without_a_picture_gets_a_card(tmp_path: Path) -> None:
    memo = film(tmp_path / "memo.m4a", None, beep_s=1.0)
    shot = Shot(path=memo, start_ms=500, end_ms=2500, title="23-04, 2031-06-02")
    out = tmp_path / "reel.mp4"
    make_reel([shot], out)
    pictures = greys(out)
    assert len(pictures) >= 9
    with av.open(str(out)) as source:
        first = next(source.decode(video=0)).to_ndarray(format="rgb24")
    assert first.shape == (720, 1280, 3)
    assert first.max() > 200  # the words on it
    assert beep_times(out) == pytest.approx([0.5], abs=0.05)


def test_an_upright_reel_stays_upright(tmp_path: Path, shots: tuple[Shot, ...]) -> None:
    out = tmp_path / "reel.mp4"
    make_reel(shots[1:], out)
    with av.open(str(out)) as source:
        assert (source.streams.video[0].width, source.streams.video[0].height) == (90, 160)


def test_a_stopped_reel_leaves_nothing(tmp_path: Path, shots: tuple[Shot, ...]) -> None:
    asked: list[int] = []

    def cancelled() -> bool:
        asked.append(1)
        return len(asked) > 1

    out = tmp_path / "reels" / "reel.mp4"
    with pytest.raises(Cancelled):
        make_reel(shots, out, cancelled=cancelled)
    assert list(out.parent.iterdir()) == []


def test_an_older_reel_is_kept_when_a_new_one_fails(
    tmp_path: Path, shots: tuple[Shot, ...]
) -> None:
    out = tmp_path / "reel.mp4"
    make_reel(shots[:1], out)
    before = out.read_bytes()
    lost = Shot(path=tmp_path / "gone.mp4", start_ms=0, end_ms=1000, title="x")
    with pytest.raises(MediaError, match=r"gone\.mp4"):
        make_reel([lost], out)
    assert out.read_bytes() == before
    assert not list(tmp_path.glob("*.partial"))


def turned(path: Path) -> Path:
    """The film as a phone held upright writes it: to be turned a quarter clockwise for showing.

    The matrix of the track header is ISO/IEC 14496-12, 8.3.2: (a b u c d v x y w), 16.16 fixed.
    """
    one, none = 0x00010000, 0

    def matrix(a: int, b: int, c: int, d: int) -> bytes:
        return struct.pack(">9i", a, b, 0, c, d, 0, 0, 0, 0x40000000)

    raw = path.read_bytes()
    track = raw.index(b"tkhd")
    at = raw.index(matrix(one, none, none, one), track)
    path.write_bytes(raw[:at] + matrix(none, one, -one, none) + raw[at + 36 :])
    return path


def test_a_phones_upright_film_is_shown_upright(tmp_path: Path) -> None:
    path = tmp_path / "phone.mp4"
    with av.open(str(path), "w") as out:
        video = out.add_stream("libx264", rate=10, options={"preset": "ultrafast"})
        video.width, video.height, video.pix_fmt = 160, 90, "yuv420p"
        for number in range(10):
            halves = np.zeros((90, 160, 3), dtype=np.uint8)
            halves[:, :80] = 255  # the left half is white: turned clockwise, the upper half
            frame = av.VideoFrame.from_ndarray(halves, format="rgb24")
            frame.pts, frame.time_base = number, Fraction(1, 10)
            out.mux(video.encode(frame))
        out.mux(video.encode(None))
    made = tmp_path / "reel.mp4"
    make_reel([Shot(path=turned(path), start_ms=0, end_ms=1000, title="7")], made)
    with av.open(str(made)) as source:
        picture = next(source.decode(video=0)).to_ndarray(format="gray")
    assert picture.shape == (160, 90)
    assert picture[:70].mean() > 200
    assert picture[90:].mean() < 50
    # and so is its still on the sheet
    still = sharpest_still(path, 0, 1000, width=90)
    assert still is not None
    assert (still.width, still.height) == (90, 160)
    grey = np.asarray(Image.open(io.BytesIO(still.jpeg)).convert("L"))
    assert grey[:70].mean() > 200
    assert grey[90:].mean() < 50
