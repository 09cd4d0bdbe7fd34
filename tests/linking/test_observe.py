"""From statements to observations: once each, with hedge, band and evidence."""

import pytest

from diary.linking.document import Band
from diary.linking.observe import LIKELY, SURE, band_of
from diary.linking.read import read_talk
from diary.reading.vocabulary import load_vocabulary
from diary.speech.transcript import Transcript, Word
from tests.reading.said import observed, on_record, read, said


def test_what_is_said_twice_is_observed_once() -> None:
    told = observed("It's a double.", "Yes, a lovely double.", "Pink.", "Such a nice pink.")
    assert sorted((o.trait, o.value) for o in told) == [
        ("bloom_form", "double"),
        ("colour", "pink"),
    ]


@pytest.mark.parametrize(
    ("said_", "hedged"),
    [
        ("It's a sort of salmon.", True),
        ("I'd say it's salmon.", True),
        ("It's almost a double.", True),
        ("It's salmon.", False),
        ("It's a double.", False),
    ],
)
def test_hedges(said_: str, hedged: bool) -> None:
    (one,) = observed(said_)
    assert one.hedged is hedged


@pytest.mark.parametrize(
    ("score", "firm", "band"),
    [
        (SURE, True, Band.SURE),
        (SURE - 0.01, True, Band.LIKELY),
        (LIKELY, True, Band.LIKELY),
        (LIKELY - 0.01, True, Band.UNSURE),
        (1.0, False, Band.UNSURE),
    ],
)
def test_bands(score: float, firm: bool, band: Band) -> None:
    assert band_of(score, firm) is band


def test_words_heard_badly_make_an_observation_less_sure() -> None:
    clear = said("This is twenty-three oh four.", "It's a double.")
    murmured = Transcript(
        words=tuple(
            Word(text=w.text, start_ms=w.start_ms, end_ms=w.end_ms, confidence=0.1)
            for w in clear.words
        ),
        segment_starts=clear.segment_starts,
        duration_ms=clear.duration_ms,
    )
    readings = [
        read_talk(t, load_vocabulary(), on_record(), recorded=None) for t in (clear, murmured)
    ]
    first, second = (
        [*clip.observations, *clip.proposals][0] for reading in readings for clip in reading.clips
    )
    assert second.confidence < first.confidence


def test_every_observation_says_why() -> None:
    for o in observed("Five centimetres across, pink, a double, and that's a keeper."):
        assert o.evidence.rule
        assert o.evidence.words == o.text
        assert o.evidence.score == o.confidence


@pytest.mark.parametrize("brought_in", ["This is 24-09.", "I suppose 24-09 will do next."])
def test_an_observation_is_no_surer_than_its_plant(brought_in: str) -> None:
    reading = read("This is 23-04.", "It's ruffled.", brought_in, "A maroon blotch.")
    assert reading.clips
    for clip in reading.clips:
        assert all(o.confidence <= max(clip.confidence, LIKELY) for o in clip.observations)
