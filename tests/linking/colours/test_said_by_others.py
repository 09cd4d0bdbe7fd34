"""What others call it, what was written once, and words put in between."""

import pytest

from tests.reading.said import caption_colours, colours, values


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        (
            "It is a very deep maroon, which my colleague insists on calling black, and black it "
            "is not.",
            {"bloom deep maroon"},
        ),
        ("It's a mauve, which Doris calls blue.", {"bloom mauve"}),
        ("I'd call it plum.", {"bloom plum"}),
        ("White, I wrote in the book, which was hasty, because it's ivory.", {"bloom ivory"}),
        ("I have it down in the book as crimson, which was wrong; it is cerise.", {"bloom cerise"}),
        ("Lilac, says my wife. She's wrong, it's mauve.", {"bloom mauve"}),
        ("Salmon, says my wife, and she's right.", {"bloom salmon"}),
        ("It's pink, not the red I hoped for, with a white eye.", {"bloom pink", "eye white"}),
        ("It was going to be a lovely clear orange.", set()),
    ],
)
def test_what_others_call_it(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("There's a star in the middle, if you please, in deep crimson.", {"star deep crimson"}),
        (
            "The upper ones are plum, the bottom three are paler, let us say a warm rose.",
            {"upper petals plum", "lower petals warm rose"},
        ),
        ("Against the chart it is unquestionably lilac.", {"bloom lilac"}),
        (
            "The same plum uppers, the same white ones below.",
            {"upper petals plum", "lower petals white"},
        ),
        (
            "It's white on the uppers and the lowers are pink.",
            {"upper petals white", "lower petals pink"},
        ),
        ("The foliage is finely dissected, and in colour it is grey.", {"leaf grey"}),
        ("The blaze is wine, shading to near black in the middle.", {"blotch wine"}),
        ("Some brown bits from the rain.", set()),
    ],
)
def test_words_between_a_part_and_its_colour(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("what do i get salmon pink with maroon feathering", {"bloom salmon", "feathering maroon"}),
        ("i'd say it's a coral it's not really a salmon", {"bloom coral"}),
        ("lavender no don't be looking at me like that lilac then", {"bloom lilac"}),
        (
            "and he has the better eye so coral it is with a white centre",
            {"bloom coral", "centre white"},
        ),
        ("there's a bit of brown on it but that's only the old flower", set()),
    ],
)
def test_in_captions(said: str, expected: set[str]) -> None:
    assert caption_colours(said) == expected


def test_markings_that_are_only_seen_or_told() -> None:
    assert values("marking", "The one he spotted at the back.") == []
    assert values("marking", "They'll tell you there's a blotch.") == []
    assert values("marking", "There's a speck of rust on one leaf.") == []
    assert values("marking", "Spotted all over.") == ["spots"]


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("there's a lighter patch at the bottom of every petal almost white", {"blotch white"}),
        ("and a wire edge all the way round that's silver", {"edge silver"}),
        ("the buds look black but they don't open black", {"bud black"}),
        ("no label just a red bead on the stem white i think", {"bloom white"}),
        ("stem red leaf green flower white", {"stem red", "leaf green", "bloom white"}),
        ("dead heads brown brown brown let me find a good one", set()),
        ("my mother grew one with a yellow leaf and a magenta flower", set()),
        ("i've one with a white eye here", {"eye white"}),
        ("red dots all over it", {"spots red"}),
        ("i put a blue dot on the pot", set()),
    ],
)
def test_markings_shown_places_of_things_and_others_had(said: str, expected: set[str]) -> None:
    assert caption_colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("it's salmon green throat and flat", {"bloom salmon", "throat green"}),
        ("lavender yellow throat", {"bloom lavender", "throat yellow"}),
        ("salmon pink white throat", {"bloom salmon", "throat white"}),
        ("a pinky white flower", {"bloom pink white"}),
        ("orange red with a yellow eye", {"bloom orange red", "eye yellow"}),
        ("white no cream in it at all", {"bloom white"}),
        ("pink no lavender", {"bloom lavender"}),
        ("the top petals are like jam i'd call it plum", {"upper petals plum"}),
        (
            "so you can see what a flower ought to be soft apricot with a dark eye",
            {"bloom soft apricot"},
        ),
    ],
)
def test_colours_side_by_side_in_captions(said: str, expected: set[str]) -> None:
    assert caption_colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("Pure white. No cream in it, none.", {"bloom pure white"}),
        ("Deep rose, and if you rub the leaf it smells like a chapel.", {"bloom deep rose"}),
        ("Rub the leaf and it's pure lemon.", set()),
        ("Pure white throughout.", {"bloom pure white"}),
        ("I make it lavender. Clem makes it blue.", {"bloom lavender"}),
        ("She has the reddest eye on the bench.", {"eye red"}),
        ("I've propped it on a brick, a nice red brick.", set()),
        ("Every petal's hemmed in burgundy.", {"edge burgundy"}),
        ("A ring of maroon round the nectaries.", set()),
        ("The one it came from was clear yellow with a red heart.", set()),
        ("White inside and red outside.", {"throat white", "reverse red"}),
    ],
)
def test_more_of_others_and_of_the_flower(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        (
            "top petals are a right deep burgundy and the bottom uns are more of a soft mauve",
            {"upper petals deep burgundy", "lower petals soft mauve"},
        ),
        ("he'd a face as red as a letter box", set()),
        ("it was to be red that was the whole idea", set()),
        ("netting all over the bottom petals very fine and very blue", {"veins blue"}),
        ("i wanted to show you the back of the petal it's silver do you see", {"reverse silver"}),
        ("it's got a picotee edge it's a bright pink", {"bloom bright pink"}),
        (
            "older than the one we started on pale salmon with a white eye",
            {"bloom pale salmon", "eye white"},
        ),
        ("so the bottom ones are sort of in between we'll call it rose", {"lower petals rose"}),
    ],
)
def test_more_in_captions(said: str, expected: set[str]) -> None:
    assert caption_colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("the eye's tiny and it's white", {"eye white"}),
        ("the flower's big and it's white", {"bloom white"}),
        ("it's more ivory green in the eye", {"bloom ivory", "eye green"}),
        ("shelley at the club reckons she's lavender", set()),
        ("but look at her shell pink double like a rosebud", {"bloom pink"}),
        ("it's got whitefly see all the little white devils", set()),
        ("they said that about the last one and it opened cerise", set()),
    ],
)
def test_eyes_told_and_others_reckoned(said: str, expected: set[str]) -> None:
    assert caption_colours(said) == expected


def test_a_ring_on_the_leaf_is_its_zone() -> None:
    assert colours("The leaf's glossy, and marked with a bronze ring.") == {"zone bronze"}
    assert colours("Leaves with a brown ring round the middle.") == {"zone brown"}
    assert colours("A white ring round the eye.") == set()


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("The young leaf is edged red, though you'd have to look.", {"leaf red"}),
        ("Feathered? Yes. Cerise? No, nearer magenta.", {"feathering magenta"}),
        ("Nearer coral than salmon.", {"bloom coral"}),
        ("It might be plum. I'm going with wine.", {"bloom wine"}),
        ("A yellow stamen or two.", set()),
        ("Green calyx, white flower.", {"bloom white"}),
    ],
)
def test_settled_on_and_other_organs(said: str, expected: set[str]) -> None:
    assert colours(said) == expected
