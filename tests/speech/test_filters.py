"""What was not said goes, what was said stays: loops, stock phrases, doubles."""

from diary.speech.filters import segments, sift, without_doubles, without_loops
from diary.speech.transcript import Word


def said(text: str, *, confidence: float = 0.9, start_ms: int = 0, each_ms: int = 300):
    return tuple(
        Word(
            text=word,
            start_ms=start_ms + number * each_ms,
            end_ms=start_ms + (number + 1) * each_ms,
            confidence=confidence,
        )
        for number, word in enumerate(text.split())
    )


def text_of(words) -> str:
    return " ".join(word.text for word in words)


def test_a_loop_is_cut_to_one_round_with_its_reason() -> None:
    sifted = without_loops(said("the pink one " + "is a keeper " * 7 + "and so on"))
    assert text_of(sifted.words) == "the pink one is a keeper and so on"
    assert [drop.reason for drop in sifted.dropped] == ["loop"]
    assert sifted.dropped[0].text == text_of(said("is a keeper " * 6))


def test_true_repeats_stay() -> None:
    for text in ("twelve, twelve", "no, no, no, that one", "very very very dark", "5 5"):
        assert text_of(without_loops(said(text)).words) == text


def test_a_stock_phrase_out_of_noise_goes_and_one_clearly_said_stays() -> None:
    unsure = sift(said("Thank you for watching!", confidence=0.3), no_speech=0.4, score=-0.6)
    assert unsure.words == ()
    assert unsure.dropped[0].reason == "stock phrase"
    sure = sift(said("Thank you.", confidence=0.95), no_speech=0.01, score=-0.2)
    assert text_of(sure.words) == "Thank you."


def test_a_stock_phrase_inside_a_sentence_is_no_stock_phrase() -> None:
    words = said("I thank you for watching the greenhouse.", confidence=0.3)
    assert sift(words, no_speech=0.4, score=-0.6).words == words


def test_what_the_engine_itself_doubts_goes() -> None:
    sifted = sift(said("mm hm", confidence=0.2), no_speech=0.9, score=-1.4)
    assert sifted.words == ()
    assert sifted.dropped[0].reason == "no speech"


def test_words_doubled_at_a_border_go_only_when_too_quick_to_be_said() -> None:
    before = said("a dark red blotch")
    end = before[-1].end_ms
    quick = said("red blotch and more", start_ms=end, each_ms=20)
    assert text_of(without_doubles(before, quick).words) == "and more"
    slow = said("red blotch and more", start_ms=end + 100)
    assert without_doubles(before, slow).words == slow


def test_segments_end_with_sentences_and_before_pauses() -> None:
    words = (*said("It is pink. Nice"), *said("and this", start_ms=5000))
    assert [text_of(segment) for segment in segments(words)] == ["It is pink.", "Nice", "and this"]
