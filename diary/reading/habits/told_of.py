"""What is told but is not so here and now: wishes, hearsay, history, suppositions."""

from diary.reading.habits.scope import FAR, NEAR, Habit, Scope, cues
from diary.reading.numerals import quantity
from diary.reading.phrases import Found
from diary.reading.tokens import COMMA, Talk
from diary.reading.vocabulary import Vocabulary


def wishes(talk: Talk, vocabulary: Vocabulary) -> list[Scope]:
    """ "I had hoped for a yellow"; holds to the end of the sentence or to a "but"."""
    return [
        Scope(Habit.WISH, cue.start, _to_turning(talk, cue.end), cue.start)
        for cue in cues(talk, vocabulary, "wish")
    ]


def hearsay(talk: Talk, vocabulary: Vocabulary) -> list[Scope]:
    """ "people tell me it's like ..."; holds to the end of the sentence or to a "but"."""
    return [
        Scope(Habit.REPORTED, cue.start, _to_now(talk, cue), cue.start)
        for cue in cues(talk, vocabulary, "reported")
    ]


def _to_now(talk: Talk, cue: Found) -> int:
    """ "I said lavender on the day it opened; now it's lilac": my own word of then ends there."""
    stop = _to_turning(talk, cue.end)
    if talk.texts[cue.start] != "i" or not talk.punctuated:
        return stop
    commas = (i + 1 for i in range(cue.end, stop) if talk.tokens[i].mark == COMMA)
    return next(commas, stop)


def _to_turning(talk: Talk, start: int) -> int:
    stop = talk.sentence(max(start - 1, 0))[1]
    if not talk.punctuated:
        # a pseudo sentence may be cut inside the wish: "people tell me | it's like ..."
        size = len(talk.tokens)
        if stop < size and stop == start:
            stop = talk.sentence(stop)[1]
    if talk.punctuated and talk.tokens[start - 1].mark == ",":
        return start
    left_over = talk.punctuated and talk.texts[start : start + 1] in _LEFT_OVER
    if left_over and talk.tokens[start].mark == COMMA:
        return start + 1  # "not the red I hoped for, with a white eye"
    for i in range(start, stop):
        if talk.texts[i] in ("but", "though", "however"):
            return i
        if i > start and talk.tokens[i - 1].mark == COMMA and talk.texts[i : i + 2] in _THIS_IS:
            return i  # "whatever they say about orange, | this is red"
        if talk.texts[i : i + 2] in _MY_OWN_SAY and (i > start or talk.texts[i + 1] != "'d"):
            return i
        if talk.texts[i] in ("and", "so") and talk.texts[i + 1 : i + 2] in (
            ("i",),
            ("what",),
            ("no",),
            ("now",),
            ("it",),
            ("got",),
            ("there",),
        ):
            return i
    return stop


_LEFT_OVER = tuple((word,) for word in "for of about to on in by".split())
# "he says it's red, I say it's cerise"
_MY_OWN_SAY = tuple(("i", verb) for verb in "say call 'd make reckon see".split())
_THIS_IS = tuple((this, be) for this in ("this", "it", "she", "he") for be in ("is", "'s"))
_TELLERS = frozenset({"it", "i", "he", "she", "they", "we", "there", "this", "that", "the", "its"})


def history(talk: Talk, vocabulary: Vocabulary) -> list[Scope]:
    """ "last year it had the crown rot"; not "no bigger than last year"."""
    found = []
    for cue in cues(talk, vocabulary, "history"):
        if cue.start and talk.texts[cue.start - 1] in ("than", "as", "since", "from", "on"):
            continue
        start, stop = talk.clause(cue.start)
        if _likened(talk.texts[start : cue.start]):
            start = cue.start
        if not talk.punctuated:
            told = talk.texts[cue.end : cue.end + 1]
            if told and told[0] in _TELLERS and cue.start - start <= 2:
                start, stop = cue.start, talk.clause(cue.end)[1]
            else:
                start = max(start, cue.start - NEAR - 2)
                stop = min(stop, cue.end + NEAR)
                turns = (i for i in range(cue.end, stop) if talk.texts[i] in ("so", "but"))
                stop = next(turns, stop)
        alone = talk.punctuated and stop - start <= cue.end - cue.start + 1
        if alone and start > talk.sentence(cue.start)[0]:
            start = talk.clause(start - 1)[0]  # "it had two heads last week, it's got five"
        elif alone:
            stop = talk.clause(min(stop, len(talk.tokens) - 1))[1]  # "Last year, it had ..."
        found.append(Scope(Habit.HISTORY, start, stop, cue.start))
    return found


def _likened(words: tuple[str, ...]) -> bool:
    """ "so wavy that you'd think somebody | had been at it": only the picture is of the past."""
    return "think" in words or ("as" in words and bool({"if", "though"} & set(words)))


def hypotheticals(talk: Talk, vocabulary: Vocabulary) -> list[Scope]:
    """ "if it was a double"; holds to the end of the clause."""
    return [
        Scope(
            Habit.HYPOTHETICAL,
            cue.start,
            _to_my_own_say(
                talk,
                cue.end,
                min(talk.clause(cue.start)[1], cue.end + (FAR if talk.punctuated else 6)),
            ),
            cue.start,
        )
        for cue in cues(talk, vocabulary, "hypothetical")
    ]


def _to_my_own_say(talk: Talk, start: int, stop: int) -> int:
    """ "what they would have called puce and I call brown": as far as "I call"."""
    own = (i for i in range(start + 1, stop) if talk.texts[i : i + 2] in _MY_OWN_SAY)
    return max(start, next(own, stop))


def not_recalled(talk: Talk, vocabulary: Vocabulary) -> list[Scope]:
    """ "I can't remember the pollen parent"; holds over the whole clause."""
    found = []
    for cue in cues(talk, vocabulary, "not_recalled"):
        start, stop = talk.clause(cue.start)
        if (
            stop <= cue.end
            and stop < len(talk.tokens)
            and talk.tokens[stop - 1].mark not in (".", "?")
        ):
            stop = talk.clause(stop)[1]  # the object was split off by a pseudo boundary
        if not talk.punctuated:
            start = max(start, cue.start - NEAR)
            stop = min(stop, cue.end + 4)
            if talk.texts[cue.end : cue.end + 1] == ("you",):
                stop = cue.end + 1  # "whose it is i couldn't tell you | salmon pink"
            if not {"if", "whether", "many"} & set(talk.texts[cue.start : stop]):
                # "never wrote down the pollen 6 seeds i put in"
                later = range(cue.end + 2, stop)
                stop = next((i for i in later if quantity(talk.texts, i)), stop)
        found.append(Scope(Habit.NOT_RECALLED, start, stop, cue.start))
    return found
