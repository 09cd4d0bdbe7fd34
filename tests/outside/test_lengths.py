"""Lengths said in inches and feet, against the international yard and pound agreement.

The yard is 0.9144 m exactly since 1 July 1959, so the foot is 304.8 mm and the inch 25.4 mm:
NIST Special Publication 811 (2008), appendix B.6 and B.8 (section numbers from memory).
"""

from fractions import Fraction

import pytest

from diary.reading.lengths import find_lengths
from diary.reading.vocabulary import load_vocabulary
from tests.outside.talk import said_of_a_seedling, values

YARD_MM = Fraction(9144, 10)
FOOT, INCH = YARD_MM / 3, YARD_MM / 36


@pytest.mark.parametrize(
    ("said", "mm"),
    [
        ("one inch", INCH),
        ("an eighth of an inch", INCH / 8),
        ("a quarter of an inch", INCH / 4),
        ("half an inch", INCH / 2),
        ("three quarters of an inch", 3 * INCH / 4),
        ("an inch and a quarter", 5 * INCH / 4),
        ("two inches", 2 * INCH),
        ("two and a half inches", 5 * INCH / 2),
        ("2.5 inches", 5 * INCH / 2),
        ("twelve inches", FOOT),
        ("a foot", FOOT),
        ("two foot six", 2 * FOOT + 6 * INCH),
        ("three feet", YARD_MM),
        ("two to three inches", 5 * INCH / 2),
        ("one centimetre", Fraction(10)),
        ("45 millimetres", Fraction(45)),
        ("half a metre", Fraction(500)),
    ],
)
def test_a_length_in_millimetres(said: str, mm: Fraction) -> None:
    found = find_lengths(said.split(), load_vocabulary())
    assert [one.mm for one in found] == pytest.approx([float(mm)], abs=0.01)


def test_the_table_of_units_is_exact() -> None:
    units = load_vocabulary().unit_table
    told = {name: Fraction(str(unit.mm)) for name, unit in units.items()}
    assert told["inch"] == INCH
    assert told["foot"] == FOOT
    # SI prefixes: BIPM, The International System of Units, 9th ed. (2019), table 7
    assert (told["millimetre"], told["centimetre"], told["metre"]) == (1, 10, 1000)


def test_a_bloom_of_two_inches_is_50_8_mm() -> None:
    told = said_of_a_seedling("The flower is two inches across.")
    assert values(told, "bloom_diameter") == pytest.approx([float(2 * INCH)])


def test_of_two_units_the_metric_figure_stands() -> None:
    told = said_of_a_seedling("The bloom is two inches across, or fifty-two millimetres.")
    assert values(told, "bloom_diameter") == [52]
