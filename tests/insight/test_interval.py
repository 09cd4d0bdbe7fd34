"""Wilson intervals against scipy and against published worked values."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest

from diary.insight.interval import wilson


@given(st.integers(0, 400).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_agrees_with_scipy(counted: tuple[int, int]) -> None:
    # scipy.stats.binomtest(...).proportion_ci(method="wilson"): the reference library
    count, total = counted
    ours = wilson(count, total)
    if total == 0:
        assert (ours.low, ours.high, ours.share) == (0.0, 1.0, None)
        return
    theirs = binomtest(count, total).proportion_ci(0.95, method="wilson")
    assert ours.low == pytest.approx(theirs.low, abs=1e-9)
    assert ours.high == pytest.approx(theirs.high, abs=1e-9)
    assert 0 <= ours.low <= ours.share <= ours.high <= 1


@pytest.mark.parametrize(
    ("count", "total", "low", "high"),
    # R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, method 3 (from memory;
    # the values agree with scipy)
    [
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ],
)
def test_published_examples(count: int, total: int, low: float, high: float) -> None:
    ours = wilson(count, total)
    assert (round(ours.low, 4), round(ours.high, 4)) == (low, high)


def test_says_itself_in_words() -> None:
    assert str(wilson(3, 12)) == "3 of 12 (9% to 53%)"
    assert str(wilson(0, 0)) == "none seen"


@pytest.mark.parametrize(("count", "total"), [(-1, 3), (4, 3)])
def test_refuses_what_is_no_share(count: int, total: int) -> None:
    with pytest.raises(ValueError, match="no share"):
        wilson(count, total)
