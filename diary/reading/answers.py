"""Bare figures that answer a count or a size, and so are no numbers of plants cut short.

"Not so many trusses. Three, that I can see", "and how many came up? Nine", "another three up
here", "one two three four heads"; not "Good heads. Seventeen next".
"""

from diary.reading.numbers.system import NumberHeard
from diary.reading.numerals import ONES, quantity
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_ASKED = frozenset("many tall wide high long big across far".split())
_MANY = frozenset(
    "many few count counted counting lot number plenty scarce more less fewer".split()
)
_ADDED = frozenset(
    {"i", "that", "there", "of", "all", "so", "at", "maybe", "perhaps", "if", "only"}
)
_WITH = frozenset({"with", "counting", "including"})
_TAKEN_BACK = frozenset("no sorry wait hang on hold well er um actually oh nope".split())
_SIZED = frozenset(
    "head truss umbel flower bloom pip leaf stem height width spread diameter".split()
)
_UNIT_BEFORE = 12
_ASKED_WITHIN = 8


def is_answer(talk: Talk, heard: NumberHeard, vocabulary: Vocabulary) -> bool:
    """Whether a number cut short only tells how many, or how large."""
    return (
        _is_counting_aloud(talk, heard)
        or (
            heard.cut is not None
            and not heard.cut[1]
            and (
                talk.texts[heard.start - 1 : heard.start] == ("another",)
                or _inches_over(talk, heard)
                or _answers(talk, heard, vocabulary)
            )
        )
        or _of_a_list(talk, heard, vocabulary)
    )


def _is_counting_aloud(talk: Talk, heard: NumberHeard) -> bool:
    """ "one two three four"."""
    run = [
        int(w) if w.isdecimal() else ONES.get(w, -1) for w in talk.texts[heard.start : heard.end]
    ]
    return len(run) > 2 and run == list(range(1, len(run) + 1))


def _inches_over(talk: Talk, heard: NumberHeard) -> bool:
    """ "three foot two at the back"."""
    foot = talk.texts[heard.start - 1 : heard.start] in (("foot",), ("feet",), ("metre",))
    return foot and quantity(talk.texts, heard.start - 2) is not None


def _of_a_list(talk: Talk, heard: NumberHeard, vocabulary: Vocabulary) -> bool:
    """ "flower four centimetres, head ten": the unit was said of the size before."""
    start = heard.start
    if heard.on_record or not start or talk.texts[start - 1] not in _SIZED:
        return False
    return bool(vocabulary.units.find(talk.texts, max(0, start - _UNIT_BEFORE), start))


def _asked_just_now(talk: Talk, at: int) -> bool:
    """ "how many heads have we got 3 and another coming"."""
    before = talk.texts[max(0, at - _ASKED_WITHIN) : at]
    for i in range(len(before) - 2, -1, -1):
        if before[i] == "how" and before[i + 1] in _ASKED:
            return not any(w.isdecimal() or w in ONES for w in before[i + 2 :])
    return False


def _answers(talk: Talk, heard: NumberHeard, vocabulary: Vocabulary) -> bool:
    start, stop = talk.sentence(heard.start)
    if not talk.punctuated and _asked_just_now(talk, heard.start):
        return True
    if start != heard.start or not start:
        return False
    before = talk.sentence(start - 1)
    if heard.end < stop and talk.texts[heard.end] in _WITH:
        return bool(vocabulary.counted.find(talk.texts, *before))  # "Four shoots. Five, with that"
    if heard.end < stop and talk.texts[heard.end] not in _ADDED:
        return False
    texts = talk.texts[before[0] : before[1]]
    if set(texts) <= _TAKEN_BACK and before[0]:
        before = talk.sentence(before[0] - 1)
        return heard.end < stop and bool(vocabulary.counted.find(talk.texts, *before))
    if "how" in texts and _ASKED & set(texts):
        return True
    return bool(_MANY & set(texts)) and bool(vocabulary.counted.find(talk.texts, *before))
