"""Where the speaker turns to another plant, and to which."""

from datetime import date

import pytest

from diary.linking.document import PlantKind
from diary.reading.known import Known
from tests.reading.said import read


def plants(*said: str) -> list[str]:
    """The plants of the clips, in order."""
    return [clip.plant.number or clip.plant.name or "?" for clip in read(*said).clips]


FIRST = ("Right, first up is twenty-three oh four.", "It's pink with a white eye.")


def test_each_plant_has_its_clip() -> None:
    assert plants(
        *FIRST,
        "Next one is twenty-three eleven.",
        "That one's red.",
        "And this is twenty-two fourteen.",
        "White, five centimetres across.",
    ) == ["23-04", "23-11", "22-14"]


def test_coming_back_opens_a_clip_of_the_earlier_plant() -> None:
    assert plants(
        *FIRST,
        "Next is twenty-three eleven.",
        "That one's red.",
        "Going back to twenty-three oh four, it's five centimetres across.",
    ) == ["23-04", "23-11", "23-04"]


@pytest.mark.parametrize(
    "passing",
    [
        "It's very like twenty-three eleven.",
        "It's bigger than twenty-three eleven.",
        "The mother was twenty-two fourteen.",
        "It's not twenty-three eleven.",
    ],
)
def test_a_plant_in_passing_moves_nothing(passing: str) -> None:
    assert plants(*FIRST, passing, "The leaf is zoned.") == ["23-04"]


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("This is twenty-four oh seven.", "24-07"),
        ("Now then, twenty-four oh seven.", "24-07"),
        ("Behind it is twenty-four oh seven.", "24-07"),
        ("Next along is twenty-four oh seven.", "24-07"),
        ("Here we have twenty-four oh seven.", "24-07"),
    ],
)
def test_ways_of_turning(said: str, number: str) -> None:
    assert plants(*FIRST, said, "It's a double.") == ["23-04", number]


def test_a_plant_without_a_number() -> None:
    reading = read(*FIRST, "The next one has lost its label.", "It's a lovely deep crimson.")
    assert [c.plant.kind for c in reading.clips] == [PlantKind.SEEDLING, PlantKind.UNNAMED]
    assert [o.value for o in reading.clips[1].observations] == ["crimson"]


def test_a_named_plant_is_shown() -> None:
    assert plants(*FIRST, "And this is Copper Lantern.", "It's orange.") == [
        "23-04",
        "Copper Lantern",
    ]


def test_greetings_lie_in_no_clip() -> None:
    reading = read("Good morning everybody, it's a bit chilly in here.", *FIRST)
    (clip,) = reading.clips
    assert clip.first_word >= 9


def test_the_whole_talk_may_be_about_nothing() -> None:
    assert read("Good morning.", "The kettle's on.", "Back in a minute.").clips == ()


def test_a_number_not_on_record_is_reported_and_suggested() -> None:
    reading = read("This is twenty-three thirty-one.", "It's pink.")
    (clip,) = reading.clips
    assert clip.plant.number == "23-31"
    assert not clip.plant.on_record
    assert [(s.kind, s.value) for s in reading.suggestions] == [("unknown_number", "23-31")]


def test_with_nothing_on_record_numbers_are_year_and_serial() -> None:
    reading = read("This is twenty-three oh four.", "It's pink.", known=Known())
    assert [c.plant.number for c in reading.clips] == ["23-04"]


def test_a_day_said_holds_from_its_clip_on() -> None:
    reading = read(
        *FIRST,
        "This is twenty-three eleven.",
        "So this is the ninth now.",
        "It's red.",
        "And this is twenty-two fourteen.",
        "It's white.",
    )
    assert [c.day for c in reading.clips] == [
        date(2031, 6, 2),
        date(2031, 6, 9),
        date(2031, 6, 9),
    ]


@pytest.mark.parametrize(
    "shown",
    [
        "And here's what I mean to set against it, 24-09.",
        "Now this is the one for the catalogue, 24-09.",
        "There's a better one along the wall, 24-09.",
    ],
)
def test_what_is_shown_may_be_told_before_its_number(shown: str) -> None:
    assert plants(*FIRST, shown, "It's bright orange.") == ["23-04", "24-09"]


@pytest.mark.parametrize(
    "likeness",
    [
        "it's basically just 23 11 again",
        "it's practically 23 11 with a bigger leaf",
        "It's really just 23-11 with a bigger leaf.",
        "This is better, I think, than 23-11.",
        "So that's fourteen for the catalogue out of twenty.",
        "That makes eleven done.",
    ],
)
def test_hardly_another_plant_moves_nothing(likeness: str) -> None:
    assert plants(*FIRST, likeness, "It's got big leaves.") == ["23-04"]


@pytest.mark.parametrize(
    "lost",
    ["this one the tag says mystery", "This one just says question mark on the label."],
)
def test_a_label_that_tells_nothing(lost: str) -> None:
    assert plants(*FIRST, lost, "It's white, pure white.") == ["23-04", "?"]
