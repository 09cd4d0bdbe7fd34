"""What is refused decides the other way."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("I couldn't do without it now.", "keep"),
        ("Nothing would make me part with it.", "keep"),
        ("Sorry, you're not on the boat.", "discard"),
        ("I should not dream of parting with it.", "keep"),
        ("I'd be a fool to let that slip through my fingers.", "keep"),
        ("so in spite of everything she's not going on the heap", "keep"),
        ("there's no question of that going out it's the best of the lot", "keep"),
        ("Anyone who throws that out answers to me.", "keep"),
        ("I don't see a future for that one.", "discard"),
        ("It doesn't get a second summer off me.", "discard"),
        ("That won't be troubling the bench again.", "discard"),
    ],
)
def test_the_other_way(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "It's not going on the heap yet.",
        "You don't want it leggy.",
        "I wish I'd never let it go.",
        "My wife says I don't need another.",
    ],
)
def test_nothing_decided(said: str) -> None:
    assert values("decision", said) == []
