import pytest

from diary.reading.misheard.trade_words import respelt
from diary.reading.vocabulary import load_vocabulary
from tests.reading.said import talk


@pytest.mark.parametrize(
    ("heard", "meant"),
    [
        ("there's botrities on it", "botrytis"),
        ("a variagated leaf", "variegated"),
        ("milldew underneath", "mildew"),
        ("the umbles are small", "umbels"),
        ("wavy pedals", "petals"),
        ("teeny weeny flour", "flower"),
    ],
)
def test_a_rare_word_is_told_by_its_sound(heard: str, meant: str) -> None:
    said = talk(heard)
    mended = respelt(said, load_vocabulary(None).trade)
    assert meant in mended.texts
    assert [token.text for token in mended.tokens] == list(mended.texts)
    assert mended.transcript is said.transcript


@pytest.mark.parametrize(
    "heard",
    [
        "in my pocket",
        "they compete for light",
        "bleached by the sun",
        "a series of pots",
        "as if dusted with flour",
    ],
)
def test_ordinary_words_are_left_alone(heard: str) -> None:
    said = talk(heard)
    assert respelt(said, load_vocabulary(None).trade) == said
