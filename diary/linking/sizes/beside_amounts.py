"""What stands beside an amount that is said without a unit, so that it can be a size.

"the head's about nine", "twenty for the height of her", "twenty-eight on the callipers"; not
"heads, five", nor "three inches on that flower, maybe four".
"""

from diary.linking.sizes.measured_nouns import COPULAS
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity, quantity
from diary.reading.tokens import COMMA

_PART_LEADS = frozenset("the its his her whole entire full way of each that this a".split())
_INSTRUMENTS = frozenset("ruler rule tape calipers callipers gauge dividers".split())
_READS = frozenset("says said reads gives shows makes show say read give at puts it".split())
_FILL = frozenset(
    "'s is are about around at a good nearly roughly say maybe what an just measures was "
    "right thing another only fully full barely of gets goes runs comes reaches opens out up "
    "to makes i 'd 've put at got have had make now reckon er um".split()
)
_MOST_FILL = 6
_NAMES = frozenset("width height hight spread diameter span".split())
_GOES_ON = frozenset({"now", "and", "but", "with", "on", "mind", "so", "is", "if"})


def is_over(mentions: Mentions, end: int) -> bool:
    """Whether the phrase ends there, so that the amount counts nothing named after it."""
    talk = mentions.talk
    return (
        end == len(talk.texts)
        or bool(talk.tokens[end - 1].mark)
        or talk.clause(end)[0] == end
        or talk.texts[end] in _GOES_ON
        or _another_subject(mentions, end)
    )


def _another_subject(mentions: Mentions, end: int) -> bool:
    """ "the head gets out to 12 | habit's nice and bushy": captions go on with another noun."""
    talk = mentions.talk
    if talk.punctuated:
        return False
    heading = mentions.vocabulary.subjects.at(talk.texts, end)
    if heading is not None and quantity(talk.texts, heading.end) is not None:
        return heading.label != "nothing"  # "head ninety five | plant thirty three centimetres"
    if talk.texts[end + 1 : end + 2] not in (("'s",), ("is",), ("are",)):
        return False
    return mentions.vocabulary.counted.at(talk.texts, end) is None


def no_other_thing(mentions: Mentions, amount: Quantity) -> bool:
    """Whether captions go on with something else than a thing counted: "call it 5 and a half"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    if talk.punctuated:
        return False
    if amount.value != int(amount.value):
        return True
    if any(
        book.at(talk.texts, amount.end) for book in (vocabulary.other_units, vocabulary.germinated)
    ):
        return False
    return not any(vocabulary.counted.at(talk.texts, amount.end + k) for k in range(3))


def for_a_part(mentions: Mentions, at: int) -> bool:
    """ "and twenty for the height of her", "a hundred and ten for the whole head"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    if talk.texts[at : at + 1] not in (("for",), ("by",)) or talk.tokens[at - 1].mark in (".", "?"):
        return False
    at += 1
    stop = at + 4
    while at < min(stop, len(talk.texts)) and talk.texts[at] in _PART_LEADS:
        at += 1
    noun = vocabulary.subjects.at(talk.texts, at) or vocabulary.dimensions.at(talk.texts, at)
    return noun is not None and noun.label != "nothing"


def by_instrument(mentions: Mentions, amount: Quantity) -> bool:
    """ "Twenty-eight on the callipers", "the rule says thirty-one"; not "the rule says ten to"."""
    texts = mentions.talk.texts
    after = texts[amount.end : amount.end + 3]
    if after[:1] and after[0] in ("on", "by", "with", "against", "to", "from"):
        return bool(_INSTRUMENTS & set(after[1:3]))
    before = texts[max(0, amount.start - 4) : amount.start]
    if before[-2:-1] in (("they",), ("it",)):  # "I put the callipers across and they read ..."
        before = texts[max(0, amount.start - 8) : amount.start]
    told = bool(_INSTRUMENTS & set(before[:-1])) and before[-1:] != () and before[-1] in _READS
    return told and is_over(mentions, amount.end)


def noun_right_before(mentions: Mentions, at: int) -> bool:
    """ "the head's about nine": a noun that is measured stands before the amount."""
    texts = mentions.talk.texts
    i = at
    of = texts[at - 1] == "of"
    i -= of
    while i > 0 and at - i < _MOST_FILL and texts[i - 1] in _FILL | COPULAS:
        i -= 1
    if {"is", "are", "'s"} & set(texts[i:at]) and mentions.talk.tokens[i - 1].mark == COMMA:
        opened = [
            j for j in range(max(1, i - 9), i - 1) if mentions.talk.tokens[j - 1].mark == COMMA
        ]
        i = opened[-1] if opened else i  # "the florets, taken one at a time, are about four"
    if of:  # "on a stem of twenty"; not "a truss of twenty"
        return any(
            f.end == i and f.label == "stem"
            for f in mentions.vocabulary.subjects.find(texts, i - 2, i)
        )
    if mentions.talk.between(i - 1, at, (".", "?")):
        return False
    if i == at and texts[at - 1] == "plant" and not mentions.talk.tokens[at - 1].mark:
        return False  # "cross nineteen, plant eleven"
    dims = mentions.vocabulary.dimensions.find(texts, max(0, i - 2), i)
    if any(f.end == i and texts[f.start] in _NAMES for f in dims):
        return True
    return any(
        f.end == i and f.label != "nothing" and not _sized(mentions, f.start)
        for f in mentions.vocabulary.subjects.find(texts, max(0, i - 3), i)
    )


def many_before(mentions: Mentions, at: int) -> bool:
    """ "Heads, five" counts; "Flower, fifty-two" measures."""
    texts = mentions.talk.texts
    i = at - 1
    while i > 0 and texts[i] in _FILL | COPULAS:
        i -= 1
    return texts[i].endswith("s")


def _sized(mentions: Mentions, at: int) -> bool:
    """Whether the noun was measured right before: "three inches on that flower, maybe four"."""
    texts = mentions.talk.texts
    if "of" in texts[at + 1 : at + 3]:
        return False  # "fourteen centimetres, on a stem of only eight"
    return any(
        texts[x.end : x.end + 1] in (("on",), ("of",), ("for",), ("in",)) and x.end > at - 4
        for x in mentions.lengths_in(max(0, at - 10), at)
    )


def broken(amount: Quantity) -> bool:
    """Whether the amount has a fraction, and so counts nothing."""
    return amount.value != int(amount.value)


def told_of_it(mentions: Mentions, at: int) -> bool:
    """ "they want to be ten centimetres and they're eight and a half"."""
    texts = mentions.talk.texts
    i = at
    while i > 0 and at - i < 3 and texts[i - 1] in _FILL - {"'s", "is", "are", "was"}:
        i -= 1
    return texts[i - 1 : i] in _COPULA and texts[i - 2 : i - 1] in _PRONOUN


_COPULA = (("'s",), ("'re",), ("is",), ("are",), ("was",))
_PRONOUN = (("it",), ("they",), ("she",), ("he",), ("this",), ("that",), ("these",), ("mine",))
