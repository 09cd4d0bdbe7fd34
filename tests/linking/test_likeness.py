"""Likeness to another plant, where it is asserted."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "title"),
    [
        ("It's very like twenty-two fourteen.", "22-14"),
        ("It's very similar to Fenmarsh Lad.", "Fenmarsh Lad"),
        ("It looks just like Copper Lantern.", "Copper Lantern"),
        ("It's a dead ringer for Tilly Marsh.", "Tilly Marsh"),
        ("It reminds me of Hobnail.", "Hobnail"),
    ],
)
def test_likeness(said: str, title: str) -> None:
    assert values("similar_to", said) == [title]


@pytest.mark.parametrize(
    "said",
    [
        "It's nothing like Fenmarsh Lad.",
        "It's not like Fenmarsh Lad at all.",
        "It's bigger than Fenmarsh Lad.",
        "People tell me it's like Fenmarsh Lad.",
        "I'd like Fenmarsh Lad to flower.",
    ],
)
def test_no_likeness_asserted(said: str) -> None:
    assert values("similar_to", said) == []
