"""The eye of a flower that captions write as "i"."""

import pytest

from diary.reading.misheard.eye import eyes_respelt
from diary.reading.vocabulary import load_vocabulary
from tests.reading.said import talk


@pytest.mark.parametrize(
    ("said", "eyes"),
    [
        ("it's pink with a white i", 1),
        ("and a small white i in it", 1),
        ("there's a tiny i in the middle", 1),
        ("it's white i think", 0),
        ("it's a pure white i measured it", 0),
        ("It's pink. With a white I.", 0),
    ],
)
def test_an_i_after_a_colour_or_a_size_is_an_eye(said: str, eyes: int) -> None:
    assert eyes_respelt(talk(said), load_vocabulary()).texts.count("eye") == eyes
