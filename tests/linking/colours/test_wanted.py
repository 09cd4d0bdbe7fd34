"""Colours that are only wanted are no colours of the plant."""

import pytest

from tests.reading.said import colours


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("I was fishing for a true lilac, and I still am.", set()),
        ("I could do with something yellow.", set()),
        ("I never get a decent purple out of that side.", set()),
        ("the windowsill trade wants a yellow like that", set()),
        ("I never saw a red like it.", {"bloom red"}),
        ("I want to call it pink.", {"bloom pink"}),
    ],
)
def test_what_is_only_wanted(said: str, expected: set[str]) -> None:
    assert colours(said) == expected
