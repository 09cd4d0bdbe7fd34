"""Numbers that bring a plant in by the build of the sentence, and numbers that bring none."""

import pytest

from tests.linking.turns.test_turns import FIRST, plants
from tests.reading.said import on_record, read


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("We shall begin at the far end of the shelf with 23-11.", "23-11"),
        ("The plant I did not reach was 24-07.", "24-07"),
        ("What I missed last time was 24-07.", "24-07"),
        ("24-07 beside it is off the same pod.", "24-07"),
        ("As for 24-07, I've had a think.", "24-07"),
        ("I've been fretting about 24-07.", "24-07"),
        ("Twenty-four, number seven.", "24-07"),
        ("Last new one, 24-07.", "24-07"),
        ("I want to talk about 24-07.", "24-07"),
        ("Let me show you the inside of 24-07.", "24-07"),
        ("A quick word about 24-07.", "24-07"),
        ("Skip 23-11, on to 24-07.", "24-07"),
        ("You'd never think it, but 24-07 here is out of the same pod.", "24-07"),
        ("I've been asked about 24-07.", "24-07"),
        ("Not 23-11, sorry, 24-07.", "24-07"),
        ("Shout if you want one. Next to it, 24-07.", "24-07"),
        ("It can thank its stars for that. 24-07 now.", "24-07"),
        ("Then there's 24-07, I gave that up for dead.", "24-07"),
        ("24-07, which was Hobnail pollinated with Tilly Marsh.", "24-07"),
        ("I left something out about 24-07.", "24-07"),
        ("One correction on 24-07: I had the stems wrong.", "24-07"),
        ("Where was I, yes, 24-07.", "24-07"),
        ("Speaking of 24-07, here it is.", "24-07"),
        ("Before I forget, 24-07 has rust.", "24-07"),
        ("On reflection 24-07 had better go.", "24-07"),
        ("I was wrong about 24-07.", "24-07"),
        ("Remember 24-07?", "24-07"),
        ("Perhaps, and there again I might not. Now 24-07, I've waited on this.", "24-07"),
        ("24-07 isn't in my book at all.", "24-07"),
        ("One thing more about 24-07.", "24-07"),
        ("And lastly, I told you that 24-07 was for the compost.", "24-07"),
        ("And 24-07 next to it is a sport.", "24-07"),
        ("I never gave the size of 24-07.", "24-07"),
        ("Oh, and at the very end, 24-09, which only came out today.", "24-09"),
        ("24-07, which I had down as 23-40 until Wednesday.", "24-07"),
    ],
)
def test_sentences_that_bring_a_number_in(said: str, number: str) -> None:
    assert plants(*FIRST, said, "It's red, about four centimetres across.") == ["23-04", number]


def test_a_guess_made_before_the_speaker_goes_on_guesses_nothing() -> None:
    said = "i might name it and there again i might not now 24 07 i've been waiting on this one"
    assert plants(*FIRST, said, "it's red") == ["23-04", "24-07"]


@pytest.mark.parametrize(
    "passing",
    [
        "She and 23-11 are as alike as two peas.",
        "23-11 and 22-14 are forever getting crossed.",
        "It isn't the 23-11 I got muddled with.",
        "Full sister to eleven.",
        "I was on page 23 11 of the book.",
        "23-11, which was next to it, is gone.",
        "23-11 that I gave to my cousin is doing well.",
        "So that's six called and eleven expelled.",
        "My sister has 23-11 and she wants this too.",
        "You'd want 23-11 for the colour.",
        "23-11 will always beat it on the bench.",
        "I've seen worse, but then I've seen 23-11.",
        "23-11 and 22-14 for Saturday.",
        "There is nothing in it that 23-11 hasn't got.",
        "Did I use it last year? I did not, I used 23-11.",
        "I'm counting the buds. Eleven, she says.",
        "Eleven was dropped two lists ago.",
        "23-11 that was her sister got froze in January.",
    ],
)
def test_numbers_that_bring_nothing_in(passing: str) -> None:
    assert plants(*FIRST, passing, "The leaf is zoned.") == ["23-04"]


@pytest.mark.parametrize(
    ("said", "numbers"),
    [
        (("Number eight of twenty-five, pink.", "Twelve of the same year, white."), "8/25 12/25"),
        (("The twenty-fours now.", "Number three first, white.", "Number nine, red."), "3/24 9/24"),
        (("8/25, pink.", "Number nineteen next, still the twenty-fours, white."), "8/25 19/24"),
        (("This is 8/25, pink.", "I put in 7 of that cross.", "The leaf is zoned."), "8/25"),
    ],
)
def test_numbers_cut_short_where_the_place_comes_first(said: tuple[str, ...], numbers: str) -> None:
    known = on_record(("8/25", "12/25", "3/24", "9/24", "19/24"), ())
    clips = read(*said, known=known).clips
    assert [clip.plant.number for clip in clips] == numbers.split()


@pytest.mark.parametrize(
    ("said", "numbers"),
    [
        (("Seventeen A, white.", "Seventeen B, pink.", "C is a nice red."), "17A 17B 17C"),
        (("17A, white.", "17B is darker, and C hasn't got that edge."), "17A 17B"),
    ],
)
def test_letters_alone(said: tuple[str, ...], numbers: str) -> None:
    known = on_record(("17A", "17B", "17C"), ())
    clips = read(*said, known=known).clips
    assert [clip.plant.number for clip in clips] == numbers.split()


@pytest.mark.parametrize(
    "told",
    [
        "this is 23 04 the mother was copper lantern",
        "this is 23 04 the pollen parent is copper lantern",
        "this is 23 04 number eleven is its sister",
    ],
)
def test_the_plant_in_hand_is_no_parent_of_itself(told: str) -> None:
    assert plants(told, "pink with a white eye") == ["23-04"]


@pytest.mark.parametrize(
    "passing",
    [
        "I gave 23-11 to my cousin.",
        "I'd rather have had another 23-11.",
        "23-11 was binned in May.",
        "Twenty-two fourteen for a bag of grit!",
        "It's number four on my list.",
        "What 23-11 lacked, this has.",
        "Next to 23-11 it looks washed out.",
        "23-11 came out of the same pod and died.",
        "Flight 24-07 just went over.",
        "On the tag I've written 'see 24-07'.",
        "It's got 23-11 written on the back of the label.",
        "Had 23-11 been any good I'd have binned this.",
        "23-11 isn't worth the film.",
        "It has 23 to 24 flowers a week.",
        "23-11, 40 and 06 all died.",
        "24-07's pollen would improve it.",
        "Between 23-11 and 22-14 on the shelf.",
        "My telephone number ends in 24-07.",
        "At twenty-two fourteen this evening it was still shut.",
    ],
)
def test_numbers_in_passing(passing: str) -> None:
    assert plants(*FIRST, passing, "The leaf is zoned.") == ["23-04"]


@pytest.mark.parametrize(
    "mended",
    [
        "Next pot says 23-11 but that's only the pot, the plant in it is 24-07.",
        "Next is 23-11, no, wrong label, 24-07.",
    ],
)
def test_a_number_put_right(mended: str) -> None:
    assert plants(*FIRST, mended, "It's red.") == ["23-04", "24-07"]
