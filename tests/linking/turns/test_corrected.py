"""Numbers that are taken back, at once or long after."""

import pytest

from tests.linking.turns.test_turns import plants

LOOKS = "It's red, about four centimetres across."


@pytest.mark.parametrize(
    "said",
    [
        ("Right. 23-11, no wait, I've my thumb over it, it's 23-40.",),
        ("Next is 23-11.", "Sorry, I'm reading it upside down, that's 23-40."),
        ("23-11 or 23-40?", "It's 23-40."),
        ("This is 23-11, or it would be if I could read.", "It's 23-40."),
        ("This is 23-11.", "I said 23-11, I meant 23-40."),
        ("This is 23-11.", "Did I say eleven? I meant forty, 23-40."),
        ("This is 23-11, a pink.", "I've been calling it 23-11 and it's 23-40."),
        ("now then 23 11 i said i'd show you no hang on i tell a lie it's 23 40 that is",),
        ("so 23 11 my mistake i've picked up the wrong pot it's 23 40 this",),
        ("this is 23 11 scrub that 23 40",),
    ],
)
def test_a_number_taken_back_is_another_plant_from_the_start(said: tuple[str, ...]) -> None:
    assert plants(*said, LOOKS) == ["23-40"]


@pytest.mark.parametrize(
    "said",
    [
        ("This is 23-11, pink.", "Next it's 23-40.", LOOKS),
        ("This is 23-11, pink.", "I said 23-40 was white, and it is.", LOOKS),
        ("This is 23-11.", "No flower yet.", "And on to 23-40 then.", LOOKS),
    ],
)
def test_the_next_number_takes_nothing_back(said: tuple[str, ...]) -> None:
    assert plants(*said)[0] == "23-11"


def test_a_number_told_as_a_parent_takes_nothing_back() -> None:
    said = ("next is 24 07 and it's that new it's not in the register", "it's 23 11 by 22 14")
    assert plants(*said, "it's a pink with a white eye") == ["24-07"]
