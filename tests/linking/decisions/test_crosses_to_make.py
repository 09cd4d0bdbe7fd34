"""A cross to be made, or just made, on the plant in hand breeds; one of old tells a parent."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    "said",
    [
        "I'll put Copper Lantern on her this afternoon.",
        "Copper Lantern's pollen goes on it tonight.",
        "Next spring it goes to Copper Lantern, with the brush.",
        "I've put Copper Lantern straight on it this morning.",
        "I've just dusted her with Copper Lantern.",
        "I put Copper Lantern's pollen on it Tuesday.",
        "I'm going to put that across Copper Lantern and see what falls out.",
        "She's ready, and Copper Lantern goes on tomorrow.",
    ],
)
def test_to_breed(said: str) -> None:
    assert values("decision", said) == ["breed"]
    assert values("pollen_parent", said) == []


def test_long_made() -> None:
    said = "The mother was Fenmarsh Lad and I put Copper Lantern on her."
    assert values("decision", said) == []
    assert values("pollen_parent", said) == ["Copper Lantern"]
