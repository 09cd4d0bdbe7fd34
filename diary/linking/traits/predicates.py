"""Plain adjectives that tell of looks only where a sentence is built round them: "it's ever so
round", "nice and flat", "you can see how tight it is", "flowers single", "late and pink".

Leaves alone "all the way round", "the truss is round", "a flat tyre" and "at the earliest".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity
from diary.reading.phrases import Found

_DEGREES = frozenset(
    "so very really quite rather that this nice lovely fairly pretty too ever always all still "
    "just only beautifully perfectly completely totally absolutely properly awful awfully dead "
    "right well good bit a little also again now more most usually mostly generally invariably "
    "and such more real proper fully sort kind of lovely gorgeously nearly almost about".split()
)
_BEING = frozenset(
    "is 's are 're was come comes came coming turned turns out opens opened opening open stays "
    "stayed stay keeps kept looks look looking lies sits grows growing grown gone goes up been be "
    "form shape habit outline flowers flower bloom blooms".split()
)
_CALLED = frozenset("call called calling say said".split())
_IT = frozenset({"it", "this", "they", "she", "he", "these", "that"})
_CLOSING = frozenset(
    "and but with so too mind though now this that it she he they i which again for as like "
    "really if because there you we not no about its".split()
)
_IN_LOOKS = frozenset("form shape outline profile habit growth face flower bloom".split())
_LED_WITHIN, _SUBJECT_BACK = 5, 8
_OF = {"bloom_form": {"bloom"}, "habit": {"plant"}}
_EITHER = {"bloom", "plant"}


def predicates(mentions: Mentions) -> Iterator[Statement]:
    """ "it's ever so round", "flowers single", "how early it is", "late and pink"."""
    vocabulary = mentions.vocabulary
    for f in mentions.phrases(vocabulary.predicate_terms, vocabulary.never_terms):
        term = vocabulary.term_table[f.label]
        start = _led(mentions, f)
        if start is None or not _closed(mentions, f, start):
            continue
        headed = mentions.talk.texts[start] in _HEADS
        if not headed and _of_something_else(mentions, f, _OF.get(term.trait, _EITHER)):
            continue
        yield Statement(
            trait=term.trait,
            value=term.value,
            start=f.start,
            end=f.end,
            rule="a plain word that the sentence is built round",
            score=0.86,
        )


def _led(mentions: Mentions, f: Found) -> int | None:
    """Where the words before it begin: a verb of being, "how", "call it", or the clause."""
    talk = mentions.talk
    low = max(talk.clause(f.start)[0], f.start - _LED_WITHIN)
    i = f.start
    while i > low and _of_degree(talk.texts[i - 1]):
        i -= 1
    if i == talk.clause(f.start)[0]:
        return i
    before = talk.texts[i - 1]
    if before == "'s" and mentions.ref_ending(i - 1) is not None:
        return None  # "it's Tin Whistle's double"
    if before in _BEING or before == "how":
        return i - 1
    if before in _IT and i - 2 >= low and talk.texts[i - 2] in _CALLED:
        return i - 2
    if i < f.start and talk.texts[i] == "and" and _describes(mentions, i):
        return i  # "pink and round"
    if i == f.start and not talk.punctuated and _describes(mentions, i):
        return i  # "single pink flat five centimetres across"
    return None


def _of_degree(word: str) -> bool:
    """ "ever so", "loosely"; not "hardly"."""
    return word in _DEGREES or (word.endswith("ly") and word not in _NO_DEGREES)


_NO_DEGREES = frozenset({"early", "hardly", "scarcely", "barely", "curly", "frilly"})


def _describes(mentions: Mentions, end: int) -> bool:
    """Whether a word of looks ends there: a colour, or a word of the vocabulary."""
    if any(c.end == end for c in mentions.colours_in(max(0, end - 3), end)):
        return True
    terms = mentions.vocabulary.terms.find(mentions.talk.texts, max(0, end - 3), end)
    return any(t.end == end for t in terms)


def _closed(mentions: Mentions, f: Found, start: int) -> bool:
    talk = mentions.talk
    alone = start == talk.clause(f.start)[0] and talk.texts[start] not in _BEING | {"how"}
    rest = talk.texts[f.end : f.end + 3]
    if talk.texts[start] == "how":
        return (
            bool(rest) and rest[0] in _IT and rest[1:2] in (("is",), ("'s",), ("are",), ("looks",))
        )
    ended = not rest or bool(talk.tokens[f.end - 1].mark) or talk.clause(f.start)[1] == f.end
    if rest[:1] == ("in",) and _IN_LOOKS & set(rest[1:]):
        return True
    if rest[:1] == ("than",) and rest[1:2] in (("i",), ("we",), ("you",), ("last",)):
        return "more" in talk.texts[start : f.start]
    if start == f.start and not talk.punctuated:
        return rest[:1] in _WITH or (bool(rest) and quantity(talk.texts, f.end) is not None)
    if alone:
        # a fragment: "Late and pink.", "pale pink, flat, five centimetres"
        if rest[:1] == ("and",) and any(mentions.colours_in(f.end + 1, f.end + 3)):
            return True
        return ended and talk.punctuated
    return ended or rest[0] in _CLOSING


_WITH = (("with",), ("and",), ("but",))
_HEADS = frozenset("form shape outline flower flowers bloom blooms habit".split())
_BUDS = frozenset("rosebud rosebuds bud buds ball centre middle heart".split())


def _of_something_else(mentions: Mentions, f: Found, own: set[str]) -> bool:
    """ "the truss is round": the noun that the clause is about is another."""
    low = mentions.talk.clause(f.start)[0]
    if mentions.talk.punctuated and not _IT & set(mentions.talk.texts[low : f.start]):
        low = mentions.talk.sentence(f.start)[0]  # "a lovely leaf, big and round"
    low = max(low, f.start - _SUBJECT_BACK)
    nouns = mentions.vocabulary.subjects.find(mentions.talk.texts, low, f.start)
    if own == {"plant"}:  # "it's a rosebud, so tight you'd never see into it"
        low = max(mentions.talk.sentence(f.start)[0], f.start - _SUBJECT_BACK)
        if _BUDS & set(mentions.talk.texts[low : f.start]):
            return True
    parts = mentions.parts_in(low, f.start)
    if nouns and nouns[-1].label not in own:
        return True
    return bool(parts) and parts[-1].label != "bloom"
