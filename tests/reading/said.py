"""Talk written down in a test: words at even times, and what the reader makes of them."""

from datetime import date

from diary.linking.document import Observation, Reading
from diary.linking.read import read_talk
from diary.reading.known import Known, KnownName, KnownSeedling
from diary.reading.mentions import Mentions, find_mentions
from diary.reading.tokens import Talk, tokenise
from diary.reading.vocabulary import load_vocabulary
from diary.speech.transcript import Transcript, Word

WORD_MS = 400
JUNE_2 = date(2031, 6, 2)
NUMBERS = ("23-04", "23-06", "23-11", "23-40", "22-14", "24-07")
NAMES = ("Fenmarsh Lad", "Copper Lantern", "Tilly Marsh", "Duchess of Orrin", "Hobnail")


def said(*utterances: str) -> Transcript:
    """The utterances, a segment each, with their words at even times."""
    words: list[Word] = []
    starts: list[int] = []
    for utterance in utterances:
        if utterance.split():
            starts.append(len(words))
        for text in utterance.split():
            now = len(words) * WORD_MS
            words.append(Word(text=text, start_ms=now, end_ms=now + WORD_MS))
    return Transcript(
        words=tuple(words), segment_starts=tuple(starts), duration_ms=len(words) * WORD_MS
    )


def talk(text: str) -> Talk:
    """The tokens of one utterance."""
    return tokenise(said(text))


def texts(text: str) -> tuple[str, ...]:
    """The canonical tokens of one utterance."""
    return talk(text).texts


def on_record(numbers: tuple[str, ...] = NUMBERS, names: tuple[str, ...] = NAMES) -> Known:
    """A register with these numbers and names."""
    return Known(
        seedlings=tuple(KnownSeedling(number=number) for number in numbers),
        names=tuple(KnownName(name=name) for name in names),
    )


def mentions(text: str, known: Known | None = None) -> Mentions:
    """Everything heard in one utterance."""
    return find_mentions(talk(text), load_vocabulary(), known or on_record())


def read(*utterances: str, known: Known | None = None, recorded: date | None = JUNE_2) -> Reading:
    """What is understood of a recording."""
    return read_talk(said(*utterances), load_vocabulary(), known or on_record(), recorded=recorded)


def observed(*utterances: str, known: Known | None = None) -> list[Observation]:
    """Everything observed of 23-04, the plant that the talk begins with."""
    reading = read("Right, this is twenty-three oh four.", *utterances, known=known)
    return [o for clip in reading.clips if clip.plant.number == "23-04" for o in clip.observations]


def values(trait: str, *utterances: str, known: Known | None = None) -> list[object]:
    """The values observed of one trait, in order."""
    return [o.value for o in observed(*utterances, known=known) if o.trait == trait]


def colours(*utterances: str) -> set[str]:
    """The colours observed, as "throat pale cream"."""
    return {
        " ".join([o.part or "", *o.modifiers, str(o.value)])
        for o in observed(*utterances)
        if o.trait == "colour"
    }


def caption_colours(*utterances: str) -> set[str]:
    """The colours observed in captions, which have no marks, as "throat pale cream"."""
    reading = read("right this is twenty three oh four", *utterances)
    return {
        " ".join([o.part or "", *o.modifiers, str(o.value)])
        for clip in reading.clips
        for o in clip.observations
        if o.trait == "colour"
    }
