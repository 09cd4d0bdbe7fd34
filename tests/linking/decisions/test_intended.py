"""A deed and an intention in one clause decide, in whatever order they are said."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("we've 4 cuttings of it rooted and i shall do some more come august", "propagate"),
        ("tormented for two slips of him so i'll be taking them tonight", "propagate"),
        ("must get this one struck", "propagate"),
        ("that wants a few sticking in before it goes woody", "propagate"),
        ("i mean to work with that one all next summer", "breed"),
        ("Some cuttings I will take after the rains.", "propagate"),
        ("Cuttings to be taken at the earliest.", "propagate"),
        ("This one I will be retaining only.", "keep"),
        ("To be used as seed parent in 2032.", "breed"),
        ("That's going to carry seed for me this year.", "breed"),
        ("A bigger pot has to be given.", "repot"),
    ],
)
def test_intended(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "Cuttings root easily in here.",
        "I took cuttings yesterday and they'll be slow.",
        "The cuttings were to be thrown out.",
        "There won't be cuttings this year.",
        "I should pot up that lavender by the door.",
    ],
)
def test_not_intended(said: str) -> None:
    assert values("decision", said) == []
