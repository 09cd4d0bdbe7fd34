"""Counts told as the answer to a question: "how many cuttings have you had off it? Three".

Also "have we took any cuttings? We've took eight", and headings in captions, "heads four buds
nine"; not "how many heads? I never counted", nor "any buds? No, but four heads".
"""

from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity
from diary.reading.phrases import Found
from diary.reading.spoken import amount_at
from diary.reading.tokens import QUERY

_REACH = 11
_ASKING = frozenset({"have", "has", "did", "is", "are", "had", "got", "any"})
_NO = frozenset("no none not never nope nothing can will 'll would could should".split())
_OFF = frozenset(
    "the a this that these those it off of on from you we i have has had did got 've there in "
    "taken took take are is 's him her now then well yes aye oh er um ooh only just "
    "about all".split()
)


def asked_after(mentions: Mentions, noun: Found) -> Quantity | None:
    """The figure that answers a question after the thing counted."""
    talk = mentions.talk
    low = max(0, noun.start - 5)
    before = talk.texts[low : noun.start]
    how_many = before[-2:] == ("how", "many") or before[-3:-1] == ("how", "many")
    stop = min(len(talk.texts), noun.end + _REACH)
    query = talk.between(noun.end - 1, stop, (QUERY,)) if talk.punctuated else True
    if not query or not (how_many or ("any" in before and _ASKING & set(before[:-1]))):
        return None
    for at in range(noun.end, stop):
        amount = None if mentions.masked[at] else amount_at(talk, at)
        if amount is not None and talk.texts[at] not in ("a", "half"):
            return amount if _answers(mentions, amount) else None
        if talk.texts[at] not in _OFF:
            return None
    return None


def _answers(mentions: Mentions, amount: Quantity) -> bool:
    talk, vocabulary = mentions.talk, mentions.vocabulary
    books = (vocabulary.units, vocabulary.other_units, vocabulary.counted, vocabulary.dimensions)
    whole = amount.value == int(amount.value)
    return whole and not any(book.at(talk.texts, amount.end) for book in books)


def is_heading(mentions: Mentions, noun: Found) -> bool:
    """ "heads four buds nine", "number of heads six number of buds": a figure right after it."""
    texts = mentions.talk.texts
    amount = amount_at(mentions.talk, noun.end) if noun.end < len(texts) else None
    if amount is None or mentions.masked[noun.end] or amount.value != int(amount.value):
        return False
    if texts[noun.start - 2 : noun.start] in (("number", "of"), ("count", "of")):
        return True
    at = amount.end  # captions: "buds nine" after "heads four"
    at += 2 * (texts[at : at + 2] == ("number", "of"))
    following = mentions.vocabulary.counted.at(texts, at)
    return following is not None and amount_at(mentions.talk, following.end) is not None
