"""Stills, previews and the outline of the sound."""

import struct
from pathlib import Path

import numpy as np
import pytest

from diary.errors import Cancelled
from diary.media.decode import Sound
from diary.media.peaks import waveform_peaks
from diary.media.preview import make_preview, plays_in_browsers
from diary.media.probe import probe
from diary.media.stills import sharpest_still
from tests.media.conftest import Make, beeps, found_beeps


def test_the_sharpest_picture_of_the_stretch_is_taken(make_media: Make) -> None:
    path = make_media("film.mp4", film_s=3.0)  # sharp at 0.5, 1.5 and 2.5 s
    still = sharpest_still(path, 1000, 2000, width=80)
    assert still is not None
    assert still.at_ms == 1500
    assert (still.width, still.height) == (80, 60)
    assert still.jpeg[:3] == b"\xff\xd8\xff"  # ISO/IEC 10918-1: a JPEG starts with SOI


def test_the_way_from_the_neighbour_is_not_shown(make_media: Make) -> None:
    path = make_media("film.mp4", film_s=5.0)  # as sharp at 1.5 s, while the camera comes
    still = sharpest_still(path, 1000, 4000, width=80)
    assert still is not None
    assert still.at_ms in (2500, 3500)


def test_sound_alone_has_no_still(make_media: Make) -> None:
    assert sharpest_still(make_media("memo.m4a", beeps(1.0, ())), 0, 1000) is None


def test_preview_plays_in_browsers_and_keeps_the_clock(make_media: Make, tmp_path: Path) -> None:
    path = make_media("old.mkv", beeps(5.0, (1.0, 4.0)), codec="flac", film_s=6.0, sound_at=1.0)
    assert not plays_in_browsers(probe(path), path)
    out = tmp_path / "previews" / "old.mp4"
    make_preview(path, out)
    info = probe(out)
    assert plays_in_browsers(info, out)
    assert info.duration_ms == pytest.approx(6000, abs=150)
    assert found_beeps(np.concatenate(list(Sound(out)))) == pytest.approx([2.0, 5.0], abs=0.1)
    still = sharpest_still(out, 0, 1000)
    assert still is not None
    assert still.at_ms == pytest.approx(500, abs=40)


def test_a_film_taken_upright_is_shown_upright(make_media: Make, tmp_path: Path) -> None:
    path = make_media("phone.mp4", film_s=1.0)
    # The matrix of a track header: ISO/IEC 14496-12, 8.3.2; phones write a quarter turn there.
    flat = struct.pack(">9i", 1 << 16, 0, 0, 0, 1 << 16, 0, 0, 0, 1 << 30)
    turned = struct.pack(">9i", 0, 1 << 16, 0, -(1 << 16), 0, 0, 120 << 16, 0, 1 << 30)
    raw = path.read_bytes()
    at = raw.index(flat, raw.index(b"tkhd"))
    path.write_bytes(raw[:at] + turned + raw[at + len(flat) :])
    still = sharpest_still(path, 0, 1000, width=60)
    assert still is not None
    assert (still.width, still.height) == (60, 80)
    out = tmp_path / "upright.mp4"
    make_preview(path, out)
    seen = sharpest_still(out, 0, 1000, width=60)
    assert seen is not None
    assert (seen.width, seen.height) == (60, 80)


def test_a_stopped_preview_leaves_nothing(make_media: Make, tmp_path: Path) -> None:
    path = make_media("old.mkv", beeps(2.0, ()), codec="flac", film_s=2.0)
    with pytest.raises(Cancelled):
        make_preview(path, tmp_path / "p" / "old.mp4", cancelled=lambda: True)
    assert list((tmp_path / "p").iterdir()) == []


def test_plain_mp4_needs_no_preview(make_media: Make) -> None:
    path = make_media("fine.mp4", beeps(1.0, ()), film_s=1.0)
    assert plays_in_browsers(probe(path), path)


def test_peaks_show_where_it_is_loud(make_media: Make) -> None:
    peaks = waveform_peaks(make_media("x.wav", beeps(3.0, (1.0,)), codec="pcm_s16le"))
    assert len(peaks) == 30
    assert {index for index, peak in enumerate(peaks) if peak > 60} == {10, 11}
