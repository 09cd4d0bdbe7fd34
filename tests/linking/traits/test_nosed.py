"""A scent found by nose."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("Stick your nose in that, it's like honey.", ["scented"]),
        ("Have a sniff of that, gorgeous.", ["scented"]),
        ("You get a waft off it in the evenings.", ["scented"]),
        ("I had my nose in it, nothing.", ["none"]),
        ("so has it a scent no not that i can find", ["none"]),
        ("There's a smell of creosote in here.", []),
        ("You get a whiff of paraffin from the heater.", []),
        ("It has a whiff of Hobnail about it.", []),
    ],
)
def test_by_nose(said: str, value: list[str]) -> None:
    assert values("scent", said) == value


@pytest.mark.parametrize(
    "said",
    [
        "Brush past it and you get lemon peel, off the leaf I mean.",
        "You get mint from the leaf.",
    ],
)
def test_smelt_off_the_leaf(said: str) -> None:
    assert values("foliage", said) == ["scented"]
