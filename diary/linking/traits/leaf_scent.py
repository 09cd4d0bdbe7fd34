"""A leaf's scent, found by touching it: "rub the leaf and it's pure lemon".

Leaves alone "crush the leaf and there's nothing", and "brush past the flower".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.tokens import QUERY, STOP

_LEAF_WITHIN, _ODOUR_WITHIN = 5, 13
_NONE = frozenset({"no", "not", "nothing", "never", "nowt", "none", "hardly", "without"})
_OTHERS = frozenset({"flower", "flowers", "bloom", "blooms", "petal", "petals"})


def touched_leaves(mentions: Mentions) -> Iterator[Statement]:
    """ "rub the leaf and it's scented", "give the leaf a rub and you get lemon"."""
    texts, classes = mentions.talk.texts, mentions.vocabulary.classes
    for at, text in enumerate(texts):
        if text not in classes["rub"] or mentions.masked[at]:
            continue
        low, high = max(0, at - _LEAF_WITHIN), min(len(texts), at + _LEAF_WITHIN + 1)
        leaf = next((i for i in range(low, high) if texts[i] in classes["foliage"]), None)
        if leaf is None:
            yield from _smelt_off_the_leaf(mentions, at)
            yield from _crushed(mentions, at)
            continue
        if mentions.talk.between(min(leaf, at), max(leaf, at), (STOP, QUERY)):
            continue
        start, begin = min(leaf, at), max(leaf, at) + 1
        odour = _odour(mentions, begin)
        odour = _likened(mentions, begin) if odour is None else odour
        if odour is None and (before := _smelt_before(mentions, at)) is not None:
            start, odour = before, begin - 1
        if odour is not None:
            yield Statement(
                trait="foliage",
                value="scented",
                start=start,
                end=odour + 1,
                rule="a leaf that smells when touched",
                score=0.92,
            )


def _smelt_before(mentions: Mentions, at: int) -> int | None:
    """ "there's a smell to it, like oranges, when you knock the leaf"; not "no smell when"."""
    talk = mentions.talk
    if not {"when", "if"} & set(talk.texts[max(0, at - 3) : at]):
        return None
    low = max(talk.sentence(at)[0], at - _ODOUR_WITHIN)
    if set(talk.texts[low:at]) & (_NONE | _OTHERS):
        return None
    odours = mentions.vocabulary.classes["odour"]
    return next((i for i in range(low, at) if talk.texts[i] in odours), None)


def _smelt_off_the_leaf(mentions: Mentions, at: int) -> Iterator[Statement]:
    """ "brush past it and you get lemon, off the leaf I mean"."""
    odour = _odour(mentions, at + 1)
    if odour is None:
        return
    texts, foliage = mentions.talk.texts, mentions.vocabulary.classes["foliage"]
    for i in range(odour + 1, min(len(texts), odour + 1 + _LEAF_WITHIN)):
        if texts[i] in foliage and {"off", "from", "of"} & set(texts[odour:i]):
            yield Statement(
                trait="foliage",
                value="scented",
                start=at,
                end=i + 1,
                rule="a leaf that smells when touched",
                score=0.88,
            )
            return


def _crushed(mentions: Mentions, at: int) -> Iterator[Statement]:
    """ "it smells like lemon when you crush it", "pinch it and you get mint": only leaves are."""
    talk = mentions.talk
    low = max(talk.sentence(at)[0], at - _ODOUR_WITHIN)
    before = talk.texts[low:at]
    crushed = talk.texts[at] in _CRUSH or bool(
        talk.texts[at] in _TOUCH and _WHEN & set(before[-3:])
    )
    past = talk.texts[at] in _BRUSH and talk.texts[at + 1 : at + 2] in (("past",), ("against",))
    if not past and (not crushed or talk.texts[at + 1 : at + 2] not in _IT):
        return
    odours = [
        i
        for i in range(low, at)
        if talk.texts[i] in mentions.vocabulary.classes["odour"] and not mentions.masked[i]
    ]
    when = _WHEN & set(before[-4:])
    odour = odours[-1] if odours and when and not set(before) & (_NONE | _OTHERS) else None
    after = _odour(mentions, at + 1) if odour is None else None
    if odour is None and after is None:
        return
    yield Statement(
        trait="foliage",
        value="scented",
        start=at if odour is None else odour,
        end=at + 2 if after is None else after + 1,
        rule="a leaf that smells when touched",
        score=0.88,
    )


_CRUSH = frozenset(
    "crush crushes crushing crushed rub rubs rubbing rubbed bruise bruising bruised scrunch "
    "scrunching squeeze squeezing".split()
)
_WHEN = frozenset({"when", "if", "once"})
_TOUCH = frozenset("pinch brush touch stroke knock handle tickle ruffle nip tweak".split())
_BRUSH = frozenset({"brush", "brushing", "squeeze"})
_IT = (("it",), ("one",), ("them",), ("him",), ("her",))


def _likened(mentions: Mentions, begin: int) -> int | None:
    """ "rub the leaf and it's like cough sweets": what is touched is likened to a smell."""
    texts = mentions.talk.texts
    for i in range(begin, min(len(texts) - 3, begin + _LEAF_WITHIN)):
        if texts[i] in _NONE | _OTHERS:
            return None
        if texts[i : i + 3] in _IT_IS_LIKE or texts[i : i + 4] in _YOU_THINK:
            return i + 3
    return None


_IT_IS_LIKE = tuple(
    (it, be, like) for it in ("it", "that") for be in ("is", "'s") for like in ("like", "pure")
)
_YOU_THINK = (("you", "'d", "think", "you"), ("you", "would", "think", "you"))


def _odour(mentions: Mentions, begin: int) -> int | None:
    """The word of a smell that follows, unless it is denied or the flower's."""
    texts = mentions.talk.texts
    stops = 0
    for i in range(begin, min(len(texts), begin + _ODOUR_WITHIN)):
        unlike = texts[i : i + 2] == ("not", "unlike")
        if texts[i] in _NONE | _OTHERS and not unlike:
            return None
        if texts[i] in mentions.vocabulary.classes["odour"] and not mentions.masked[i]:
            return i
        stops += mentions.talk.tokens[i].mark in (STOP, QUERY)
        if stops > 1:
            return None
    return None
