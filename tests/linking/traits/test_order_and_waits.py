"""Early, late and shy, told by the others, by a wait and by a count."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("It was first out of the whole lot.", ["early"]),
        ("First away of the entire batch, this.", ["early"]),
        ("It's always one of the last.", ["late"]),
        ("None of the others had so much as a bud when this opened.", ["early"]),
        ("It got going ages before its sisters.", ["early"]),
        ("Everything else was over when this started.", ["late"]),
        ("I took the first out of the box.", []),
        ("I moved it before the others.", []),
        ("The others are all over the place when it's windy.", []),
        ("The last week of the season, this.", []),
    ],
)
def test_a_place_in_the_order_of_flowering(said: str, value: list[str]) -> None:
    assert values("flowering", said) == value


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("It didn't show me a thing until July.", ["late"]),
        ("Nothing on it till August.", ["late"]),
        ("It made me wait till the end of June for a flower.", ["late"]),
        ("You'd wait all year for a bloom.", ["shy"]),
        ("I'm not sowing till August.", []),
        ("It won't be potted until the autumn.", []),
        ("I waited an hour for the flower van.", []),
    ],
)
def test_a_wait_for_a_flower(said: str, value: list[str]) -> None:
    assert values("flowering", said) == value


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("I've had three trusses off it in as many months.", ["shy"]),
        ("It's given me one solitary bloom in two years.", ["shy"]),
        ("There are two heads open in the frame.", []),
        ("Three blooms in a vase, that's what they ask.", []),
    ],
)
def test_few_flowers_in_a_long_time(said: str, value: list[str]) -> None:
    assert values("flowering", said) == value
