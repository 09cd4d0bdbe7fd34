"""Contractions without their apostrophe that are words of their own."""

import pytest

from diary.reading.bare_apostrophes import bare_contractions


@pytest.mark.parametrize(
    ("said", "opened"),
    [
        ("ive said it its going nowhere", {3: ("it", "'s")}),
        ("thats the one ill keep", {3: ("i", "'ll")}),
        ("i dont know well see", {3: ("we", "'ll")}),
    ],
)
def test_opened(said: str, opened: dict[int, tuple[str, ...]]) -> None:
    assert bare_contractions(said.split()) == opened


@pytest.mark.parametrize(
    "said",
    [
        "ive seen its leaf and its feathering",
        "thats well grown but it looks ill",
        # with apostrophes, "its" is the pronoun
        "it's got its going over",
        "its going nowhere",
    ],
)
def test_left_alone(said: str) -> None:
    assert bare_contractions(said.split()) == {}
