"""Counts: heads, buds, shoots, cuttings that exist, seeds sown and germinated.

"three heads open", "a dozen buds behind them", "count the heads for me. Five, I make it".
Cuttings that are only wanted are a decision, no count; petals, pots and people are none.
"""

from diary.linking.counts.counted_gone import is_asked, is_gone
from diary.linking.counts.counted_later import (
    counted_after,
    counted_of_them,
    held_now,
    left_of,
    summed_up,
)
from diary.linking.counts.counts_asked import asked_after, is_heading
from diary.linking.counts.cuttings_of_it import cuttings_of_it
from diary.linking.counts.recounts import recounted
from diary.linking.counts.seeds_told import find_seeds
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.misheard.numbers import HOMOPHONES
from diary.reading.numerals import Quantity
from diary.reading.phrases import Found
from diary.reading.spoken import amount_at

_NOT_BEFORE = frozenset({"last", "first", "to", "page", "for", "than", "these", "those"})
_BEFORE_HOMOPHONE = frozenset(
    "'s are is got have with has 've there only just about you still and but had carrying "
    "showing all 'd make counted more another".split()
)
_STILL_LED = frozenset({"down", "back", "up", "got"})  # "down to two shoots"
_STATE = frozenset(
    "open out on to up now still left and showing coming opening over behind underneath".split()
)
_WANTED = frozenset(
    "going shall should strike want wants need needs take taking 'll will like get please least "
    "wanted promised promise owe owed offered asked ask ordered order sell".split()
)
_SINGLE = frozenset({"single", "solitary", "lone", "lonely", "sole"})
_ONLY = frozenset({"a", "one", "the", "this", "its", "only"})
_PLACES = frozenset({"on", "in", "from", "off", "to", "under", "behind"})
_WHOLE = frozenset({"the", "its", "these", "those", "them", "my", "his", "her"})
_MOST_BETWEEN = 3


def find_counts(mentions: Mentions) -> tuple[Statement, ...]:
    """All counts of the talk, in order."""
    found: list[Statement] = []
    nouns = [
        n for n in _longest(mentions.phrases(mentions.vocabulary.counted)) if n.label != "seeds"
    ]
    uncounted: list[Found] = []
    for previous, noun in zip([None, *nouns], nouns, strict=False):
        amount = (
            _heading(mentions, noun, previous)
            or _amount_before(mentions, noun)
            or asked_after(mentions, noun)
            or counted_after(mentions, noun)
            or summed_up(mentions, noun)
        )
        if amount is None:
            uncounted.append(noun)
        elif _holds(mentions, noun, amount):
            found.append(_count(noun, amount))
            left = left_of(mentions, noun, amount)
            found += [_count(noun, left)] if left is not None else []
    for noun, amount in counted_of_them(mentions, uncounted, nouns):
        if _holds(mentions, noun, amount):
            found.append(_count(noun, amount))
    counted = {s.start for s in found}
    for noun, amount in held_now(mentions, nouns, counted):
        if amount.start not in counted and _holds(mentions, noun, amount):
            found.append(_count(noun, amount))
    found += [_count(Found(q.end, q.end + 2, "count_cuttings"), q) for q in _of_it(mentions, found)]
    seeds, doubted = find_seeds(mentions)
    return tuple(recounted(mentions, [*found, *seeds], doubted))


def _heading(mentions: Mentions, noun: Found, previous: Found | None) -> Quantity | None:
    """The figure after a heading, and after the last of a row of headings."""
    headed = is_heading(mentions, noun)
    near = previous is not None and noun.start - previous.end <= 4
    follows = near and previous is not None and is_heading(mentions, previous)
    if not (headed or follows) or noun.end >= len(mentions.talk.texts):
        return None
    return amount_at(mentions.talk, noun.end)


def _of_it(mentions: Mentions, found: list[Statement]) -> list[Quantity]:
    told = {s.start for s in found}
    return [q for q in cuttings_of_it(mentions) if q.start not in told]


def _holds(mentions: Mentions, noun: Found, amount: Quantity) -> bool:
    if amount.value != int(amount.value):
        return False
    if mentions.scopes.habits(amount.start) & {Habit.NOT_RECALLED, Habit.WISH}:
        return False
    if noun.label == "count_cuttings":
        return _exist(mentions, amount, noun)
    lead = mentions.talk.texts[max(0, amount.start - 4) : amount.start]
    if any(lead[i : i + 2] in _WILL_BE and lead[i - 1 : i] != ("that",) for i in range(len(lead))):
        return False  # "there'll be thirty heads by July"; not "that'll be seven heads, then"
    return not is_gone(mentions, noun, amount) and not is_asked(mentions, amount)


_WILL_BE = tuple((w, be) for w in ("'ll", "will") for be in "be have carry hold make throw".split())


def _count(noun: Found, amount: Quantity) -> Statement:
    return Statement(
        trait=noun.label,
        value=int(amount.value),
        unit="count",
        start=amount.start,  # not the noun's: "not many buds, only the three"
        end=max(amount.end, noun.end) if amount.start <= noun.end + 1 else amount.end,
        rule="a number of things counted",
        score=0.93,
    )


