"""Where a speaker begins anew inside talk that runs on."""

import pytest

from diary.linking.decisions.anew import begins_anew
from tests.reading.said import talk


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ("i nearly binned it i'm keeping it", "i 'm keeping it"),
        ("no more than that and it'll stay", "it 'll stay"),
        ("i might we shall see", "we shall see"),
    ],
)
def test_begins_anew(said: str, words: str) -> None:
    texts = talk(said).texts
    at = begins_anew(talk(said), 1, len(texts))
    assert at is not None
    assert " ".join(texts[at:]) == words


@pytest.mark.parametrize(
    "said", ["i nearly did bin it", "i thought i'll keep it", "you may think i'm keeping it"]
)
def test_no_beginning(said: str) -> None:
    assert begins_anew(talk(said), 1, len(talk(said).texts)) is None
