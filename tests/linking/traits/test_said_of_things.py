"""Words of looks and health that are said of no plant."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "trait"),
    [
        ("The pot's clean, I gave it a scrub.", "health"),
        ("It's a clean pale rose.", "health"),
        ("You get a clean line between the two colours.", "health"),
        ("I took a nice clean cutting off it.", "health"),
        ("There's a double pot there.", "bloom_form"),
        ("The bench is smothered in petals.", "flowering"),
        ("We're three weeks behind with the sowing.", "flowering"),
        ("I was late getting the seed in.", "flowering"),
        ("I never could strike the bushy sort.", "habit"),
        ("The blotch spreads towards the rim.", "habit"),
        ("It has a purple edge as neat as a hem.", "habit"),
        ("My hands smell of lemon.", "scent"),
        ("Leaf small and neat.", "habit"),
    ],
)
def test_said_of_something_else(said: str, trait: str) -> None:
    assert values(trait, said) == []


@pytest.mark.parametrize(
    ("said", "trait", "value"),
    [
        ("It's a clean plant in a dirty pot.", "health", "clean"),
        ("It's late, this one.", "flowering", "late"),
        ("It'd take over the greenhouse.", "habit", "vigorous"),
        ("It has a maroon blotch on a compact plant.", "habit", "compact"),
        ("It's the bushy sort.", "habit", "bushy"),
    ],
)
def test_said_of_the_plant(said: str, trait: str, value: str) -> None:
    assert values(trait, said) == [value]
