"""Corrections in the store: laid over at once, undone, carried, kept over re-reading."""

import pytest

from diary.errors import NotFound, UsageError
from diary.linking.document import PlantKind, Reading
from diary.records.corrections import (
    GiveName,
    MergePlants,
    Mishearing,
    NamePlant,
    Reject,
    Renumber,
    Seen,
    SetSeedling,
    SetValue,
)
from diary.records.journal import (
    correct,
    export_lines,
    import_lines,
    journal,
    redo,
    undo,
    unplaced,
    withdraw,
)
from diary.records.known import known
from diary.records.pages import find_plant, plant_page, plants
from diary.records.record import Moment, Span
from diary.records.recordings import Recording, clips, remove_recording
from diary.records.register import NamedPlant, Seedling, save_named_plant, save_seedling, seedlings
from diary.records.store import Store, open_store
from tests.records.making import JUNE_20, clip, observation, reread, seedling, stored, talk, unnamed

SIZE = observation("bloom_diameter", 80, 1000, 3000, unit="mm")
WORDS = talk("this is one. " * 10)


@pytest.fixture
def walk(store: Store) -> Recording:
    return stored(store, "walk", WORDS, clip(seedling("23-04"), 0, 10_000, SIZE))


def at(moment: Moment) -> Span:
    return Span(recording=moment.recording, start_ms=moment.start_ms, end_ms=moment.end_ms)


def the_size(store: Store) -> object:
    return plant_page(store, "23-04").records[0].value


def test_a_correction_shows_at_once_and_undoes(store: Store, walk: Recording) -> None:
    record = clips(store, walk.id)[0].records[0]
    correct(store, SetValue(value=45), at=at(record.moment), seen=Seen(trait=record.trait))
    correct(store, SetValue(value=50), at=at(record.moment), seen=Seen(trait=record.trait))
    assert the_size(store) == 50
    seen = [the_size(store) for step in (undo, undo, redo, redo) if step(store)]
    assert seen == [45, 80, 45, 50]
    assert redo(store) is None
    undo(store)
    correct(store, SetValue(value=60), at=at(record.moment))
    assert redo(store) is None  # something else was done since
    assert [entry.state for entry in journal(store)][:3] == ["applied", "withdrawn", "withdrawn"]


def test_nothing_to_undo(store: Store) -> None:
    assert undo(store) is None
    assert redo(store) is None


def test_reading_again_keeps_every_correction(store: Store, walk: Recording) -> None:
    record = clips(store, walk.id)[0].records[0]
    correct(store, SetValue(value=45), at=at(record.moment))
    gone = correct(store, Reject(), at=Span(recording=walk.id, start_ms=7000, end_ms=8000))
    assert [one.id for one in unplaced(store)] == [gone.id]
    moved = observation("bloom_diameter", 30, 1200, 3300, unit="mm")
    noise = observation("scent", "scented", 7000, 8000)
    reread(store, walk.id, Reading(clips=(clip(seedling("23-04"), 0, 9000, moved, noise),)))
    page = plant_page(store, "23-04")
    assert [(one.trait, one.value) for one in page.records] == [("bloom_diameter", 45)]
    assert unplaced(store) == ()


def test_a_journal_carried_to_another_diary_gives_the_same_records(
    store: Store, walk: Recording
) -> None:
    record = clips(store, walk.id)[0].records[0]
    correct(store, SetValue(value=45), at=at(record.moment))
    correct(store, SetSeedling(kind=PlantKind.SEEDLING, title="23-09"), at=at(record.moment))
    undo(store)
    lines = list(export_lines(store))
    other = open_store(store.folder.parent / "other")
    # the corrections may come before the recording they are about
    assert import_lines(other, lines).new == 3
    stored(other, "walk", WORDS, clip(seedling("23-04"), 0, 10_000, SIZE))
    assert clips(other, walk.id) == clips(store, walk.id)
    assert [entry.state for entry in journal(other)] == [entry.state for entry in journal(store)]
    assert import_lines(other, lines) == type(import_lines(other, []))(new=0, known=3)
    other.close()


@pytest.mark.parametrize(
    ("line", "fault"),
    [
        ("{", "line 2"),
        ('{"id": "1", "made_at": "x", "made_by": "y", "kind": "Guess"}', "unknown kind"),
        ('{"id": "1", "made_at": "x", "kind": "Reject"}', "'made_by' is missing"),
        (
            '{"id": "1", "made_at": "x", "made_by": "y", "kind": "SetDate", "change": {"day": 5}}',
            "day",
        ),
        (
            '{"id": "1", "made_at": "x", "made_by": "y", "kind": "Reject", "change": {"far": 1}}',
            "unknown field 'far'",
        ),
    ],
)
def test_a_faulty_journal_changes_nothing(store: Store, line: str, fault: str) -> None:
    correct(store, Mishearing(heard="fend marsh", meant="Fenmarsh Lad"))
    good = next(export_lines(store)).replace('"id": "', '"id": "f')
    with pytest.raises(UsageError, match=fault):
        import_lines(store, [good, line])
    assert len(journal(store)) == 1


