"""Numbers told by their batch, and figures of something else."""

import pytest

from diary.reading.numbers.batches import batch_at, serial_at
from diary.reading.numbers.seedling_numbers import find_numbers
from diary.reading.numbers.system import number_system
from diary.reading.vocabulary import load_vocabulary
from tests.reading.said import on_record, talk

YEAR_FIRST = ("23-04", "23-11", "24-07", "24-09")
PLACE_FIRST = ("8/25", "12/25", "3/24", "19/24", "14/23", "4/24")


def heard(said: str, *numbers: str) -> list[str]:
    system = number_system(on_record(numbers, ()))
    found = find_numbers(talk(said), system, load_vocabulary())
    return [n.number for n in found if n.cut is None]


@pytest.mark.parametrize(
    ("said", "year", "plain"),
    [
        ("the 23s", "23", False),
        ("twenty-threes", "23", False),
        ("the 2024 sowing", "2024", False),
        ("the twenty-four lot", "24", False),
        ("two thousand and twenty-four", "2024", True),
        ("twenty thirty", "2030", True),
        ("the thirties", "30", False),
        ("twenty-four", "24", True),
    ],
)
def test_a_batch(said: str, year: str, plain: bool) -> None:
    found = batch_at(talk(said).texts, 0)
    assert found is not None
    assert (found.year, found.plain) == (year, plain)


def test_no_batch() -> None:
    assert batch_at(talk("the white ones").texts, 0) is None


@pytest.mark.parametrize(
    ("said", "digits"),
    [
        ("nine", "9"),
        ("oh nine", "09"),
        ("one-oh-four", "104"),
        ("one nineteen", "119"),
        ("double 3", "33"),
    ],
)
def test_a_place_in_a_batch(said: str, digits: str) -> None:
    found = serial_at(talk(said).texts, 0)
    assert found is not None
    assert found[0] == digits


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("eight of twenty-five", "8/25"),
        ("number 19 from 24", "19/24"),
        ("number twelve out of the 25 lot", "12/25"),
        ("fourteen over twenty-three", "14/23"),
        ("the twenty-fives, number eight", "8/25"),
        ("the twenty-fours: nineteen", "19/24"),
        ("nine of twenty-four", "9/24"),  # not on record, but its batch is
    ],
)
def test_the_place_before_the_year(said: str, number: str) -> None:
    assert heard(f"{said} , it is white .", *PLACE_FIRST) == [number]


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("number eleven of the twenty-threes", "23-11"),
        ("plant nine from the 2024 sowing", "24-09"),
        ("twenty-four, number seven", "24-07"),
        ("23-dash-11", "23-11"),
        ("two thousand and twenty-four, number nine", "24-09"),
        ("oh four of the twenty-threes", "23-04"),
    ],
)
def test_the_year_before_the_place(said: str, number: str) -> None:
    assert heard(f"{said} , it is white .", *YEAR_FIRST) == [number]


@pytest.mark.parametrize(
    "said",
    [
        "eight of the twenty seeds came up",
        "one of the twenty-fives is lost",
        "it was sown on the 12/5 by the label",
        "the thermometer by the door says twenty-three point five",
        "it is on page 23 04 of my book",
        "I sowed sixteen of that cross",
        "eleven of the twenty-threes had mildew",
    ],
)
def test_figures_that_are_no_plants(said: str) -> None:
    assert heard(f"{said} .", *PLACE_FIRST) == []
    assert heard(f"{said} .", *YEAR_FIRST) == []


@pytest.mark.parametrize(
    ("said", "numbers"),
    [
        ("sown spring 2024", []),
        ("back in twenty twenty-four", []),
        ("this is 2024", ["2024"]),
        ("and number 2024", ["2024"]),
    ],
)
def test_a_number_that_reads_as_a_year(said: str, numbers: list[str]) -> None:
    assert heard(f"{said} .", "2024", "2411", "2318") == numbers


@pytest.mark.parametrize(
    ("said", "number", "register"),
    [
        ("twenty three for teen", "23-14", ("23-14", "23-04")),
        ("two thousand three hundred and twelve", "2312", ("2312", "2304")),
        ("es 308", "S308", ("S308", "S117")),
        ("one-one-nine of the R twenty-twos", "R22/119", ("R22/119", "R23/104")),
        ("cross seven of twenty-five, plant two", "25/7/2", ("25/7/2", "24/6/3")),
        ("twenty-eight, plant twelve, one of the last", "28-12", ("28-12", "28-30")),
        ("twenty-eight plant twelve one of the last", "28-12", ("28-12", "28-30")),
        ("a R23, number nine", "R23/9", ("R22/119", "R23/104")),
        ("R twenty-three, a hundred and four", "R23/104", ("R22/119", "R23/104")),
        ("twenty-four double 1", "24-11", ("24-11", "24-01")),
        ("double 2 of the 24s", "24-22", ("24-11", "24-02")),
        ("one of the R twenty-twos", None, ("R22/119", "R23/104")),
        ("a hundred and ten for the head", None, ("S104", "S110")),
        ("eleven a penny", None, ("11A", "14D")),
    ],
)
def test_heard_otherwise(said: str, number: str | None, register: tuple[str, ...]) -> None:
    assert heard(f"this is {said} .", *register) == ([number] if number else [])


LETTERED = ("T23/14", "T23/104", "S22/9", "S22/31")


@pytest.mark.parametrize(
    ("said", "numbers"),
    [
        ("Number 114 of the tees.", ["T23/114"]),
        ("Plant nine of the esses.", ["S22/9"]),
        ("Thirty-one of the S's.", ["S22/31"]),
        ("Two of the tees died.", []),
        ("Number nine of the vees.", []),
    ],
)
def test_a_batch_told_by_its_letter(said: str, numbers: list[str]) -> None:
    assert heard(said, *LETTERED) == numbers
