"""Scorch, told by the sun and by what became of the leaves."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("The sun got it through the glass, all the top leaves are crisp.", ["scorch"]),
        ("It's got papery edges where it stood too near the glass.", ["scorch"]),
        ("It's a burnt orange in the sun.", []),
        ("It's hot pink and the edges are crisp.", []),
        ("The sun's bleached the label, I can hardly read it.", []),
    ],
)
def test_burnt_by_the_sun(said: str, value: list[str]) -> None:
    assert values("health", said) == value
