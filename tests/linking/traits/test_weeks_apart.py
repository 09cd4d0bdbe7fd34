"""Early or late, told by the weeks between this plant and its kind."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("It's three weeks behind its sisters.", ["late"]),
        ("She's a full fortnight late.", ["late"]),
        ("It came into flower a good three weeks before the others.", ["early"]),
        ("It's ten days in front of all the rest.", ["early"]),
        ("I potted it a week before the others.", []),
        ("It's two weeks before the show.", []),
        ("We're a fortnight behind with the sowing.", []),
    ],
)
def test_weeks_between_plants(said: str, value: list[str]) -> None:
    assert values("flowering", said) == value
