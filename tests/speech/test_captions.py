"""Captions of every sort to words with times."""

import json
from itertools import pairwise
from pathlib import Path

import pytest
import srt
import webvtt
from hypothesis import given
from hypothesis import strategies as st

from diary.errors import MediaError
from diary.speech.captions import read_captions
from diary.speech.words_in_cues import spread


def written(folder: Path, name: str, text: str) -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_webvtt_with_word_times(tmp_path: Path) -> None:
    # Inline time stamps: W3C WebVTT, "WebVTT cue timestamp"
    path = written(
        tmp_path,
        "a.vtt",
        "WEBVTT\n\nNOTE made by hand\nover two lines\n\nSTYLE\n::cue { color: red }\n\n1\n"
        "00:01.000 --> 00:03.000 align:start\n"
        "<v Ann>deep <00:01.500><c>pink</c> <00:02.000>blooms &amp; buds\n",
    )
    transcript = read_captions(path)
    assert [(word.text, word.start_ms) for word in transcript.words] == [
        ("deep", 1000),
        ("pink", 1500),
        ("blooms", 2000),
        ("&", 2000 + 1000 * 8 // 17),
        ("buds", 2000 + 1000 * 11 // 17),
    ]
    assert transcript.words[-1].end_ms == 3000
    assert transcript.words[0].confidence is None


def test_rolling_captions_say_each_word_once(tmp_path: Path) -> None:
    path = written(
        tmp_path,
        "roll.vtt",
        "WEBVTT\n\n00:00.000 --> 00:02.000\nfirst on the left\n\n"
        "00:02.000 --> 00:02.010\nfirst on the left\n\n"
        "00:02.010 --> 00:04.000\nfirst on the left\nis<00:03.000><c> a pink</c>\n\n"
        "00:04.000 --> 00:06.000\nis a pink\none with an eye\n",
    )
    transcript = read_captions(path)
    assert transcript.text == "first on the left is a pink one with an eye"
    assert transcript.words[4].start_ms == 2010
    assert transcript.words[7].start_ms == 4000
    assert transcript.segment_starts == (0, 4, 7)


def test_a_line_said_twice_after_a_pause_stays_twice(tmp_path: Path) -> None:
    path = written(
        tmp_path,
        "twice.srt",
        "1\n00:00:01,000 --> 00:00:02,000\nkeep it\n\n2\n00:00:05,000 --> 00:00:06,000\nkeep it\n",
    )
    assert read_captions(path).text == "keep it keep it"


def test_srt_as_written_by_an_independent_library(tmp_path: Path) -> None:
    from datetime import timedelta

    cues = [
        srt.Subtitle(1, timedelta(seconds=1), timedelta(seconds=2.5), "twenty-three oh four"),
        srt.Subtitle(2, timedelta(hours=1), timedelta(hours=1, seconds=2), "<i>a keeper</i>"),
    ]
    transcript = read_captions(written(tmp_path, "a.srt", srt.compose(cues)))
    assert transcript.text == "twenty-three oh four a keeper"
    assert transcript.words[3].start_ms == 3_600_000
    assert transcript.duration_ms == 3_602_000


def test_webvtt_as_written_by_an_independent_library(tmp_path: Path) -> None:
    captions = webvtt.WebVTT()
    captions.captions.append(webvtt.Caption("00:00:01.000", "00:00:02.000", "a white throat"))
    captions.save(str(tmp_path / "b.vtt"))
    transcript = read_captions(tmp_path / "b.vtt")
    assert transcript.text == "a white throat"
    assert (transcript.words[0].start_ms, transcript.words[-1].end_ms) == (1000, 2000)


def test_windows_line_ends_marks_and_latin_text(tmp_path: Path) -> None:
    path = tmp_path / "w.srt"
    path.write_bytes("1\r\n00:00:01,000 --> 00:00:02,000\r\ncaf\xe9 au lait\r\n".encode("cp1252"))
    assert read_captions(path).text == "café au lait"
    path.write_bytes("\ufeff1\n00:00:01,000 --> 00:00:02,000\nrosé\n".encode())
    assert read_captions(path).text == "rosé"


def test_json_captions_by_the_contract(tmp_path: Path) -> None:
    segments = [
        {
            "start": 0.0,
            "end": 1.0,
            "text": "a white",
            "words": [
                {"start": 0.1, "end": 0.3, "text": "a", "confidence": 0.9},
                {"start": 0.3, "end": 0.9, "text": "white", "confidence": 0.5},
            ],
        },
        {"start": 1.0, "end": 2.0, "text": "throat"},
    ]
    transcript = read_captions(written(tmp_path, "a.json", json.dumps({"segments": segments})))
    assert transcript.text == "a white throat"
    assert transcript.words[1].start_ms == 300
    assert transcript.words[1].confidence == 0.5
    assert transcript.words[2].confidence is None
    assert transcript.segment_starts == (0, 2)


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        ("a.json", '{"segments": [', "line 1"),
        ("b.json", "[]", "segments"),
        ("c.json", '{"segments": [{"start": "x", "end": 1, "text": "a"}]}', "segments"),
        ("d.srt", "just some text", "no captions"),
        ("e.vtt", "WEBVTT\n\n00:05.000 --> 00:01.000\nhi\n", "line 3"),
        ("f.vtt", "WEBVTT\n\n5 --> 6\nhi\n", "line 3"),
    ],
)
def test_a_mistake_is_one_line_with_its_place(
    tmp_path: Path, name: str, text: str, says: str
) -> None:
    path = written(tmp_path, name, text)
    with pytest.raises(MediaError, match=says) as error:
        read_captions(path)
    assert name in str(error.value)
    assert "\n" not in str(error.value)


def test_no_captions_at_all_is_an_empty_transcript(tmp_path: Path) -> None:
    assert read_captions(written(tmp_path, "a.vtt", "WEBVTT\n")).words == ()


@given(
    st.lists(st.text("abcdefgh", min_size=1, max_size=9), min_size=1, max_size=12),
    st.integers(0, 10**7),
    st.integers(0, 60_000),
)
def test_spread_words_follow_each_other_inside_the_cue(
    said: list[str], start: int, length: int
) -> None:
    words = spread(" ".join(said), start, start + length)
    assert [word.text for word in words] == said
    assert words[0].start_ms == start
    for before, after in pairwise(words):
        assert before.start_ms <= after.start_ms
        assert before.end_ms <= after.start_ms + 1
    assert all(word.start_ms < word.end_ms for word in words)
