"""Sizes told by a coin, against the diameters that the mints specify.

Sources: the Royal Mint's coin specifications; the US Mint's coin specifications, and 31 U.S.C.
5112 (a) for the larger ones (from memory); Regulation (EC) 975/98, annex I, for the euro.
"""

import tomllib
from importlib.resources import files

import pytest

from tests.outside.talk import said_of_a_seedling

INCH_MM = 25.4
SPECIFIED = {
    "penny": 20.3,
    "two pence piece": 25.9,
    "five pence piece": 18.0,
    "ten pence piece": 24.5,
    "twenty pence piece": 21.4,
    "fifty pence piece": 27.3,  # since 1997
    "pound coin": 23.43,  # twelve-sided, point to point
    "two pound coin": 28.4,
    "dime": 0.705 * INCH_MM,
    "nickel": 0.835 * INCH_MM,
    "us quarter": 0.955 * INCH_MM,
    "half dollar": 1.205 * INCH_MM,
    "one euro coin": 23.25,
    "two euro coin": 25.75,
}


@pytest.mark.parametrize(("coin", "mm"), SPECIFIED.items())
def test_a_bloom_the_size_of_a_coin(coin: str, mm: float) -> None:
    told = said_of_a_seedling(f"The flower is about the size of a {coin}.")
    sizes = [one for one in told if one.trait == "bloom_diameter"]
    assert [one.value for one in sizes] == pytest.approx([mm], abs=0.01)
    assert all(one.hedged for one in sizes)  # a coin is a hint, no measurement


def test_the_vocabulary_holds_no_other_diameter() -> None:
    table = tomllib.loads(files("diary.data").joinpath("coins.toml").read_text("utf-8"))
    for coin in table["coin"]:
        assert any(coin["mm"] == pytest.approx(mm, abs=0.01) for mm in SPECIFIED.values()), coin


def test_a_price_is_no_size() -> None:
    told = said_of_a_seedling("I paid two pounds fifty for its mother, and a fifty pence label.")
    assert [one for one in told if one.trait == "bloom_diameter"] == []
