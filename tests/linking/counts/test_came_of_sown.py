"""What came of seeds sown, in any words, and what came to grief."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "sown", "up"),
    [
        ("I sowed ten, and four reported for duty.", [10], [4]),
        ("I sowed six seeds in a teacup, and one solitary child came up.", [6], [1]),
        ("I sowed nine from that pod in Lent, and this alone came up.", [9], [1]),
        ("Seven seeds were sown for the part and a single one came up.", [7], [1]),
        ("Ten went in the pan and half of them came up.", [10], [5]),
        ("Of the eighteen I sowed, seven answered the call.", [18], [7]),
        ("I sowed the guts of twenty of them and got five.", [20], [5]),
        ("I sowed a dozen of those and only the two came up.", [12], [2]),
        ("Only three came up, out of, um, fifteen.", [15], [3]),
        ("I put fifteen seeds in and four came up and the slugs had two of them.", [15], [4]),
        ("Nine seeds of that cross went in and these two are all I ever saw.", [9], [2]),
        ("The seed was fourteen, of which nine showed.", [14], [9]),
        ("I sowed twelve seeds, and two rotted.", [12], []),
        ("I sowed twelve seeds in three pots.", [12], []),
    ],
)
def test_what_came_of_them(said: str, sown: list[int], up: list[int]) -> None:
    assert values("count_seeds_sown", said) == sown
    assert values("count_germinated", said) == up


@pytest.mark.parametrize(
    ("said", "trait", "count"),
    [
        ("How many cuttings have you had off it? Three, and all of them rooted.", "cuttings", [3]),
        ("Have we took any cuttings? We've took eight.", "cuttings", [8]),
        ("Six cuttings to be struck on Monday.", "cuttings", []),
        ("Half a dozen cuttings off him as soon as the weather cools.", "cuttings", []),
        ("Number of heads six, number of buds seventeen.", "heads", [6]),
        ("Number of heads six, number of buds seventeen.", "buds", [17]),
        ("There were nine heads on him but I knocked two off, so there's seven now.", "heads", [7]),
        ("There'll be thirty heads on that by July.", "heads", []),
        ("That'll be seven heads, then.", "heads", [7]),
        ("Any heads? I never counted.", "heads", []),
    ],
)
def test_asked_and_answered(said: str, trait: str, count: list[int]) -> None:
    assert values(f"count_{trait}", said) == count
