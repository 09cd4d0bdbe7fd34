"""Bare figures that answer a count or a size are no numbers of plants."""

import pytest

from tests.reading.said import mentions


@pytest.mark.parametrize(
    "said",
    [
        "There's not so many trusses. Three, that I can see.",
        "How many came up? Nine.",
        "Five shoots below and another three up here.",
        "Heads, one two three four.",
    ],
)
def test_a_figure_that_answers(said: str) -> None:
    assert mentions(said).refs == ()


def test_a_number_alone_after_a_remark_is_a_plant() -> None:
    assert len(mentions("Good heads on that. Seventeen, the next.").refs) == 1
