"""A page a plant, a row a plant, and a fixed number of queries for thousands of them."""

import pytest

from diary.errors import NotFound
from diary.linking.document import Plant, PlantKind
from diary.records.pages import plant_page, plants
from diary.records.register import (
    Cross,
    NamedPlant,
    Seedling,
    save_cross,
    save_named_plant,
    save_seedling,
    set_status,
)
from diary.records.store import Store, open_store
from tests.records.making import (
    JUNE_2,
    JUNE_20,
    clip,
    observation,
    seedling,
    stored,
    talk,
    unnamed,
)

WORDS = talk("this is one. " * 10)
RED = observation("colour", "red", 1000, 2000, part="bloom")
KEEP = observation("decision", "keep", 2000, 3000)


def test_a_plant_seen_in_two_recordings(store: Store) -> None:
    save_cross(store, Cross(code="C1", seed_parent="Fenmarsh Lad", pollen_parent="A Lass"))
    save_seedling(store, Seedling(number="23-04", cross="C1"))
    stored(store, "late", WORDS, clip(seedling("23-04"), 0, 5000, KEEP, day=JUNE_20), day=JUNE_20)
    stored(store, "early", WORDS, clip(seedling("23-04"), 0, 5000, RED))
    page = plant_page(store, "23-04")
    assert [one.moment.day for one in page.clips] == [JUNE_2, JUNE_20]
    assert page.clips[0].moment.text == "this is one. this is one. this is one. this"
    assert [one.trait for one in page.records] == ["colour", "decision"]
    assert page.cross is not None
    assert page.cross.pollen_parent == "A Lass"
    (row,) = plants(store)
    assert (row.seed_parent, row.clips, row.first_seen, row.last_seen) == (
        "Fenmarsh Lad",
        2,
        JUNE_2,
        JUNE_20,
    )
    assert [one.value for one in row.values("colour", "bloom")] == ["red"]


def test_every_kind_of_plant_is_listed_in_order(store: Store) -> None:
    save_seedling(store, Seedling(number="23-10"))
    save_named_plant(store, NamedPlant(name="Fenmarsh Lad"))
    named = Plant(kind=PlantKind.CULTIVAR, name="Fenmarsh Lad")
    stored(
        store,
        "walk",
        WORDS,
        clip(unnamed("plant 1"), 0, 1000),
        clip(named, 1000, 2000),
        clip(seedling("23-9"), 2000, 3000),
    )
    assert [(one.plant.kind.value, one.plant.title, one.clips) for one in plants(store)] == [
        ("seedling", "23-9", 1),
        ("seedling", "23-10", 0),
        ("cultivar", "Fenmarsh Lad", 1),
        ("unnamed", "plant 1 (walk)", 1),
    ]
    page = plant_page(store, "fenmarsh lad")
    assert page.named is not None
    assert page.seedling is None


def test_a_plant_not_here_is_told_with_near_ones(store: Store) -> None:
    save_seedling(store, Seedling(number="23-04"))
    with pytest.raises(NotFound, match="Did you mean 23-04"):
        plant_page(store, "23-4")


def test_unnumbered_plants_alike_are_proposed_as_one(store: Store) -> None:
    said = (
        RED,
        observation("colour", "white", 1500, 2000, part="throat"),
        observation("marking", "blotch", 2000, 2500),
    )
    pale = (
        observation("colour", "pink", 6000, 7000, part="bloom"),
        observation("colour", "white", 7000, 7500, part="throat"),
        observation("marking", "blotch", 7500, 8000),
    )
    stored(store, "walk-1", WORDS, clip(unnamed("by the door"), 0, 5000, *said))
    stored(
        store,
        "walk-2",
        WORDS,
        clip(unnamed("plant 1"), 0, 5000, *said),
        clip(unnamed("plant 2"), 5000, 9000, *pale),
        day=JUNE_20,
    )
    first = next(one for one in plants(store) if one.plant.title == "by the door (walk-1)")
    page = plant_page(store, first.plant.key)
    assert [one.title for one in page.also] == ["plant 1 (walk-2)"]


def test_thousands_of_plants_take_no_more_queries(store: Store) -> None:
    def queries() -> int:
        count = 0

        def counted(statement: str) -> None:
            nonlocal count
            count += 1

        store.db.conn.set_trace_callback(counted)
        plants(store)
        store.db.conn.set_trace_callback(None)
        return count

    stored(store, "small", WORDS, clip(seedling("1-1"), 0, 5000, RED))
    few = queries()
    many = [clip(seedling(f"2-{n}"), n, n + 1, RED) for n in range(2000)]
    stored(store, "large", WORDS, *many)
    assert queries() == few
    assert len(plants(store)) == 2001
    assert queries() == 1  # nothing has changed since


def test_what_was_kept_is_not_shown_after_a_change(store: Store) -> None:
    save_seedling(store, Seedling(number="1-1"))
    (before,) = plants(store)
    set_status(store, "1-1", "keep")
    (after,) = plants(store)
    assert before.seedling is not None
    assert after.seedling is not None
    assert (before.seedling.status, after.seedling.status) == (None, "keep")
    save_cross(store, Cross(code="C1", seed_parent="Fenmarsh Lad"))
    save_seedling(store, Seedling(number="1-1", cross="C1"))
    assert plants(store)[0].seed_parent == "Fenmarsh Lad"
    other = open_store(store.folder)  # as another program would
    save_cross(other, Cross(code="C1", seed_parent="Copper Lantern"))
    other.close()
    assert plants(store)[0].seed_parent == "Copper Lantern"
