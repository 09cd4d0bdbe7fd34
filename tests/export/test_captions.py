"""Captions and chapters: the rules of WebVTT, read back by two libraries of others."""

import io
import re
from itertools import pairwise

import pytest
import srt
import webvtt
from hypothesis import given
from hypothesis import strategies as st

from diary.export.captions import Cue, cues, subrip, vtt_time
from diary.export.captions import webvtt as write_webvtt
from diary.export.chapters import chapter_cues, chapter_lines, chapters_webvtt
from diary.speech.transcript import Transcript, Word
from tests.insight.say import season, shown

TIMING = re.compile(r"(\d{2,}:[0-5]\d:[0-5]\d\.\d{3}) --> (\d{2,}:[0-5]\d:[0-5]\d\.\d{3})$")


def said(text: str, *, each_ms: int = 300) -> Transcript:
    return Transcript(
        words=tuple(
            Word(text=word, start_ms=index * each_ms, end_ms=index * each_ms + each_ms - 20)
            for index, word in enumerate(text.split())
        ),
        segment_starts=(0,),
    )


@st.composite
def transcripts(draw: st.DrawFn) -> Transcript:
    """Words at any times in order, overlapping and of no length too."""
    words, at = [], 0
    letters = st.text(
        st.characters(blacklist_categories=("Cs", "Cc", "Z")), min_size=1, max_size=40
    )
    for text in draw(st.lists(letters, max_size=40)):
        at += draw(st.integers(0, 3000))
        words.append(Word(text=text, start_ms=at, end_ms=at + draw(st.integers(0, 2000))))
    return Transcript(words=tuple(words))


@given(transcripts())
def test_webvtt_keeps_the_rules_and_every_word(transcript: Transcript) -> None:
    # WebVTT, editor's copy of 14 May 2026, section 4: header line and a blank one; hours of two
    # digits or more, three of fraction; end after start; starts never fall; no --> and no blank
    # line in a cue
    text = write_webvtt(cues(transcript))
    assert text.startswith("WEBVTT\n")
    blocks = text.strip().split("\n\n")[1:]
    last = "00:00:00.000"
    for number, block in enumerate(blocks, start=1):
        own_id, timing, *lines = block.split("\n")
        match = TIMING.match(timing)
        assert match
        assert own_id == str(number)
        assert last <= match[1] < match[2]
        last = match[1]
        assert lines
        assert all(line.strip() and "-->" not in line for line in lines)
        assert "<" not in "".join(lines)
    shown_words = " ".join("\n".join(block.split("\n")[2:]) for block in blocks)
    for mark, sign in (("&lt;", "<"), ("&gt;", ">"), ("&amp;", "&")):
        shown_words = shown_words.replace(mark, sign)
    assert shown_words.split() == " ".join(word.text for word in transcript.words).split()


@given(transcripts())
def test_webvtt_is_read_by_another_library(transcript: Transcript) -> None:
    made = cues(transcript)
    read = list(webvtt.from_buffer(io.StringIO(write_webvtt(made))))
    assert [one.start for one in read] == [vtt_time(cue.start_ms) for cue in made]


@given(transcripts())
def test_subrip_is_read_by_another_library(transcript: Transcript) -> None:
    # srt 3.5.3 reads what players read; there is no formal standard
    made = cues(transcript)
    read = list(srt.parse(subrip(made)))
    assert [(one.index, round(one.start.total_seconds() * 1000)) for one in read] == [
        (number, cue.start_ms) for number, cue in enumerate(made, start=1)
    ]
    assert [one.content for one in read] == [cue.text for cue in made]


def test_captions_are_short_and_break_at_sentences() -> None:
    text = (
        "Right, first up is twenty-three oh four, and it is a lovely thing. The upper petals are "
        "a deep wine with a blotch that is nearly black, and some feathering running out of it."
    )
    made = cues(said(text))
    assert all(len(line) <= 50 for cue in made for line in cue.text.split("\n"))
    assert all(cue.end_ms - cue.start_ms <= 7000 for cue in made)
    assert made[0].text.replace("\n", " ").endswith("lovely thing.")


def test_a_long_pause_starts_a_new_caption() -> None:
    words = (
        Word(text="one", start_ms=0, end_ms=300),
        Word(text="two", start_ms=5000, end_ms=5300),
    )
    assert [cue.text for cue in cues(Transcript(words=words))] == ["one", "two"]


def test_arrows_and_tags_are_written_as_text() -> None:
    text = write_webvtt([Cue(start_ms=0, end_ms=1, text="a --> b & <c>\n\nd")])
    assert text.splitlines()[-2:] == ["a --&gt; b &amp; &lt;c&gt;", "d"]


@pytest.mark.parametrize(
    ("milliseconds", "written"),
    [(0, "00:00:00.000"), (3_661_001, "01:01:01.001"), (360_000_000, "100:00:00.000")],
)
def test_times(milliseconds: int, written: str) -> None:
    assert vtt_time(milliseconds) == written


def test_chapters_follow_without_overlap_and_neighbours_join() -> None:
    clips = season(shown("23-04"), shown("23-04"), shown("Fenmarsh Lad"), shown("?a/the pink one"))
    made = chapter_cues(clips.walks[0].clips, 60_000)
    assert [cue.text for cue in made] == ["23-04", "'Fenmarsh Lad'", "a/the pink one"]
    assert all(one.end_ms <= other.start_ms for one, other in pairwise(made))
    read = list(webvtt.from_buffer(io.StringIO(chapters_webvtt(clips.walks[0].clips, 60_000))))
    assert [one.text for one in read] == [cue.text for cue in made]


def test_chapter_lines_start_at_nought_and_last_ten_seconds() -> None:
    # common practice of video sites: first line 0:00, each chapter ten seconds or longer
    clips = season(*(shown(f"23-{number:02d}") for number in range(1, 12)))
    lines = chapter_lines(clips.walks[0].clips, 110_000).splitlines()
    assert lines[0].startswith("0:00 23-01")
    starts = [
        int(minute) * 60 + int(second)
        for minute, second in (line.split()[0].split(":") for line in lines)
    ]
    assert all(later - earlier >= 10 for earlier, later in pairwise(starts))
    for number in range(1, 12):
        assert sum(f"23-{number:02d}" in line for line in lines) == 1


def test_talk_before_between_and_after_gets_a_line_of_its_own() -> None:
    walk = season(*(shown("23-01") for _ in range(4)), *(shown("23-03") for _ in range(4))).walks[0]
    apart = [*walk.clips[1:3], *walk.clips[5:7]]
    assert chapter_lines(apart, 120_000).splitlines() == [
        "0:00 Opening",
        "0:10 23-01",
        "0:29 In between",
        "0:50 23-03",
        "1:09 Close",
    ]
