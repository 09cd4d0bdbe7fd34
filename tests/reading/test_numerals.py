"""Amounts said aloud.

The published cases are those of text2num (tests/test_text_to_num_en.py, v2.5.2, MIT) and of
openai/whisper (tests/test_normalizer.py, MIT), where they are amounts; the rest is common
practice.
"""

import pytest

from diary.reading.numerals import fraction, quantity, whole
from tests.reading.said import texts


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("one", 1),
        ("nine", 9),
        ("twelve", 12),
        ("nineteen", 19),
        ("twenty", 20),
        ("twenty-one", 21),
        ("forty one", 41),
        ("ninety-nine", 99),
        ("a hundred", 100),
        ("one hundred and fifteen", 115),  # text2num
        ("two hundred", 200),
        ("a hundred and five", 105),
        ("two thousand and four", 2004),  # num2words, to="year"
        ("7", 7),
        ("104", 104),
        ("a dozen", 12),
        ("half a dozen", 6),
        ("two dozen", 24),
        ("a couple", 2),
        ("a couple of", 2),
    ],
)
def test_whole_amounts(said: str, value: int) -> None:
    heard = quantity(texts(said), 0)
    assert heard is not None
    assert heard.value == value
    assert heard.end == len(texts(said))


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("half", 0.5),
        ("a half", 0.5),
        ("a quarter", 0.25),
        ("three quarters", 0.75),
        ("five eighths", 0.625),
        ("1/2", 0.5),
        ("¾", 0.75),
    ],
)
def test_fractions(said: str, value: float) -> None:
    heard = fraction(texts(said), 0)
    assert heard is not None
    assert heard.value == value


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("four and a half", 4.5),
        ("two and a half", 2.5),  # "two and a half inches": openai/whisper gives 2.5 inches
        ("one and three quarters", 1.75),
        ("3 ½", 3.5),
        ("3 1/2", 3.5),
        ("two point five", 2.5),
        ("3 point 14", 3.14),  # openai/whisper
        ("4.5", 4.5),
        ("six and a quarter", 6.25),
    ],
)
def test_amounts_with_a_part(said: str, value: float) -> None:
    heard = quantity(texts(said), 0)
    assert heard is not None
    assert heard.value == pytest.approx(value)
    assert heard.end == len(texts(said))


@pytest.mark.parametrize("said", ["no", "and a half", "point", "hundred", "first", "lots"])
def test_words_that_begin_no_amount(said: str) -> None:
    assert whole(texts(said), 0) is None


def test_two_numbers_side_by_side_are_no_sum() -> None:
    """word2number makes 31 of "twenty-one eleven"; text2num keeps them apart, as we do."""
    heard = whole(texts("twenty-one eleven"), 0)
    assert heard is not None
    assert heard.value == 21
    assert heard.end == 2


def test_an_amount_beyond_the_end_is_none() -> None:
    assert quantity(texts("four"), 1) is None
    assert whole((), 0) is None
