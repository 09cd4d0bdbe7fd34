"""Likeness to another plant, where it is asserted."""

import pytest

from diary.reading.known import Known, KnownName, KnownSeedling
from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "title"),
    [
        ("It's very like twenty-two fourteen.", "22-14"),
        ("It's very similar to Fenmarsh Lad.", "Fenmarsh Lad"),
        ("It looks just like Copper Lantern.", "Copper Lantern"),
        ("It's a dead ringer for Tilly Marsh.", "Tilly Marsh"),
        ("It reminds me of Hobnail.", "Hobnail"),
        ("It's the spit of Hobnail.", "Hobnail"),
        ("It puts me very much in mind of Hobnail.", "Hobnail"),
        ("What it does put me in mind of, and strongly, is Hobnail.", "Hobnail"),
        ("You'd swear it was Hobnail.", "Hobnail"),
        ("You couldn't tell it from Hobnail.", "Hobnail"),
        ("Stand it beside Hobnail and you couldn't tell which was which.", "Hobnail"),
        ("Its mother was Hobnail, and it's the double of its mother.", "Hobnail"),
        ("My wife says it's like Hobnail, and she's right.", "Hobnail"),
        ("Anyone could be forgiven for taking it for Hobnail.", "Hobnail"),
        ("You'd swear you were looking at Hobnail.", "Hobnail"),
        ("It and Hobnail are as alike as two peas.", "Hobnail"),
        ("There's a strong look of Hobnail about it.", "Hobnail"),
        ("It has the Hobnail look about it.", "Hobnail"),
        ("It's Hobnail it takes after.", "Hobnail"),
        ("Its mother was Hobnail, and it's its mother it's like.", "Hobnail"),
        ("It's basically Hobnail again.", "Hobnail"),
        ("It brings Hobnail to mind.", "Hobnail"),
        ("The likeness to Hobnail is uncanny.", "Hobnail"),
        ("It's for all the world Hobnail.", "Hobnail"),
        ("There's precious little between this and Hobnail.", "Hobnail"),
        ("It's a smaller Hobnail.", "Hobnail"),
        ("I'd have put money on that being Hobnail.", "Hobnail"),
        ("If you didn't know you'd say it was Hobnail.", "Hobnail"),
        ("It might be Hobnail's little sister.", "Hobnail"),
        ("It could be Hobnail at a distance.", "Hobnail"),
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
        "Nobody would take it for Fenmarsh Lad.",
        "It and Fenmarsh Lad are both late.",
        "It and Fenmarsh Lad are nothing alike.",
        "It has Fenmarsh Lad's pollen on it.",
        "People tell me it's like Fenmarsh Lad.",
        "I'd like Fenmarsh Lad to flower.",
        "You can tell it from Fenmarsh Lad by the leaf.",
        "It's not to be mistaken for Fenmarsh Lad.",
        "Somebody at the club called it Fenmarsh Lad in a cheaper frock.",
        "My son-in-law will have it that it's Fenmarsh Lad to the life.",
        "Neighbour swears it's the image of Fenmarsh Lad.",
    ],
)
def test_no_likeness_asserted(said: str) -> None:
    assert values("similar_to", said) == []


def test_its_mother_is_the_one_on_record() -> None:
    known = Known(
        seedlings=(KnownSeedling(number="23-04", seed_parent="Hobnail"),),
        names=(KnownName(name="Hobnail"),),
    )
    assert values("similar_to", "You couldn't tell it from its mother.", known=known) == ["Hobnail"]
