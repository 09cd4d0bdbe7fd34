"""Colours that captions write as a word they sound like."""

import pytest

from tests.reading.said import caption_colours, colours


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("it has a whine stripe up each petal", {"stripe wine"}),
        ("tiny little flowers with serious veins", {"veins cerise"}),
        ("it's a rows pink flower and the vanes are a darker rows", {"bloom rose", "veins rose"}),
        ("lovely soft more of with a plumb blotch", {"bloom soft mauve", "blotch plum"}),
        ("the throat's more of and the rest of it's whine", {"throat mauve", "bloom wine"}),
        ("it's salmon with a read eye", {"bloom salmon", "eye red"}),
        ("i want more of them and two rows of cuttings", set()),
        ("the wind blew petals all over the floor", set()),
        ("the spots are serious", set()),
        ("i read leaf miner is about", set()),
    ],
)
def test_heard_by_sound_only_where_a_colour_is_expected(said: str, expected: set[str]) -> None:
    assert caption_colours(said) == expected


def test_what_is_written_with_marks_is_spelt_as_meant() -> None:
    assert colours("It has serious veins.") == set()
