"""Plain adjectives that tell of looks where a sentence is built round them."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "trait", "value"),
    [
        ("It's ever so round.", "bloom_form", ["rounded"]),
        ("It's nice and round, no gaps.", "bloom_form", ["rounded"]),
        ("Flowers single, and pink.", "bloom_form", ["single"]),
        ("It's turned out double.", "bloom_form", ["double"]),
        ("Cerise, flat in profile, no scent.", "bloom_form", ["flat"]),
        ("You can see how tight it is.", "habit", ["compact"]),
        ("it's a good pink and it's awfully late", "flowering", ["late"]),
        ("Early and pink.", "flowering", ["early"]),
        ("I can't get over how clean it is.", "health", ["clean"]),
        ("Large flowers, loosely double.", "bloom_form", ["double"]),
        ("It's more double than I expected.", "bloom_form", ["double"]),
        ("The plant's nice and tidy.", "habit", ["compact"]),
        ("The truss is round.", "bloom_form", []),
        ("It goes all the way round.", "bloom_form", []),
        ("It's a rosebud, so tight you'd never see in.", "habit", []),
        ("It's at its earliest.", "flowering", []),
        ("It's a semi-double one.", "bloom_form", ["semi-double"]),
        ("It's less early than Hobnail.", "flowering", []),
        ("Nobody could call it clean.", "health", []),
        ("I wouldn't call it compact.", "habit", []),
        ("I wanted it bushy.", "habit", []),
        ("I like them upright.", "habit", []),
        ("Wish it was frilly.", "bloom_form", []),
        ("I like it, it's frilly.", "bloom_form", ["frilled"]),
    ],
)
def test_a_plain_word_of_looks(said: str, trait: str, value: list[str]) -> None:
    assert values(trait, said) == value
