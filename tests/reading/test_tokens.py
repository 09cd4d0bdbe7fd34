"""Words to tokens: contractions, hyphens, units stuck to digits, sentences."""

import pytest

from diary.reading.tokens import pieces
from tests.reading.said import talk


@pytest.mark.parametrize(
    ("word", "expected"),
    [
        ("isn't", ("is", "not")),
        ("it's", ("it", "'s")),
        ("I\N{RIGHT SINGLE QUOTATION MARK}ve", ("i", "'ve")),
        ("can't", ("can", "not")),
        ("won't", ("will", "not")),
        ("thats", ("that", "'s")),  # automatic captions leave the apostrophe out
        ("dont", ("do", "not")),
        ("nine-centimetre", ("nine", "centimetre")),
        ("10mm", ("10", "mm")),  # openai/whisper, tests/test_normalizer.py
        ("55mm,", ("55", "mm")),
        ("24-11B.", ("24-11b",)),
        ("31°", ("31", "degrees")),
        ("£4.50", ("£", "4.50")),
        ("½", ("1/2",)),
        ('"lovely"', ("lovely",)),
        ("…", ()),
        ("", ()),
    ],
)
def test_pieces(word: str, expected: tuple[str, ...]) -> None:
    assert pieces(word) == expected


def test_sentences_end_at_full_stops() -> None:
    heard = talk("It is pink. Dark blotch, quite big! Is it scented?")
    assert [heard.texts[a:b][0] for a, b in heard.sentences] == ["it", "dark", "is"]


def test_a_note_taker_s_signs() -> None:
    heard = talk("Pale pink w. a dark eye / approx. 50 mm / keep.")
    assert heard.texts[2] == "with"
    assert len(heard.sentences) == 1
    assert [heard.texts[i] for i, token in enumerate(heard.tokens) if token.mark == ","] == [
        "eye",
        "mm",
    ]


def test_without_stops_a_sentence_begins_with_a_new_subject_and_verb() -> None:
    heard = talk("it's a soft pink it's about five centimetres across")
    assert len(heard.sentences) == 2


def test_every_token_knows_its_word() -> None:
    heard = talk("It isn't a nine-centimetre pot.")
    assert [heard.transcript.words[t.word].text for t in heard.tokens] == [
        "It",
        "isn't",
        "isn't",
        "a",
        "nine-centimetre",
        "nine-centimetre",
        "pot.",
    ]


def test_no_words_no_tokens() -> None:
    assert talk("").tokens == ()


def test_marks_are_looked_for_past_the_last_word_as_well() -> None:
    heard = talk("Forty millimetres.")
    assert heard.between(1, 5, (".",))
    assert not heard.between(0, 1, (".",))
