"""The second colour of a variegated leaf."""

import pytest

from tests.reading.said import caption_colours, colours


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("The leaf's yellow with a green middle.", {"leaf yellow", "leaf green"}),
        ("The leaf is the thing, it's variegated, cream on green.", {"leaf cream", "leaf green"}),
        ("The leaf's variegated, and cream at the edge of the flower.", {"edge cream"}),
        ("Gold leaf. A white edge to the flower.", {"leaf gold", "edge white"}),
        ("The leaf's variegated and the flower's cream.", {"bloom cream"}),
    ],
)
def test_the_second_colour_is_the_leafs_too(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


def test_in_captions() -> None:
    said = "the throat is yellow and the leaf's variegated it's got cream round the outside"
    assert caption_colours(said) == {"throat yellow", "leaf cream"}
