"""What is told of another plant than the one in hand."""

import pytest

from tests.reading.said import caption_colours, colours


@pytest.mark.parametrize(
    "said",
    [
        "The one on the left is white, and I prefer that.",
        "The one below's about the same, only it's white.",
        "Its sisters were all white.",
        "The rest of the batch came white.",
        "All its brothers are white.",
        "Most of that cross are white.",
        "One of its sisters had a white eye.",
        "The one I gave to Dora is white, she says.",
        "The two either side of it have a white eye.",
        "Every other plant on this bench is white.",
        "There's a white behind it that you see first.",
        "Ignore the white thing at the back.",
        "The mother's a trailing thing with a white flower.",
        "Both parents are white.",
        "The other seedling from that cross is white.",
        "Last year's was a better plant, with a white eye.",
        "I saw one at the show that was white.",
        "Out of the same pod I had a white and a lilac.",
        "Somebody gave me a white that looks the same otherwise.",
    ],
)
def test_told_of_another_plant(said: str) -> None:
    assert colours("The flower is red.", said) == {"bloom red"}


@pytest.mark.parametrize(
    "said",
    [
        "the one below's about the same only it's white",
        "its sister's white but not this",
        "all the rest of that batch were white",
        "the two either side of it are both white",
        "most of the others came white",
        "there's five buds on it hobnail is white",
    ],
)
def test_told_of_another_plant_in_captions(said: str) -> None:
    assert caption_colours("the flower's red", said) == {"bloom red"}


@pytest.mark.parametrize(
    ("said", "colour"),
    [
        ("The rest of it is white.", "bloom white"),
        ("The rest of the flower is white.", "bloom white"),
        ("It has its mother's white eye.", "eye white"),
        ("There's a white flush over the upper two.", "flush white"),
        ("Its sister's dull, but this has a white eye.", "eye white"),
    ],
)
def test_told_of_this_one(said: str, colour: str) -> None:
    assert colour in colours(said)