def _longest(found: list[Found]) -> list[Found]:
    kept: list[Found] = []
    for f in sorted(found, key=lambda f: (f.start, -f.end)):
        if not kept or f.start >= kept[-1].end:
            kept.append(f)
    return kept


def _amount_before(mentions: Mentions, noun: Found) -> Quantity | None:
    """The number that counts the noun, with words like "open" or "more" between."""
    talk = mentions.talk
    between = mentions.vocabulary.between[noun.label]
    i = noun.start
    for _ in range(_MOST_BETWEEN + 1):
        for start in range(max(0, i - 5), i):
            amount = amount_at(talk, start)
            if amount is None or amount.value != int(amount.value):
                continue
            if amount.end == i and not mentions.masked[start]:
                if _is_led(mentions, start):
                    break
                placed = talk.texts[max(0, start - 2) : start + 1]
                if placed[-1:] == ("one",) and placed[:1] and placed[0] in _PLACES:
                    return None  # "eighteen buds on the one shoot"
                return amount if not talk.between(start, i, (".",)) else None
        if _misheard(mentions, i - 1, noun):
            return Quantity(i - 1, i, HOMOPHONES[talk.texts[i - 1]])
        if i > 1 and talk.texts[i - 1] in _SINGLE and talk.texts[i - 2] in _ONLY:
            return Quantity(i - 2, i, 1)  # "a single truss"
        if i > 1 and talk.texts[i - 2] == "of" and talk.texts[i - 1] in _WHOLE:
            i -= 2  # "four of the trusses"
            continue
        if i == 0 or talk.texts[i - 1] not in between or talk.tokens[i - 1].mark in (".", "?"):
            return None
        i -= 1
    return None


def _misheard(mentions: Mentions, at: int, noun: Found) -> bool:
    """ "there's for buds", "and to trusses out"; not "the same goes for heads"."""
    texts = mentions.talk.texts
    if at < 1 or texts[at] not in HOMOPHONES or not texts[noun.end - 1].endswith("s"):
        return False
    on_it = texts[noun.end : noun.end + 2] in (("on", "it"), ("on", "her"), ("on", "him"))
    if on_it and mentions.talk.clause(at)[0] == at:
        return True  # "for heads on it"
    if texts[at] == "ate" and mentions.talk.clause(at)[0] == at:
        return True  # "ate heads on this"
    if texts[at - 1] not in _BEFORE_HOMOPHONE:
        return False
    sure = texts[at] in ("ate", "won") or texts[at - 1] not in ("and", "but", "you", "all", "is")
    return sure or bool(_STATE & set(texts[noun.end : noun.end + 1])) or texts[at - 1] == "you"


def _is_led(mentions: Mentions, at: int) -> bool:
    """ "the last two heads", "page four": a number that is told for another reason."""
    talk = mentions.talk
    if at == 0 or talk.tokens[at - 1].mark:
        return False
    if at > 1 and talk.texts[at - 1] == "to" and talk.texts[at - 2] in _STILL_LED:
        return False
    if talk.texts[at - 1] == "first" and talk.texts[at + 1 : at + 2] == ("cuttings",):
        return False  # "the first three cuttings off it have rooted"
    if talk.texts[at - 1] == "last" and "down" in talk.texts[max(0, at - 5) : at]:
        return False  # "down to its last three buds"
    return talk.texts[at - 1] in _NOT_BEFORE


def _exist(mentions: Mentions, amount: Quantity, noun: Found) -> bool:
    """Whether the cuttings are there: "three cuttings root off it", "I've got five of it"."""
    talk = mentions.talk
    low, high = talk.sentence(noun.start)[0], talk.sentence(max(noun.start, amount.start))[1]
    low, high = max(low, amount.start - 5), min(high, max(noun.end, amount.end) + 8)
    lead = talk.texts[max(low, amount.start - 4) : amount.start]
    if _WANTED & set(lead) or {"please", "wanted"} & set(talk.texts[noun.end : high]):
        return False
    if _to_come(mentions, noun, low):
        return False
    return bool(mentions.vocabulary.cuttings_exist.find(talk.texts, low, high))


def _to_come(mentions: Mentions, noun: Found, low: int) -> bool:
    """ "six cuttings to be struck on Monday", "two cuttings off him as soon as it cools"."""
    talk = mentions.talk
    after = talk.texts[noun.end : min(talk.sentence(noun.end - 1)[1], noun.end + 7)]
    if any(after[i : i + 2] in _TO_DO for i in range(len(after))):
        return True
    taken = _TAKEN & {*talk.texts[low : noun.start], *after}
    return not taken and any(after[i : i + 2] in _SOON for i in range(len(after)))


_TO_DO = tuple(("to", w) for w in "be take strike root go come pot".split())
_TAKEN = frozenset(
    "have has 've 's had took taken rooted rooting struck got there made are".split()
)
_SOON = (
    *(("as", w) for w in ("soon", "and")),
    *((w, it) for w in ("when", "once", "after") for it in ("it", "the", "he", "she", "i", "we")),
    *(("next", w) for w in ("week", "month", "time", "spring")),
    *((w, d) for w in ("on", "by", "come", "in") for d in "monday sunday august september".split()),
)
