"""Where a clip begins whose plant is told a little later."""

import pytest

from tests.linking.test_clips import words
from tests.reading.said import read


@pytest.mark.parametrize(
    "led", ["scooch down one and it's 23 11", "then there's a new one this year 23 11"]
)
def test_a_clip_begins_where_the_speaker_moves_along(led: str) -> None:
    talk = ("this is 23 04 it's a soft pink", "she's going to the fair in september", led)
    first, _ = read(*talk, "it's a red").clips
    assert words(first, *talk).endswith("september")
