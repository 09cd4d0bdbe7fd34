"""An amount ends at a mark."""

import pytest

from diary.reading.spoken import amount_at
from tests.reading.said import talk


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("Twenty three came.", 23),
        ("Twenty. Three came.", 20),
        ("Twenty, three of them up.", 20),
        ("Two and a half.", 2.5),
    ],
)
def test_no_amount_runs_over_a_mark(said: str, value: float) -> None:
    amount = amount_at(talk(said), 0)
    assert amount is not None
    assert amount.value == value
