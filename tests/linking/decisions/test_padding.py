"""Words of padding inside a turn of phrase, and a number said again for the plant in hand."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("It's going, I'm afraid, on the heap.", "discard"),
        ("I'm not, honestly, ever getting rid of it.", "keep"),
        ("I won't be parting with that one.", "keep"),
        ("I'll definitely be putting it straight in the show.", "show"),
    ],
)
def test_padding_is_read_over(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "I'm not naming it, to be honest.",
        "I'm definitely not, sad to say, breeding from it.",
    ],
)
def test_padding_decides_nothing(said: str) -> None:
    assert values("decision", said) == []


def test_its_number_said_again_is_a_pronoun() -> None:
    assert values("decision", "So I'm binning 23-04.") == ["discard"]
