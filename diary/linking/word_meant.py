"""Words of form and growth as they are meant: taken back, less than another, or of a leaf.

"it's trailing, well, I say trailing" and "more spreading than trailing" are no trailing;
"the leaves are tiny and crinkled" is no frilled flower. Leaves alone "I say double and I
mean double".
"""

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_SAID_BEFORE, _MORE_BEFORE, _SOFTENED_WITHIN = 12, 5, 8
_FORMS_OF_LEAVES = frozenset({"frilled", "rounded", "flat", "open"})


def as_meant(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """The statements without those that their own sentence takes away."""
    quoted = [s for s in found if _quoted(mentions, s)]
    return [
        s
        for s in found
        if not _only_said(s, quoted)
        and not _less(mentions, s)
        and not _of_a_leaf(mentions, s)
        and not _softened(mentions, s, found)
        and not _not_yet(mentions, s)
    ]


def _quoted(mentions: Mentions, s: Statement) -> bool:
    """ "well, I say trailing": the word is held up to be put right."""
    texts = mentions.talk.texts
    return texts[s.start - 2 : s.start] == ("i", "say") and texts[s.end : s.end + 3] != (
        "and",
        "i",
        "mean",
    )


def _only_said(s: Statement, quoted: list[Statement]) -> bool:
    return any(
        q.trait == s.trait and q.value == s.value and 0 <= q.start - s.start <= _SAID_BEFORE
        for q in quoted
    )


def _less(mentions: Mentions, s: Statement) -> bool:
    """ "more spreading than trailing": the second of the two."""
    texts = mentions.talk.texts
    low = max(0, s.start - _MORE_BEFORE)
    before = texts[low : s.start]
    if s.trait not in ("habit", "bloom_form") or before[-1:] != ("than",):
        return False
    return "more" in before and "no" not in before and "not" not in before


def _not_yet(mentions: Mentions, s: Statement) -> bool:
    """ "it might come double next year"; not "in May it was double"."""
    if s.trait == "bloom_size":
        return False
    texts = mentions.talk.texts
    low = max(mentions.talk.clause(s.start)[0], s.start - _MODAL_BEFORE)
    return any(
        i + 1 < s.end
        and texts[i + 1] in (_BECOMING if texts[i] in _MODALS else _BEING)
        and texts[i] in _MODALS | {"would", "'d"}
        for i in range(low, s.start)
    )


_MODALS = frozenset({"might", "may", "could", "will", "'ll", "should"})
_BECOMING = frozenset(
    {"be", "come", "turn", "prove", "get", "go", "become", "still", "yet", "even"}
)
_BEING = frozenset({"be", "look", "still"})
_MODAL_BEFORE = 5


def _softened(mentions: Mentions, s: Statement, found: list[Statement]) -> bool:
    """ "it's a double, but only just, I'd say semi": the weaker word that follows holds."""
    if s.trait != "bloom_form" or s.value != "double":
        return False
    nearly = bool({"nearly", "almost"} & set(mentions.talk.texts[max(0, s.start - 2) : s.end]))
    return any(
        x.value == "semi-double"
        and 0 < x.start - s.end <= _SOFTENED_WITHIN
        and (nearly or "only" in mentions.talk.texts[s.end : x.start])
        for x in found
    )


def _of_a_leaf(mentions: Mentions, s: Statement) -> bool:
    """ "leaves are tiny and crinkled", "a frilly leaf": the last noun before it, or the next."""
    if s.trait != "bloom_form" or s.value not in _FORMS_OF_LEAVES:
        return False
    start, _ = mentions.talk.clause(s.start)
    leaf = mentions.vocabulary.classes["foliage"]
    if set(mentions.talk.texts[s.end : s.end + 1]) & leaf:
        return True
    nouns = mentions.parts_in(start, s.start)
    own = set(mentions.talk.texts[s.start : s.end])
    return bool(nouns) and nouns[-1].label == "leaf" and not own & _FLOWER_WORDS


_FLOWER_WORDS = frozenset({"flower", "flowers", "bloom", "blooms", "petal", "petals"})
