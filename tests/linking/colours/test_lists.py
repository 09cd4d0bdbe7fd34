"""Parts and colours by turns with no mark between them."""

import pytest

from tests.reading.said import caption_colours, colours


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("edge is white middle is cherry no blotch", {"edge white", "centre cherry"}),
        ("the flower has a white middle", {"centre white"}),
        (
            "top ones are a good strong cherry bottom ones pink",
            {"upper petals cherry", "lower petals pink"},
        ),
        (
            "back of the petal silvery front of the petal magenta",
            {"reverse silver", "bloom magenta"},
        ),
        ("it's a lovely magenta throat's white", {"bloom magenta", "throat white"}),
        ("magenta with a cream edge is that cream yes cream", {"bloom magenta", "edge cream"}),
        ("gold leaf bronze zone salmon flower", {"leaf gold", "zone bronze", "bloom salmon"}),
        (
            "rich burgundy in the top petals a pale lilac in the bottom ones",
            {"upper petals rich burgundy", "lower petals pale lilac"},
        ),
    ],
)
def test_each_colour_goes_with_its_part(said: str, expected: set[str]) -> None:
    assert caption_colours(said) == expected


def test_three_below_them_are_petals() -> None:
    assert colours("The two top petals are plum, and the three below them are white.") == {
        "upper petals plum",
        "lower petals white",
    }


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("Stem and bud both bronze.", {"stem bronze", "bud bronze"}),
        ("The stem and the bud are bronze.", {"stem bronze", "bud bronze"}),
        ("Dark eye, and the bud is nearly black.", {"bud black"}),
        ("White edge and throat cream.", {"edge white", "throat cream"}),
    ],
)
def test_two_parts_of_one_colour(said: str, expected: set[str]) -> None:
    assert colours(said) == expected
