"""Counts: heads, buds, shoots, cuttings that exist, seeds sown and germinated.

"three heads open", "a dozen buds behind them", "only two of the eight seeds came up".
Cuttings that are only wanted are a decision, no count; petals, pots and people are none.
"""

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity, quantity
from diary.reading.phrases import Found
from diary.reading.scope import Habit

_NOT_BEFORE = frozenset({"the", "last", "first", "to", "page", "for", "than", "these", "those"})
_WANTED = frozenset(
    {
        "want",
        "wants",
        "take",
        "taking",
        "need",
        "like",
        "get",
        "please",
        "least",
        "try",
        "root",
        "going",
        "'ll",
        "will",
        "have",
    }
)
_HOMOPHONES = {"for": 4, "to": 2, "too": 2, "ate": 8, "won": 1}
_MOST_BETWEEN = 3
_SEED_REACH = 9


def find_counts(mentions: Mentions) -> tuple[Statement, ...]:
    """All counts of the talk, in order."""
    found: list[Statement] = []
    nouns = _longest(mentions.phrases(mentions.vocabulary.counted))
    for noun in nouns:
        amount = _amount_before(mentions, noun) or _counted_after(mentions, noun)
        if amount is None or amount.value != int(amount.value) or noun.label == "seeds":
            continue
        if mentions.scopes.habits(amount.start) & {Habit.NOT_RECALLED, Habit.WISH}:
            continue
        if noun.label == "count_cuttings" and not _exist(mentions, amount, noun):
            continue
        found.append(
            _count(
                noun.label,
                amount,
                min(amount.start, noun.start),
                max(amount.end, noun.end),
                "a number of things counted",
            )
        )
    found += _seeds(mentions, [n for n in nouns if n.label == "seeds"])
    return tuple(sorted(found, key=lambda s: s.start))


