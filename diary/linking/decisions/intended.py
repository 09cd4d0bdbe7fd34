"""Decisions told by a deed and an intention apart in one clause.

Word order varies more than words do: "some cuttings I will take after the rains",
"cuttings to be taken at the earliest", "this one I will be retaining only". A deed alone
decides nothing ("cuttings root easily in here"), and told as past it is no intention.
"""

from collections.abc import Iterable

from diary.linking.decisions.decided_of import is_of_the_plant
from diary.linking.decisions.undecided import does_not_hold, under_condition
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_REACH, _FRONTED = 8, 5
_UNMEANT = {
    Habit.DENIAL,
    Habit.WISH,
    Habit.REPORTED,
    Habit.QUESTION,
    Habit.HISTORY,
    Habit.HYPOTHETICAL,
}


def find_intended(mentions: Mentions, decided: Iterable[Statement]) -> list[Statement]:
    """The deeds with an intention beside them, where no way of deciding was found."""
    taken: dict[str, set[int]] = {}
    for s in decided:
        taken.setdefault(str(s.value), set()).update(range(s.start, s.end))
    said = {i for tokens in taken.values() for i in tokens}
    found: list[Statement] = []
    for deed in _longest(
        mentions.phrases(mentions.vocabulary.decisions_deeds, mentions.vocabulary.decisions_never)
    ):
        if deed.label == "discard" and mentions.talk.texts[deed.start - 1] in _NOUN_LEADS:
            continue
        if deed.label == "propagate" and not _of_cuttings(mentions, deed):
            continue
        low, high = _reach(mentions, deed)
        beside = said if not _is_cuttings(mentions, deed) else taken.get(deed.label, set())
        if beside & set(range(low, high)) or said & set(range(deed.start, deed.end)):
            continue
        if not _intended(mentions, deed, low, high) or _told_as_past(mentions, deed, low, high):
            continue
        if mentions.scopes.habits(deed.start, deed.end) & _UNMEANT:
            continue
        if not is_of_the_plant(mentions, deed) or does_not_hold(mentions, deed):
            continue
        said |= set(range(deed.start, deed.end))
        taken.setdefault(deed.label, set()).update(range(deed.start, deed.end))
        found.append(
            Statement(
                trait="decision",
                value=deed.label,
                start=deed.start,
                end=deed.end,
                rule="a deed and an intention",
                score=0.72,
                firm=not under_condition(mentions, deed),
            )
        )
    return found


def _is_cuttings(mentions: Mentions, deed: Found) -> bool:
    """ "retained, and six cuttings to be struck": told beside another decision."""
    words = set(mentions.talk.texts[deed.start : deed.end])
    return deed.label == "propagate" and bool({"cuttings", "slips"} & words)


def _of_cuttings(mentions: Mentions, deed: Found) -> bool:
    """ "I'll be taking them tonight", "I'll take eight more" where slips were just named; not
    "I'll take them indoors"."""
    texts = mentions.talk.texts
    if texts[deed.end - 1] not in ("them", "more", "load", "batch", "lot"):
        return True
    named = texts[max(0, deed.start - _NAMED_WITHIN) : deed.start]
    return bool(mentions.vocabulary.classes["cuttings"] & set(named))


_NAMED_WITHIN = 18


def _reach(mentions: Mentions, deed: Found) -> tuple[int, int]:
    """The clause of the deed; without marks, the words around it."""
    talk = mentions.talk
    low, high = talk.sentence(deed.start)
    if talk.punctuated:
        low, high = talk.clause(deed.start)[0], talk.clause(deed.end - 1)[1]
    if (
        talk.texts[deed.end : deed.end + 1] in (("i",), ("we",))
        and not talk.tokens[deed.end - 1].mark
    ):
        high = max(high, min(deed.end + _FRONTED, len(talk.texts)))  # "cuttings I will take"
    return max(low, deed.start - _REACH), min(high, deed.end + _REACH)


def _intended(mentions: Mentions, deed: Found, low: int, high: int) -> bool:
    return any(
        cue.start < deed.start or cue.start >= deed.end
        for cue in mentions.cue("intended", low, high)
        if cue.end <= high
    )


def _told_as_past(mentions: Mentions, deed: Found, low: int, high: int) -> bool:
    """ "I took six cuttings"; not "I must get this one struck", "four rooted and I'll do more"."""
    texts = mentions.talk.texts
    will = [i for i in range(low, deed.start) if texts[i] in _WILL]
    around = (*range(max(will, default=low), deed.start), *range(deed.end, high))
    return any(
        texts[i] in _PAST
        and not _EVERYTHING & set(texts[max(0, i - 3) : i])
        and texts[i - 1 : i] != ("be",)
        and texts[i + 1 : i + 2] not in _MINDED
        for i in around
    )


def _longest(found: Iterable[Found]) -> list[Found]:
    kept: list[Found] = []
    covered: set[int] = set()
    for f in sorted(found, key=lambda f: (f.start - f.end, f.start)):
        span = set(range(f.start, f.end))
        if not covered & span:
            covered |= span
            kept.append(f)
    return sorted(kept, key=lambda f: f.start)


# "the compost's come up lovely": the thing, and no deed.
_NOUN_LEADS = frozenset("the of some fresh potting more bag bags".split())
_WILL = frozenset({"'ll", "will", "shall", "must"})
_EVERYTHING = frozenset({"everything", "anything", "whatever"})  # "everything I've got"
_MINDED = tuple((word,) for word in "decided settled resolved agreed promised up".split())
_PAST = frozenset(
    "took had was were went gave came made set did got 've been said told bred used put "
    "rooted struck already yesterday last ago since".split()
)
