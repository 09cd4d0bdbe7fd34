"""The sentence around a moment."""

from diary.insight.sentences import sentence_at
from diary.records.record import Moment
from diary.speech.transcript import Transcript, Word

from .say import WALK


def said(text: str, *, pause_after: int | None = None) -> Transcript:
    words, at = [], 0
    for index, word in enumerate(text.split()):
        words.append(Word(text=word, start_ms=at, end_ms=at + 250))
        at += 300 + (2000 if index == pause_after else 0)
    return Transcript(words=tuple(words))


def at(words: Transcript, first: int, last: int) -> Moment:
    return Moment(
        recording=WALK,
        start_ms=words.words[first].start_ms,
        end_ms=words.words[last].end_ms,
        day=None,
        text=words.quote(first, last),
    )


def test_back_and_on_to_the_full_stops() -> None:
    words = said("It has whitefly. So A stays, that's easy. Next one.")
    assert sentence_at(words, at(words, 5, 5)) == "So A stays, that's easy."


def test_a_pause_ends_it_where_there_are_no_stops() -> None:
    words = said("it has whitefly so a stays next one", pause_after=2)
    assert sentence_at(words, at(words, 5, 5)) == "so a stays next one"


def test_unpunctuated_talk_is_cut_around_the_moment() -> None:
    words = said("and so on " * 60)
    assert len(sentence_at(words, at(words, 90, 90)).split()) == 41


def test_a_whole_clip_is_left_as_it_is() -> None:
    words = said("and so on " * 30)
    assert sentence_at(words, at(words, 0, 80)) == words.quote(0, 80)


def test_a_moment_without_words_keeps_its_own() -> None:
    assert sentence_at(Transcript(words=()), at(said("by hand"), 0, 1)) == "by hand"
