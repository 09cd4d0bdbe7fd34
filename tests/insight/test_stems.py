"""Numbers by cross: learnt from the register, and not believed where it says otherwise."""

import pytest

from diary.insight.stems import presumed_parents, stem

A, B = ("Merrowdown Silk", "Lord Ambrick"), ("Fennimore Dusk", "21-06A")


@pytest.mark.parametrize(
    ("number", "shared"),
    [
        ("24-11A", "24-11"),
        ("17.3", "17"),
        ("R23/104", "R23"),
        ("24/6/3", "24/6"),
        ("2311", None),
        ("K12", None),
        ("Fenmarsh Lad", None),
    ],
)
def test_what_a_number_shares_with_its_sisters(number: str, shared: str | None) -> None:
    assert stem(number) == shared


def test_numbers_by_cross_are_learnt() -> None:
    found = presumed_parents({"24-11A": A, "24-11B": A, "24-71A": B, "24-71B": B, "24-17A": A})
    assert found == {"24-11": A, "24-71": B, "24-17": A}


def test_numbers_by_year_are_not_taken_for_crosses() -> None:
    assert presumed_parents({"23-01": A, "23-02": B, "24-01": A, "24-02": A}) == {}


def test_one_cross_bears_out_nothing() -> None:
    assert presumed_parents({"23-01": A, "23-02": A}) == {}
