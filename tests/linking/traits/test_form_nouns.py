"""The form of the flower as a noun with any word before it."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("A neat double, every petal in its place.", ["double"]),
        ("It's an honest single, and I like it.", ["single"]),
        ("There's a double page missing.", []),
        ("It came on a single low branch.", []),
        ("It's not a proper double.", ["semi-double"]),
    ],
)
def test_a_form_as_a_noun(said: str, value: list[str]) -> None:
    assert values("bloom_form", said) == value
