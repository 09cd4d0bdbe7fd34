"""What shows that a reading of a window cannot be right."""

import pytest

from diary.speech.heard import RawWord, repeats, skips

GOOD = (
    "First up is 23-04. The upper petals are a deep burgundy, and the lower petals are a soft "
    "pink. It is about four and a half centimetres across, with three heads open and more to come."
)


def word(text: str, start: float, end: float) -> RawWord:
    return RawWord(text=text, start=start, end=end, probability=0.9)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        (GOOD, False),
        ("", False),
        ("No blotch, no veins, no edge.", False),
        ("1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1-1", True),
        (GOOD + " Bloom 4" + "-1" * 120, True),  # a loop after half a window of good text
        (GOOD + " and then" * 30 + " " + GOOD, True),
    ],
)
def test_a_text_that_goes_round(text: str, found: bool) -> None:
    assert repeats(text) is found


@pytest.mark.parametrize(
    ("words", "length", "found"),
    [
        ((), 8.0, False),
        ((word("pink.", 0.2, 0.8),), 1.0, False),
        ((word("The", 0.0, 2.6), word("upper", 2.6, 3.0)), 3.2, True),  # drawn out over others
        ((word("2304,", 0.0, 2.6), word("pink", 2.6, 3.0)), 3.2, False),  # a number takes its time
        ((word("pink", 0.2, 0.8),), 6.0, True),  # nothing for the end
    ],
)
def test_words_left_out(words: tuple[RawWord, ...], length: float, found: bool) -> None:
    assert skips(words, length=length) is found
