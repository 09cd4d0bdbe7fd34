"""Gone back to, put right, said to stand elsewhere: which plant is meant, and which is not."""

import pytest

from tests.linking.turns.test_turns import plants
from tests.reading.said import read


@pytest.mark.parametrize(
    "said",
    [
        "Hang on, I forgot to say of 23-04, the leaf is zoned.",
        "Something I should have said of 23-04: the leaf is zoned.",
        "While I think of it, 23-04 has a zoned leaf.",
        "Going back a pot, to the red, the leaf is zoned.",
        "No wait, go back, 23-04 has a zoned leaf.",
        "I want another look at 23-04. The leaf is zoned.",
    ],
)
def test_gone_back_to(said: str) -> None:
    assert plants("23-04 is red.", "23-11 is pink.", said) == ["23-04", "23-11", "23-04"]


@pytest.mark.parametrize(
    "said",
    [
        "No relation to 23-11.",
        "It's next door to 23-11, that's how it got crossed.",
        "23-11 got the sun and this didn't.",
        "If you want a white, see 23-11.",
        "I've 23-11 to thank for that.",
    ],
)
def test_said_of_where_it_stands_and_what_it_is_not(said: str) -> None:
    assert plants("23-04 is red.", said, "The throat is white.") == ["23-04"]


def test_where_the_plant_gone_back_to_stands_is_no_turn() -> None:
    assert plants(
        "23-04 is red.",
        "This one has no label. White.",
        "23-11 is pink.",
        "Oh, hold on, back to that white one, next to 23-04. It has a green eye.",
    ) == ["23-04", "?", "23-11", "?"]


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("Six is white.", "23-06"),
        ("Eleven has a pink flower.", "23-11"),
        ("Moving on to oh six and that's white.", "23-06"),
        ("Then there's eleven. White.", "23-11"),
        ("23-11 that was all bud when I left is pink.", "23-11"),
    ],
)
def test_shown_by_what_is_told_of_it(said: str, number: str) -> None:
    assert plants("23-04 is red.", said) == ["23-04", number]


@pytest.mark.parametrize("said", ["Six is plenty.", "Eleven was all I got from that pod."])
def test_an_amount_shows_nothing(said: str) -> None:
    assert plants("23-04 is red.", said) == ["23-04"]


def test_a_list_told_of_together_turns_nothing() -> None:
    assert plants("23-04, 23-06 and 23-11 came up together.", "23-11 is red.") == ["23-11"]


@pytest.mark.parametrize(
    "said",
    [
        "What's this? Never written a label. White flowers.",
        "This one I can't make out. White flowers.",
        "And this wee scrap I found in the gravel. White flowers.",
        "Whose are you, then? No tag. White flowers.",
        "No tag. White, with a green eye.",
        "Blank pot: white, with a green eye.",
        "Anybody recognise this? I don't. White flowers.",
        "This must be one of the 24s but I couldn't swear which. White flowers.",
    ],
)
def test_without_a_number(said: str) -> None:
    assert plants("23-04 is red.", said) == ["23-04", "?"]


@pytest.mark.parametrize(
    "leave",
    [
        "That'll do for one day.",
        "So there you are, that's the whole of it.",
        "Off to bed with me.",
        "I'll love you and leave you.",
    ],
)
def test_leave_taken_lies_in_no_clip(leave: str) -> None:
    clips = read("This is 23-04.", "It's red.", leave, "The rest I'll do in July.").clips
    assert [(c.plant.number, c.end_ms) for c in clips] == [("23-04", 5 * 400)]
