"""What is to become of a plant, and its denial."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("That's a keeper.", "keep"),
        ("I'll definitely keep this one.", "keep"),
        ("That'll go on the compost.", "discard"),
        ("That's one for the bin.", "discard"),
        ("I'll give it another year.", "watch"),
        ("I'll take some cuttings of it.", "propagate"),
        ("I'll use it as a parent.", "breed"),
        ("That's going on the show bench.", "show"),
        ("It deserves a name.", "name"),
        ("It needs potting on.", "repot"),
    ],
)
def test_decisions(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "I won't be breeding from it.",
        "I haven't decided about it.",
        "I'm not going to name it.",
        "The compost is too wet.",
        "I always keep the vents open in here.",
    ],
)
def test_no_decision(said: str) -> None:
    assert values("decision", said) == []
