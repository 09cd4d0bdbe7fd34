"""Where the noun stands whose size is told: in the length, after it, before it, a clause ago.

"a two inch flower", "thirty centimetres of stem", "a foot across, is the plant", "the leaf's
small, it's a centimetre across"; not "well above the leaves, five centimetres across".
"""

from diary.linking.sizes.leaf_sizes import leaf_left_behind
from diary.reading.lengths import Length
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity
from diary.reading.phrases import Found

NOTHING = "nothing"
_BETWEEN = frozenset(
    "long clay plastic wide tall flower across square of deep flowering cane bamboo high "
    "split terracotta round diameter".split()
)
_POINTS = frozenset(
    "for the of on a each its whole it that this to per any every one biggest best widest "
    "her his my is are was an 's in largest broadest single main open individual".split()
)
PLACED = frozenset(
    "above below under beneath against over among behind beside beyond past between amongst "
    "within beneath off for than to on from at by beyond near".split()
)
COPULAS = frozenset({"is", "are", "'s", "'re", "was", "has", "have", "does", "do", "will"})
_DETERMINERS = frozenset("the a an its my her his this that these those first lowest top".split())
_PLURAL = frozenset({"them", "they", "these", "those"})
# A noun with one of these right after it is what the sentence measures.
_TITLES = frozenset("length width diameter size across height spread measurement".split())
_TO_LENGTH = frozenset(
    "is are 's 're was what about around only just a an good the of nearly almost say maybe some "
    "measures measure measuring hang hangs hanging down trail trails reach reaches goes come "
    "comes up to roughly out at over open opened".split()
)
_INSTRUMENTS = frozenset("ruler rule tape calipers callipers gauge measure dividers".split())


def governed(mentions: Mentions, length: Length) -> str:
    """The noun that the length stands with: "a fifteen-centimetre stem", "a nine-inch pot"."""
    texts, talk = mentions.talk.texts, mentions.talk
    if talk.punctuated and _of_a_marking(mentions, length):
        return NOTHING
    if talk.tokens[length.end - 1].mark:
        return ""
    for skip in (0, 1, 2):
        i = length.end + skip
        if i >= len(texts) or talk.between(length.end - 1, i, (".", ",", "?")):
            break
        if skip and texts[i - 1] not in _BETWEEN:
            break
        found = mentions.vocabulary.subjects.at(texts, i)
        if found is not None and (length.singular or skip or found.label == NOTHING):
            return "" if _new_subject(mentions, length, found) else found.label
    return ""


def _of_a_marking(mentions: Mentions, length: Length) -> bool:
    """ "with a white eye six millimetres wide": the part right before, and no mark between."""
    talk = mentions.talk
    if talk.tokens[length.start - 1].mark or talk.texts[length.start - 1] not in _MARKINGS:
        return False
    return mentions.vocabulary.dimensions.at(talk.texts, length.end) is not None


_MARKINGS = frozenset("eye blotch edge zone throat centre star spot flare blaze border rim".split())


def _new_subject(mentions: Mentions, length: Length, noun: Found) -> bool:
    """ "half a centimetre leaf is variegated": the noun opens the next clause."""
    talk = mentions.talk
    return (
        not talk.punctuated
        and talk.texts[noun.end : noun.end + 1] != ()
        and talk.texts[noun.end] in COPULAS
        and talk.texts[length.start - 1 : length.start] not in (("a",), ("the",), ("its",))
    )


def named_after(mentions: Mentions, end: int) -> str:
    """The noun set after the size: "nobbut two inch, the flower", "4 inches on the floret"."""
    talk = mentions.talk
    texts = talk.texts
    at = end
    if texts[at : at + 1] == ("of",) and (of := _of_noun(mentions, at + 1)):
        return of
    while at < len(texts) and at - end < 5:
        if talk.tokens[at - 1].mark in (".", "?"):
            return ""
        found = mentions.vocabulary.subjects.at(texts, at)
        if found is not None:
            bound = _across_the(mentions, end, at) and found.label not in ("leaf", "stem")
            over = _ends(mentions, found.end) or (bound and not _told_next(mentions, found.end))
            if at == end or not over or found.label == NOTHING:
                return ""
            return found.label
        if texts[at] not in _POINTS:
            return ""
        at += 1
    return ""


