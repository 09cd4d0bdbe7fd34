"""What speaks for and against a decision in a sentence: its words, alone and beside each other.

Every sign is a short name ("two: me keeper", "class: waste_place"); which of them count for
how much has been learnt from talks written down with their answers
(evaluation/learn_decisions.py).
"""

from collections.abc import Iterator, Mapping
from functools import lru_cache

from diary.linking.kinds_of_words import kinds_of_words
from diary.reading.mentions import Mentions

_LONGEST = 40  # words: a longer sentence is heard in pieces
_SIZES = ("one", "two", "three")  # words beside each other
_LENGTHS = 4, 6  # a step of its length, and the most steps


class DecisionSigns:
    """The signs of one talk, asked by sentence."""

    def __init__(self, mentions: Mentions) -> None:
        self._mentions = mentions
        kinds = kinds_of_words(mentions)
        self._words = [kinds.get(i, text) for i, text in enumerate(mentions.talk.texts)]
        self._classes = _classes_by_word(mentions.vocabulary.classes)
        self._ways: dict[int, set[str]] = {}
        for found in mentions.vocabulary.decisions.find(mentions.talk.texts):
            self._ways.setdefault(found.start, set()).add(found.label)

    def sentences(self) -> Iterator[tuple[int, int]]:
        """The sentences of the talk (half-open), long ones in pieces."""
        for start, stop in self._mentions.talk.sentences:
            for at in range(start, stop, _LONGEST):
                yield at, min(at + _LONGEST, stop)

    def of(self, start: int, stop: int) -> set[str]:
        """What speaks for or against any decision in the tokens start..stop-1."""
        words = self._words[start:stop]
        step, most = _LENGTHS
        signs = {
            f"first: {words[0]}",
            f"first two: {' '.join(words[:2])}",
            f"last: {words[-1]}",
            f"last two: {' '.join(words[-2:])}",
            f"length: {min(len(words) // step, most)}",
            f"punctuated: {self._mentions.talk.punctuated}",
        }
        signs |= {f"within: {x.value}" for x in self._mentions.scopes.habits(start, stop)}
        for at in range(start, stop):
            signs |= set(self._begun(at, stop))
            signs |= {f"a way to {way}" for way in self._ways.get(at, ())}
            for name in self._classes.get(self._mentions.talk.texts[at], ()):
                signs.add(f"class: {name}")
                if at > start:
                    signs.add(f"class: {self._words[at - 1]} <{name}>")
                if at + 1 < stop:
                    signs.add(f"class: <{name}> {self._words[at + 1]}")
        return signs

    def _begun(self, at: int, stop: int) -> Iterator[str]:
        """The word at the token, and those it begins before `stop`."""
        words = self._words[at : min(at + len(_SIZES), stop)]
        for size, name in zip(range(1, len(words) + 1), _SIZES, strict=False):
            yield f"{name}: {' '.join(words[:size])}"


def _classes_by_word(classes: Mapping[str, frozenset[str]]) -> Mapping[str, tuple[str, ...]]:
    return _turned_round(tuple(sorted((name, words) for name, words in classes.items())))


@lru_cache(maxsize=4)
def _turned_round(
    classes: tuple[tuple[str, frozenset[str]], ...],
) -> Mapping[str, tuple[str, ...]]:
    named: dict[str, tuple[str, ...]] = {}
    for name, words in classes:
        for word in words:
            named[word] = (*named.get(word, ()), name)
    return named
