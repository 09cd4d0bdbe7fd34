"""Where clips begin and end: asides, the end of the talk, long silences."""

from itertools import pairwise

import pytest

from diary.linking.document import Clip
from tests.reading.said import WORD_MS, read, said


def words(clip: Clip, *talk: str) -> str:
    """What is said in the clip."""
    return said(*talk).quote(clip.first_word, clip.last_word)


OPENING = ("This is twenty-three oh four.", "It's a soft pink with a white eye.")


def test_a_clip_holds_its_number_and_all_that_is_told() -> None:
    (clip,) = read(*OPENING).clips
    assert words(clip, *OPENING) == " ".join(OPENING)
    assert clip.start_ms == 0
    assert clip.end_ms == WORD_MS * len(" ".join(OPENING).split())


def test_the_end_of_the_talk_is_no_part_of_the_last_clip() -> None:
    talk = (*OPENING, "Right, that's the lot for today.", "Thanks for watching, bye for now.")
    (clip,) = read(*talk).clips
    assert "watching" not in words(clip, *talk)


def test_a_short_aside_stays_inside_the_clip() -> None:
    talk = (*OPENING, "Mind the hose.", "The leaf is nicely zoned.")
    (clip,) = read(*talk).clips
    assert words(clip, *talk).endswith("zoned.")


def test_clips_do_not_overlap_and_are_in_order() -> None:
    talk = (
        *OPENING,
        "Next is twenty-three eleven.",
        "Red.",
        "Back to twenty-three oh four.",
        "Zoned.",
    )
    clips = read(*talk).clips
    assert len(clips) == 3
    for before, after in pairwise(clips):
        assert before.end_ms <= after.start_ms
        assert before.last_word < after.first_word


def test_two_clips_of_one_unnamed_plant_share_its_label() -> None:
    clips = read(
        "This one has lost its label.",
        "It's a deep crimson with a black blotch.",
        "Next is twenty-three eleven.",
        "That's white.",
        "Back to the crimson one without a label.",
        "It's five centimetres across.",
    ).clips
    assert len(clips) == 3
    assert clips[0].plant.label == clips[2].plant.label is not None


def test_no_two_clips_share_a_written_word() -> None:
    talk = (*OPENING, "Twenty-three-eleven next. This one isn't in the book.", "It's red.")
    clips = read(*talk).clips
    assert len(clips) > 1
    assert all(a.last_word < b.first_word for a, b in pairwise(clips))


ASIDES = [
    ("That's the kettle clicking off, but it'll keep.", "It was six degrees in here last night."),
    ("That was my grandson, wanting his ball.", "He'll keep on at me till he has it."),
    ("A word about the spacing, since I am asked.", "The slats are larch, eleven pounds the pair."),
    ("Mind your head on the frame light.", "It was six degrees at dawn, so the fan's off."),
    ("Careful, you've got your sleeve in the begonias.", "And bin that broken label for me."),
    ("My mother used to say talk to them nicely.", "Mind you, she gave gin to the tomatoes."),
    (
        "That beeping is the delivery van.",
        "Compost is up to six pounds ninety a bag, and they cart it.",
    ),
    ("I might say something here about water.", "The friend who taught me swore by rain and dawn."),
]


@pytest.mark.parametrize("aside", ASIDES)
def test_two_sentences_of_aside_part_a_clip(aside: tuple[str, str]) -> None:
    clips = read(*OPENING, *aside, "The leaf is nicely zoned.").clips
    assert [len(c.observations) for c in clips] == [2, 1]
    assert not any(o.trait == "decision" for c in clips for o in c.observations)


@pytest.mark.parametrize(
    "told",
    [
        ("That's the first bud showing colour.", "It's had a hard winter of it."),
        ("That's me finished with it.", "It's going on the heap."),
        ("That's a sport off it, that branch.", "The bud's on the turn."),
        ("It's going in for the cup at the hall.", "It'll do well at the market too."),
    ],
)
def test_what_is_told_of_the_plant_parts_nothing(told: tuple[str, str]) -> None:
    (clip,) = read(*OPENING, *told, "The leaf is nicely zoned.").clips
    assert words(clip, *OPENING, *told, "The leaf is nicely zoned.").endswith("zoned.")


@pytest.mark.parametrize(
    "end",
    [
        ("That's the whole gang, and I'm going in.",),
        ("That's seven pots looked at, and one fewer to water.",),
        ("Right, that's my knees finished.", "The regals can wait for the twenty-fourth."),
        ("That completes this side.", "The rest can wait until they have something to say."),
        ("And that's the top house written up; bottom house Sunday.",),
        ("That's the row, and two turfed out isn't a bad morning.",),
    ],
)
def test_ways_of_ending_a_walk(end: tuple[str, ...]) -> None:
    talk = (*OPENING, "The leaf is nicely zoned.", *end)
    (clip,) = read(*talk).clips
    assert words(clip, *talk).endswith("zoned.")


def test_one_sentence_of_another_day_is_no_part_of_the_plant_before() -> None:
    said = ("Now this is a second visit, on the ninth of June.", "This is twenty-three eleven.")
    clips = read(*OPENING, *said, "It's red.").clips
    assert [(c.plant.number, c.day and c.day.day) for c in clips] == [("23-04", 2), ("23-11", 9)]


def test_how_it_was_come_by_is_no_aside() -> None:
    talk = (
        "This is Tilly Marsh.",
        "I bought the tuber for twelve dollars.",
        "From a man in a van.",
    )
    (clip,) = read(*talk, "It's pink.").clips
    assert words(clip, *talk, "It's pink.").startswith("This is")


def test_a_clip_begins_where_the_speaker_says_where_to_look() -> None:
    talk = ("so by the potting shed door first this is 23 04 it's a soft pink",)
    (clip,) = read(*talk).clips
    assert words(clip, *talk).startswith("so by the")


def test_another_day_puts_the_plant_in_hand_down() -> None:
    talk = (
        *OPENING,
        "So it's the ninth now.",
        "The light beat me.",
        "They're hanging their heads.",
    )
    clips = read(*talk, "This is twenty-three eleven.", "It's red.").clips
    assert [c.plant.number for c in clips] == ["23-04", "23-11"]
    assert "heads" not in words(clips[0], *talk)


def test_no_clip_begins_inside_a_word() -> None:
    talk = (
        "this is twenty three oh four",
        "soft pink with a white eye out you come mate",
        "then there's this one that came up by the tank no tag no nothing",
        "a hot pink with a white edge",
    )
    first, second = read(*talk).clips
    assert first.last_word < second.first_word
    assert words(second, *talk).startswith("there's this one")


def test_what_she_does_is_of_the_plant_that_is_called_so() -> None:
    talk = (
        "this is 23 04 and she's a soft pink",
        "and i have to turn her every day or she leans towards the church",
        "and then she's at the window with the kettle she is",
        "the leaf is nicely zoned",
    )
    (clip,) = read(*talk).clips
    assert words(clip, *talk).endswith("nicely zoned")


def test_one_can_see_you_is_no_leave() -> None:
    talk = (
        "this is 23 04 it's a soft pink",
        "oh the cat's back i can see you",
        "the leaf is zoned",
    )
    (clip,) = read(*talk).clips
    assert words(clip, *talk).endswith("zoned")