def _across_the(mentions: Mentions, end: int, at: int) -> bool:
    """ "eleven centimetres across the truss | good clean plant"."""
    texts = mentions.talk.texts
    return texts[end - 1] == "across" and texts[end:at] in (("the",), ("the", "whole"), ("each",))


def _told_next(mentions: Mentions, end: int) -> bool:
    return mentions.talk.texts[end : end + 1] == () or mentions.talk.texts[end] in COPULAS


def _of_noun(mentions: Mentions, at: int) -> str:
    """ "eight inches of clear straight stem": the noun that the length is of."""
    talk = mentions.talk
    for i in range(at, min(at + 4, len(talk.texts))):
        if talk.tokens[i - 1].mark or talk.texts[i] in COPULAS | PLACED:
            return ""
        found = mentions.vocabulary.subjects.at(talk.texts, i)
        if found is not None:
            return "" if found.label == NOTHING else found.label
    return ""


def named_last(mentions: Mentions, end: int) -> str:
    """ "thirty-eight centimetres and still climbing, this plant": the noun at the very end."""
    talk = mentions.talk
    last = talk.sentence(end - 1)[1]
    start = talk.clause(last - 1)[0]
    if not talk.punctuated or start < end or last - start > 4:
        return ""
    at = start
    while at < last - 1 and talk.texts[at] in _POINTS:
        at += 1
    found = mentions.vocabulary.subjects.at(talk.texts, at)
    whole = found is not None and (
        found.end == last or talk.texts[found.end : last] in (("itself",), ("here",), ("overall",))
    )
    return found.label if found is not None and whole and found.label != NOTHING else ""


def _ends(mentions: Mentions, end: int) -> bool:
    """Whether the phrase is over, so that its noun is no subject of what follows."""
    talk = mentions.talk
    if end >= len(talk.texts) or talk.tokens[end - 1].mark:
        return True
    if talk.texts[end - 1] in ("under", "below", "beneath"):
        return True  # "twenty inches of a stem under it"
    if talk.texts[end] in COPULAS:
        return False
    return (
        talk.clause(end)[0] == end
        or talk.texts[end]
        in (
            "and",
            "but",
            "so",
            "mind",
            "with",
            "now",
            "itself",
            "at",
            "under",
            "beneath",
            "below",
            "above",
            "before",
            "on",
        )
        or talk.texts[end : end + 2] in (("of", "it"), ("of", "her"), ("of", "him"))
    )


def named_before(mentions: Mentions, low: int, at: int) -> list[Found]:
    """The nouns of tokens low..at-1 whose size may be told next, without mere places."""
    talk = mentions.talk
    found = outermost(mentions.vocabulary.subjects.find(talk.texts, low, at))
    found = [
        f
        for f in found
        if not mentions.masked[f.start]
        and (f.label != NOTHING or _leads_to(mentions, f, at))
        and not _likened(mentions, f)
        and not leaf_left_behind(mentions, f, at)
        and not _only_counted(mentions, f, at)
    ]
    many = of_many(mentions, found, at)
    if many:
        return many
    if len(found) > 1 and found[-1].label == NOTHING and is_place(mentions, found[-1], low, at):
        found = found[:-1]  # "the stem under the bud is a good seven inches"
    if len(found) > 1 and _reached(mentions, found[-1], low):
        found = found[:-1]  # "stem to the first flower is nine inches"
    found = _without_counted(mentions, found, at)
    nothing = [f for f in found[-1:] if f.label == NOTHING and told_of(mentions, f, at)]
    if nothing:
        return nothing
    here = [f for f in found if not is_place(mentions, f, low, at)]
    return here or [f for f in found if f.label == NOTHING]


def _reached(mentions: Mentions, noun: Found, low: int) -> bool:
    """ "stem | to the first flower": where the thing measured ends."""
    texts = mentions.talk.texts
    i = noun.start
    while i > low and noun.start - i < 3 and texts[i - 1] in _DETERMINERS:
        i -= 1
    return i > low and i < noun.start and texts[i - 1] in ("to", "below", "under", "beneath")


