"""Words of looks raised above the rest: "the leggiest of the lot", "my bushiest plant".

Leaves alone "not the leggiest", "like the bushiest" and words that only end so ("forest").
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.vocabulary import Term

_TRAITS = frozenset({"bloom_form", "habit", "foliage", "flowering"})
_LED = frozenset({"the", "my", "our", "its"})
_NOT_BEFORE = frozenset("not than like as of nor for with to behind beside after".split())
_SHORTEST, _AHEAD = 6, 4


def superlatives(mentions: Mentions) -> Iterator[Statement]:
    """ "the leggiest of the lot": the plain word of the vocabulary, with what follows it."""
    talk, terms = mentions.talk, mentions.vocabulary.terms
    for at in range(1, len(talk.texts)):
        text = talk.texts[at]
        if len(text) < _SHORTEST or not text.endswith("est") or talk.texts[at - 1] not in _LED:
            continue
        if talk.texts[at - 2 : at - 1] and talk.texts[at - 2] in _NOT_BEFORE:
            continue
        for plain in _plain(text):
            found = terms.at((plain, *talk.texts[at + 1 : at + _AHEAD]), 0)
            term = mentions.vocabulary.term_table[found.label] if found else None
            if found is not None and term is not None and _of_looks(term):
                yield Statement(
                    trait=term.trait,
                    value=term.value,
                    start=at - 1,
                    end=at + found.end,
                    rule="a word of looks raised above the rest",
                    score=0.86,
                )
                break


def _of_looks(term: Term) -> bool:
    """Not how large a leaf is: "the biggest leaf is fifty-five millimetres wide"."""
    return term.trait in _TRAITS and term.value not in ("large", "small")


def _plain(text: str) -> tuple[str, ...]:
    stem = text[:-3]
    if stem.endswith("i"):
        return (stem[:-1] + "y",)
    return (stem, stem + "e", stem[:-1]) if stem[-1:] == stem[-2:-1] else (stem, stem + "e")
