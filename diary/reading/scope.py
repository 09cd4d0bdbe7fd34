"""Stretches of talk that do not assert: denials, wishes, questions, history, hearsay.

Each habit is one small function here, all of the same form: talk in, scopes out. Nothing
is decided about plants; later stages ask whether a word lies in a scope.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import Enum

from diary.reading.numerals import quantity
from diary.reading.phrases import Found
from diary.reading.tokens import COMMA, QUERY, STOP, Talk
from diary.reading.vocabulary import Vocabulary


class Habit(Enum):
    """Why words do not assert what they say."""

    DENIAL = "denial"
    WISH = "wish"
    QUESTION = "question"
    REPORTED = "reported"
    HISTORY = "history"
    HYPOTHETICAL = "hypothetical"
    NOT_RECALLED = "not_recalled"


@dataclass(frozen=True, slots=True)
class Scope:
    """Tokens start..end-1 are under a habit of speech; `cue` is where its words begin."""

    habit: Habit
    start: int
    end: int
    cue: int


@dataclass(frozen=True, slots=True)
class Scopes:
    """All scopes of one talk, asked by token."""

    by_token: tuple[tuple[Scope, ...], ...]

    def habits(self, start: int, end: int | None = None) -> frozenset[Habit]:
        """The habits that hold over the token, or over any token of start..end-1."""
        stop = start + 1 if end is None else end
        return frozenset(s.habit for i in range(start, stop) for s in self.by_token[i])


# After "no" these begin an answer, not a denial: "no that can go on the heap".
_ANSWER = frozenset(
    "it that this i he she they there we let hang hold sorry wait the you not no well "
    "actually make call sir madam love".split()
)
_CUT_DENIAL = frozenset({"but", "except", "though", "although", "just", "only", "more", "rather"})
# How far a denial reaches where no mark ends it.
_FAR, _NEAR = 14, 4
_PARTICLES = frozenset(
    {"a", "an", "the", "it", "with", "this", "that", "there", "its", "he", "she", "i"}
)


def find_scopes(talk: Talk, vocabulary: Vocabulary) -> Scopes:
    """Every scope of the talk, by the habits in the order listed below."""
    by_token: list[list[Scope]] = [[] for _ in talk.texts]
    for habit in HABITS:
        for scope in habit(talk, vocabulary):
            for i in range(scope.start, min(scope.end, len(by_token))):
                by_token[i].append(scope)
    return Scopes(tuple(tuple(scopes) for scopes in by_token))


def cues(talk: Talk, vocabulary: Vocabulary, habit: str) -> list[Found]:
    """The longest cue of the habit at each place, without those that are exceptions."""
    exceptions = vocabulary.never_cues[habit].find(talk.texts)
    covered = {i for found in exceptions for i in range(found.start, found.end)}
    found = [
        cue
        for cue in vocabulary.cues[habit].find(talk.texts)
        if cue.start not in covered and not talk.between(cue.start, cue.end - 1, (STOP, QUERY))
    ]
    return _outermost(found)


def _outermost(found: Iterable[Found]) -> list[Found]:
    kept: list[Found] = []
    for cue in sorted(found, key=lambda f: (f.start, -f.end)):
        if not kept or cue.end > kept[-1].end:
            kept.append(cue)
    return kept


def denials(talk: Talk, vocabulary: Vocabulary) -> list[Scope]:
    """ "no eye to speak of", "wouldn't call it orange"; not "no, it's pink", "no bigger than".

    Holds to the end of the clause, or to a "but", or to "and" with a new article.
    """
    found = []
    for cue in cues(talk, vocabulary, "denial"):
        after = talk.texts[cue.end] if cue.end < len(talk.texts) else ""
        if talk.texts[cue.start] == "no" and cue.end - cue.start == 1:
            if talk.tokens[cue.start].mark or after in _ANSWER:
                continue
        elif talk.tokens[cue.end - 1].mark:
            continue
        if cue.end - cue.start == 1 and (_corrects(talk, vocabulary, cue) or _tag(talk, cue)):
            continue
        stop = min(talk.clause(cue.start)[1], cue.end + (_FAR if talk.punctuated else _NEAR))
        aside = quantity(talk.texts, cue.end)
        if (
            aside is not None
            and talk.texts[cue.end] not in ("a", "one")
            and not vocabulary.units.at(talk.texts, aside.end)
        ):
            stop = min(stop, aside.end)  # "not fourteen": only the number is set aside
        for i in range(cue.end, stop):
            text = talk.texts[i]
            following = talk.texts[i + 1] if i + 1 < len(talk.texts) else ""
            if (i > cue.end and talk.texts[i - 1 : i + 1] in _ROUNDED) or text in _WHATEVER:
                stop = i + 1
                break
            if (
                i > cue.end + 1
                and not talk.punctuated
                and quantity(talk.texts, i) is not None
                and text not in ("a", "one")
            ):
                stop = i
                break
            if (text in _CUT_DENIAL and i > cue.end) or (text == "and" and following in _PARTICLES):
                stop = i
                break
        found.append(Scope(Habit.DENIAL, cue.end, stop, cue.start))
    return found


def _tag(talk: Talk, cue: Found) -> bool:
    """ "it's a plum, isn't it, a deep plum": a tag asks for assent and denies nothing."""
    before, after = talk.texts[max(0, cue.start - 1) : cue.start], talk.texts[cue.end : cue.end + 1]
    return before in _TAG_VERBS and after in _TAG_SUBJECTS


_TAG_VERBS = tuple((v,) for v in "is has does was did would are have do could will can".split())
_TAG_SUBJECTS = tuple((w,) for w in "it he she they you we i".split())
_ROUNDED = (("at", "all"), ("speak", "of"), ("on", "it"), ("in", "it"), ("about", "it"))
_WHATEVER = frozenset({"whatever", "whatsoever", "anywhere"})


def _corrects(talk: Talk, vocabulary: Vocabulary, cue: Found) -> bool:
    """ "4 no 4 and a half", "pink no lavender": a second thought and no denial."""
    if talk.texts[cue.start] != "no" or cue.start == 0:
        return False
    after = list(range(cue.end, min(cue.end + 3, len(talk.texts))))
    number_before = any(quantity(talk.texts, i) for i in range(max(0, cue.start - 2), cue.start))
    if number_before and after and quantity(talk.texts, after[0]) and talk.texts[after[0]] != "a":
        return True
    if vocabulary.units.at(talk.texts, cue.start - 1) and after:
        again = after[0] + (talk.texts[after[0]] in ("a", "an"))
        return bool(vocabulary.units.at(talk.texts, again) or quantity(talk.texts, again))
    colour_before = vocabulary.colours.at(talk.texts, cue.start - 1) is not None
    return colour_before and any(vocabulary.colours.at(talk.texts, i) for i in after)


def gone(talk: Talk, vocabulary: Vocabulary) -> list[Scope]:
    """ "the spots are gone completely": what stands before it in the clause is denied."""
    return [
        Scope(Habit.DENIAL, talk.clause(cue.start)[0], cue.start, talk.clause(cue.start)[0] - 1)
        for cue in cues(talk, vocabulary, "gone")
        if _is_said_of_a_part(talk, vocabulary, cue)
    ]


def _is_said_of_a_part(talk: Talk, vocabulary: Vocabulary, cue: Found) -> bool:
    """Not "edged in white as if somebody's gone round it"."""
    parts = vocabulary.parts.find(talk.texts, talk.clause(cue.start)[0], cue.start)
    return bool(parts) and cue.start - parts[-1].end <= 2 and _closes(talk, cue)


def _closes(talk: Talk, cue: Found) -> bool:
    """Nothing is told after it: "the leaf's gone ever so pale" tells what it has become."""
    rest = talk.texts[cue.end : talk.clause(cue.start)[1]]
    return not rest or rest[0] in _AFTER_GONE or talk.texts[cue.end - 1] in _WHOLLY


_AFTER_GONE = frozenset({"and", "but", "from", "off", "so", "this", "that", "by", "since", "in"})
_WHOLLY = frozenset({"completely", "altogether", "entirely", "missing", "absent", "now"})


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
    for i in range(start, stop):
        if talk.texts[i] in ("but", "though", "however"):
            return i
        if talk.texts[i : i + 2] in _MY_OWN_SAY and (i > start or talk.texts[i + 1] != "'d"):
            return i
        if talk.texts[i] in ("and", "so") and talk.texts[i + 1 : i + 2] in (
            ("i",),
            ("no",),
            ("now",),
            ("it",),
            ("got",),
        ):
            return i
    return stop


# "he says it's red, I say it's cerise"
_MY_OWN_SAY = tuple(("i", verb) for verb in "say call 'd make reckon see".split())
_SPEAKERS = frozenset({"i", "you", "he", "she", "it", "we", "they", "who", "one", "'s", "that"})
_ASKING = frozenset({"what", "which", "why", "who", "how", "where"})
_ANSWERING = frozenset({"and", "so", "but", "now", "or", "well"})


def questions(talk: Talk, vocabulary: Vocabulary) -> list[Scope]:
    """ "Is it scented?"; not the tag of "it's leggy, isn't it?"."""
    found = []
    for cue in cues(talk, vocabulary, "question"):
        start, stop = talk.sentence(cue.start)
        if talk.punctuated:
            clause = talk.clause(cue.start)
            lead = cue.start
            while lead > clause[0] and talk.texts[lead - 1] in (
                "and",
                "so",
                "but",
                "now",
                "or",
                "well",
                "then",
            ):
                lead -= 1
            if lead != clause[0] or stop - cue.end < 1 or talk.tokens[stop - 1].mark != "?":
                continue
            if lead > start and stop - cue.end <= 1:
                continue  # a tag
        else:
            before = talk.texts[cue.start - 1] if cue.start else ""
            if talk.texts[cue.start] in _ASKING and start != cue.start and before not in _ANSWERING:
                continue
            if _noun_before(talk, vocabulary, cue):
                continue  # "leaves are that dark green"
            if (
                stop - cue.end < 2
                or before in _SPEAKERS
                or before
                in (
                    "what",
                    "that",
                    "which",
                    "how",
                    "where",
                    "not",
                    "than",
                    "as",
                )
            ):
                continue
            if talk.texts[cue.end] in ("look", "and", "so", "but", "not"):
                continue
            stop = min(stop, cue.end + _NEAR + 2)
            if talk.texts[cue.start] in _ASKING:  # "where's my tape 3 centimetres"
                stop = next((i for i in range(cue.end, stop) if quantity(talk.texts, i)), stop)
        found.append(Scope(Habit.QUESTION, cue.start, stop, cue.start))
    return found


def _noun_before(talk: Talk, vocabulary: Vocabulary, cue: Found) -> bool:
    """Whether a part of the plant is the subject: "leaves are that dark green"."""
    near = vocabulary.parts.find(talk.texts, max(0, cue.start - 3), cue.start)
    return any(p.end == cue.start for p in near)


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
                start = max(start, cue.start - _NEAR - 2)
                stop = min(stop, cue.end + _NEAR)
        if talk.punctuated and stop - start <= cue.end - cue.start + 1:
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
                min(talk.clause(cue.start)[1], cue.end + (_FAR if talk.punctuated else 6)),
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
            start = max(start, cue.start - _NEAR)
            stop = min(stop, cue.end + 4)
            if not {"if", "whether", "many"} & set(talk.texts[cue.start : stop]):
                # "never wrote down the pollen 6 seeds i put in"
                later = range(cue.end + 2, stop)
                stop = next((i for i in later if quantity(talk.texts, i)), stop)
        found.append(Scope(Habit.NOT_RECALLED, start, stop, cue.start))
    return found


HABITS: tuple[Callable[[Talk, Vocabulary], list[Scope]], ...] = (
    denials,
    gone,
    wishes,
    hearsay,
    questions,
    history,
    hypotheticals,
    not_recalled,
)
