"""Decisions: keep, discard, watch, propagate, breed, show, name, repot.

A denied decision is none ("I won't be breeding from it"), one under a condition is only
proposed ("I might name it", "if it does nothing by June it's for the heap").
"""

from diary.linking.decisions.answered import Answer, answer
from diary.linking.decisions.crosses_to_make import crosses_to_make
from diary.linking.decisions.decided_of import is_of_the_plant
from diary.linking.decisions.for_a_time import for_a_time
from diary.linking.decisions.intended import find_intended
from diary.linking.decisions.judged_later import find_judged_later
from diary.linking.decisions.overturned import denied_by, overturned, put_off
from diary.linking.decisions.padding import padded
from diary.linking.decisions.perhaps import only_perhaps
from diary.linking.decisions.placed import bound_for_it
from diary.linking.decisions.refused import find_refused
from diary.linking.decisions.undecided import (
    confirmed,
    does_not_hold,
    followed,
    under_condition,
)
from diary.linking.decisions.weighed import weighed
from diary.linking.decisions.whole_clauses import in_one_word, is_a_whole_clause
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

# Words of denial that belong to a way of deciding: "not worth the space", "not going anywhere".
_OWN_DENIAL = frozenset({"not", "no", "never", "without", "nowhere", "cannot", "hardly", "nobody"})
# "not going anywhere" keeps, "no room for it" discards; "taking no cuttings" is no decision.
_BY_DENIAL = frozenset({"keep", "discard", "watch"})


def find_decisions(mentions: Mentions) -> tuple[Statement, ...]:
    """All decisions of the talk in order, one of a kind at one place."""
    vocabulary, talk = mentions.vocabulary, mentions.talk
    found = mentions.phrases(vocabulary.decisions, vocabulary.decisions_never)
    found += padded(mentions, vocabulary.decisions, vocabulary.decisions_never, found)
    found += [
        f for f in mentions.phrases(vocabulary.decisions_last) if is_a_whole_clause(mentions, f)
    ]
    found = [f for f in found if not _runs_into_verb(mentions, f)]
    kept: list[Statement] = []
    taken: set[int] = set()
    unmeant: dict[str, set[int]] = {}  # "show bench" of "on the show bench" is meant no more
    for f in sorted(found, key=lambda f: (-(f.end - f.start), f.start)):
        span = set(range(f.start, f.end))
        if taken & span or span <= unmeant.get(f.label, set()):
            continue
        words = talk.texts[f.start : f.end]
        own = f.label in _BY_DENIAL and bool(_OWN_DENIAL & set(words))
        if f.label not in _BY_DENIAL and _OWN_DENIAL & set(words):
            continue
        answered = answer(mentions, f)
        if answered is Answer.OPEN or _not_meant(mentions, f):
            unmeant.setdefault(f.label, set()).update(range(f.start, f.end))
            continue
        if answered is Answer.NO or (not own and denied_by(mentions, f) is not None):
            if (other := overturned(mentions, f)) is not None:
                taken |= span
                kept.append(other)
            continue
        firm = not only_perhaps(mentions, f) and not _supposed(mentions, f)
        firm = firm and not under_condition(mentions, f)
        firm = firm or confirmed(mentions, f)
        taken |= span
        kept.append(
            Statement(
                trait="decision",
                value=f.label,
                start=f.start,
                end=f.end,
                rule="a way of deciding",
                score=_score(f.label, len(words)),
                firm=firm,
            )
        )
    kept = for_a_time(mentions, kept)
    kept += crosses_to_make(mentions, taken)
    kept += in_one_word(mentions, kept)
    kept += bound_for_it(mentions, kept)
    kept += _once_more(mentions)
    kept += find_refused(mentions, kept)
    kept += find_intended(mentions, kept)
    kept += find_judged_later(mentions, kept)
    return tuple(weighed(mentions, kept))


def _not_meant(mentions: Mentions, found: Found) -> bool:
    """Whether it is reported, wished, long past, of another thing, or does not hold."""
    return (
        (_reported(mentions, found) and not followed(mentions, found))
        or _only_wished(mentions, found)
        or _long_ago(mentions, found)
        or not is_of_the_plant(mentions, found)
        or does_not_hold(mentions, found)
        or put_off(mentions, found)
    )


