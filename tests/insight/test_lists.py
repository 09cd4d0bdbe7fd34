"""Every list, each entry with the moment that says so."""

from datetime import date

import pytest

from diary.errors import UsageError
from diary.insight.lists import LIST_NAMES, PlantList, all_lists, plant_list
from diary.insight.overview import Overview
from diary.records.register import Seedling, StatusChange

from .say import season, shown

ON = date(2031, 5, 20)


def keys(made: PlantList) -> list[str | None]:
    return [entry.plant.key if entry.plant else None for entry in made.entries]


@pytest.fixture
def bench() -> Overview:
    return season(
        shown("24-11A", "decision - keep", "decision - repot", said="So A stays."),
        shown("24-11B", "decision - discard", said="so B goes."),
        shown("24-11C", "decision - watch"),
        shown("24-11D", "decision - keep", "decision - propagate", said="I'll take some cuttings."),
        shown("24-17B", "decision - breed", "flowering - first_flower"),
        shown("24-71A", "decision - show", "decision - name"),
        shown("?aaaaaaaa/the pink one", "colour bloom pink"),
        shown("?aaaaaaaa/the pink one", "count_cuttings - 5"),
        seedlings=(
            Seedling(number="24-11A"),
            Seedling(number="24-20A"),
            Seedling(number="24-21A", history=(StatusChange(status="discard"),)),
            Seedling(number="24-22A", first_flower="2031-05-19"),
            Seedling(number="24-23A", first_flower="2031"),
        ),
    )


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("keep", ["24-11A", "24-11D"]),
        ("discard", ["24-11B", "24-21A"]),
        ("watch", ["24-11C"]),
        ("cuttings", ["24-11D"]),
        ("breeding", ["24-17B"]),
        ("show", ["24-71A"]),
        ("naming", ["24-71A"]),
        ("repot", ["24-11A"]),
        ("unseen", ["24-20A", "24-22A", "24-23A"]),
        ("first-flower", ["24-17B", "24-22A"]),
        ("unlabelled", ["?aaaaaaaa/the pink one"]),
        ("promised", ["24-11D"]),
    ],
)
def test_who_is_on_which_list(bench: Overview, name: str, expected: list[str]) -> None:
    made = plant_list(bench, name, on=ON)
    assert keys(made) == expected
    for entry in made.entries:
        # whatever was said has its moment; what only the register says has none
        from_register = "(register)" in entry.why or entry.why == "never seen"
        assert (entry.moment is None) == from_register


def test_entries_quote_what_was_said(bench: Overview) -> None:
    entry = plant_list(bench, "keep", on=ON).entries[0]
    assert entry.moment is not None
    assert (entry.moment.text, entry.day) == ("So A stays.", date(2031, 5, 18))


def test_cuttings_taken_on_a_later_day_are_no_longer_to_take() -> None:
    asked = shown("7", "decision - propagate", day=date(2031, 5, 1))
    same_day = season(asked, shown("7", "count_cuttings - 6", day=date(2031, 5, 1)))
    later = season(asked, shown("7", "count_cuttings - 6", day=date(2031, 5, 9)))
    assert keys(plant_list(same_day, "cuttings", on=ON)) == ["7"]
    assert keys(plant_list(later, "cuttings", on=ON)) == []


def test_last_year_is_not_this_season() -> None:
    found = season(
        shown("7", "habit - compact", day=date(2030, 6, 1)), seedlings=(Seedling(number="7"),)
    )
    (entry,) = plant_list(found, "unseen", on=ON).entries
    assert entry.why == "last seen on 2030-06-01"
    assert entry.moment is not None
    assert keys(plant_list(found, "unseen", on=date(2030, 8, 1))) == []


def test_a_first_flower_of_three_weeks_ago_is_not_this_week(bench: Overview) -> None:
    assert keys(plant_list(bench, "first-flower", on=date(2031, 6, 8))) == []


def test_all_lists_in_their_order(bench: Overview) -> None:
    assert tuple(made.name for made in all_lists(bench, on=ON)) == LIST_NAMES


def test_an_unknown_list_names_those_there_are(bench: Overview) -> None:
    with pytest.raises(UsageError, match=r"no list 'kept'.*keep, discard"):
        plant_list(bench, "kept", on=ON)