def _count(trait: str, amount: Quantity, start: int, end: int, rule: str) -> Statement:
    return Statement(
        trait=trait,
        value=int(amount.value),
        unit="count",
        start=start,
        end=end,
        rule=rule,
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
            amount = quantity(talk.texts, start)
            if amount is not None and amount.end == i and not mentions.masked[start]:
                if (
                    start
                    and talk.texts[start - 1] in _NOT_BEFORE
                    and talk.texts[start - 1] != "the"
                ):
                    break
                return amount if not talk.between(start, i - 1, (".",)) else None
        if (
            i
            and talk.texts[i - 1] in _HOMOPHONES
            and i > 1
            and talk.texts[i - 2] in ("'s", "are", "is", "got", "have", "with", "has", "'ve")
        ):
            return Quantity(i - 1, i, _HOMOPHONES[talk.texts[i - 1]])
        if i == 0 or talk.texts[i - 1] not in between or talk.tokens[i - 1].mark in (".", "?"):
            return None
        i -= 1
    return None


def _counted_after(mentions: Mentions, noun: Found) -> Quantity | None:
    """ "masses of side shoots, I counted eleven"."""
    talk = mentions.talk
    if talk.tokens[noun.end - 1].mark == "," or talk.texts[noun.end : noun.end + 2] == (
        "are",
        "there",
    ):
        at = noun.end + (2 if talk.texts[noun.end : noun.end + 1] == ("are",) else 0)
        told = quantity(talk.texts, at)  # "Buds: seven", "buds are there 23"
        if told is not None and not mentions.vocabulary.counted.at(talk.texts, told.end):
            ends = (
                told.end == len(talk.texts) or talk.tokens[told.end - 1].mark or not talk.punctuated
            )
            return told if ends and talk.texts[at] != "a" else None
    for i in range(noun.end, min(noun.end + 6, len(talk.texts) - 1)):
        if talk.texts[i] in ("counted", "count") or talk.texts[i : i + 2] == ("make", "it"):
            at = i + 2 if talk.texts[i] == "make" else i + 1
            amount = quantity(talk.texts, at)
            ends = amount is not None and not mentions.vocabulary.counted.at(talk.texts, amount.end)
            return amount if ends else None
    return None


def _exist(mentions: Mentions, amount: Quantity, noun: Found) -> bool:
    """Whether the cuttings are there: "three cuttings root off it", "I've got five of it"."""
    talk = mentions.talk
    low, high = talk.sentence(noun.start)
    low, high = max(low, amount.start - 5), min(high, noun.end + 8)
    cues = mentions.vocabulary.cuttings_exist.find(talk.texts, low, high)
    lead = set(talk.texts[max(low, amount.start - 4) : amount.start])
    if {
        "want",
        "wants",
        "need",
        "take",
        "taking",
        "'ll",
        "will",
        "like",
        "get",
        "please",
        "least",
    } & lead or "please" in talk.texts[noun.end : high]:
        return False
    return bool(cues)


def _seeds(mentions: Mentions, nouns: list[Found]) -> list[Statement]:
    """Seeds sown and germinated: "I sowed ten seeds and three came up"."""
    talk, found = mentions.talk, []
    for noun in nouns:
        amount = _amount_before(mentions, noun)
        if amount is None:
            continue
        if mentions.scopes.habits(amount.start) & {Habit.NOT_RECALLED, Habit.WISH, Habit.QUESTION}:
            continue
        low, _high = talk.sentence(noun.start)
        near_low, near_high = max(0, low - 1, amount.start - 6), min(len(talk.texts), noun.end + 12)
        up = _out_of(mentions, amount)
        if up is not None:
            found.append(_count("count_germinated", up, up.start, noun.end, "seeds germinated"))
        told = (
            up is not None
            or mentions.vocabulary.sown.find(talk.texts, near_low, near_high)
            or mentions.vocabulary.germinated.find(talk.texts, noun.end, near_high)
        )
        if told:
            found.append(_count("count_seeds_sown", amount, amount.start, noun.end, "seeds sown"))
    for cue in mentions.phrases(mentions.vocabulary.germinated):
        germinated = _germinated(mentions, cue)
        if germinated is not None:
            found += germinated
    if not any(s.trait == "count_seeds_sown" for s in found):
        found += _sown_without_noun(mentions)
    return _distinct(found)


def _out_of(mentions: Mentions, sown: Quantity) -> Quantity | None:
    """ "six from eleven seeds": the number that came up."""
    texts = mentions.talk.texts
    if texts[sown.start - 1 : sown.start] not in (("from",), ("of",)):
        return None
    end = sown.start - (2 if texts[sown.start - 2 : sown.start] == ("out", "of") else 1)
    for start in range(max(0, end - 4), end):
        amount = quantity(texts, start)
        if (
            amount is not None
            and amount.end == end
            and amount.value <= sown.value
            and texts[start] != "a"
        ):
            return amount
    return None


def _germinated(mentions: Mentions, cue: Found) -> list[Statement] | None:
    """ "three came up", "only one of the twelve came up", "just the one germinated"."""
    talk = mentions.talk
    if talk.texts[cue.start : cue.end] in (
        ("up",),
        ("in",),
        ("took",),
        ("through",),
        ("grew",),
        ("showed",),
        ("made", "it"),
        ("appeared",),
    ) and not _seed_talk_near(mentions, cue.start):
        return None
    if mentions.scopes.habits(cue.start) & {Habit.NOT_RECALLED, Habit.WISH, Habit.QUESTION}:
        return None
    i = cue.start
    skip = (
        "of",
        "them",
        "the",
        "seeds",
        "seed",
        "have",
        "has",
        "only",
        "ever",
        "actually",
        "that",
        "those",
        "just",
        "all",
        "it",
        "'ve",
        "seedlings",
        "plants",
    )
    floor = max(0, cue.start - _SEED_REACH)
    while i > floor:
        for start in range(max(floor, i - 4), i):
            amount = quantity(talk.texts, start)
            if (
                amount is not None
                and not talk.between(start, cue.start, (",", "."))
                and amount.end == i
                and amount.value == int(amount.value)
                and not mentions.masked[start]
            ):
                before = talk.texts[start - 2 : start] if start > 1 else ()
                if (
                    talk.texts[start - 1 : start] == ("of",)
                    or before == ("of", "the")
                    or before == ("of", "those")
                ):
                    stop = start - (1 if talk.texts[start - 1] == "of" else 2)
                    for first in range(max(0, stop - 4), stop):
                        part = quantity(talk.texts, first)
                        if part is not None and part.end == stop and part.value <= amount.value:
                            return [
                                _count(
                                    "count_germinated", part, first, cue.end, "seeds germinated"
                                ),
                                _count("count_seeds_sown", amount, first, cue.end, "seeds sown"),
                            ]
                if not _seed_talk_near(mentions, cue.start):
                    return None
                if talk.texts[start - 1 : start] == ("every",):
                    return []  # "every one of them came up": as many as were sown
                return [_count("count_germinated", amount, start, cue.end, "seeds germinated")]
        if talk.texts[i - 1] not in skip:
            return None
        i -= 1
    return None


def _seed_talk_near(mentions: Mentions, at: int) -> bool:
    words = mentions.talk.texts[max(0, at - 34) : at + 16]
    return bool({"seed", "seeds", "sowed", "sown", "sow", "germinated", "pod"} & set(words))


def _sown_without_noun(mentions: Mentions) -> list[Statement]:
    """ "I sowed a dozen and four came up"."""
    talk, found = mentions.talk, []
    for i, text in enumerate(talk.texts):
        put_in = talk.texts[i - 1 : i + 1] == ("put", "in") and _seed_talk_near(mentions, i)
        if (text not in ("sowed", "sown", "sow") and not put_in) or mentions.masked[i]:
            continue
        amount = next(
            (q for k in range(max(0, i - 3), i) if (q := quantity(talk.texts, k)) and q.end == i),
            None,
        )  # "twenty sown, seven up"
        if amount is None:
            amount = quantity(talk.texts, i + 1)
        if amount is None and talk.texts[i + 1 : i + 2] in (("about",), ("only",), ("just",)):
            amount = quantity(talk.texts, i + 2)
        if amount is None or amount.value != int(amount.value) or amount.value > 999:
            continue
        found.append(
            _count(
                "count_seeds_sown",
                amount,
                min(i, amount.start),
                max(amount.end, i + 1),
                "seeds sown",
            )
        )
    return found


def _distinct(found: list[Statement]) -> list[Statement]:
    kept: list[Statement] = []
    for s in sorted(found, key=lambda s: (s.start, -(s.end - s.start))):
        if not any(k.trait == s.trait and k.start < s.end and s.start < k.end for k in kept):
            kept.append(s)
    return kept
