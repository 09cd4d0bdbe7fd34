"""Promises: sentences it catches, and turns of phrase it must leave alone."""

import pytest

from diary.insight.followups import promises
from diary.speech.transcript import Transcript, Word

from .say import WALK


def said(text: str) -> list[str]:
    words = tuple(
        Word(text=word, start_ms=index * 300, end_ms=index * 300 + 250)
        for index, word in enumerate(text.split())
    )
    return [found.moment.text for found in promises(WALK, Transcript(words=words), ())]


@pytest.mark.parametrize(
    ("text", "promise"),
    [
        (
            "Right. I'll film the twenty-fives when they open. Bye for now.",
            "I'll film the twenty-fives when they open.",
        ),
        ("I\u2019ll spray tonight, I think.", "I\u2019ll spray tonight, I think."),
        ("Remind me to measure that one again.", "Remind me to measure that one again."),
        ("oh and i must label this lot", "i must label this lot"),
        ("I'm going to use it as a seed parent.", "I'm going to use it as a seed parent."),
    ],
)
def test_catches(text: str, promise: str) -> None:
    assert said(text) == [promise]


@pytest.mark.parametrize(
    "text",
    [
        "I'll be honest, it's a washed-out lilac.",
        "I must say I like to look at it.",
        "She will water them.",
        "I'll give it another year.",
        "I want to show you this one first.",
        "It'll be the leaf cuttings next time.",
    ],
)
def test_leaves_alone(text: str) -> None:
    assert said(text) == []


def test_a_long_unpunctuated_run_is_quoted_in_part() -> None:
    (found,) = said("i'll sow again at christmas " + "and so on " * 20)
    assert len(found.split()) == 16
