"""Words of form and growth as they are meant: taken back, less than another, or of a leaf.

"it's trailing, well, I say trailing" and "more spreading than trailing" are no trailing;
"the leaves are tiny and crinkled" is no frilled flower. Leaves alone "I say double and I
mean double".
"""

from collections.abc import Sequence

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity

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
        and not _not_so(mentions, s)
        and not _of_a_leaf(mentions, s)
        and not _softened(mentions, s, found)
        and not _not_yet(mentions, s)
        and not _counts_a_thing(mentions, s)
        and not _now_gone(mentions, s)
        and not _not_the_one(mentions, s)
        and not _somebodys_double(mentions, s)
        and not _half_of_a_word(mentions, s)
        and not _before_a_colour(mentions, s)
        and not _not_so_many(mentions, s)
        and not _compared(mentions, s)
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
    """ "more spreading than trailing", "less compact", "not so much upright as spreading"."""
    texts = mentions.talk.texts
    low = max(0, s.start - _MORE_BEFORE)
    before = texts[low : s.start]
    if before[-1:] in (("well",), ("freely",)):
        before = before[:-1]  # "less well branched"
    lessened = before[-1:] == ("less",) and before[-2:-1] not in (("no",), ("any",), ("or",))
    if s.trait in ("flowering", "scent", "health"):
        return lessened
    if s.trait not in ("habit", "bloom_form"):
        return False
    if lessened or before[-1:] == ("nothing",):
        return True  # "there's nothing leggy about him"
    if before[-3:] == ("not", "so", "much"):
        return "as" in texts[s.end : s.end + _MORE_BEFORE]
    if before[-1:] != ("than",):
        return False
    return "more" in before and "no" not in before and "not" not in before


def _not_so(mentions: Mentions, s: Statement) -> bool:
    """ "not as leggy as I feared", "not so free", "hardly vigorous"; not "it's so leggy"."""
    before = mentions.talk.texts[max(0, s.start - 3) : s.start]
    while before[-1:] in (("very",), ("well",), ("quite",), ("nearly",)):
        before = before[:-1]
    if before[-1:] in (("hardly",), ("scarcely",), ("barely",)):
        return s.trait in ("habit", "bloom_form", "foliage", "health")
    return before[-1:] in (("as",), ("so",)) and before[-2:-1] in (("not",), ("nearly",))


def _not_yet(mentions: Mentions, s: Statement) -> bool:
    """ "it might come double next year"; not "in May it was double", "it'll flower for weeks"."""
    if s.trait == "bloom_size" or s.value == "shy":
        return False
    modals = _MODALS - {"'ll", "will"} if s.value in ("long", "free") else _MODALS
    texts = mentions.talk.texts
    low = max(mentions.talk.clause(s.start)[0], s.start - _MODAL_BEFORE)
    if s.trait in ("habit", "bloom_form") and {"till", "until"} & set(texts[low : s.start]):
        return True  # "leave it until the truss fills out"
    if s.trait == "health" and texts[s.start - 3 : s.start] in _INFERRED:
        return False  # "silvery streaks, that'll be thrips"
    if texts[max(low, s.start - 4) : s.start + 1].count("going") and _to_be(texts, low, s.start):
        return True  # "it was never going to be a dwarf"
    return any(
        i + 1 < s.end
        and texts[i + 1] in (_BECOMING if texts[i] in modals else _BEING)
        and texts[i] in modals | {"would", "'d"}
        for i in range(low, s.start)
    )


def _compared(mentions: Mentions, s: Statement) -> bool:
    """ "the flower's a little smaller too", "how big's the flower?": no size is told."""
    texts = mentions.talk.texts
    if s.trait != "bloom_size":
        return False
    last = texts[s.end : s.end + 1]
    comparative = bool(last) and last[0].endswith("er") and len(last[0]) > 4
    little = texts[s.end - 1] in ("little", "bit", "great") and comparative
    return (little and last[0] not in _ER) or texts[s.start - 1 : s.start] == ("how",)


_ER = frozenset("flower under after over other ever never".split())


def _counts_a_thing(mentions: Mentions, s: Statement) -> bool:
    """ "on a single low branch": how many; not "a single, and round", "a single white flower"."""
    talk = mentions.talk
    if s.value != "single" or talk.texts[s.end - 1] != "single" or s.end - s.start < 2:
        return False
    if talk.texts[s.end - 2] not in ("a", "the", "one") or talk.tokens[s.end - 1].mark:
        return False
    if s.end >= len(talk.texts) or talk.clause(s.start)[1] == s.end:
        return False
    rest = talk.texts[s.end]
    flower = mentions.vocabulary.classes["flower"]
    flower -= {"truss", "trusses", "petal", "petals"}
    plain = rest in _AFTER_A_FORM | flower or quantity(talk.texts, s.end) is not None
    return not plain and not mentions.colours_in(s.end, s.end + 1)


_AFTER_A_FORM = frozenset(
    "and but or with about at in of this that it he she they so then too again mind which who "
    "really i you we for look would all is 's are was one form type here there not no on as like "
    "just quite rather very what when though if now yes well only pale deep bright dark soft rich "
    "nothing flowered sort kind thing because cause by from to pelargonium zonal regal though "
    "anyway um er right probably maybe perhaps almost nearly five mm cm".split()
)


