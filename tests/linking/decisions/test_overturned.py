"""A denied decision that is as good as the other one."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("I shan't be binning that.", "keep"),
        ("I'm not chucking it out.", "keep"),
        ("I won't be keeping it.", "discard"),
        ("It's not a keeper.", "discard"),
        ("I don't think I'll be giving that bench room.", "discard"),
    ],
)
def test_the_other_way(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "I'm not binning it yet.",
        "They say you don't chuck it out in June.",
        "I don't keep it wet.",
        "I won't be naming it.",
    ],
)
def test_none(said: str) -> None:
    assert values("decision", said) == []
