"""Decisions that are a whole clause or one word."""

import pytest

from tests.reading.said import read, values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("So that one stays, and the label goes back in.", "keep"),
        ("No, she goes.", "discard"),
        ("Bin bag.", "discard"),
        ("that one stays i don't have many of those", "keep"),
        ("She's another pale pink so more cuttings", "propagate"),
        ("it's the sixth red i've had out of this cross so bin", "discard"),
    ],
)
def test_decided(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "So cerise it stays.",
        "It goes and goes.",
        "It stays low.",
        "It was out in May and it's out now.",
    ],
)
def test_part_of_a_longer_clause(said: str) -> None:
    assert values("decision", said) == []


@pytest.mark.parametrize(
    ("said", "decisions"),
    [
        ("he's no good is he bin sorry love", ["discard"]),
        ("it's upright it doesn't slouch yes keep obviously", ["keep"]),
        ("forget friday no cuttings tomorrow", []),
    ],
)
def test_in_captions(said: str, decisions: list[str]) -> None:
    clips = read("right this is twenty three oh four", said).clips
    told = [o.value for clip in clips for o in clip.observations if o.trait == "decision"]
    assert told == decisions
