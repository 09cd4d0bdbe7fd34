"""Colours as they are said.

That an -ish word modifies the hue after it, and is never the main hue, is the rule of the
ISCC-NBS method (Kelly & Judd, NBS SP 440, 1976); that a specific word beside a basic one
stands alone is the extraction contract.
"""

import pytest

from diary.reading.colours import find_colours
from diary.reading.vocabulary import load_vocabulary
from tests.reading.said import talk


def heard(said: str) -> list[str]:
    """The colours heard, modifiers first."""
    words = talk(said)
    found = find_colours(words, load_vocabulary(), [False] * len(words.texts))
    return [" ".join([*c.modifiers, c.value]) for c in found]


@pytest.mark.parametrize(
    ("said", "colour"),
    [
        ("pink", "pink"),
        ("a soft pink", "soft pink"),
        ("pale salmon pink", "pale salmon"),
        ("salmon pink", "salmon"),
        ("cherry red", "cherry"),
        ("lilac pink", "lilac"),
        ("pinkish lilac", "lilac"),  # standards: "pinkish lilac" main lilac
        ("lilacy pink", "lilac"),
        ("reddish orange", "red orange"),
        ("orange red", "orange red"),
        ("yellowish pink", "yellow pink"),
        ("purplish red", "purple red"),
        ("bluish purple", "blue purple"),
        ("dark maroon", "dark maroon"),
        ("bright scarlet", "bright scarlet"),
        ("light lavender", "light lavender"),
        ("rich burgundy", "rich burgundy"),
        ("pure white", "pure white"),
        ("rose-pink", "rose"),
        ("gray", "grey"),
        ("creamy white", "cream"),
    ],
)
def test_one_colour(said: str, colour: str) -> None:
    assert heard(said) == [colour]


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("pink and white", ["pink", "white"]),
        ("deep red with a white edge", ["deep red", "white"]),
        ("it is pink , white at the base", ["pink", "white"]),
    ],
)
def test_two_colours_side_by_side(said: str, expected: list[str]) -> None:
    assert heard(said) == expected


@pytest.mark.parametrize("said", ["it is lovely", "dark", "very pale", "the edge", "colourful"])
def test_no_colour(said: str) -> None:
    assert heard(said) == []


def test_inside_a_name_there_is_no_colour() -> None:
    words = talk("copper lantern is copper")
    found = find_colours(words, load_vocabulary(), [True, True, False, False])
    assert [c.start for c in found] == [3]