def _before_a_colour(mentions: Mentions, s: Statement) -> bool:
    """ "a rather flat pink", "whatever pink that is, it's a strong one": said of the colour."""
    if s.value == "flat":
        return not mentions.talk.tokens[s.end - 1].mark and any(
            c.end > s.end for c in mentions.colours_in(s.start, s.end + 1)
        )
    texts = mentions.talk.texts
    if s.value == "weak" and texts[s.start - 2 : s.start] == ("colour", "of"):
        return True  # "the colour of weak blackcurrant"
    if s.value == "variegated" and texts[s.end - 1] in ("edged", "margined", "bordered"):
        return bool(_NO_VARIEGATION & set(texts[s.end : s.end + 2]))  # "edged red"
    if s.value not in ("vigorous", "weak") or mentions.talk.texts[s.end - 1] not in ("one", "sort"):
        return False
    return bool(mentions.colours_in(max(0, s.start - _COLOUR_BEFORE), s.start))


def _not_so_many(mentions: Mentions, s: Statement) -> bool:
    """ "not so many trusses this time"; not "never seen so many"."""
    return s.value == "free" and mentions.talk.texts[s.start - 1 : s.start] == ("not",)


_COLOUR_BEFORE = 7
_NO_VARIEGATION = frozenset("red bronze maroon purple brown copper crimson pink chocolate".split())


def _somebodys_double(mentions: Mentions, s: Statement) -> bool:
    """ "it's Tin Whistle's double": a likeness; not "Tin Whistle's double, as you see"."""
    texts = mentions.talk.texts
    if s.value not in ("double", "single") or texts[s.start : s.end] != ("'s", "double"):
        return False
    ref = mentions.ref_ending(s.start)
    return ref is not None and bool(
        {"'s", "is", "the"} & set(texts[max(0, ref.start - 2) : ref.start])
    )


def _half_of_a_word(mentions: Mentions, s: Statement) -> bool:
    """ "a semi | double one", "not quite | single": less than what is told without it."""
    before = mentions.talk.texts[max(0, s.start - 2) : s.start]
    if s.value == "double":
        return before[-1:] in (("semi",), ("half",))
    return s.value == "single" and before == ("not", "quite")


def _not_the_one(mentions: Mentions, s: Statement) -> bool:
    """ "not the dwarf I'd hoped for", "not the double I wanted"."""
    texts = mentions.talk.texts
    after = texts[s.end : s.end + 1]
    if texts[s.end : s.end + 3] in _IT_IS_NOT and (
        mentions.talk.clause(s.start) == (s.start, s.end + 3)
        or mentions.talk.tokens[s.end + 2].mark
    ):
        return True  # "upright it is not"
    if s.trait == "flowering" and texts[s.start - 2 : s.start] in _NOT_THE:
        return True  # "not the earliest, nor the latest"
    return texts[s.start - 2 : s.start] == ("not", "the") and after in (("i",), ("we",), ("that",))


_NOT_THE = (("not", "the"), ("nor", "the"), ("neither", "the"))
_IT_IS_NOT = tuple(
    (it, be, "not") for it in ("it", "she", "he", "they", "this") for be in ("is", "'s", "are")
)


def _now_gone(mentions: Mentions, s: Statement) -> bool:
    """ "the variegation is gone", "its zone has gone": the leaf had it once."""
    texts = mentions.talk.texts
    if s.trait != "foliage" or texts[s.end : s.end + 1] not in _IS:
        return False
    after = texts[s.end + 1 : s.end + 3]
    return bool(set(after) & _GONE) and not {"not", "never"} & set(after)


_IS = (("is",), ("'s",), ("has",), ("was",), ("are",), ("have",))
_GONE = frozenset({"gone", "lost", "disappeared", "vanished", "faded", "missing", "finished"})


def _to_be(texts: Sequence[str], low: int, at: int) -> bool:
    return any(
        texts[i] == "going" and texts[i + 1] == "to" and texts[i + 2] in _BECOMING
        for i in range(max(low, at - 5), at - 1)
    )


_INFERRED = tuple((w, m, "be") for w in ("that", "this") for m in ("'ll", "will", "must"))
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
    if set(mentions.talk.texts[s.end : s.end + 1]) & (leaf | _GROWTH):
        return True
    low = mentions.talk.sentence(s.start)[0]
    if mentions.talk.punctuated and not _PRONOUNS & set(mentions.talk.texts[low : s.start]):
        start = low  # "the leaves are small, glossy and crinkled"
    heads = mentions.vocabulary.subjects.find(mentions.talk.texts, start, s.start)
    if s.value == "rounded" and heads and heads[-1].label == "head":
        return True  # "the truss is round"
    nouns = mentions.parts_in(start, s.start)
    own = set(mentions.talk.texts[s.start : s.end])
    return bool(nouns) and nouns[-1].label == "leaf" and not own & _FLOWER_WORDS


_PRONOUNS = frozenset({"it", "she", "he", "this", "they", "flower", "flowers", "bloom", "petals"})
_GROWTH = frozenset({"growth", "tips", "shoots", "tip", "growths", "foliage"})
_FLOWER_WORDS = frozenset({"flower", "flowers", "bloom", "blooms", "petal", "petals"})
