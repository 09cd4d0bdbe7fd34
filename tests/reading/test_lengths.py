"""Lengths in millimetres: units, fractions, ranges, feet and inches.

The inch is 25.4 mm exactly (international yard and pound agreement, 1959; from memory, pint
agrees); fractions of an inch are arithmetic from it.
"""

import pytest

from diary.reading.lengths import find_lengths
from diary.reading.vocabulary import load_vocabulary
from tests.reading.said import texts


@pytest.mark.parametrize(
    ("said", "mm"),
    [
        ("an inch", 25.4),
        ("two inches", 50.8),
        ("two and a half inches", 63.5),
        ("three quarters of an inch", 19.05),
        ("half an inch", 12.7),
        ("an inch and a quarter", 31.75),
        ("an inch and a half", 38.1),
        ("two and a quarter inches", 57.15),
        ("3 inches", 76.2),
        ("a foot", 304.8),
        ("two feet", 609.6),
        ("two foot six", 762.0),
        ("eight centimetres", 80),
        ("four and a half centimetres", 45),
        ("4.5 cm", 45),
        ("45mm", 45),
        ("55 mil", 55),
        ("fifty-five millimetres", 55),
        ("ten centimeters", 100),
        ("half a metre", 500),
        ("a metre", 1000),
        ("a metre ten", 1100),
        ("one metre twenty", 1200),
        ("two point five centimetres", 25),
        ("between three and four inches", 88.9),
        ("three to four centimetres", 35),
        ("three to three and a half centimetres", 32.5),
        ("three or four centimetres", 35),
        ("3-4 cm", 35),
        ("a nine-centimetre", 90),
        ("for inches", 101.6),
        ("to and a half centimetres", 25),
        ("grown from four to six inches", 152.4),
    ],
)
def test_a_length(said: str, mm: float) -> None:
    (found,) = find_lengths(texts(said), load_vocabulary())
    assert found.mm == pytest.approx(mm, abs=0.05)


@pytest.mark.parametrize(
    "said",
    [
        "a five litre pot",
        "thirty-one degrees",
        "three heads open",
        "four pounds fifty",
        "twenty-three oh four",
        "ten past four",
        "sixteen per cent",
        "three weeks",
        "changed from inches to centimetres",
        "from head to foot",
    ],
)
def test_amounts_of_anything_else_are_no_lengths(said: str) -> None:
    assert find_lengths(texts(said), load_vocabulary()) == ()


def test_metric_and_inches_are_told_apart() -> None:
    inches, metric = find_lengths(
        texts("two inches across , that is five centimetres"), load_vocabulary()
    )
    assert not inches.metric
    assert metric.metric


@pytest.mark.parametrize(
    ("said", "mm"),
    [
        ("inch and three-quarter", 44.45),
        ("the inch and a quarter one", 31.75),
        ("an inch and a half to two inches", 44.45),
        ("an inch or two", 38.1),
        ("a foot to eighteen inches", 381.0),
        ("four centimetres or two inches", 40.0),
    ],
)
def test_unit_first_and_two_lengths(said: str, mm: float) -> None:
    assert find_lengths(texts(said), load_vocabulary())[0].mm == pytest.approx(mm)
