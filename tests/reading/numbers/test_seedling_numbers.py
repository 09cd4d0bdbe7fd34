"""Seedling numbers, in every format and every way of saying them.

Ways of saying digits are those of the published cases of openai/whisper
(tests/test_normalizer.py: "double", "triple", "oh", "o") and text2num
(tests/test_text_to_num_en.py), here read as two groups instead of one number; homophones
are common practice.
"""

import pytest

from diary.reading.numbers.seedling_numbers import find_numbers
from diary.reading.numbers.system import number_system
from diary.reading.vocabulary import load_vocabulary
from tests.reading.said import on_record, talk


def heard(said: str, *numbers: str) -> list[str]:
    """The whole numbers heard."""
    system = number_system(on_record(numbers or ("23-04", "23-11", "22-14", "24-07"), ()))
    found = find_numbers(talk(said), system, load_vocabulary())
    return [n.number for n in found if n.cut is None]


@pytest.mark.parametrize(
    "said",
    [
        "twenty-three oh four",
        "twenty three oh four",
        "twenty three o four",
        "twenty-three zero four",
        "twenty-three nought four",
        "twenty-three four",
        "twenty-three dash oh four",
        "twenty-three slash four",
        "twenty-three stroke four",
        "two three oh four",
        "two three zero four",
        "23 04",
        "23-04",
        "23/04",
        "23.04",
        "2304",
        "23 oh four",
        "23 dash 4",
        "23 4",
        "number four of the 23s",
        "number four of the twenty-threes",
        "twenty-three oh for",
    ],
)
def test_every_way_of_saying_one_number(said: str) -> None:
    assert heard(f"this is {said} .") == ["23-04"]


@pytest.mark.parametrize(
    ("said", "number", "register"),
    [
        ("twenty-one eleven", "21-11", ("21-11", "21-09")),  # text2num keeps 21 and 11 apart
        ("twenty-three double one", "23-11", ("23-11", "23-04")),
        ("nine double one", "9-11", ("9-11", "9-12")),  # openai/whisper: 911
        ("R twenty-three one oh four", "R23/104", ("R23/104", "R23/98")),
        ("R23 slash 104", "R23/104", ("R23/104", "R23/98")),
        ("twenty-three stroke one oh four", "R23/104", ("R23/104", "R23/98")),
        ("S two-oh-four", "S204", ("S204", "S117")),
        ("ess two oh four", "S204", ("S204", "S117")),
        ("S204", "S204", ("S204", "S117")),
        ("S two hundred and four", "S204", ("S204", "S117")),
        ("seventeen B", "17B", ("17B", "4A")),
        ("see seventeen", "C17", ("C17", "D17", "D45")),
        ("see 41 2", "C41-2", ("C41-2", "B9-5", "D7-1")),
        ("41 2", "C41-2", ("C41-2", "B9-5", "D7-1")),  # no other letter goes with it
        ("six 62 d", "62D", ("62C", "62D", "26D")),
        ("118 a", "118A", ("118B", "26D")),  # not on record, beside one that is
        ("31 oh seven oh", "31-070", ("31-007", "31-104")),
        ("17 B", "17B", ("17B", "4A")),
        ("seventeen bee", "17B", ("17B", "4A")),
        ("twenty-three eleven", "2311", ("2311", "2304")),
        ("two three one one", "2311", ("2311", "2304")),
        ("twenty-two fourteen A", "22-14A", ("22-14A", "22-09B")),
        ("twenty-four six three", "24/6/3", ("24/6/3", "24/12/1")),
        ("twenty-four slash six slash three", "24/6/3", ("24/6/3", "24/12/1")),
        ("twenty twenty-nine fourteen", "2029/14", ("2029/14", "2029/3")),
        ("twenty-nine fourteen", "2029/14", ("2029/14", "2029/3")),
        ("K twelve", "K12", ("K12", "K7")),
        ("kay twelve", "K12", ("K12", "K7")),
        ("nine point one two", "9.12", ("9.12", "9.3")),
        ("nine dot twelve", "9.12", ("9.12", "9.3")),
        ("kay two fourteen", "K-214", ("K-214", "K-31")),
        ("K-214", "K-214", ("K-214", "K-31")),
        ("K/214", "K/214", ("K/214", "K/31")),
        ("two fourteen", "K-214", ("K-214", "K-31")),
        ("S dot twelve", "S.12", ("S.12", "S.14")),
        ("twenty-three oh four A", "23-04/A", ("23-04/A", "23-04/B")),
        ("P L one two four", "PL-0124", ("PL-0124", "PL-0131")),
        ("twenty-four B seven", "24-B-7", ("24-B-7", "24-C-11")),
        ("24B07", "24B07", ("24B07", "24C11")),
        ("twenty-four D oh three", "24D03", ("24B07", "24C11")),
        ("C eleven", "24C11", ("24B07", "24C11")),
        ("twenty-five B two", "25B02", ("24B07", "25B20")),
        ("cross B of the same year, plant eleven", "24B11", ("24B11", "24C11")),
        ("plant eleven of cross C", "24C11", ("24B11", "24C11")),
        ("number eleven of the 24Cs", "24C11", ("24B11", "24C11")),
        ("BX nineteen", "BX/19", ("BX/19", "PX/9")),
        ("PX dash nine", "PX/9", ("BX/19", "PX/9")),
        ("pee ex dash nine", "PX/9", ("BX/19", "PX/9")),
        ("double you thirteen", "W13", ("W13", "W5")),
        ("jay oh two", "J02", ("J12", "H07")),
        ("age seventeen", "H17", ("H17", "G04")),
        ("zed dash one eighteen", "Z-118", ("Z-80", "Z-108")),
        ("see forty one two", "C41-2", ("C41-1", "C41-7", "B9-5")),  # not on record yet
        ("thirty one oh four", "30-104", ("30-104", "31-114")),
        ("thirty two four", "30/24", ("30/24", "8/24", "23/24", "18/25")),
        ("twenty-four stroke seven oh", "24/70", ("24/7", "25/12")),
        ("seven point two two", "7.22", ("7.2", "9.16")),
        ("two eight one one two", "28112", ("28112", "29041")),
        ("three zero zero seven one", "30071", ("28112", "30007")),
        ("R twenty-three one seven", "R2317", ("R2304", "R2411")),
        ("34 f 20 slip copper was the mother", "34-F-20", ("34-F-12", "33-A-2")),
        ("34 see 3 c was the mother", "34-C-3", ("34-C-3", "33-A-2")),
        ("page two twenty-six thirteen", "26-13", ("26-13", "26-30")),
        ("seven oh nine", "709", ("711", "604", "614")),
        ("line one 26 03", "26-03", ("26-03", "26-30")),
    ],
)
def test_formats(said: str, number: str, register: tuple[str, ...]) -> None:
    assert heard(f"this is {said} .", *register) == [number]


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("twenty-three seventeen", "23-17"),
        ("twenty-four thirty-one", "24-31"),
        ("23-88", "23-88"),
        ("twenty-five oh two", "25-02"),
    ],
)
def test_a_number_not_on_record_is_written_in_the_register_s_format(said: str, number: str) -> None:
    assert heard(f"this is {said} .") == [number]


