"""The words of a sentence speak for and against a decision, beside the rules."""

import pytest

from diary.linking.document import Clip
from tests.reading.said import on_record, read

REGISTER = on_record(("24-09", "24-13"), ("Quilted Heron",))


def clip_of(*talk: str) -> Clip:
    (clip,) = read("Right, this is 24-09.", "Pink, single.", *talk, known=REGISTER).clips
    return clip


def decided(clip: Clip) -> set[str]:
    return {str(o.value) for o in clip.observations if o.trait == "decision"}


@pytest.mark.parametrize(
    ("talk", "decision"),
    [
        ("So this one I'm keeping.", "keep"),
        ("It's going on the compost this afternoon.", "discard"),
        ("I'll take half a dozen cuttings off it.", "propagate"),
        ("It needs a bigger pot.", "repot"),
    ],
)
def test_plain_decisions_stand(talk: str, decision: str) -> None:
    assert decided(clip_of(talk)) == {decision}


def test_what_the_words_speak_against_is_only_proposed() -> None:
    clip = clip_of("He always said he'd show me how to stage one and then he moved away.")
    assert not decided(clip)
    assert [o.value for o in clip.proposals if o.trait == "decision"] == ["watch"]


def test_a_few_words_speak_neither_for_nor_against() -> None:
    assert decided(clip_of("Show's on the first.", "It'll be there.")) == {"show"}


def test_many_sentences_of_other_things_decide_nothing() -> None:
    clip = clip_of(
        "Good strong stem on it.", "The leaf has a dark zone.", "Four heads out and two to come."
    )
    assert not decided(clip)
    assert not any(o.trait == "decision" for o in clip.proposals)
