"""Sentences as a transcript, read as a recording would be."""

from datetime import date

from diary.linking.document import Observation
from diary.linking.read import read_talk
from diary.reading.known import Known, KnownName, KnownSeedling
from diary.reading.vocabulary import load_vocabulary
from diary.speech.transcript import Transcript, Word

NAMES = ("Fenmarsh Lad", "Copper Lantern", "Tilda's Waistcoat")
KNOWN = Known(
    seedlings=(KnownSeedling(number="23-04"), KnownSeedling(number="23-05")),
    names=tuple(KnownName(name=name) for name in NAMES),
)
WORD_MS = 400


def said_of_a_seedling(*sentences: str) -> tuple[Observation, ...]:
    """What is observed when the sentences follow "This is 23-04." """
    words: list[Word] = []
    starts: list[int] = []
    for sentence in ("This is 23-04.", *sentences):
        starts.append(len(words))
        for text in sentence.split():
            now = len(words) * WORD_MS
            words.append(Word(text=text, start_ms=now, end_ms=now + WORD_MS))
    talk = Transcript(words=tuple(words), segment_starts=tuple(starts))
    reading = read_talk(talk, load_vocabulary(), KNOWN, recorded=date(2031, 6, 2))
    return tuple(
        one
        for clip in reading.clips
        if clip.plant.number == "23-04"
        for one in clip.observations
        if not one.negated
    )


def values(observations: tuple[Observation, ...], trait: str) -> list[object]:
    """The values told for one trait, in order."""
    return [one.value for one in observations if one.trait == trait]