def test_a_removed_recording_comes_back_with_its_corrections(store: Store, walk: Recording) -> None:
    record = clips(store, walk.id)[0].records[0]
    correct(store, SetValue(value=45), at=at(record.moment))
    remove_recording(store, walk.id)
    assert plants(store) == ()
    assert len(journal(store)) == 1
    stored(store, "walk", WORDS, clip(seedling("23-04"), 0, 10_000, SIZE))
    assert the_size(store) == 45


def test_events_that_make_no_sense_are_refused(store: Store) -> None:
    save_seedling(store, Seedling(number="23-04"))
    save_seedling(store, Seedling(number="23-05"))
    for change in (
        SetValue(value=45),
        Renumber(number="23-04", to="23-05"),
        Renumber(number="23-04", to=" "),
        MergePlants(number="23-04", into="23-04"),
        MergePlants(number="23-04"),
        GiveName(number="23-04", name=""),
    ):
        with pytest.raises(UsageError):
            correct(store, change)
    with pytest.raises(NotFound):
        withdraw(store, "nothing")
    assert journal(store) == ()


def test_renumbering_keeps_history_and_old_talk(store: Store, walk: Recording) -> None:
    save_seedling(store, Seedling(number="23-04", seed_parent="Fenmarsh Lad"))
    correct(store, Renumber(number="23-04", to="24-11"))
    page = plant_page(store, "23-04")
    assert page.plant.key == "24-11"
    assert page.seedling is not None
    assert (page.seedling.former, page.seedling.seed_parent) == (("23-04",), "Fenmarsh Lad")
    assert len(page.clips) == 1
    with pytest.raises(UsageError, match="former number"):
        save_seedling(store, Seedling(number="23-04"))
    with pytest.raises(UsageError, match="former number"):
        correct(store, Renumber(number="24-11", to="23-04"))
    save_seedling(store, Seedling(number="24-11", place="bench 2"))
    assert [(one.number, one.place) for one in seedlings(store)] == [("24-11", "bench 2")]
    assert undo(store) is not None
    assert [(one.number, one.place) for one in seedlings(store)] == [("23-04", "bench 2")]


def test_merged_seedlings_are_one(store: Store, walk: Recording) -> None:
    save_seedling(store, Seedling(number="23-04", place="bench 1", status="keep"))
    save_seedling(store, Seedling(number="23-40", seed_parent="Fenmarsh Lad"))
    correct(store, MergePlants(number="23-04", into="23-40"))
    (one,) = seedlings(store)
    assert (one.number, one.former, one.place, one.seed_parent, one.status) == (
        "23-40",
        ("23-04",),
        "bench 1",
        "Fenmarsh Lad",
        "keep",
    )
    assert len(plant_page(store, "23-40").clips) == 1


def test_a_seedling_that_got_a_name_is_one_plant(store: Store, walk: Recording) -> None:
    save_seedling(store, Seedling(number="23-04"))
    save_named_plant(store, NamedPlant(name="Quill Harbour", synonyms=("Old Quill",)))
    correct(store, GiveName(number="23-04", name="Quill Harbour"))
    for title in ("23-04", "Quill Harbour", "old quill", "23-04 'Quill Harbour'"):
        assert find_plant(store, title).key == "23-04"
    assert plant_page(store, "quill harbour").plant.title == "23-04 'Quill Harbour'"
    assert known(store).seedlings[0].name == "Quill Harbour"


def test_one_unnumbered_plant_in_two_recordings(store: Store) -> None:
    first = stored(store, "walk-1", WORDS, clip(unnamed("pink one"), 0, 5000, SIZE))
    second = stored(
        store,
        "walk-2",
        WORDS,
        clip(unnamed("by the door"), 0, 5000, SIZE, day=JUNE_20),
        day=JUNE_20,
    )
    assert len(plants(store)) == 2
    here = Span(recording=first.id, start_ms=0, end_ms=5000)
    there = Span(recording=second.id, start_ms=0, end_ms=5000)
    correct(store, MergePlants(other=there), at=here)
    (one,) = plants(store)
    assert (one.clips, one.last_seen) == (2, JUNE_20)
    # and numbering it numbers both
    correct(store, NamePlant(kind=PlantKind.SEEDLING, title="23-77"), at=there)
    (one,) = plants(store)
    assert (one.plant.key, one.clips) == ("23-77", 2)
    undo(store)
    undo(store)
    assert len(plants(store)) == 2


def test_plants_of_different_numbers_are_not_merged_by_a_clip(store: Store) -> None:
    walk = stored(
        store, "walk", WORDS, clip(seedling("1-1"), 0, 5000), clip(seedling("1-2"), 5000, 9000)
    )
    event = correct(
        store,
        MergePlants(other=Span(recording=walk.id, start_ms=5000, end_ms=9000)),
        at=Span(recording=walk.id, start_ms=0, end_ms=5000),
    )
    assert [one.id for one in unplaced(store)] == [event.id]


def test_what_a_correction_teaches_helps_the_next_reading(store: Store) -> None:
    save_named_plant(store, NamedPlant(name="Fenmarsh Lad"))
    correct(store, Mishearing(heard="fend marsh lad", meant="Fenmarsh Lad"))
    learnt = known(store)
    assert learnt.mishearings[0].heard == "fend marsh lad"
    assert learnt.names[0].mishearings == ("fend marsh lad",)
    undo(store)
    assert known(store).mishearings == ()
