"""What is only thought of is proposed; leave given to a plant is decided."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    "said",
    [
        "She may have one more season and then we'll see.",
        "I might find a use for it; I'll see how it looks come September.",
        "I might name it, but I'll give it another year first.",
    ],
)
def test_decided(said: str) -> None:
    assert values("decision", said) == ["watch"]


@pytest.mark.parametrize(
    "said",
    [
        "I might name it.",
        "Maybe next year I'll breed from it.",
        "It may need a bigger pot.",
        "I could use it as a parent.",
        "I'll name it some day.",
    ],
)
def test_only_thought_of(said: str) -> None:
    assert values("decision", said) == []
