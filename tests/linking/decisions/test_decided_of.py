"""Of what a decision is: the plant in hand, and not a label, its mother, or the day's count."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("Bin that, label and all.", "discard"),
        ("I'm keeping that label or no label.", "keep"),
        ("On a cane, but it's a keeper.", "keep"),
        ("That can join its sisters on the rubbish pile.", "discard"),
        ("It's been in that pot too long, so it wants potting on.", "repot"),
        ("One for the show bench.", "show"),
        ("Dig it up and give it a proper pot.", "repot"),
        ("tip it out and pot it up again that's what it wants", "repot"),
        ("Dig it up and bin it.", "discard"),
        ("i shall dig it up this evening and give it a proper pot", "repot"),
        ("I'll chuck it in the show in spring.", "show"),
    ],
)
def test_of_the_plant(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "The zonals can wait until the spring.",
        "The seedling behind this one gets the chop.",
        "This label's had it, I'll chuck that.",
        "The one next to it is going on the heap.",
        "Bin that broken label.",
        "This poor devil in the bucket has no number.",
        "I'm calling it plum, a really rich plum.",
        "Bred from Fenmarsh Lad, with Rosewater Alibi as the pollen parent.",
        "Watch that hose.",
        "That fan has earned its place on the bench in August.",
        "Pop the dead flowers in the bucket.",
        "My hand lens has gone in the bin by mistake.",
        "Its mother went on the compost years back.",
        "I've binned its sister.",
        "Two on the heap, and put the kettle on.",
        "Nine looked at, one for the bench.",
    ],
)
def test_of_something_else(said: str) -> None:
    assert values("decision", said) == []
