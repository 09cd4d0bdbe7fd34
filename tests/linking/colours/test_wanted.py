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


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("I was barracking for a yellow.", set()),
        ("I'd been banking on an orange from that cross.", set()),
        ("What we'd both like is a yellow.", set()),
        ("I'd sooner it had come red.", set()),
        ("I'd predicted a blue, and it's a mauve.", {"bloom mauve"}),
        ("It was a yellow I was praying for.", set()),
        ("What I like is the stem, it's nearly black.", {"stem black"}),
        ("My sister came round and swore blind it was lilac, but it's pink.", {"bloom pink"}),
    ],
)
def test_hoped_for_or_said_by_another(said: str, expected: set[str]) -> None:
    assert colours(said) == expected
