"""Numbers told by their last part alone, in the order in which the plants stand."""

import pytest

from tests.linking.turns.test_turns import plants
from tests.reading.said import on_record, read

ROW = on_record(("23-11", "23-12", "23-13", "23-15"), ())


def row(*said: str) -> list[str | None]:
    return [clip.plant.number for clip in read(*said, known=ROW).clips]


@pytest.mark.parametrize(
    "said",
    [
        "13 on the other hand is a proper little belter it's white",
        "oh 13 is a funny one it's white",
        "13's not open so we'll leave it but the bud's white",
        "then 13 which is white",
        "right 13 it's white",
    ],
)
def test_the_next_of_the_row_in_captions(said: str) -> None:
    assert row("this is 23 12 it's pink", said) == ["23-12", "23-13"]


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("Thirteen's another matter, that's white.", "23-13"),
        ("Now thirteen has never looked back.", "23-13"),
    ],
)
def test_the_next_of_the_row(said: str, number: str) -> None:
    assert row("This is 23-12, pink.", said, "It's white.") == ["23-12", number]


def test_the_next_on_record_where_one_is_missing() -> None:
    assert row("this is 23 13 it's pink", "right 15 it's white") == ["23-13", "23-15"]


@pytest.mark.parametrize(
    "said",
    [
        "there's 13 heads on it",
        "i counted the buds and 13 is a lot",
        "it's got 13 of them",
        "i've been at it 13 years",
    ],
)
def test_amounts_are_not_the_next_of_the_row(said: str) -> None:
    assert row("this is 23 12 it's pink", said, "the leaf is zoned") == ["23-12"]


@pytest.mark.parametrize(
    "said",
    [
        "last one and then i'm done 23 11 the daddy",
        "next one now where's it gone ah 23 11",
        "one more before the light goes 23 11",
    ],
)
def test_a_plant_announced(said: str) -> None:
    assert plants("this is 23 04 it's pink", said, "he's white") == ["23-04", "23-11"]


@pytest.mark.parametrize(
    "said",
    ["now i did have 23 11 stood next to it but a slug had it", "i used to have 23 11 beside it"],
)
def test_a_plant_once_had(said: str) -> None:
    assert plants("this is 23 04 it's pink", said, "it's compact") == ["23-04"]
