"""Clean colours and unmarked petals are no health; a clean plant is."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    "said",
    [
        "In the middle there's a star, white, very clean.",
        "And the top petals are clean.",
        "Not a mark on it, pure ivory.",
        "A clean pale rose.",
        "That edge! White, and clean.",
    ],
)
def test_a_clean_colour_is_no_health(said: str) -> None:
    assert values("health", said) == []


@pytest.mark.parametrize(
    "said",
    [
        "The leaf is clean.",
        "Pink, with a blotch, and the plant's clean.",
        "Not a mark on it anywhere.",
        "It's a lovely white and it's clean.",
    ],
)
def test_a_clean_plant_is(said: str) -> None:
    assert values("health", said) == ["clean"]
