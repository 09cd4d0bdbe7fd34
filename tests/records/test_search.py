"""Finding words and traits; nothing a person types is an operator."""

import pytest

from diary.records.question import understand
from diary.records.recordings import Recording, remove_recording
from diary.records.search import find
from diary.records.store import Store
from tests.records.making import clip, observation, seedling, stored, talk

WORDS = talk(
    "this one is twenty three oh four. it has a white throat and dark veins. "
    "fifty five millimetres across. next the other one. cream throat here. nothing more. "
    "a grower came by to look at the Zwartblüte."
)


@pytest.fixture
def walk(store: Store) -> Recording:
    return stored(
        store,
        "walk",
        WORDS,
        clip(
            seedling("23-04"),
            0,
            9000,
            observation("colour", "white", 4500, 5500, part="throat", text="white throat"),
            observation("bloom_diameter", 55, 7000, 9000, unit="mm"),
        ),
        clip(
            seedling("23-05"),
            9000,
            14_000,
            observation("colour", "cream", 11_000, 12_000, part="throat"),
            observation("bloom_diameter", 40, 12_000, 13_000, unit="mm"),
            observation("colour", "white", 12_000, 13_000, part="bloom"),
        ),
    )


def found(store: Store, asked: str) -> list[tuple[str | None, str]]:
    return [(hit.plant.key if hit.plant else None, hit.why) for hit in find(store, asked).hits]


def test_a_colour_of_a_part(store: Store, walk: Recording) -> None:
    hits = find(store, "white throat").hits
    assert [(hit.plant and hit.plant.key, hit.why) for hit in hits][:1] == [
        ("23-04", "colour of throat: white")
    ]
    assert "23-05" not in {hit.plant.key for hit in hits if hit.plant}


@pytest.mark.parametrize(
    ("asked", "plants"),
    [
        ("bloom over 50 mm", ["23-04"]),
        ("bloom under 5 cm", ["23-05"]),
        ("bloom about two inches", ["23-04"]),
        ("flower more than 3 inches", []),
        ("larger than 30 mm", ["23-04", "23-05"]),
    ],
)
def test_sizes(store: Store, walk: Recording, asked: str, plants: list[str]) -> None:
    assert sorted({plant or "" for plant, _ in found(store, asked)}) == plants


def test_words_by_their_stem_and_without_accents(store: Store, walk: Recording) -> None:
    assert found(store, "vein") == [("23-04", "words")]
    assert found(store, "zwartblute") == [(None, "words")]


def test_a_number_shows_its_clips(store: Store, walk: Recording) -> None:
    assert found(store, "23-05") == [("23-05", "plant")]
    assert {plant for plant, _ in found(store, "23-05 throat")} == {"23-05"}


@pytest.mark.parametrize("asked", ['"', "a AND", "NEAR(", "*", "white -", "(", "x' OR 1=1 --"])
def test_what_looks_like_an_operator_is_only_words(
    store: Store, walk: Recording, asked: str
) -> None:
    assert find(store, asked).hits is not None


def test_a_removed_recording_is_not_found(store: Store, walk: Recording) -> None:
    remove_recording(store, walk.id)
    assert find(store, "white throat").hits == ()


def test_how_a_question_is_understood() -> None:
    assert [one.told for one in understand("picotee").conditions] == ["edge, of any colour"]
    assert [one.told for one in understand("frilled pink").conditions] == [
        "colour: pink",
        "bloom form: frilled",
    ]
    size = understand("heads over 10 cm").conditions[0]
    assert (size.traits, size.least) == (("head_diameter",), 100)
