"""Turns of phrase: alternatives, words that may be left out, the longest match."""

import pytest

from diary.reading.phrases import Found, PhraseBook


@pytest.mark.parametrize(
    ("phrase", "said", "end"),
    [
        ("side shoots", "side shoots", 2),
        ("free flower|flowering", "free flowering", 2),
        ("free flower|flowering", "free flower", 2),
        ("very? free", "very free", 2),
        ("very? free", "free", 1),
        ("going|goes on|to_go heap", "going to go heap", 4),
        ("isn't it", "is not it", 3),
    ],
)
def test_a_phrase_matches(phrase: str, said: str, end: int) -> None:
    book = PhraseBook([("label", phrase)])
    assert book.at(said.split(), 0) == Found(0, end, "label")


@pytest.mark.parametrize("said", ["side", "shoots side", "a side shoot", ""])
def test_a_phrase_does_not_match(said: str) -> None:
    assert PhraseBook([("label", "side shoots")]).at(said.split(), 0) is None


def test_the_longest_of_a_label_wins_and_labels_stand_side_by_side() -> None:
    book = PhraseBook([("a", "dark"), ("a", "dark eye"), ("b", "dark eye"), ("b", "eye")])
    found = book.find("a dark eye".split())
    assert found == [Found(1, 3, "a"), Found(1, 3, "b"), Found(2, 3, "b")]


def test_only_what_lies_between_start_and_end_is_found() -> None:
    book = PhraseBook([("a", "pink eye")])
    words = "pink eye pink eye".split()
    assert book.find(words, 1) == [Found(2, 4, "a")]
    assert book.find(words, 0, 3) == [Found(0, 2, "a")]
