"""A breeder's way of writing seedling numbers, learnt from those on record."""

import pytest

from diary.reading.numbers.format import Parts, learn_shapes, parse


@pytest.mark.parametrize(
    ("number", "prefix", "groups", "separators", "suffix", "joints"),
    [
        ("23-04", "", ("23", "04"), ("-",), "", ("", "")),
        ("R23/104", "R", ("23", "104"), ("/",), "", ("", "")),
        ("S204", "S", ("204",), (), "", ("", "")),
        ("17B", "", ("17",), (), "B", ("", "")),
        ("22-14A", "", ("22", "14"), ("-",), "A", ("", "")),
        ("24/6/3", "", ("24", "6", "3"), ("/", "/"), "", ("", "")),
        ("2029/14", "", ("2029", "14"), ("/",), "", ("", "")),
        ("9.12", "", ("9", "12"), (".",), "", ("", "")),
        ("2311", "", ("2311",), (), "", ("", "")),
        ("K-214", "K", ("214",), (), "", ("-", "")),
        ("Z 23/4", "Z", ("23", "4"), ("/",), "", (" ", "")),
        ("23-04/B", "", ("23", "04"), ("-",), "B", ("", "/")),
    ],
)
def test_a_number_is_taken_apart(
    number: str,
    prefix: str,
    groups: tuple[str, ...],
    separators: tuple[str, ...],
    suffix: str,
    joints: tuple[str, str],
) -> None:
    assert parse(number) == Parts(
        prefix=prefix, groups=groups, separators=separators, suffix=suffix, joints=joints
    )


@pytest.mark.parametrize("text", ["", "Fenmarsh Lad", "the pink one", "-", "23--04", "ABCDE12"])
def test_what_is_no_number(text: str) -> None:
    assert parse(text) is None


@pytest.mark.parametrize(
    ("on_record", "groups", "written"),
    [
        (("23-04", "23-11"), ("24", "7"), "24-07"),
        (("R23/104", "R23/98"), ("24", "7"), "R24/7"),
        (("2311", "2304"), ("24", "7"), "2407"),
        (("2029/14", "2029/3"), ("2030", "5"), "2030/5"),
        (("24/6/3", "24/12/1"), ("25", "1", "2"), "25/1/2"),
        (("9.12", "9.3"), ("10", "4"), "10.4"),
        (("K-214", "K-31"), ("215",), "K-215"),
        (("Z-23/4", "Z-23/11"), ("24", "7"), "Z-24/7"),
    ],
)
def test_a_new_number_is_written_as_the_others(
    on_record: tuple[str, ...], groups: tuple[str, ...], written: str
) -> None:
    shape = learn_shapes(on_record)[0]
    prefix = next(iter(shape.prefixes))
    assert shape.write(prefix, groups, "") == written


def test_a_suffix_is_joined_as_on_record() -> None:
    (shape,) = learn_shapes(["23-04-A", "23-11-B"])
    assert shape.write("", ("24", "7"), "c") == "24-07-C"


def test_the_commonest_shape_comes_first() -> None:
    shapes = learn_shapes(["23-04", "23-05", "23-06", "K12"])
    assert shapes[0].separators == ("-",)
    assert len(shapes) == 2


def test_with_nothing_on_record_the_number_is_year_and_serial() -> None:
    (shape,) = learn_shapes([])
    assert shape.write("", ("23", "4"), "") == "23-04"


def test_the_format_the_breeder_set_decides() -> None:
    (shape,) = learn_shapes(["23-04", "K12"], example="31-02")
    assert shape.write("", ("31", "2"), "") == "31-02"
