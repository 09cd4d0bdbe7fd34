"""What the speaker asks himself about a plant, and what he answers."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decisions"),
    [
        (("Should I keep it?", "Well, of course I shall."), ["keep"]),
        (("Bin it? Never.",), ["keep"]),
        (("That's a keeper, isn't it?",), ["keep"]),
        (("What would you do, keep it?",), []),
        (("Should I bin it?", "Copper Lantern was worse."), []),
        (("are we keeping it then course we are",), ["keep"]),
        (("Am I to keep it, for the sake of a throat? I am not.",), []),
        (("Shall I keep it?", "I shall not."), ["discard"]),
    ],
)
def test_answers(said: tuple[str, ...], decisions: list[str]) -> None:
    assert values("decision", *said) == decisions
