"""The review list, dearest first, and what belongs into the register."""

from diary.linking.document import Band, Plant, PlantKind, Reading, Suggestion
from diary.records.corrections import Dismiss, Reject, SetSeedling
from diary.records.journal import correct, undo
from diary.records.record import Span
from diary.records.register import Seedling, crosses, named_plants, save_seedling, seedling
from diary.records.review import KINDS, review_list
from diary.records.store import Store
from diary.records.suggestions import accept, suggestions
from tests.records.making import (
    JUNE_2,
    JUNE_20,
    clip,
    observation,
    reread,
    stored,
    talk,
    unnamed,
)
from tests.records.making import seedling as plant

WORDS = talk("this is one. " * 10)


def heard(kind: str, value: str, about: Plant | None, at_ms: int = 1000) -> Suggestion:
    return Suggestion(
        kind=kind,
        value=value,
        plant=about,
        day=JUNE_2,
        text="words heard",
        start_ms=at_ms,
        end_ms=at_ms + 500,
    )


def kinds(store: Store) -> list[str]:
    return [item.kind for item in review_list(store)]


def test_the_dearest_question_comes_first(store: Store) -> None:
    save_seedling(store, Seedling(number="23-04"))
    walk = stored(
        store,
        "walk",
        WORDS,
        clip(
            plant("23-04"),
            0,
            5000,
            observation("bloom_diameter", 45, 100, 500, unit="mm"),
            observation("bloom_diameter", 80, 600, 900, unit="mm"),
            observation("decision", "discard", 1000, 1500, band=Band.LIKELY),
            proposals=(observation("scent", "scented", 2000, 2500, band=Band.UNSURE),),
        ),
        clip(plant("23-05"), 5000, 9000, band=Band.LIKELY),
        clip(unnamed("plant 1"), 9000, 12_000),
    )
    correct(store, Reject(), at=Span(recording=walk.id, start_ms=90_000, end_ms=91_000))
    items = review_list(store)
    assert [item.kind for item in items] == [
        "plant",
        "plant",
        "number",
        "decision",
        "conflict",
        "unplaced",
        "register",
        "value",
    ]
    assert [item.rank for item in items] == sorted(item.rank for item in items)
    assert KINDS[0] == "plant"
    assert items[0].question == "Is this 23-05?"


def test_an_answer_or_a_dismissal_takes_a_question_off_the_list(store: Store) -> None:
    save_seedling(store, Seedling(number="23-05"))
    doubtful = clip(plant("23-05"), 5000, 9000, band=Band.LIKELY)
    walk = stored(store, "walk", WORDS, doubtful, clip(unnamed("plant 1"), 9000, 12_000))
    first, second = review_list(store)
    correct(
        store,
        SetSeedling(kind=PlantKind.SEEDLING, title="23-05"),
        at=Span(recording=walk.id, start_ms=5000, end_ms=9000),
    )
    assert [item.id for item in review_list(store)] == [second.id]
    correct(store, Dismiss(question=second.id))
    assert review_list(store) == ()
    # read again, a little later in the recording: still no question
    reread(
        store,
        walk.id,
        Reading(clips=(clip(plant("23-05"), 5000, 9000), clip(unnamed("plant 9"), 10_100, 12_000))),
    )
    assert review_list(store) == ()
    undo(store)
    assert len(review_list(store)) == 1
    assert first.plant is not None


def test_what_was_said_is_put_on_record_once_accepted(store: Store) -> None:
    save_seedling(store, Seedling(number="23-04"))
    stored(
        store,
        "walk",
        WORDS,
        clip(
            plant("23-04"),
            0,
            5000,
            observation("decision", "keep", 2000, 3000),
            observation("seed_parent", "Fenmarsh Lad", 3000, 3500),
        ),
        clip(plant("23-09"), 5000, 9000),
        suggestions=(
            heard("first_flower", "2031-06-01", plant("23-04")),
            heard("crossed", "Copper Lantern", plant("23-04")),
            heard("unknown_name", "Brindle Moth", None),
        ),
    )
    wanted = {one.kind: one for one in suggestions(store)}
    assert set(wanted) == {
        "first_flower",
        "crossed",
        "unknown_name",
        "unknown_number",
        "parents",
        "status",
    }
    assert wanted["first_flower"].sentence == ("Put on record: 23-04 first flowered on 1 June 2031")
    for one in wanted.values():
        accept(store, one.id)
    assert suggestions(store) == ()
    entry = seedling(store, "23-04")
    assert entry is not None
    assert (entry.first_flower, entry.seed_parent, entry.status) == (
        "2031-06-01",
        "Fenmarsh Lad",
        "keep",
    )
    assert seedling(store, "23-09") is not None
    assert [(one.seed_parent, one.pollen_parent, one.day) for one in crosses(store)] == [
        ("23-04", "Copper Lantern", "2031-06-02")
    ]
    assert [one.name for one in named_plants(store)] == ["Brindle Moth"]


def test_a_suggestion_goes_to_the_plant_the_clip_was_corrected_to(store: Store) -> None:
    save_seedling(store, Seedling(number="23-04"))
    save_seedling(store, Seedling(number="23-05"))
    walk = stored(
        store,
        "walk",
        WORDS,
        clip(plant("23-04"), 0, 5000),
        suggestions=(heard("sown", "2031-03-03", plant("23-04")),),
    )
    correct(
        store,
        SetSeedling(kind=PlantKind.SEEDLING, title="23-05"),
        at=Span(recording=walk.id, start_ms=0, end_ms=5000),
    )
    (one,) = suggestions(store)
    assert one.plant is not None
    assert one.plant.key == "23-05"
    correct(store, Dismiss(question=one.id))
    assert suggestions(store) == ()


def test_plants_alike_in_two_recordings_are_asked_about(store: Store) -> None:
    said = (
        observation("colour", "red", 1000, 2000, part="bloom"),
        observation("colour", "white", 1500, 2000, part="throat"),
        observation("marking", "blotch", 2000, 2500),
    )
    stored(store, "walk-1", WORDS, clip(unnamed("plant 1"), 0, 5000, *said))
    stored(store, "walk-2", WORDS, clip(unnamed("plant 1"), 0, 5000, *said), day=JUNE_20)
    assert kinds(store) == ["plant", "plant", "same"]
