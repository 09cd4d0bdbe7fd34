"""Decisions told by a place just named."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("Club show on Saturday, and she's going in.", "show"),
        ("Show's on the first. It'll be there.", "show"),
        ("The heap is where it belongs.", "discard"),
        ("There's the bucket, and in she goes.", "discard"),
    ],
)
def test_goes_there(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "The show's in June, and it's going up like a rocket.",
        "The bin's full, mind. It's going pink at the edges.",
    ],
)
def test_goes_to_no_place(said: str) -> None:
    assert values("decision", said) == []
