"""A pot's inches are no plant's, and lend a bare size no unit."""

import pytest

from tests.reading.said import observed, values

_SIZES = ("bloom_diameter", "head_diameter", "plant_height", "plant_spread", "leaf_width")


@pytest.mark.parametrize(
    "said",
    [
        "It needs a bigger pot; the present one is nine centimetres, and cracked.",
        "It's bursting its pot. A five-inch tonight.",
        "It hangs down seventy centimetres, so mind your heads.",
    ],
)
def test_no_size(said: str) -> None:
    assert [o for o in observed(said) if o.trait in _SIZES] == []


@pytest.mark.parametrize(
    ("said", "trait", "mm"),
    [
        (
            "It's forty centimetres high, in a seven-inch pot, and I make the spread thirty-five.",
            "plant_spread",
            350,
        ),
        ("It wants a bigger pot. The flower is five centimetres.", "bloom_diameter", 50),
        ("It covers forty centimetres of bench.", "plant_spread", 400),
        (
            "Across the plant I read thirty-eight, no, wrong edge, thirty-six centimetres.",
            "plant_spread",
            360,
        ),
        (
            "The head is nine centimetres, and the florets, taken one at a time, are about four.",
            "bloom_diameter",
            40,
        ),
    ],
)
def test_sizes_beside_pots_and_benches(said: str, trait: str, mm: float) -> None:
    assert values(trait, said) == [mm]


@pytest.mark.parametrize(
    ("said", "sizes"),
    [
        ("It's a single, quite small, about an inch and a quarter.", ["small"]),
        ("The flower. Tiny. Couldn't be more than two centimetres.", ["small"]),
        ("It's as round as a dinner plate.", []),
        ("The flower's a little smaller too.", []),
        ("Flowers as big as a dinner plate.", ["large"]),
    ],
)
def test_how_large_in_a_word(said: str, sizes: list[str]) -> None:
    assert values("bloom_size", said) == sizes
