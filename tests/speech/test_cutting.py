"""Blocks are cut in silence; windows are filled, and their times lead back."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from diary.speech.cutting import BLOCK, Span, block_end, clamp, windows
from diary.speech.settings import RATE

S = RATE


def test_a_block_ends_in_its_last_long_pause() -> None:
    speech = (Span(0, 200 * S), Span(206 * S, 250 * S), Span(252 * S, 300 * S))
    assert block_end(speech, BLOCK) == 203 * S


def test_talk_without_a_pause_is_cut_at_the_end() -> None:
    assert block_end((Span(0, BLOCK),), BLOCK) == BLOCK


def test_windows_break_at_the_longest_pause() -> None:
    speech = (Span(0, 10 * S), Span(11 * S, 23 * S), Span(25 * S, 27 * S), Span(28 * S, 40 * S))
    first, second = windows(speech)
    assert first.spans[-1].end == 23 * S
    assert second.spans[0].start == 25 * S


def test_long_pauses_are_shortened_and_times_lead_back() -> None:
    (window,) = windows((Span(1 * S, 3 * S), Span(60 * S, 62 * S)))
    assert window.length == 4 * S + S * 8 // 10
    assert window.place(0.0) == 1 * S
    assert window.place(1.9) == 1 * S + round(1.9 * S)
    assert window.place(3.0) == 60 * S + 2 * S // 10
    assert window.place(99.0) == 62 * S


spans = st.lists(
    st.tuples(st.integers(1, 10 * S), st.integers(S // 5, 28 * S)), min_size=1, max_size=30
)


@given(spans)
def test_windows_hold_all_speech_once_in_order_and_fit_the_model(
    rows: list[tuple[int, int]],
) -> None:
    speech, at = [], 0
    for pause, length in rows:
        speech.append(Span(at + pause, at + pause + length))
        at += pause + length
    made = windows(speech)
    for span in speech:
        holders = [w for w in made for s in w.spans if s.start <= span.start and span.end <= s.end]
        assert len(holders) == 1
    assert all(window.length <= 30 * S for window in made)
    for before, after in pairwise(made):
        assert before.spans[-1].end <= after.spans[0].start


def test_a_word_in_a_pause_goes_to_the_nearer_speech() -> None:
    speech = (Span(0, 2 * S), Span(10 * S, 12 * S))
    start, end = clamp(5 * S, 9 * S, speech, slack=0)
    assert start == 10 * S
    assert end > start
    assert clamp(S, S + 100, speech, slack=0) == (S, S + RATE // 50)
