"""Counts of heads, buds, shoots, cuttings and seeds."""

import pytest

from tests.reading.said import observed


def counts(said: str) -> dict[str, object]:
    """The counts told."""
    return {o.trait: o.value for o in observed(said) if o.trait.startswith("count_")}


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("There are three heads open.", {"count_heads": 3}),
        ("It's got five trusses on it.", {"count_heads": 5}),
        ("A dozen buds still to come.", {"count_buds": 12}),
        ("Two heads open and fourteen buds.", {"count_heads": 2, "count_buds": 14}),
        (
            "I sowed ten seeds and three came up.",
            {"count_seeds_sown": 10, "count_germinated": 3},
        ),
        (
            "I sowed twelve seeds and only one of the twelve came up.",
            {"count_seeds_sown": 12, "count_germinated": 1},
        ),
        ("I've got four cuttings rooted.", {"count_cuttings": 4}),
        ("There are six shoots from the base.", {"count_shoots": 6}),
    ],
)
def test_counts(said: str, expected: dict[str, int]) -> None:
    assert counts(said) == expected


@pytest.mark.parametrize(
    "said",
    [
        "It has five petals.",
        "There are three pots of it.",
        "I want three cuttings of it.",
        "I wish it had three heads.",
        "I can't remember how many seeds I sowed.",
        "Two people asked for it.",
    ],
)
def test_what_is_not_counted(said: str) -> None:
    assert counts(said) == {}
