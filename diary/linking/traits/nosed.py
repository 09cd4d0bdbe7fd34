"""A scent found by nose: "stick your nose in that, it's like honey", "you get a waft off it".

Leaves alone "I had my nose in it, nothing", "my nose is cold", "a whiff of paraffin from the
heater" and what the leaf smells of.
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.tokens import QUERY, STOP

_NOSED = frozenset({"nose", "sniff", "sniffed", "smell", "smelt", "nostrils", "hooter", "conk"})
_IN = frozenset({"in", "into", "to", "at", "of", "over", "near", "that", "this", "it"})
_NONE = frozenset(
    "no not nothing never nowt none hardly without barely scarcely nobody neither nor if little "
    "much".split()
)
_FROM = frozenset({"off", "from", "of", "when", "in", "at", "every", "now", "as", "on", "if"})
_FOUND_WITHIN, _CAUGHT_WITHIN, _BEFORE = 10, 4, 5


def nosed(mentions: Mentions) -> Iterator[Statement]:
    """Every scent that a nose has found."""
    for at, text in enumerate(mentions.talk.texts):
        if mentions.masked[at]:
            continue
        if text in _NOSED:
            end = _sweet_to_the_nose(mentions, at)
        elif text in mentions.vocabulary.classes["drift"]:
            end = _caught(mentions, at)
        else:
            continue
        if end is not None:
            yield Statement(
                trait="scent",
                value="scented",
                start=at,
                end=end,
                rule="a scent found by nose",
                score=0.87,
            )


def _sweet_to_the_nose(mentions: Mentions, at: int) -> int | None:
    """ "nose in that it's like honey", "have a sniff of that, gorgeous"."""
    talk, classes = mentions.talk, mentions.vocabulary.classes
    texts = talk.texts
    if not set(texts[at + 1 : at + 3]) & _IN or set(texts[max(0, at - 4) : at]) & _NONE:
        return None
    stops = 0
    for i in range(at + 1, min(len(texts), at + 1 + _FOUND_WITHIN)):
        if texts[i] in _NONE | classes["foliage"] | classes["stink"]:
            return None
        stops += talk.tokens[i - 1].mark in (STOP, QUERY)
        if stops > 1 or mentions.masked[i]:
            return None
        if texts[i] in classes["lovely"] and texts[i - 1] not in ("a", "the"):
            return i + 1
        if texts[i] in classes["odour"] and texts[i - 1] in _LIKENED and texts[i] not in _NOSED:
            return i + 1
    return None


_LIKENED = frozenset({"like", "of", "pure", "and", "it", "that", "'s", "all", "is"})


def _caught(mentions: Mentions, at: int) -> int | None:
    """ "you get a lovely waft off it"; not "never a whiff", "a whiff of paraffin"."""
    talk, classes = mentions.talk, mentions.vocabulary.classes
    texts = talk.texts
    low = max(talk.clause(at)[0], at - _BEFORE)
    before = texts[low:at]
    if set(before) & _NONE or not set(before) & classes["catch"]:
        return None
    if "a" not in before and "the" not in before:
        return None
    high = min(talk.clause(at)[1], at + 1 + _CAUGHT_WITHIN)
    after = texts[at + 1 : high]
    if set(after) & (classes["foliage"] | classes["garden"]):
        return None
    if after and not talk.tokens[at].mark and after[0] not in _FROM:
        return None
    if after[:1] == ("of",) and (mentions.masked[at + 2] or set(after) & classes["stink"]):
        return None  # "a whiff of A about it", "a whiff of paraffin"
    if texts[at] in ("breath", "puff", "gust", "drift") and after[:1] not in (("of",), ("off",)):
        return None
    return at + 1
