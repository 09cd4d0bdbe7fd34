"""What the commands show of the demo's diary."""

from collections.abc import Callable
from urllib.parse import unquote, urlsplit

import pytest

from diary.records.recordings import recordings
from diary.records.store import Store
from tests.demo.answers import CLIPS, JUNE, MAY, NAMES, answers
from tests.demo.conftest import Demo
from tests.outside.fragments import fragment_time

Run = Callable[..., str]
NEAR_S = 2.0
PLANTS = [
    (name, plant)
    for name in NAMES
    for plant in dict.fromkeys(clip.plant for clip in answers(name).clips)
    if plant != "unnumbered"
]


def test_the_demo_ends_with_its_plants_and_where_to_look_next(demo: Demo) -> None:
    table = demo.output[demo.output.index("plant") :]
    for _, plant in PLANTS:
        assert plant in table
    assert "diary seedling 28-07" in table
    assert "diary find" in table


def test_adding_again_adds_nothing(store: Store, diary: Run) -> None:
    before = [row for row in store.db.iterdump() if row.startswith("INSERT")]
    paths = [answers(name).path for name in NAMES]
    assert diary("add", *paths).count("here already") == len(paths)
    assert [row for row in store.db.iterdump() if row.startswith("INSERT")] == before
    assert len(recordings(store)) == len(NAMES)


def test_the_plant_seen_twice_shows_both_visits(diary: Run) -> None:
    page = diary("seedling", "28-07")
    assert "Ember Lane" in page
    assert f"{MAY}@0:0" in page
    assert f"{MAY}@1:" in page  # and gone back to, at the end of the walk
    assert f"{JUNE}@0:0" in page
    assert page.index("2031-05-24") < page.index("2031-06-14")


@pytest.mark.parametrize(("name", "plant"), PLANTS)
def test_play_leads_to_where_a_plant_is_first_spoken_of(diary: Run, name: str, plant: str) -> None:
    addresses = [urlsplit(one) for one in diary("play", plant, "--print").split()]
    sheet = answers(name)
    starts = []
    for address in addresses:
        if unquote(address.path) == str(sheet.path):
            played = fragment_time(address.fragment, sheet.times[-1][1] + 2)
            assert played is not None, address
            starts.append(played[0])
    assert starts, addresses
    assert min(starts) == pytest.approx(sheet.first_spoken_of(plant), abs=NEAR_S)


def test_words_and_traits_are_found(diary: Run) -> None:
    assert "28-07" in diary("find", "white", "throat")
    assert "29-18" in diary("find", "rust")


def test_what_is_on_record_comes_with_the_demo(diary: Run) -> None:
    register = (CLIPS / "register.csv").read_text(encoding="utf-8")
    page = diary("seedling", "29-20")  # on record, in no recording
    assert "29-20,Orrin Gale,Ember Lane" in register
    assert "Orrin Gale" in page
    assert "Not seen" in page
