"""Early or late, told by the order in which plants come into flower.

"first away of the entire batch", "one of the last", "none of the others had a bud when this
opened", "everything else was over when it started". Leaves alone "the first out of the box",
"last on the bench is 23-40", "the last week of June" and "the others are all over the place".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.tokens import QUERY, STOP

_RANKS = {"first": "early", "earliest": "early", "last": "late", "latest": "late"}
_OPENING = frozenset(
    "open opened opens opening out away going moving started start starts colour bloom flower "
    "flowered flowers show showed shows come came stir wake".split()
)
_OF = frozenset({"of", "in", "on", "among", "amongst"})
_LED = frozenset("the all this my these that whole entire old other blessed".split())
_GROUPS = frozenset("house greenhouse staging season year".split())
_ONE_OF = (("one", "of", "the"), ("one", "of", "my"), ("among", "the"), ("amongst", "the"))
_UNOPENED = frozenset("bud buds tight asleep dormant bare sulking sleeping stirred".split())
_OVER = frozenset("over finished done past faded spent gone".split())
_BY_THEN = frozenset({"when", "while", "before", "and"})
_THIS = frozenset({"this", "it", "she", "he"})
_GROUP_WITHIN, _STATE_WITHIN, _PLANT_WITHIN = 9, 9, 12


def flowering_order(mentions: Mentions) -> Iterator[Statement]:
    """Every place in the order of flowering that is told of the plant."""
    for at, text in enumerate(mentions.talk.texts):
        if mentions.masked[at]:
            continue
        end = None
        value = _RANKS.get(text)
        if value is not None:
            end = _ranked(mentions, at)
        elif text in mentions.vocabulary.classes["the_rest"]:
            value, end = _beside_the_rest(mentions, at)
            value, end = (value, end) if value else (_relative(mentions, at), at + 1)
        if value is not None and end is not None:
            nobody = {"none", "not"} & set(mentions.talk.texts[max(0, at - 3) : at])
            yield Statement(
                trait="flowering",
                value=value,
                start=max(0, at - 3) if nobody else at,
                end=end,
                rule="a place in the order of flowering",
                score=0.87,
            )


def _ranked(mentions: Mentions, at: int) -> int | None:
    """ "first out of the whole lot", "one of the last"; not "the first out of the box"."""
    talk = mentions.talk
    low, high = talk.sentence(at)
    high = min(high, at + _GROUP_WITHIN)
    ends = at + 1 >= high or bool(talk.tokens[at].mark) or talk.texts[at + 1] == "to"
    if ends and (talk.texts[at - 3 : at] in _ONE_OF or talk.texts[at - 2 : at] in _ONE_OF):
        return at + 1
    if at + 1 < high and talk.texts[at + 1] in _OPENING and talk.texts[at + 1] != "flower":
        return _group(mentions, at + 2, high)
    if at + 1 < high and talk.texts[at + 1] in _OF:  # "the last of them every year"
        end = _group(mentions, at + 1, high)
        yearly = end is not None and talk.texts[end : end + 1] in _EVERY_YEAR
        return end if yearly or talk.texts[at - 2 : at] in _ALWAYS_THE else None
    before = talk.texts[max(low, at - 1) : at]
    if ends and before and before[0] in _OPENING - {"out", "away"}:
        group = _group(mentions, low, at)  # "of all of them this was the one that opened first"
        return at + 1 if group is not None else None
    return None


_EVERY_YEAR = tuple((w,) for w in ("every", "each", "again", "always", "by"))
_ALWAYS_THE = tuple((w, "the") for w in ("always", "usually", "invariably"))


def _group(mentions: Mentions, low: int, high: int) -> int | None:
    """Where "of the whole lot" ends, if it is said."""
    texts = mentions.talk.texts
    groups = mentions.vocabulary.classes["the_rest"] | _GROUPS
    for i in range(low, high):
        if texts[i] in groups:
            back = i - 1
            while back > low and texts[back] in _LED:
                back -= 1
            if texts[back] in _OF:
                return i + 1
    return None


def _relative(mentions: Mentions, at: int) -> str | None:
    """ "it got going ages before its sisters", "opened after all the rest"."""
    talk = mentions.talk
    low = talk.sentence(at)[0]
    i = at - 1
    while i > low and talk.texts[i] in _LED | {"any", "its", "her", "his", "of", "than"}:
        i -= 1
    value = _RELATIONS.get(talk.texts[i]) if i > low else None
    if value is None or talk.between(i, at, (STOP, QUERY)):
        return None
    before = talk.texts[max(low, i - _OPENED_BEFORE) : i]
    opened = set(before) & (_OPENING | {"going"}) and not {"i", "we", "you", "up"} & set(before)
    return value if opened else None


_RELATIONS = {"before": "early", "ahead": "early", "after": "late", "behind": "late"}
_OPENED_BEFORE = 7


def _beside_the_rest(mentions: Mentions, at: int) -> tuple[str | None, int | None]:
    """ "its sisters were still in bud when this opened": what the rest did by then."""
    talk = mentions.talk
    low, high = talk.sentence(at)
    low, high = max(low, at - _PLANT_WITHIN), min(high, at + _STATE_WITHIN + _PLANT_WITHIN)
    for i in range(at + 1, min(high, at + _STATE_WITHIN)):
        if talk.texts[i] in _BY_THEN and talk.texts[i] != "and":
            return None, None
        state = talk.texts[i]
        value = "early" if state in _UNOPENED else "late" if state in _OVER else None
        if value is None:
            continue
        closes = i + 1 >= high or bool(talk.tokens[i].mark) or talk.texts[i + 1] in _BY_THEN
        if not closes and talk.texts[i : i + 2] != ("gone", "over"):
            return None, None
        for k in range(low, high):
            if k in range(at, i + 1) or talk.texts[k] not in _THIS:
                continue
            opened = set(talk.texts[k + 1 : k + 4]) & (_OPENING - {"colour", "flower"})
            joined = _BY_THEN & set(talk.texts[min(k, at) : max(k, i)])
            if opened and joined and not talk.between(min(k, at), max(k, i), (STOP, QUERY)):
                return value, i + 1
        return None, None
    return None, None