def _likened(mentions: Mentions, noun: Found) -> bool:
    """ "double like a little rosette": no plant is named."""
    before = mentions.talk.texts[max(0, noun.start - 3) : noun.start]
    return "like" in before and "a" in before


def _only_counted(mentions: Mentions, noun: Found, at: int) -> bool:
    """ "there are seven heads open, and it's thirty centimetres tall": "it" is the plant."""
    texts = mentions.talk.texts
    if noun.label != "head" or texts[noun.end - 1] not in ("heads", "trusses", "umbels"):
        return False
    low = max(0, noun.start - 2)
    counted = any(quantity(texts, i) and not mentions.masked[i] for i in range(low, noun.start))
    return counted and bool({"it", "she", "he"} & set(texts[noun.end : at]))


def titled(mentions: Mentions, low: int, at: int) -> str:
    """ "Stem length, from the soil to the first flower: ...", "leaf width": what it heads."""
    texts = mentions.talk.texts
    for f in outermost(mentions.vocabulary.subjects.find(texts, low, at)):
        if f.label != NOTHING and (set(texts[f.start + 1 : f.end + 1]) & _TITLES):
            return f.label
    return ""


def of_many(mentions: Mentions, found: list[Found], at: int) -> list[Found]:
    """ "leaves that swamp a plant, the broadest of them being ...": not the plant."""
    texts = mentions.talk.texts
    many = [f for f in found if texts[f.end - 1].endswith(("s", "foliage"))]
    later = texts[many[-1].end : at] if many else ()
    return many[-1:] if _PLURAL & set(later) else []


def _without_counted(mentions: Mentions, found: list[Found], at: int) -> list[Found]:
    """ "The truss holds twenty pips and it's nine centimetres": "it" is no pips."""
    texts = mentions.talk.texts
    if len(found) < 2 or not texts[found[-1].end - 1].endswith("s"):
        return found
    later = texts[found[-1].end : at]
    one = [
        f
        for f in found[:-1]
        if f.label != NOTHING
        and (texts[f.end - 1] == "truss" or not texts[f.end - 1].endswith("s"))
    ]
    told = {"it", "she", "he"} & set(later) or later[:2] in (("and", "is"), ("and", "measures"))
    return found[:-1] if one and told else found


def _leads_to(mentions: Mentions, noun: Found, at: int) -> bool:
    """Whether the length can be of a thing that is no plant: in its clause, and beside it."""
    talk = mentions.talk
    if talk.clause(noun.start) != talk.clause(at):
        return False
    between = set(talk.texts[noun.end : at])
    if talk.texts[noun.start] in _MARKINGS and not talk.punctuated and not between & COPULAS:
        return False  # "white and a black blotch | about an inch and three quarters"
    return talk.punctuated or (bool(between) and between <= _TO_LENGTH)


def told_of(mentions: Mentions, noun: Found, at: int) -> bool:
    """ "the bench is three foot high", "on the second shelf about four feet up"."""
    between = set(mentions.talk.texts[noun.end : at])
    return bool(between) and between <= _TO_LENGTH and not mentions.talk.tokens[noun.end - 1].mark


def outermost(found: list[Found]) -> list[Found]:
    kept: list[Found] = []
    for f in found:
        if not kept or f.start >= kept[-1].end:
            kept.append(f)
    return kept


def is_place(mentions: Mentions, noun: Found, low: int, at: int) -> bool:
    """ "well above the leaves, ...", "up to the truss", "for a plant of its age"."""
    talk = mentions.talk
    if talk.texts[noun.end : noun.end + 1] == ("of",):
        return False  # "on a stem of eighteen centimetres"
    if noun.end >= at - 1 and not talk.tokens[noun.end - 1].mark:
        return False
    i = noun.start
    while i > low and noun.start - i < 3 and talk.texts[i - 1] in _DETERMINERS:
        i -= 1
    if _INSTRUMENTS & set(talk.texts[max(low, i - 3) : i]):
        return False  # "I put the rule on its flower"
    return i > low and talk.texts[i - 1] in PLACED