def _reported(mentions: Mentions, found: Found) -> bool:
    """ "my wife says keep it"; not "she thinks not, so it shall have another year", nor "I said
    wait, no, bin it"."""
    texts = mentions.talk.texts
    return any(
        scope.habit is Habit.REPORTED
        and not {"so", "but"} & set(texts[scope.cue : found.start])
        and not (texts[scope.cue] in ("i", "we") and "no" in texts[scope.cue : found.start])
        for i in range(found.start, found.end)
        for scope in mentions.scopes.by_token[i]
    )


def _only_wished(mentions: Mentions, found: Found) -> bool:
    """ "I'd hoped to name it"; not "I want a dozen of these", which is a plan."""
    texts = mentions.talk.texts
    return any(
        texts[scope.cue : scope.cue + 2] not in _WANTED or found.start - scope.cue > 1
        for i in range(found.start, found.end)
        for scope in mentions.scopes.by_token[i]
        if scope.habit is Habit.WISH
    )


def _supposed(mentions: Mentions, found: Found) -> bool:
    """ "if it's no better I'd bin it"; not "let's see if it does that twice"."""
    return any(
        scope.habit is Habit.HYPOTHETICAL and not found.start < scope.cue < found.end
        for i in range(found.start, found.end)
        for scope in mentions.scopes.by_token[i]
    )


_WANTED = (("i", "want"), ("we", "want"), ("want", "a"))


def _long_ago(mentions: Mentions, found: Found) -> bool:
    """ "last year I binned it"; not "I put its own pollen on it last week", which still runs."""
    texts = mentions.talk.texts
    lately = found.label in ("breed", "propagate")
    return any(
        not (lately and texts[scope.cue + 1 : scope.cue + 2] in (("week",), ("fortnight",)))
        for i in range(found.start, found.end)
        for scope in mentions.scopes.by_token[i]
        if scope.habit is Habit.HISTORY
    )


def _runs_into_verb(mentions: Mentions, found: Found) -> bool:
    """ "bye bye | that's one fifty", "a pot, that would pay": the last word is already the
    next statement's. So is that of "the pot that was on the heap"."""
    tokens = mentions.talk.tokens
    if tokens[found.start].text == "pot" and _is_a_noun(mentions, found.start):
        return True
    if found.end >= len(tokens) or tokens[found.end].text not in _CONTRACTED:
        return False
    return tokens[found.end - 1].word == tokens[found.end].word or (
        found.end - found.start > 1 and bool(tokens[found.end - 2].mark)
    )


def _is_a_noun(mentions: Mentions, at: int) -> bool:
    """ "the pot", "chipped pot, you again"; not "I'll pot it on", "Pot on."."""
    return mentions.talk.clause(at)[0] != at and mentions.talk.texts[at - 1] not in _BEFORE_POTTING


_BEFORE_POTTING = frozenset(
    "to 'll will must shall should can i we and so then let please now just needs wants gonna "
    "tomorrow tonight yes no right well or better".split()
)
_CONTRACTED = frozenset(
    "'s 'll 'd 've 're 'm not is was will would can could should has had must".split()
)
_SOON = frozenset(
    "'ll will going shall be want today tonight tomorrow next afternoon spring summer".split()
)


# What is said of keeping, discarding and showing is said of much else too (measured).
_OFTEN_MEANT_OTHERWISE = frozenset({"keep", "discard", "show"})


def _score(decision: str, words: int) -> float:
    """How far a way of deciding is to be believed."""
    if decision in _OFTEN_MEANT_OTHERWISE:
        return 0.82
    return 0.9 if words > 1 else 0.84


def _once_more(mentions: Mentions) -> list[Statement]:
    """ "I've bred from it three times already and I'll do it again"."""
    talk = mentions.talk
    done = {f.end: f for f in mentions.phrases(mentions.vocabulary.decisions_done)}
    found = []
    for cue in mentions.cue("again"):
        reach = range(max(0, cue.start - _ONCE_MORE_REACH), cue.start + 1)
        before = [done[end] for end in reach if end in done]
        soon = _SOON & set(talk.texts[max(0, cue.start - 4) : cue.start])
        if not before or not soon or Habit.DENIAL in mentions.scopes.habits(cue.start, cue.end):
            continue
        found.append(
            Statement(
                trait="decision",
                value=before[-1].label,
                start=cue.start,
                end=cue.end,
                rule="to be done once more",
                score=0.84,
            )
        )
    return found


_ONCE_MORE_REACH = 14
