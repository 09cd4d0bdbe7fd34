"""Numbers named in one breath turn to none of them."""

import pytest

from tests.linking.turns.test_turns import FIRST, plants

LOOKS = "It's red, about four centimetres across."


@pytest.mark.parametrize(
    "listed",
    [
        "Now, 23-06, 23-11 and 23-40 I sowed as one lot.",
        "23-06, 23-11 and 23-40 are all out of one pod.",
        "I've three together here, 23-06, 23-11 and 23-40.",
        "Here's a pair, 23-06 and 23-11.",
        "23-06 and 23-11 aren't out yet.",
    ],
)
def test_a_list_turns_to_none(listed: str) -> None:
    assert plants(*FIRST, listed, "So, 24-07.", LOOKS) == ["23-04", "24-07"]


@pytest.mark.parametrize(
    ("said", "told"),
    [
        (("And 23-06, white, and 23-11 is next.", LOOKS), ["23-04", "23-06", "23-11"]),
        (("Now, 23-06, and 23-06 and 23-11 are often mixed up.", LOOKS), ["23-04", "23-06"]),
    ],
)
def test_numbers_that_are_no_list(said: tuple[str, ...], told: list[str]) -> None:
    assert plants(*FIRST, *said) == told


def test_a_list_in_captions() -> None:
    said = ("23 06 and 23 11 and 23 40 are all off the one pod", "i'll start with 23 06 it's pink")
    assert plants(*said) == ["23-06"]
