"""What came of seeds just said to be sown, in whatever words it is told.

"I sowed ten, and four reported for duty", "six seeds, and one solitary child came up", "I sowed
nine and this alone came up", "twenty went in and half of them are up"; not "sowed ten, and two
rotted", "ten seeds in three pots", nor "five came up and the slugs had two".
"""

from collections.abc import Sequence

from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity
from diary.reading.spoken import amount_at

_REACH = 16
_SINGLE = frozenset({"single", "solitary", "lone", "sole", "lonely", "mere"})
_LEADS = frozenset(
    "and but only just with precisely exactly for of which then a mere yet these those the".split()
)
_GOT = frozenset("got have had has get raised kept own 've is are show see saw there".split())
_LOSSES = frozenset(
    "rotted died damped perished failed vanished went never lost dud duds blind empty ate eaten "
    "had took mouldy years weeks days months pots trays into too more others".split()
)
_THIS = frozenset("this it her him".split())
_ALONE = frozenset("alone only".split())


def came_of_sown(mentions: Mentions, sown: Quantity, stop: int) -> Quantity | None:
    """How many came up, where a verb of any kind tells it of the seeds before; None if none."""
    talk = mentions.talk
    stop = min(stop, sown.end + _REACH, len(talk.texts))
    if talk.punctuated:
        stop = min(stop, talk.sentence(sown.start)[1])
    for at in range(sown.end, stop):
        if mentions.masked[at]:
            return None
        one = _one_alone(mentions, at) or _half(mentions, at, sown)
        if one is not None:
            return one
        amount = amount_at(talk, at)
        if amount is None or talk.texts[at] in ("a", "half"):
            continue
        if amount.value > sown.value or amount.value != int(amount.value):
            return None
        return amount if _opens(mentions, at) and _is_of_them(mentions, amount) else None
    return None


def _opens(mentions: Mentions, at: int) -> bool:
    """Whether the figure is the subject of its clause, or what was got."""
    talk = mentions.talk
    before = talk.texts[at - 1]
    return before in _LEADS | _GOT or bool(talk.tokens[at - 1].mark)


def _is_of_them(mentions: Mentions, amount: Quantity) -> bool:
    """Whether the figure counts nothing of its own, and tells of no loss."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    books = (vocabulary.units, vocabulary.other_units, vocabulary.counted, vocabulary.dimensions)
    if any(book.at(talk.texts, amount.end) for book in books):
        return False
    after = talk.texts[amount.end : amount.end + 3]
    return bool(after) and not _LOSSES & set(after)


def _one_alone(mentions: Mentions, at: int) -> Quantity | None:
    """ "one solitary child came up", "a single one", "this alone came up", "only this one"."""
    texts = mentions.talk.texts
    pair = texts[at : at + 2]
    if len(pair) < 2:
        return None
    if pair[0] in ("a", "one") and pair[1] in _SINGLE:
        return Quantity(at, at + 2, 1)
    shown = pair[0] in _THIS and pair[1] in _ALONE
    if shown or (pair[0] in ("only", "just") and pair[1] in _THIS):
        return Quantity(at, at + 2, 1)
    return None


def _half(mentions: Mentions, at: int, sown: Quantity) -> Quantity | None:
    """ "and half of them came up"."""
    texts = mentions.talk.texts
    if texts[at : at + 2] != ("half", "of") or texts[at + 2 : at + 3] not in _THEM:
        return None
    half = sown.value / 2
    up = mentions.vocabulary.germinated.find(texts, at, min(at + 8, len(texts)))
    return Quantity(at, at + 3, half) if up and half == int(half) else None


_THEM = (("them",), ("those",), ("these",), ("it",))


def is_taken(mentions: Mentions, amount: Quantity) -> bool:
    """ "and the slugs had two", "mice took four of them": those are gone."""
    talk = mentions.talk
    lead: Sequence[str] = talk.texts[max(0, amount.start - 4) : amount.start]
    return bool(_TOOK & set(lead[-2:])) and bool(_TAKERS & set(lead))


_TOOK = frozenset("had took ate got has have eaten taken nibbled".split())
_TAKERS = frozenset(
    "slug slugs snail snails mouse mice rat rats bird birds blackbird deer rabbit rabbits frost "
    "cat dog vole voles damping rot botrytis fly flies heat wind woodlice pigeon pigeons hen hens "
    "squirrel squirrels weevil weevils caterpillar caterpillars off".split()
)
