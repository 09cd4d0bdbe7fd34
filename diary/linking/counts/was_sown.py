"""Whether a figure of seed talk is how many were sown, by the words beside it.

"I sowed 16 of that cross", "twenty-four seeds went in", "out of 12 I got 9 up"; not "sown two
years ago", "I'll sow forty", nor the seven of "of the eighteen I sowed, seven answered".
"""

from diary.linking.counts.not_sown import not_sown, only_had
from diary.linking.counts.seed_numbers import counts_seeds, follows, is_seed, precedes
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity
from diary.reading.spoken import amount_at

_OF_OTHERS = tuple(
    (w,)
    for w in "cuttings per to inch days pods pod berries capsules heads batches packets trays pans "
    "crosses lots".split()
)
_TO_SOW = frozenset("sow plant put set start".split())
_WILL = frozenset("'ll will shall would 'd might must should could to can".split())


def was_sown(mentions: Mentions, amount: Quantity) -> bool:
    """ "I sowed 16 of that cross", "twenty-four seeds went in", "out of 12 I got 9 up"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    if talk.texts[amount.start : amount.end] == ("one",) or not_sown(mentions, amount):
        return False
    sowing = precedes(mentions, amount, vocabulary.sown_before)
    if sowing is not None and not _of_the_one_before(mentions, sowing.start):
        lead = talk.texts[max(0, sowing.start - 2) : sowing.start]
        return not _starts_other(mentions, amount) and not (
            _WILL & set(lead) and talk.texts[sowing.start] in _TO_SOW
        )
    if follows(mentions, amount, vocabulary.sown_after) is not None:
        return True
    texts = talk.texts
    lead = texts[max(0, amount.start - 2) : amount.start]
    whole = (
        lead[-1:] == ("of",)
        or lead in (("of", "the"), ("of", "those"), ("from", "the"))
        or lead[-1:] == ("from",)
    )
    if whole and not counts_seeds(mentions, amount) and not _out(mentions, amount):
        books = (vocabulary.germinated, vocabulary.sown_after)
        whole = any(follows(mentions, amount, book) is not None for book in books)
    if whole and is_seed(mentions, amount):
        return _part_near(mentions, amount)
    if not counts_seeds(mentions, amount) or only_had(mentions, amount):
        return False
    low = max(0, talk.sentence(amount.start)[0] - 1, amount.start - 6)
    high = min(len(texts), amount.end + 13)
    return bool(
        vocabulary.sown.find(texts, low, high)
        or vocabulary.germinated.find(texts, amount.end, high)
    )


def _of_the_one_before(mentions: Mentions, at: int) -> bool:
    """ "of the eighteen | I sowed, seven answered": the sowing is of the figure before it."""
    texts = mentions.talk.texts
    if texts[at : at + 1] and texts[at] in ("i", "we", "you", "she"):
        at += 1
    elif texts[at - 1 : at] not in (("i",), ("we",), ("you",), ("she",), ("he",)):
        return False
    at -= 1
    at -= texts[at - 1 : at] in (("that",), ("which",))
    if at < 1 or mentions.masked[at - 1] or mentions.talk.tokens[at - 1].mark:
        return False
    return any(
        (q := amount_at(mentions.talk, i)) and q.end == at for i in range(max(0, at - 3), at)
    )


def _out(mentions: Mentions, whole: Quantity) -> bool:
    """ "out of 12", "from the eleven"; "of the seventeen this is the one" is none."""
    lead = mentions.talk.texts[max(0, whole.start - 3) : whole.start]
    return "out" in lead or "from" in lead


def _part_near(mentions: Mentions, whole: Quantity) -> bool:
    """Whether a number that came up of the whole, or words that they did, stand beside it."""
    talk = mentions.talk
    low, high = max(0, whole.start - 8), min(len(talk.texts), whole.end + 10)
    return bool(mentions.vocabulary.germinated.find(talk.texts, low, high)) or any(
        amount_at(talk, i) for i in range(low, whole.start)
    )


def _starts_other(mentions: Mentions, amount: Quantity) -> bool:
    """ "sown two years ago", "put in three pots": the number counts another thing."""
    texts = mentions.talk.texts
    of_them = texts[amount.end : amount.end + 1] == ("of",)  # "I sowed about fifty of them"
    return (
        mentions.vocabulary.other_units.at(texts, amount.end) is not None and not of_them
    ) or texts[amount.end : amount.end + 1] in _OF_OTHERS
