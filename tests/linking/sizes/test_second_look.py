"""A size told twice in a breath is the later one, whatever words lie between."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "mm"),
    [
        (
            "Five centimetres. No, hang on, that's with my glove in the way, it's four and a half.",
            45,
        ),
        ("Four centimetres. Get the ruler, then. All right, four and a half.", 45),
        (
            "I'd have sworn to five centimetres, but the ruler, that liar, says four and a half.",
            45,
        ),
        ("Diameter on paper thirty millimetres, on the ruler thirty-four.", 34),
        ("The flower's fifty millimetres. Is it? Let's see. Forty-six.", 46),
        ("It's five inches across, no, it's not five, what am I on about, it's two.", 50.8),
        ("Flower: four centimetres. Oh, I've got the end folded under. Four and a half.", 45),
        ("A lovely flower, an inch, no, a bit more, an inch and a quarter across.", 31.8),
        ("how big ooh 4 centimetres get the ruler then all right 4 and a half it's single", 45),
    ],
)
def test_a_second_look(said: str, mm: float) -> None:
    assert values("bloom_diameter", said) == [mm]


@pytest.mark.parametrize(
    ("said", "trait", "mm"),
    [
        (
            "It's twelve inches high. Hold on, I'm measuring from the saucer. Ten.",
            "plant_height",
            254,
        ),
        (
            "it's forty centimetres tall no i'm wrong forty five she's kicked it",
            "plant_height",
            450,
        ),
    ],
)
def test_a_second_look_measures_the_same(said: str, trait: str, mm: float) -> None:
    assert values(trait, said) == [mm]


def test_what_is_told_of_another_thing_is_no_second_look() -> None:
    assert values(
        "bloom_diameter", "The flower is five centimetres, and there are four heads."
    ) == [50]
    assert values("bloom_diameter", "It's five centimetres. Last year it was four and a half.") == [
        50
    ]
    said = "The flower is five centimetres, no blotch, and the head's six."
    assert values("bloom_diameter", said) == [50]
    assert values("head_diameter", said) == [60]


@pytest.mark.parametrize(
    ("said", "trait", "mm"),
    [
        ("It's forty-seven millimetres across, though I'd guessed fifty.", "bloom_diameter", 47),
        ("Forty millimetres, the flower. No, forty-two, it was tilted.", "bloom_diameter", 42),
        (
            "She's twenty-six centimetres tall and wider than that, call it thirty-one.",
            "plant_spread",
            310,
        ),
        ("How tall? Well, let's see, the rule says twenty-one centimetres.", "plant_height", 210),
        (
            "The class won't have anything over thirty centimetres, and this is thirty-four.",
            "plant_height",
            340,
        ),
        ("It's one foot one.", "plant_height", 330.2),
    ],
)
def test_guesses_questions_and_the_other_way(said: str, trait: str, mm: float) -> None:
    assert values(trait, said) == [mm]
