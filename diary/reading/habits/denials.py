"""What is denied: "no eye to speak of", "the spots are gone"."""

from diary.reading.habits.scope import FAR, NEAR, Habit, Scope, cues
from diary.reading.numerals import quantity
from diary.reading.phrases import Found
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

# After "no" these begin an answer, not a denial: "no that can go on the heap".
_ANSWER = frozenset(
    "it that this i he she they there we let hang hold sorry wait the you not no well "
    "what actually make call sir madam love".split()
)
_CUT_DENIAL = frozenset({"but", "except", "though", "although", "just", "only", "more", "rather"})
_PARTICLES = frozenset(
    {"a", "an", "the", "it", "with", "this", "that", "there", "its", "he", "she", "i"}
)


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
        if talk.texts[cue.end - 1] == "from" and quantity(talk.texts, cue.end):
            continue  # "it's gone from twenty centimetres to thirty"
        if cue.end - cue.start == 1 and (_corrects(talk, vocabulary, cue) or _tag(talk, cue)):
            continue
        stop = min(talk.clause(cue.start)[1], _reach(talk, cue.end))
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
            if text == "to" and talk.texts[cue.end - 1] == "from":
                stop = i  # "gone from plum to black"
                break
            if (text in _CUT_DENIAL and i > cue.end) or (text == "and" and following in _PARTICLES):
                stop = i
                break
        found.append(Scope(Habit.DENIAL, cue.end, stop, cue.start))
    return found


def _reach(talk: Talk, at: int) -> int:
    """As far as a denial holds; in captions "seen any sign of" does not count to its length."""
    if talk.punctuated:
        return at + FAR
    sought = at
    while sought < len(talk.texts) and talk.texts[sought] in _SOUGHT:
        sought += 1
    return (sought if talk.texts[sought - 1] == "of" else at) + NEAR


_SOUGHT = frozenset("see seen find found had got any a sign signs trace traces hint of".split())


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
    if _none_in_it(talk, vocabulary, cue):
        return False
    number_before = any(quantity(talk.texts, i) for i in range(max(0, cue.start - 2), cue.start))
    if number_before and after and quantity(talk.texts, after[0]) and talk.texts[after[0]] != "a":
        return True
    further = range(max(0, cue.start - 6), max(0, cue.start - 2))
    if (
        after
        and talk.texts[after[0]] not in ("a", "one", "two")
        and quantity(talk.texts, after[0])
        and any(quantity(talk.texts, i) for i in further)
    ):
        return True  # "twenty seeds I sowed no thirty it says"
    if vocabulary.units.at(talk.texts, cue.start - 1) and after:
        again = after[0] + (talk.texts[after[0]] in ("a", "an"))
        return bool(vocabulary.units.at(talk.texts, again) or quantity(talk.texts, again))
    if talk.texts[max(0, cue.start - 2) : cue.start - 1] == ("no",):
        return False  # "no white, no cream"
    colour_before = vocabulary.colours.at(talk.texts, cue.start - 1) is not None
    return colour_before and any(vocabulary.colours.at(talk.texts, i) for i in after)


def _none_in_it(talk: Talk, vocabulary: Vocabulary, cue: Found) -> bool:
    """ "pure white no cream in it at all": what is not in it sets nothing right."""
    colour = vocabulary.colours.at(talk.texts, cue.end)
    if colour is None:
        return False
    rest = talk.texts[colour.end : colour.end + 2]
    return rest in _IN_IT or rest[:1] in (("anywhere",), ("whatsoever",), ("whatever",))


_IN_IT = tuple((a, b) for a in ("in", "about", "to", "on") for b in ("it", "her", "him", "that"))
_IN_IT = (*_IN_IT, ("at", "all"), ("to", "speak"))


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
