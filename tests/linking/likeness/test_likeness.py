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
        ("It's that like Hobnail you could swap the labels.", "Hobnail"),
        ("It looks loads like Hobnail.", "Hobnail"),
        ("You'd be hard put to it to tell it from a young Hobnail.", "Hobnail"),
        ("If you'd told me it was Hobnail I'd have believed you.", "Hobnail"),
        ("You could lose it in a row of Hobnail.", "Hobnail"),
        ("It's a watered down Hobnail.", "Hobnail"),
        ("It does favour Hobnail in the face.", "Hobnail"),
        ("It's basically a copy paste of Hobnail.", "Hobnail"),
        ("You'd swear blind that was Hobnail.", "Hobnail"),
        ("If you'd handed me this with no label, I'd have sworn it was Hobnail.", "Hobnail"),
        ("Stick it next to Hobnail and you'd swear they were twins.", "Hobnail"),
        ("My wife says it's the picture of Hobnail, and for once I agree.", "Hobnail"),
        ("It could be Hobnail at a distance.", "Hobnail"),
        ("It's not unlike Hobnail.", "Hobnail"),
        ("It's not Hobnail, though to my eye it's the double of it.", "Hobnail"),
        ("It reminds me ever so much of Hobnail.", "Hobnail"),
        ("You'd never pick it out from Hobnail.", "Hobnail"),
        ("Put it down next to Hobnail and you'd walk off with the wrong one.", "Hobnail"),
        ("You get another Hobnail, you literally can't tell which is which.", "Hobnail"),
        ("It's Hobnail to look at, though there's no relation.", "Hobnail"),
        ("It's just Hobnail but for the eye.", "Hobnail"),
        ("It's a near thing between this and Hobnail.", "Hobnail"),
        ("You could mix it up with Hobnail.", "Hobnail"),
        ("It's easily confused with Hobnail.", "Hobnail"),
        ("You'd have to look at the label to know it from Hobnail.", "Hobnail"),
        ("It's a Hobnail lookalike.", "Hobnail"),
        ("It's a Hobnail type of thing.", "Hobnail"),
        ("It's very much in the Hobnail style.", "Hobnail"),
        ("It's got a touch of the old Hobnail about it.", "Hobnail"),
        ("Shades of Hobnail, this.", "Hobnail"),
        ("It's along the lines of Hobnail.", "Hobnail"),
        ("There's nowt between that and Hobnail.", "Hobnail"),
        ("It's near enough Hobnail.", "Hobnail"),
        ("The flower could have come straight off Hobnail.", "Hobnail"),
        ("It's a paler version of Hobnail.", "Hobnail"),
        ("If you've seen Hobnail, you've seen this.", "Hobnail"),
        ("Picture Hobnail and you've got it.", "Hobnail"),
        ("Swap the labels on this and Hobnail and you'd never know.", "Hobnail"),
        ("I can't help being reminded of Hobnail.", "Hobnail"),
        ("If that isn't the spitting image of Hobnail I'll eat my hat.", "Hobnail"),
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
        "It's not to be muddled with Fenmarsh Lad.",
        "It's not the spit of Fenmarsh Lad by any means.",
        "Don't mix it up with Fenmarsh Lad.",
        "It's the same age as Fenmarsh Lad.",
        "I've kept everything bar Fenmarsh Lad.",
        "It has the same mother as Fenmarsh Lad.",
        "Had you seen Fenmarsh Lad, you'd have wept.",
        "Somebody at the club called it Fenmarsh Lad in a cheaper frock.",
        "My son-in-law will have it that it's Fenmarsh Lad to the life.",
        "Neighbour swears it's the image of Fenmarsh Lad.",
        "Side by side with Fenmarsh Lad it's not fit to be seen.",
        "I was after summat like Fenmarsh Lad.",
        "Nothing's as good as Fenmarsh Lad.",
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
