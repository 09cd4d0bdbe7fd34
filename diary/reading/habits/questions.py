"""What is asked: "is it scented?"."""

from diary.reading.habits.scope import NEAR, Habit, Scope, cues
from diary.reading.numerals import quantity
from diary.reading.phrases import Found
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

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
            if talk.texts[cue.start] == "whether" and not talk.tokens[cue.start].mark:
                found.append(Scope(Habit.QUESTION, cue.start, clause[1], cue.start))
                continue  # "whether it's scented I couldn't say"
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
            if _no_head(talk, cue) and not _ends_a_phrase(talk, cue.start):
                continue
            if (
                stop - cue.end < 2 - _ends_a_phrase(talk, cue.start)
                or (before in _SPEAKERS and not _ends_a_phrase(talk, cue.start))
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
            stop = min(stop, cue.end + NEAR + 2)
            how = talk.texts[max(0, cue.start - 4) : cue.start]
            if talk.texts[cue.start] in _ASKING or "how" in how:  # "where's my tape 3 centimetres"
                stop = next((i for i in range(cue.end, stop) if quantity(talk.texts, i)), stop)
            stop = next((i for i in range(cue.end + 1, stop) if talk.texts[i] in _ANSWERED), stop)
        found.append(Scope(Habit.QUESTION, cue.start, stop, cue.start))
    return found


def _ends_a_phrase(talk: Talk, at: int) -> bool:
    """ "five buds on it | is it scented": "it" belongs to the words before and asks nothing."""
    return talk.texts[at - 1] == "it" and talk.texts[at - 2 : at - 1] in _PREPOSITIONS


_PREPOSITIONS = tuple((w,) for w in "on in of to with at for from under round".split())


def _no_head(talk: Talk, cue: Found) -> bool:
    """ "he can have this winter", "could go either way could that": a verb after another, a tag."""
    head = talk.texts[cue.start]
    if head in _ASKING:
        return False
    said = talk.texts[max(talk.sentence(cue.start)[0], cue.start - _TAG_WITHIN) : cue.start]
    return head in said or (bool(said) and said[-1] in _MODALS)


_MODALS = frozenset("can could will 'll would 'd may might must should shall to".split())
_TAG_WITHIN = 8
_ANSWERED = frozenset({"so", "yes", "nope", "aye", "yeah", "nah"})


def _noun_before(talk: Talk, vocabulary: Vocabulary, cue: Found) -> bool:
    """Whether a part of the plant is the subject: "leaves are that dark green"."""
    near = vocabulary.parts.find(talk.texts, max(0, cue.start - 3), cue.start)
    return any(p.end == cue.start for p in near)
