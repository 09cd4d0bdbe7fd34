"""What is kept for a time is watched."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    "said",
    [
        "It can stay where it is for now.",
        "I'll hang on to it one more summer.",
        "I'll give it house room one more winter.",
    ],
)
def test_watched(said: str) -> None:
    assert values("decision", said) == ["watch"]


@pytest.mark.parametrize("said", ["It stays here for good.", "I'm keeping it, and for ever."])
def test_kept(said: str) -> None:
    assert values("decision", said) == ["keep"]
