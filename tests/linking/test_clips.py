"""Where clips begin and end: asides, the end of the talk, long silences."""

from itertools import pairwise

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
