"""Numbers that only give the measure of the plant in hand."""

import pytest

from tests.linking.turns.test_turns import FIRST, plants

LOOKS = "It's red, about four centimetres across."


@pytest.mark.parametrize(
    "passing",
    [
        "23-11 has the better leaf, mind you.",
        "23-11 did it sooner, I'll admit.",
        "23-11 has it beaten for size though.",
        "23-11 was a fortnight behind it.",
        "23-11 would be half as big again as this.",
        "And 23-11 is taller than this.",
        "The flowers on 23-11 will stand a week longer than these do.",
    ],
)
def test_what_another_plant_does_better_turns_nothing(passing: str) -> None:
    assert plants(*FIRST, passing, "The leaf is zoned.") == ["23-04"]


@pytest.mark.parametrize(
    "passing",
    [
        "23-11 never had that many.",
        "23-11 took three years to do as much.",
        "23-11 still wins on leaf.",
        "23-11's stronger in the stem.",
    ],
)
def test_a_plant_shown_before_is_only_compared_with(passing: str) -> None:
    shown = ("This is 23-11, a white.", "And this is 23-04, a pink.")
    assert plants(*shown, passing, "The leaf is zoned.") == ["23-11", "23-04"]


@pytest.mark.parametrize(
    "turning",
    [
        "23-11 is a better plant altogether.",
        "Now 23-11 is bigger than this.",
        "Don't mix it up with 23-11, which is this one behind it.",
        "23-11, better than 23-04 in every way.",
    ],
)
def test_a_plant_that_is_turned_to_may_be_better(turning: str) -> None:
    assert plants(*FIRST, turning, LOOKS) == ["23-04", "23-11"]


def test_a_plant_shown_before_may_be_doing_better_than_it_did() -> None:
    shown = ("This is 23-11, a white.", "And this is 23-04, a pink.")
    told = "23-11 is only getting better, he has nine heads up."
    assert plants(*shown, told) == ["23-11", "23-04", "23-11"]
