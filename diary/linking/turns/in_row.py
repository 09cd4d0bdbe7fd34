"""A number cut short that is the next of the row: "14 on the other hand", "oh 14's a belter".

Told by its last part alone, in the order in which the plants stand, it needs no word that leads it
in. Leaves alone "there's 14 heads", "I counted the buds and 14 is a lot".
"""

from diary.linking.turns.walk import Walk
from diary.reading.mentions import Mentions, Ref
from diary.reading.numbers.format import parse

_FOLLOWS = frozenset(
    "is 's has on though now next looks was which i it well never still came 'll again that".split()
)
_LEADS = frozenset("oh and so now then right okay ok well but next as ah er um".split())
_AMOUNTS = frozenset("lot plenty enough many few more most fair good".split())
_TALLIED = frozenset(
    "buds heads counted count counting flowers seeds cuttings trusses shoots up sown came total "
    "number petals leaves pots".split()
)
_GOVERNED = frozenset(
    "of about with got have 've has make makes than to only just the another at for in a more some "
    "'s is are was were by from on page another nearly say says".split()
)
_REACH = 7


def next_in_row(mentions: Mentions, ref: Ref, number: str, walk: Walk) -> bool:
    """Whether the number, as completed, follows the last one shown, and is spoken of."""
    talk = mentions.talk
    if not walk.numbers or not _follows(mentions, walk.numbers[-1], number):
        return False
    start = talk.sentence(ref.start)[0]
    before = talk.texts[max(start, ref.start - _REACH) : ref.start]
    if talk.punctuated and not set(talk.texts[start : ref.start]) <= _LEADS:
        return False
    if (before[-1:] != () and before[-1] in _GOVERNED) or _TALLIED & set(before):
        return False
    rest = talk.texts[ref.end : ref.end + 4]
    if rest[:1] == () or _AMOUNTS & set(rest[1:3]):
        return False
    marked = bool(talk.tokens[ref.end - 1].mark)
    return marked or rest[0] in _FOLLOWS


def _follows(mentions: Mentions, last: str, number: str) -> bool:
    """Whether it is the next on record of the same batch, one or two on."""
    one, two = parse(last), parse(number)
    if one is None or two is None or one.prefix != two.prefix or one.suffix or two.suffix:
        return False
    if len(one.groups) != len(two.groups) or one.groups[:-1] != two.groups[:-1]:
        return False
    step = int(two.groups[-1]) - int(one.groups[-1])
    if step == 2:
        between = mentions.numbers.complete(((str(int(one.groups[-1]) + 1),), ""), last)
        return between is None or mentions.numbers.seedling(between) is None
    return step == 1
