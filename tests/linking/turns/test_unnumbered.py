"""A plant with no number or name said, told apart from what is said of the plant in hand."""

import pytest

from tests.linking.turns.test_turns import plants
from tests.reading.said import read

_FIRST = "This is 23-04. The flower is red, as red as I could want."
_FIRST_CAPTIONS = "this is 23 04 and the flower's red as red as you could want"


@pytest.mark.parametrize(
    "shown",
    [
        "The one after it has lost its label. White.",
        "The next pot along is a mystery. It's white.",
        "This one here nobody has numbered. It's white.",
        "Whatever this is, it's white.",
        "Down on the floor there's a white one I never potted up.",
        "On the step there's one that I've not got round to writing up. White.",
        "The last on the shelf I can't put a number to. It's white.",
        "I have no label or name for this one. It's white.",
        "The pot next to that has a label, but it's been bleached clean. The flower's white.",
        "The one behind it is paler, a soft lilac.",
        "This one by the drain came up on its own. It's white.",
        "Here's one that nobody sowed. White.",
        "Something's come up in the crack by the tap. It's white.",
        "The next label I can't read at all. The flower's white.",
        "Now I wish I knew what this was. It's white.",
        "Now this one I've lost track of altogether. It's white.",
        "The basket behind it came from a friend who'd mislaid the name. It's white, a single.",
        "The fellow beside it is a white single.",
        "Down here on the deck there's a little bitty one nobody ever gave a tag. It's white.",
        "And what on earth is this? It's white, with a pink eye.",
        "Tucked under the leaves of that is a seedling. It's white.",
        "In the corner, doing its best, is a white single I can't name.",
        "Hiding behind it is a seedling. It's white.",
        "There's a little one next to it that I never wrote down. It's white.",
        "Squeezed in beside that is something of a mystery. It's white.",
        "There's one here in a jam jar with no label. It's white.",
    ],
)
def test_a_plant_without_its_number(shown: str) -> None:
    assert plants(_FIRST, shown) == ["23-04", "?"]


@pytest.mark.parametrize(
    "shown",
    [
        "and whatever this is it's white",
        "one here nobody has numbered and it's white",
        "no idea about this one here but it's white",
        "the end one's white with a pink eye",
        "and what's this when it's at home it's in a jam jar i don't know and the bud's yellow",
    ],
)
def test_a_plant_without_its_number_in_captions(shown: str) -> None:
    assert plants(_FIRST_CAPTIONS, shown) == ["23-04", "?"]


@pytest.mark.parametrize(
    "passing",
    [
        "The one behind it has the better leaf, but never mind that.",
        "Its neighbour's shading it.",
        "The one beside it is dead, so forget that.",
        "Five heads out, and the end one's past it, it's gone double.",
        "The one behind it has shaded it all spring.",
        "The one beside it is bigger, mind.",
        "The label's a bit faded, but you can read it.",
        "I gave one to a fellow who lost the label.",
        "Whatever this is doing in the shade I don't know.",
        "Nobody's put a name to it yet.",
        "The pot next to that is empty.",
        "The one behind it is white, but I'll come to that later.",
        "The one behind it is a lilac double, but it isn't mine.",
        "The plant next to it has the same eye, but that's a bought one, so ignore that.",
        "The plant behind it is shading it.",
        "What's this on the leaf? Rust.",
        "What's this, six buds?",
        "By the tap there's a hose that drips.",
        "At the back of the flower there's a green spot.",
        "Down at the front there's one open flower.",
        "On the bottom shelf is a row of pots.",
    ],
)
def test_only_in_passing(passing: str) -> None:
    assert plants(_FIRST, passing, "The throat is white.") == ["23-04"]


def test_another_without_a_number_is_not_gone_back_to() -> None:
    assert plants(
        "This one has no label. White, with a cerise eye.",
        "This is 23-04. The flower is red.",
        "On the step, and again with no label, is a seedling. White.",
        "It's late, the last thing on the step to open.",
    ) == ["?", "23-04", "?"]


@pytest.mark.parametrize(
    "another",
    [
        "The next has none either. It's coral.",
        "And another with no label behind it. It's coral.",
        "Nor has its neighbour, which is a coral single.",
        "No label on the one behind either. It's coral.",
    ],
)
def test_two_without_a_number(another: str) -> None:
    first = "This one has no label. It's lilac, a double, and four inches tall."
    assert plants(_FIRST, first, another) == ["23-04", "?", "?"]


@pytest.mark.parametrize(
    "still",
    [
        "No number in the book for it either. Six buds.",
        "I must make this a label before I forget. Six buds.",
        "Whoever it is, it has six buds, and it wants a number.",
    ],
)
def test_still_the_one_without_a_number(still: str) -> None:
    first = "This one has no label. It's lilac, a double, and four inches tall."
    assert plants(_FIRST, first, still) == ["23-04", "?"]


def test_a_number_found_at_once() -> None:
    said = "This one's lost its label. No, here it is, under the leaves: 23-11. Pink."
    assert plants(_FIRST, said) == ["23-04", "23-11"]


def test_a_label_lost_by_the_plant_just_numbered() -> None:
    assert plants("This is 23-04.", "I had one with no label once, and it died.") == ["23-04"]


@pytest.mark.parametrize(
    "kin",
    [
        "Its brother 23-06 got rust, all of it, but not this one.",
        "Her sister 23-06 was lost in the winter.",
        "Its parent 23-06 had whitefly all its life.",
    ],
)
def test_kin_told_apart(kin: str) -> None:
    assert plants(_FIRST, kin, "The throat is white.") == ["23-04"]


@pytest.mark.parametrize(
    "kin",
    ["Next to it is its sister, 23-06. White.", "Its sister 23-06 is next. White."],
)
def test_kin_shown(kin: str) -> None:
    assert plants(_FIRST, kin) == ["23-04", "23-06"]


def test_another_plant_of_a_cross_is_not_gone_back_to() -> None:
    assert plants(
        _FIRST,
        "This one has no label. Lavender, with an eye.",
        "23-11 is pink.",
        "Its sister's a better plant, the one with the white eye, but she's indoors.",
    ) == ["23-04", "?", "23-11"]


def test_what_shows_a_neighbour_tells_of_it() -> None:
    clip = read(_FIRST, "Its neighbour has a white throat.").clips[-1]
    assert [o.value for o in clip.observations] == ["white"]
