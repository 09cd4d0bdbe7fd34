"""Leave that is taken ends the last clip, whatever is said after it."""

import re

import pytest

from tests.linking.test_clips import OPENING, words
from tests.reading.said import read

TOLD = "It flowers its head off."
AFTER = "If anybody wants a cutting of any of these, drop me a line."


@pytest.mark.parametrize("captions", [False, True])
@pytest.mark.parametrize(
    "leave",
    [
        "That'll do me, my tea's getting cold.",
        "Well, I've been going on long enough.",
        "I'll let you go.",
        "I'd better get on.",
        "That's about the size of it for this week.",
        "So there we have it, folks.",
        "And on that note I'll stop.",
        "We'll leave it at that.",
        "I think that's everything.",
        "Enough of me.",
        "Time I was indoors.",
        "More next week, all being well.",
        "I'm going to switch this off now.",
        "The battery's going so I'll stop.",
        "The rest of them will keep for another day.",
        "Ta for watching.",
        "We're out of time.",
        "There's more, but not today.",
        "And that's a wrap.",
        "Right, back to work.",
    ],
)
def test_leave_taken(leave: str, captions: bool) -> None:
    talk = (*OPENING, TOLD, leave, AFTER)
    if captions:
        talk = tuple(re.sub(r"[,.]", "", said).lower() for said in talk)
    (clip,) = read(*talk).clips
    assert words(clip, *talk).endswith(talk[2])


@pytest.mark.parametrize(
    "told",
    [
        "I'd better get it into a bigger pot.",
        "That'll do nicely for the show bench, that will.",
        "Enough of it has opened to tell.",
        "It's about the size of it that I worry, it's too tall.",
    ],
)
def test_no_leave_taken(told: str) -> None:
    talk = (*OPENING, told)
    (clip,) = read(*talk).clips
    assert words(clip, *talk).endswith(told)


def test_what_may_stay_till_next_year_takes_no_leave() -> None:
    talk = ("this is 23 04 it's a soft pink", "it could have till next june but it's going out")
    (clip,) = read(*talk).clips
    assert [o.value for o in clip.observations if o.trait == "decision"] == ["discard"]