@pytest.mark.parametrize(
    "said",
    [
        "it is twenty-three degrees in here",
        "in a nine centimetre pot",
        "it cost four pounds fifty",
        "at half past four",
        "five and a half inches across",
        "fourteen buds on it",
        "I sowed twenty-two seeds",
        "ten millilitres in five litres",
        "about three to four weeks",
        "we went to see it for an hour",
    ],
)
def test_look_alikes_are_left_alone(said: str) -> None:
    assert heard(said) == []


@pytest.mark.parametrize(
    ("said", "after", "number"),
    [
        ("one oh five", "R23/104", "R23/105"),
        ("seventeen", "23-04", "23-17"),
    ],
)
def test_a_number_cut_short_is_completed_from_the_plant_before(
    said: str, after: str, number: str
) -> None:
    system = number_system(on_record((after, number), ()))
    (found,) = find_numbers(talk(f"and {said} ."), system, load_vocabulary())
    assert found.cut is not None
    assert system.complete(found.cut, after) == number


def test_a_decimal_is_no_last_part_of_a_number() -> None:
    system = number_system(on_record(("2027/3", "2027/13"), ()))
    found = find_numbers(talk("it is two point six ."), system, load_vocabulary())
    assert not any(n.explicit or n.cut is None for n in found)


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("two three five one next", "23-51"),  # not on record; 23-05 is
        ("two three oh five, one of the best", "23-05"),
        ("twenty three five, one of the best", "23-05"),
    ],
)
def test_digit_by_digit_no_digit_is_left_over(said: str, number: str) -> None:
    assert heard(f"{said} .", "23-04", "23-05") == [number]


@pytest.mark.parametrize(
    ("said", "numbers"),
    [
        ("this is 23 04 heads about the size of an orange", ["23-04"]),
        ("this is 23 04 stems about 30 centimetres", ["23-04"]),
        ("the plant is fourteen tall", []),
        ("there are fourteen buds", []),
        ("then we come two 23 04", ["23-04"]),
        ("over two 23 14 now", ["23-14"]),
        ("this is twenty three ninety nine zero", ["23-90"]),
        ("the twenty three hundreds next time", []),
    ],
)
def test_what_a_number_stands_before(said: str, numbers: list[str]) -> None:
    assert heard(said, "23-04", "23-14") == numbers


YEARS = ("2027-11", "2028-15", "2029-19", "2030-04", "2030-14")


@pytest.mark.parametrize(
    ("said", "numbers"),
    [
        ("her fourteen o last year", ["2030-14"]),
        ("this is oh for o last year", ["2030-04"]),
        ("fifteen from three year back", ["2028-15"]),
        ("number six of last year", ["2030-06"]),
        ("nineteen of the year before last", ["2029-19"]),
        ("that is eleven o twenty seven", ["2027-11"]),
        ("that is nine o twenty nine", ["2029-09"]),
        ("two of last year 's cuttings died", []),
        ("I have six from last year", []),
    ],
)
def test_numbers_told_by_how_long_ago(said: str, numbers: list[str]) -> None:
    system = number_system(on_record(YEARS, ()), 2031)
    found = find_numbers(talk(said), system, load_vocabulary())
    assert [n.number for n in found if n.cut is None] == numbers


@pytest.mark.parametrize(
    ("said", "register", "numbers"),
    [
        ("24 7 oh look at that", ("24/7", "25/12"), ["24/7"]),
        ("that is 24 181 one eight one", ("24-181", "24-104"), ["24-181"]),
        ("not sixteen sixteen 's the red one", ("30-16", "30-61"), []),
        ("swing the phone round and that 's 25 30", ("25-30", "25-13"), ["25-30"]),
        ("the thermometer is 25 30", ("25-31", "25-13"), []),
        ("it gets a bigger pot one of 12 centimetres", ("30-104", "31-003"), []),
        ("bench two twenty-four oh seven", ("24-07", "24-17"), ["24-07"]),
        ("nineteen up out of thirty sown", ("711", "604"), []),
        ("see 40 people", ("C40", "C4"), []),
    ],
)
def test_figures_beside_numbers(said: str, register: tuple[str, ...], numbers: list[str]) -> None:
    assert heard(said, *register) == numbers
