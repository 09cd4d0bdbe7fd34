"""Words of looks raised above the rest."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "trait", "value"),
    [
        ("It's the leggiest of the lot.", "habit", ["leggy"]),
        ("The tightest little plant you ever saw.", "habit", ["compact"]),
        ("It's my bushiest plant.", "habit", ["bushy"]),
        ("The glossiest leaf in the house.", "foliage", ["glossy"]),
        ("The shyest of the family.", "flowering", ["shy"]),
        ("It's not the bushiest.", "habit", []),
        ("The biggest leaf is fifty-five millimetres wide.", "foliage", []),
    ],
)
def test_raised_above_the_rest(said: str, trait: str, value: list[str]) -> None:
    assert values(trait, said) == value
