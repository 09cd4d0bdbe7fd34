"""Figures of something else, that are no numbers of plants: readings, years, dates, places.

"The thermometer says twenty-three point five", "sown spring 2024", "page 23", "417 of you", "a
quarter past nine", "by 12/5"; not "the label says twenty-three fifteen", "number 2024".
"""

import re

from diary.reading.answers import is_answer
from diary.reading.numbers.system import FAR, PLAUSIBLE, NumberHeard
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_REACH = 7
_DATE = re.compile(r"(\d{1,2})[/.](\d{1,2})(?:[/.]\d{2,4})?")
_LETTERED = re.compile(r"[a-z]+\d")
_AT_TIME = frozenset("at by till until from since about around past before after".split())
_NUMBERED = frozenset({"number", "plant", "seedling", "label", "tag"})


def is_figure(talk: Talk, heard: NumberHeard, vocabulary: Vocabulary) -> bool:
    """Whether what stands around the number makes it a figure of something else."""
    texts, start = talk.texts, heard.start
    if texts[start] in _NUMBERED or (start and texts[start - 1] in _NUMBERED):
        return False
    if heard.explicit and _LETTERED.match(texts[start]):
        return False  # "a P24, number nine"
    if texts[max(0, start - 2) : start] == ("hundred", "and"):
        return True
    if start and re.fullmatch(r"0\d+", texts[start - 1]) and not talk.tokens[start - 1].mark:
        return True  # "ring 01 23 24 05"
    if is_answer(talk, heard, vocabulary) or _follows(talk, start, vocabulary, "figure"):
        return True
    if (
        start
        and texts[start - 1] in _AT_TIME
        and vocabulary.cues["time_of_day"].at(texts, heard.end)
    ):
        return True
    if heard.cut is not None and _follows(talk, start, vocabulary, "small_figure"):
        return True
    if vocabulary.cues["figure_unit"].at(texts, heard.end) is not None:
        return not talk.tokens[heard.end - 1].mark
    certain = heard.on_record and heard.explicit
    if not certain and vocabulary.cues["figure_of"].at(texts, heard.end) is not None:
        each = texts[heard.end] == "each" and vocabulary.subjects.at(texts, heard.end + 1)
        return not talk.tokens[heard.end - 1].mark and not each  # "23 04 each head's nine"
    if _is_date(talk, heard) or _counts_things(talk, heard):
        return True
    if not _reads_as_year(heard):
        return False
    habit = "in_year" if heard.on_record else "about_year"
    return _follows(talk, start, vocabulary, "in_year") or _follows(talk, start, vocabulary, habit)


def _follows(talk: Talk, start: int, vocabulary: Vocabulary, habit: str) -> bool:
    """Whether a phrase of the habit ends right before the number, no mark between."""
    texts = talk.texts
    pointed = start > 1 and texts[start - 2] in _POINTING and texts[start - 1] in ("is", "'s")
    found = vocabulary.cues[habit].find(texts, max(0, start - _REACH), start)
    return any(
        f.end == start
        and not (pointed and f.start < start - 2)  # "swing the phone round and that's 25 30"
        and not talk.between(f.start, start, (".", "?", ","))
        for f in found
    )


_POINTING = frozenset({"this", "that", "here", "these", "those"})


def _is_date(talk: Talk, heard: NumberHeard) -> bool:
    """ "12/5" where no batch is of the year 5, nor 12."""
    written = _DATE.fullmatch(talk.texts[heard.start])
    if written is None or heard.on_record or heard.end > heard.start + 1:
        return False
    day, month = sorted((int(written[1]), int(written[2])), reverse=True)
    return heard.score < (FAR + PLAUSIBLE) / 2 and 0 < month <= 12 and day <= 31


_NO_PLURALS = frozenset(
    "this always perhaps sometimes plus minus is was has does goes looks stands sits gets needs "
    "wants comes gives makes takes keeps seems shows smells grows flowers opens leaves beats "
    "lives stays turns starts holds carries wins loses likes hates deserves as us yes "
    "across towards outdoors upwards downwards besides afterwards its his hers ours yours".split()
)


def _counts_things(talk: Talk, heard: NumberHeard) -> bool:
    """ "a pallet with 40 slabs on it", "thirty-three performances": no letter, no separator.

    Not "S40 looks well", nor the last part of a number, of which "4 heads" says no more.
    """
    if heard.explicit or heard.cut is not None or talk.tokens[heard.end - 1].mark:
        return False
    if len(re.findall(r"\d+", heard.number)) > 1 or not re.match(r"[A-Z]", heard.number):
        return False
    thing = talk.texts[heard.end : heard.end + 1]
    if not thing or len(thing[0]) < 4 or thing[0] in _NO_PLURALS:
        return False
    return thing[0].endswith("s") and not thing[0].endswith(("ss", "us"))


def _reads_as_year(heard: NumberHeard) -> bool:
    digits = re.sub(r"\D", "", heard.number)
    return len(digits) == 4 and 1950 <= int(digits) < 2050
