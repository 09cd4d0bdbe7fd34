"""A clean bill of health, told by what is not there."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    "said",
    [
        "I've had the glass over it and I can't find a thing wrong with it.",
        "There's not a bit of trouble on it anywhere.",
        "No bugs, no spots, no nothing.",
        "Touch wood, it's never had a day's illness.",
        "I've never seen so much as a blemish on it.",
    ],
)
def test_nothing_is_found_wrong(said: str) -> None:
    assert values("health", said) == ["clean"]


@pytest.mark.parametrize(
    "said",
    [
        "There's not a mark on the label.",
        "There's nothing wrong with the colour.",
        "There's nothing wrong with it bar a bit of moss.",
        "No trouble to root.",
        "No bugs in the house today.",
        "Soft mauve all over, not a mark on it.",
    ],
)
def test_that_is_no_bill_of_health(said: str) -> None:
    assert values("health", said) == []
