"""Names cut to their last word."""

import pytest

from diary.reading.known import Known
from diary.reading.names import find_names, name_index
from diary.reading.short_names import short_names
from diary.reading.vocabulary import load_vocabulary
from tests.reading.said import on_record, talk

KNOWN = on_record(
    (), ("Plain Nettie", "Third Time Lucy", "Sunday Trombone", "Silent Sunday", "Old Red")
)


def heard(said: str, known: Known = KNOWN) -> list[str]:
    index, spoken = name_index(known), talk(said)
    names = find_names(spoken, index)
    return [n.name for n in short_names(spoken, names, index, load_vocabulary())]


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("It's a sport of Nettie.", "Plain Nettie"),
        ("It's off Third Time Lucy, and where Lucy is scarlet this is salmon.", "Third Time Lucy"),
        ("it came out of third time lucy and it is redder than lucy by a mile", "Third Time Lucy"),
    ],
)
def test_a_name_cut_short(said: str, name: str) -> None:
    assert heard(said) == [name]


@pytest.mark.parametrize(
    "said",
    [
        "Nettie brought the tea.",
        "It sounds like a trombone to me.",
        "I potted it on Sunday.",
        "It is more like Red than pink.",
        "my sister lucy is here and lucy likes it",
    ],
)
def test_ordinary_words_and_people(said: str) -> None:
    assert heard(said) == []
