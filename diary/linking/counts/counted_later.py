"""Counts told after the thing counted, or without naming it again.

"Buds: seven", "count the heads for me. Five, I make it", "trusses um two four six eight,
eight of them open", "four out, eleven in bud"; not "ten of them are coming off" after
"thirteen buds", and not the inches of "heads are five inches".
"""

from collections.abc import Iterator, Sequence

from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity, quantity
from diary.reading.phrases import Found
from diary.reading.spoken import amount_at

_AFTER_REACH = 9
_THEM_REACH, _NOW_REACH = 14, 22
_FILL = frozenset(
    "i make it count counted counting there are is 's 've got only just the about say um er uh "
    "for me on this that one them all told in total today now have look up well let see and oh "
    "so hang going to you her him we had a what not many lots few plenty then right here call "
    "at most masses of love yes aye can see everywhere all over loads "
    "time week month season year stands how base bottom below wise stopped gave lost after "
    "past come follow way up down along open".split()
)
_TO_COME = frozenset("to come follow open so far on it now behind".split())
_TELLS = frozenset({"count", "counted", "counting", "make", "see"})
_GOES_ON = frozenset(
    "i of on open out all in so and at if now but with already showing coming it still left "
    "there today or to behind this".split()
)
_LOST = frozenset({"lost", "died", "rotted", "failed", "dropped", "eaten", "gone", "snapped"})
_LEFT = (
    ("there", "'s"),
    ("that", "'s"),
    ("left", "with"),
    ("down", "to"),
    ("that", "leaves"),
    ("is", "now"),
)


def counted_after(mentions: Mentions, noun: Found) -> Quantity | None:
    """The number that the noun waits for: "Buds: seven", "not many buds, only the three"."""
    talk = mentions.talk
    told = talk.tokens[noun.end - 1].mark == "?"  # "Buds? I stopped at forty."
    at = noun.end
    marked = bool(talk.tokens[noun.end - 1].mark)
    while at < len(talk.texts) and at - noun.end <= _AFTER_REACH:
        amount = _run(mentions, at)
        if amount is not None:
            near = at == noun.end and (marked or not talk.punctuated)
            copula = talk.texts[noun.end : noun.end + 1] in (("are",), ("is",))
            only = talk.texts[at - 1] == "the" and talk.texts[at - 2] in ("just", "only")
            between = set(talk.texts[noun.end : at])
            near = near or bool(between and between <= _TO_COME and talk.tokens[at - 1].mark)
            plain = near or marked or told or copula or only
            one = not talk.texts[noun.end - 1].endswith("s") and noun.label != "count_buds"
            if one and at == noun.end and amount.value > 1:
                return None  # "Head, twelve." measures
            return amount if plain and _is_count(mentions, amount, told) else None
        if talk.texts[at] not in _FILL or mentions.vocabulary.counted.at(talk.texts, at):
            return None
        how_many = talk.texts[at - 1 : at + 1] == ("how", "many")
        told = told or how_many or talk.texts[at] in _TELLS or _asks(mentions, noun)
        if talk.tokens[at].mark in (".", "?") and not told:
            return _by_itself(mentions, at + 1)
        at += 1
    return None


def _by_itself(mentions: Mentions, at: int) -> Quantity | None:
    """ "Not a lot of bud on it. Four.", "Four, I make it.": a sentence that is only a figure."""
    talk = mentions.talk
    if at >= len(talk.texts):
        return None
    amount = _run(mentions, at)
    stop = talk.sentence(at)[1]
    if amount is None or not _is_count(mentions, amount, True):
        return None
    return amount if set(talk.texts[amount.end : stop]) <= _FILL | _GOES_ON else None


def summed_up(mentions: Mentions, noun: Found) -> Quantity | None:
    """ "a fifth head's just pushing up, so call it five": the sum at the sentence's end."""
    talk = mentions.talk
    stop = min(talk.sentence(noun.start)[1], noun.end + _THEM_REACH)
    if mentions.lengths_in(talk.sentence(noun.start)[0], stop):
        return None
    for at in range(noun.end + 1, stop):
        if talk.texts[at - 2 : at] not in _SUMS:
            continue
        amount = amount_at(talk, at)
        if amount is not None and not mentions.masked[at] and _is_count(mentions, amount, True):
            return amount
    return None


_SUMS = (
    ("call", "it"),
    ("that", "makes"),
    ("makes", "it"),
    ("make", "it"),
    ("making", "it"),
    ("say", "about"),
    ("that", "'s"),
)


def _asks(mentions: Mentions, noun: Found) -> bool:
    """ "Count the heads for me": the number comes in the next sentence."""
    before = mentions.talk.texts[max(0, noun.start - 4) : noun.start]
    return before[-2:] == ("how", "many") or bool(_TELLS & set(before))


def _run(mentions: Mentions, at: int) -> Quantity | None:
    """The last of numbers counted aloud: "two four six eight eight"."""
    texts = mentions.talk.texts
    amount = None
    while at < len(texts) and not mentions.masked[at]:
        following = quantity(texts, at) if texts[at] not in ("a", "half") else None
        if following is None or (amount is not None and following.value < amount.value):
            break
        amount, at = following, following.end
    return amount


