"""Decisions that are a whole clause or one word: "so that goes", "no, she stays", "Bin."

The same words inside a longer clause say something else: "so cerise it stays", "it goes
and goes", "it stays low".
"""

from diary.linking.decisions.answered import Answer, answer
from diary.linking.decisions.decided_of import is_of_the_plant
from diary.linking.decisions.undecided import somebody_elses
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.tokens import COMMA

_POINTING = frozenset({"that", "this", "the", "these", "those"})
_LEADS = frozenset(
    "so and but no nope nah right yes yeah aye well then ok okay now or sorry afraid mate "
    "love anyway therefore either".split()
)


def is_a_whole_clause(mentions: Mentions, found: Found) -> bool:
    """ "so that goes", "no, she stays"; not "so cerise it stays", "it goes and goes"."""
    talk = mentions.talk
    if talk.texts[found.end : found.end + 2] == ("and", talk.texts[found.end - 1]):
        return False
    low, high = talk.clause(found.start)[0], talk.clause(found.end - 1)[1]
    after = talk.texts[found.end : found.end + 1]
    if talk.texts[found.end - 1] == "out" and after in _IN_FLOWER:
        return False  # "it was out at Easter and it's out now"
    padding = {i for cue in mentions.cue("padding", low, high) for i in range(cue.start, cue.end)}
    ends = all(i in padding for i in range(found.end, high)) or (after and after[0] in _TAILS)
    ends = ends or _goes_on_anew(mentions, found.end)
    named = mentions.colours_in(found.start - 1, found.start) or _off_to_a_show(mentions, found)
    return bool(ends) and not named and _is_led(mentions, found, low, padding)


def _goes_on_anew(mentions: Mentions, at: int) -> bool:
    """ "that one stays | i don't have many", "so it stays | 23-06"; not "it stays the same"."""
    talk = mentions.talk
    if talk.punctuated or at >= len(talk.texts):
        return False
    after = talk.texts[at]
    return after in _BEGINNING or (after in _SUBJECTS and talk.texts[at + 1 : at + 2] in _VERBS)


_SUBJECTS = frozenset("it she he they we you that this these those there".split())
_VERBS = tuple(
    (verb,)
    for verb in "'s is 'll will 'd would has had was are 're do does did can could goes".split()
)
_BEGINNING = frozenset("i what who why where how my our yes yeah hang hello".split())
_IN_FLOWER = (("now",), ("today",), ("already",), ("again",), ("too",))


def _is_led(mentions: Mentions, found: Found, low: int, padding: set[int]) -> bool:
    """Nothing but "so", "no, that" before it; before a "so" may stand what it follows from."""
    talk = mentions.talk
    at = found.start
    while at > low and (at - 1 in padding or talk.texts[at - 1] in _LEADS | _POINTING):
        at -= 1
    relative = talk.texts[at] == "that" and at and talk.texts[at - 1] in _RELATED
    return (at == low and not relative) or "so" in talk.texts[at : found.start]


_RELATED = frozenset("ones one all those any plants flowers things everything anything".split())


_TAILS = frozenset(
    "och oh next okay ok anyway then sorry and but so i no love mate now that too today "
    "tonight".split()
)


def _off_to_a_show(mentions: Mentions, found: Found) -> bool:
    """ "it'd not disgrace me in the three pot class | so it's going": where to was just told."""
    if found.label != "discard" or "going" not in mentions.talk.texts[found.start : found.end]:
        return False
    low = max(0, found.start - _JUST_TOLD)
    told = mentions.vocabulary.decisions.find(mentions.talk.texts, low, found.start)
    return any(f.label == "show" for f in told)


_JUST_TOLD = 12


def _begins_anew(mentions: Mentions, found: Found, stop: int) -> bool:
    """ "i've six of those | so bin", in captions "we'll say no more about it | heap"."""
    talk = mentions.talk
    before = talk.texts[found.start - 1]
    if before == "no" and found.label not in ("keep", "discard", "watch"):
        return False  # "no cuttings"
    rounded = talk.texts[found.end : found.end + 1] in _ROUNDED
    ends = not talk.punctuated and (
        (stop == found.end and before in _ENDINGS)
        or (rounded and (before in _ENDINGS | _ANSWERS or _tagged(talk.texts, found.start)))
    )
    ends = ends and talk.texts[found.start] not in ("out", "gone")  # "the heater's gone out"
    return before == "so" or ends


def _tagged(texts: tuple[str, ...], at: int) -> bool:
    """ "he's no good is he | bin", "it's lovely isn't it | keep"."""
    asks = texts[max(0, at - 3) : at - 1]
    return texts[at - 1] in _TAGGED and bool({"is", "does", "has", "was"} & set(asks[-2:]))


_TAGGED = frozenset({"it", "he", "she"})
_ANSWERS = frozenset(
    {"yes", "yep", "yeah", "aye", "no", "nope", "nah", "right", "okay", "definitely"}
)
_ROUNDED = tuple(
    (word,)
    for word in "sorry obviously definitely please then love tonight tomorrow certainly yes".split()
)


def _in_a_sentence(mentions: Mentions, start: int, stop: int) -> bool:
    """ "On White Lies Linnet, maybe."; not "Maybe."."""
    talk = mentions.talk
    return talk.tokens[stop - 1].mark == COMMA or talk.sentence(start)[0] != start


_ENDINGS = frozenset(
    "it me one no nope nah then sorry right well though mate love yes yeah".split()
)


def in_one_word(mentions: Mentions, kept: list[Statement]) -> list[Statement]:
    """A note-taker's one word that is a sentence or clause by itself: "Keep.", "Bin."."""
    talk, found = mentions.talk, []
    taken = {i for s in kept for i in range(s.start, s.end)}
    for f in mentions.phrases(mentions.vocabulary.decisions_bare):
        start, stop = talk.clause(f.start)
        anew = _begins_anew(mentions, f, stop)
        tagged = anew and _tagged(talk.texts, f.start)
        if anew:
            start, stop = f.start, min(stop, f.end + 1)
        alone = (
            start == f.start
            and (stop - f.start <= 2 or anew)
            and (talk.tokens[stop - 1].mark or anew)
            and (stop == f.end or anew or talk.texts[f.end] in ("it", "this", "that"))
            and is_of_the_plant(mentions, Found(f.start, stop, f.label))
            and not somebody_elses(mentions, Found(f.start, stop, f.label))
            and (tagged or answer(mentions, f) not in (Answer.OPEN, Answer.NO))
            and not (f.label == "watch" and _in_a_sentence(mentions, f.start, stop))
        )
        if alone and not taken & set(range(f.start, f.end)):
            found.append(
                Statement(
                    trait="decision",
                    value=f.label,
                    start=f.start,
                    end=f.end,
                    rule="a decision in one word",
                    score=0.88,
                )
            )
    return found
