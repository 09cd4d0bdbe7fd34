"""A judging that is for another time."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    "said",
    [
        "Let's have it flower a second time and then we'll talk.",
        "not fussed either way so it can sit there and we'll see",
        "I shall put off the decision until I've seen the autumn flowers.",
        "could go either way could that ask me in august",
        "he can have this winter to sort himself out",
    ],
)
def test_watched(said: str) -> None:
    assert values("decision", said) == ["watch"]


@pytest.mark.parametrize(
    "said",
    [
        "I'll see you all next week.",
        "I'll see how I get on for light.",
        "It flowers again in the autumn.",
    ],
)
def test_nothing_to_judge(said: str) -> None:
    assert values("decision", said) == []
