"""A leaf spoken of before is measured only where its size is the talk."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "trait", "mm"),
    [
        ("The leaf's small. A centimetre and a half across.", "leaf_width", 15),
        ("The leaf's cut like parsley and I make it five centimetres wide.", "leaf_width", 50),
        ("Leaf deeply cut, and bronze. Twenty-nine millimetres across.", "bloom_diameter", 29),
    ],
)
def test_leaf_or_flower(said: str, trait: str, mm: float) -> None:
    assert values(trait, said) == [mm]
