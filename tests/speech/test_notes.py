"""Typed notes: lines for time, dated paragraphs."""

from datetime import date
from pathlib import Path

import pytest

from diary.errors import MediaError
from diary.speech.notes import leading_day, read_note
from diary.speech.transcript import Clock


def test_lines_stand_for_time_and_paragraphs_have_dates(tmp_path: Path) -> None:
    path = tmp_path / "walk.md"
    path.write_text(
        "# Cold house\n"  # 0
        "\n"
        "## Monday 2nd June 2031\n"  # 2
        "\n"
        "- 23-04 has a **deep pink** bloom\n"  # 4
        "- keeper\n"
        "\n"
        "2031-06-09: nothing new\n"  # 7
        "3 of 2031's seedlings came up\n",
        encoding="utf-8",
    )
    transcript = read_note(path)
    assert transcript.clock is Clock.LINES
    assert transcript.duration_ms is None
    assert [(mark.at_ms, mark.day) for mark in transcript.dates] == [
        (2000, date(2031, 6, 2)),
        (7000, date(2031, 6, 9)),
    ]
    deep = next(word for word in transcript.words if word.text == "deep")
    assert deep.start_ms // 1000 == 4
    assert "deep pink bloom keeper" in transcript.text
    assert [transcript.words[n].start_ms for n in transcript.segment_starts] == [
        0,
        2000,
        4000,
        5000,
        7000,
        8000,
    ]


@pytest.mark.parametrize(
    ("line", "day"),
    [
        ("2 June 2031", date(2031, 6, 2)),
        ("Tuesday, 3rd of June 2031 - warm", date(2031, 6, 3)),
        ("June 2nd, 2031: sowing", date(2031, 6, 2)),
        ("2031-6-2", date(2031, 6, 2)),
        ("02/06/2031 in the frame", date(2031, 6, 2)),
        ("**2.6.2031** potted on", date(2031, 6, 2)),
        ("23-04 flowered on 2 June 2031", None),
        ("2311 is a good red", None),
        ("June was wet", None),
        ("", None),
    ],
)
def test_leading_day(line: str, day: date | None) -> None:
    assert leading_day(line) == day


def test_a_date_inside_a_paragraph_does_not_redate_it(tmp_path: Path) -> None:
    path = tmp_path / "n.txt"
    path.write_text("the pink one flowered\n2 June 2031 was the day\n")
    assert read_note(path).dates == ()


def test_bytes_are_no_note(tmp_path: Path) -> None:
    path = tmp_path / "n.txt"
    path.write_bytes(b"\x00\x01\x02")
    with pytest.raises(MediaError, match=r"n\.txt is no text file"):
        read_note(path)
