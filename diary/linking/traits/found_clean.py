"""A clean bill of health, told by what is not there: "I can't find a thing wrong with it".

A word that denies, small words, and a flaw: "not a bit of trouble on it anywhere", "no bugs no
spots", "I've yet to see a blemish". Leaves alone "no trouble to root", "not a mark on the
label", "nothing wrong with the colour" and "nothing wrong with it bar a bit of rust".
"""

from collections.abc import Iterator
from itertools import pairwise

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_DENYING = frozenset(
    "no not never nothing nowt none without nor neither hardly scarcely barely nary devoid "
    "nobody".split()
)
_SMALL = frozenset(
    "a an the any single sign signs trace of bit scrap hint find found see seen seeing got had "
    "has have having to be been one sort kind real thing much so as on it at i can do did does "
    "ever yet "
    "'s is are there that ghost shadow suspicion vestige earthly solitary serious visible in way "
    "lot blessed little spot mark speck more and or day week moment hour "
    "whatever whatsoever either kind even".split()
)
_BAD = frozenset({"wrong", "amiss", "matter", "untoward", "nasty", "ailing", "sinister"})
_ITS = frozenset(
    "it him her them this that these plant leaf leaves foliage growth underneath either she he "
    "anywhere whatever whatsoever top".split()
)
_ON = frozenset("on with in about under of to at anywhere underneath".split())
_SAVE = frozenset({"bar", "except", "barring", "save", "apart", "besides", "only", "but"})
_BACK, _AHEAD = 7, 4
_DOING = (("do",), ("doing",), ("done",))


def found_clean(mentions: Mentions) -> Iterator[Statement]:
    """Every flaw that is denied of the plant as a whole."""
    yield from _one_after_another(mentions)
    talk, classes = mentions.talk, mentions.vocabulary.classes
    flaws, small = classes["flaw"], classes["small_flaw"]
    for at, text in enumerate(talk.texts):
        if text in classes["plague"] and talk.texts[at - 4 : at - 1] == ("so", "much", "as"):
            yield _clean(at - 5, at + 1)
            continue
        if text not in flaws and text not in small and text not in _BAD:
            continue
        if talk.texts[at - 1 : at] in _DOING or talk.texts[at - 2 : at - 1] == ("makes",):
            continue  # "I shan't do anything about it"
        start = _denied_from(mentions, at)
        if start is None or _saved(mentions, at) or _of_a_thing(mentions, at):
            continue
        if text in _BAD and not _wrong_with_it(mentions, at):
            continue
        if text in small and not _on_it(mentions, at) and not _not_so_much_as(mentions, at):
            continue
        yield _clean(start, at + 1)


def _clean(start: int, end: int) -> Statement:
    return Statement(
        trait="health",
        value="clean",
        start=max(0, start),
        end=end,
        rule="nothing found wrong",
        score=0.88,
    )


def _one_after_another(mentions: Mentions) -> Iterator[Statement]:
    """ "no whitefly, no rust, nothing"; not "no rust this year"."""
    talk = mentions.talk
    ailments = mentions.vocabulary.classes["plague"] | mentions.vocabulary.classes["flaw"]
    denied = [
        i
        for i in range(len(talk.texts) - 1)
        if talk.texts[i] in ("no", "nor") and talk.texts[i + 1] in ailments
    ]
    for first, second in pairwise(denied):
        if second - first <= 4 and not talk.between(first, second, (".", "?")):
            yield _clean(first, second + 2)


def excused(mentions: Mentions, s: Statement) -> bool:
    """Whether words that find nothing wrong are said of a thing, or of one side of the plant."""
    talk = mentions.talk
    if s.value != "clean" or not set(talk.texts[s.start : s.end]) & _DENYING:
        return False
    at = s.end - 1
    return _saved(mentions, at) or _of_a_thing(mentions, at) or _with_a_part(mentions, s)


def _with_a_part(mentions: Mentions, s: Statement) -> bool:
    """ "nothing wrong with the colour"; not "nothing wrong with the plant"."""
    texts, classes = mentions.talk.texts, mentions.vocabulary.classes
    for i in range(s.end - 1, min(s.end + 1, len(texts) - 2)):
        if texts[i] in ("with", "on", "about") and texts[i + 1] in ("the", "its", "my", "your"):
            whole = texts[i + 2] in classes["plantlike"] | classes["foliage"] | _ITS
            return not whole and texts[i + 2] not in ("whole", "health", "rest", "underside")
    return False


def _denied_from(mentions: Mentions, at: int) -> int | None:
    """Where the denial of the flaw begins: "not | a bit of | trouble"."""
    talk = mentions.talk
    low = max(talk.clause(at)[0], at - _BACK)
    for i in range(at - 1, low - 1, -1):
        if talk.texts[i] in _DENYING or talk.texts[i : i + 2] == ("yet", "to"):
            return i
        if talk.texts[i] not in _SMALL:
            return None
    return None


def _saved(mentions: Mentions, at: int) -> bool:
    """ "nothing wrong with it bar a bit of rust", "no trouble apart from the whitefly"."""
    after = mentions.talk.texts[at + 1 : at + 2 + _AHEAD]
    return bool(set(after) & (_SAVE - {"but", "only"})) or any(
        w == "but" and after[n + 1 : n + 2] in (("for",), ("the",), ("a",), ("that",))
        for n, w in enumerate(after)
    )


def _of_a_thing(mentions: Mentions, at: int) -> bool:
    """ "not a mark on the label", "no bugs in the house"."""
    things = mentions.vocabulary.classes["not_plant"]
    stop = min(at + 1 + _AHEAD, mentions.talk.clause(at)[1])
    after = mentions.talk.texts[at + 1 : stop]
    if not after or after[0] not in _ON | {"from", "off"}:
        return False
    return bool(set(after) & things)


def _wrong_with_it(mentions: Mentions, at: int) -> bool:
    """ "nothing wrong", "nothing amiss with it"; not "no wrong number", "wrong with the colour"."""
    talk = mentions.talk
    if talk.tokens[at].mark or at + 1 >= talk.clause(at)[1]:
        return True
    return _on_it(mentions, at)


def _not_so_much_as(mentions: Mentions, at: int) -> bool:
    """ "without so much as a spot", "not a single hole"; not "not a spot"."""
    talk = mentions.talk
    if talk.texts[at] not in _DENTS or not (
        talk.tokens[at].mark or talk.clause(at)[1] == at + 1 or at + 1 == len(talk.texts)
    ):
        return False
    before = talk.texts[max(0, at - 4) : at]
    return "much" in before or before[-1:] in (("single",), ("solitary",), ("one",))


_DENTS = frozenset({"mark", "spot", "speck", "hole", "nibble", "scar", "blemish"})


def _on_it(mentions: Mentions, at: int) -> bool:
    """The flaw is looked for on the plant: "on it", "anywhere", "underneath", "with him"."""
    texts = mentions.talk.texts
    after = texts[at + 1 : at + 2 + _AHEAD]
    if after[:1] in (("wrong",), ("living",), ("alive",), ("moving",), ("crawling",)):
        after = texts[at + 2 : at + 3 + _AHEAD]
    if not after or after[0] not in _ON:
        return False
    return after[0] in ("anywhere", "underneath") or bool(set(after[1:4]) & _ITS)