def _is_count(mentions: Mentions, amount: Quantity, told: bool) -> bool:
    """Whether the number is no size, and counts nothing that is named after it."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    if any(x.start <= amount.start < x.end for x in mentions.lengths):
        return False
    rest = talk.texts[amount.end : amount.end + 1]
    if amount.value != int(amount.value) or not rest or talk.tokens[amount.end - 1].mark:
        return amount.value == int(amount.value)
    for book in (vocabulary.dimensions, vocabulary.units, vocabulary.other_units):
        if book.at(talk.texts, amount.end):
            return False
    if any(vocabulary.counted.at(talk.texts, amount.end + k) for k in (0, 1)):
        return False
    return told or rest[0] in _GOES_ON or talk.clause(amount.end)[0] == amount.end


def counted_of_them(
    mentions: Mentions, uncounted: Sequence[Found], nouns: Sequence[Found]
) -> Iterator[tuple[Found, Quantity]]:
    """ "there's fourteen of them", "eight of them open", where the noun has no count yet."""
    talk = mentions.talk
    for noun in uncounted:
        following = [n.start for n in nouns if n.start >= noun.end]
        stop = min([noun.end + _THEM_REACH, len(talk.texts), *following])
        for at in range(noun.end, stop):
            amount = None if mentions.masked[at] else amount_at(talk, at)
            if amount is None or talk.texts[at] == "a" or talk.texts[at - 1] in ("the", "those"):
                continue
            rest = talk.texts[amount.end : amount.end + 2]
            of_them = rest[:1] in (("of",), ("o",)) and rest[1:] in (
                ("them",),
                ("these",),
                ("those",),
            )
            if of_them and _last_of(mentions, noun, at):
                yield noun, amount
                break


def _alive(mentions: Mentions, amount: Quantity, low: int, stop: int) -> Quantity | None:
    """ "three are alive", "four of them took", in talk of cuttings."""
    texts = mentions.talk.texts
    for at in range(low, stop):
        left = None if mentions.masked[at] else amount_at(mentions.talk, at)
        if left is None or not 1 < left.value <= amount.value:
            continue
        i = left.end
        while i < stop and texts[i] in ("are", "is", "have", "has", "'ve", "of", "them", "all"):
            i += 1
        if texts[i : i + 1] and texts[i] in _LIVING:
            return left
    return None


_LIVING = frozenset("alive rooted rooting left living took taken struck survived standing".split())
_EACH = (("a",), ("each",), ("every",), ("per",), ("the",))


def held_now(
    mentions: Mentions, nouns: Sequence[Found], counted: set[int]
) -> Iterator[tuple[Found, Quantity]]:
    """ "It had two heads last week, it's got five": what it has now, of the thing named last."""
    talk = mentions.talk
    nouns = [n for n in nouns if talk.texts[n.start - 1 : n.start] not in _EACH]
    for noun, following in zip(nouns, [*nouns[1:], None], strict=False):
        limit = following.start if following is not None else len(talk.texts)
        for at in range(noun.end, min(noun.end + _NOW_REACH, limit - 1)):
            there = talk.texts[at - 1 : at + 1] in _THERE_ARE
            if not there and at - noun.end >= _THEM_REACH:
                break
            if at + 1 in counted or not (there or talk.texts[at] in ("got", "has", "'ve", "have")):
                continue
            it = {"it", "this", "she", "he"} & set(talk.texts[max(noun.end, at - 4) : at])
            if there:  # "it had eight heads out last week and there are five today"
                it = set(talk.texts[at + 2 : at + 5]) & _NOW
            if talk.texts[at - 1] in ("i", "we"):  # "I had four on it then and I've six on it now"
                it = {"on"} & set(talk.texts[at + 2 : at + 4])
            i = at + 1
            while i < limit and talk.texts[i] in ("only", "just", "about", "all"):
                i += 1
            amount = amount_at(talk, i) if i < limit and not mentions.masked[i] else None
            if it and amount is not None and _is_count(mentions, amount, False):
                if _last_of(mentions, noun, at):
                    yield noun, amount
                break


_THERE_ARE = tuple(("there", be) for be in ("are", "is", "'s"))
_NOW = frozenset({"today", "now", "left", "still", "present", "on"})


def _last_of(mentions: Mentions, noun: Found, at: int) -> bool:
    """Whether nothing else that could be "them" is named between."""
    between = mentions.vocabulary.subjects.find(mentions.talk.texts, noun.end, at)
    return not [f for f in between if f.label != "nothing"]


def left_of(mentions: Mentions, noun: Found, amount: Quantity) -> Quantity | None:
    """ "I took nine cuttings off it and lost two, so that's seven", "five, and three are alive"."""
    texts = mentions.talk.texts
    stop = min(len(texts), max(noun.end, amount.end) + _THEM_REACH)
    if noun.label == "count_cuttings" and (alive := _alive(mentions, amount, noun.end, stop)):
        return alive
    lost = next((i for i in range(noun.end, stop) if texts[i] in _LOST), None)
    if lost is None:
        return None
    for at in range(lost, stop):
        left = quantity(texts, at)
        if left is None or left.value >= amount.value:
            continue
        if texts[at - 2 : at] in _LEFT or texts[at - 1 : at] in (
            ("leaves",),
            ("leaving",),
            ("so",),
        ):
            return left
    return None
