"""Values in words: every number with its unit, every day as far as it is known."""

import itertools
from datetime import date

import pytest

from diary.web.wording import about, clock_text, day_text, hue, length_text, said_value


@pytest.mark.parametrize(
    ("value", "unit", "modifiers", "words"),
    [
        (45.0, "mm", (), "45 mm"),
        (50.8, "mm", (), "50.8 mm"),
        (4, "count", (), "4"),
        ("salmon", None, ("deep",), "deep salmon"),
        ("first_flower", None, (), "first flower"),
        ("propagate", None, (), "take cuttings"),
    ],
)
def test_values(
    value: str | float, unit: str | None, modifiers: tuple[str, ...], words: str
) -> None:
    assert said_value(value, unit, modifiers) == words


@pytest.mark.parametrize(
    ("day", "words"),
    [
        (date(2031, 6, 2), "2 Jun 2031"),
        ("2031-06-02", "2 Jun 2031"),
        ("2031-06", "Jun 2031"),
        ("2031", "2031"),
        ("spring 2031", "spring 2031"),
        ("2031-13", "2031-13"),
        (None, "no date"),
    ],
)
def test_days(day: date | str | None, words: str) -> None:
    assert day_text(day) == words


def test_times() -> None:
    assert clock_text(65_400) == "1:05"
    assert clock_text(3_725_000) == "1:02:05"
    assert length_text(20_400) == "20 s"
    assert length_text(720_000) == "12 min"


def test_a_colour_is_told_by_its_part() -> None:
    assert about("colour", "throat") == "throat"
    assert about("bloom_diameter", None) == "bloom across"


def test_neighbours_on_the_bench_differ_in_hue() -> None:
    for numbers in ([f"23-{n:02d}" for n in range(1, 60)], [f"{n}B" for n in range(1, 60)]):
        hues = [hue(number) for number in numbers]
        assert all(abs(one - other) >= 80 for one, other in itertools.pairwise(hues))
