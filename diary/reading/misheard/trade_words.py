"""Rare words of the trade that a recogniser respells: "botrities on it" is botrytis."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from types import MappingProxyType

import jellyfish
from rapidfuzz import fuzz

from diary.reading.tokens import Talk

# Below these a word is too short, or too unlike, to be told by its sound ("pocket", picotee).
_LEAST_LETTERS, _LEAST_LIKENESS = 6, 75.0


@dataclass(frozen=True, slots=True)
class TradeWords:
    """Words of the trade by their sound (Metaphone)."""

    by_sound: Mapping[str, tuple[str, ...]]
    words: frozenset[str]
    twins: Mapping[str, str]  # what is written -> what is meant ("pedal", petal)
    unless: Mapping[str, frozenset[str]]  # a twin stays what it is beside one of these


def trade_words(
    words: Iterable[str],
    twins: Mapping[str, str] = MappingProxyType({}),
    unless: Mapping[str, Iterable[str]] = MappingProxyType({}),
) -> TradeWords:
    """The words, ready to be compared."""
    by_sound: dict[str, tuple[str, ...]] = {}
    said = frozenset(words)
    for word in sorted(said):
        sound = _sound(word)
        by_sound[sound] = (*by_sound.get(sound, ()), word)
    return TradeWords(
        by_sound=by_sound,
        words=said,
        twins=dict(twins),
        unless={word: frozenset(beside) for word, beside in unless.items()},
    )


def respelt(talk: Talk, trade: TradeWords) -> Talk:
    """The talk with such words rightly spelt; its transcript, and so every quote, stays as heard.

    Catches "botrities", "variagated", "wavy pedals"; leaves "pocket" and "dusted with flour" alone.
    """
    mended = {
        i: word
        for i, text in enumerate(talk.texts)
        if (word := _twin(talk, i, trade) or _meant(text, trade))
    }
    if not mended:
        return talk
    tokens = tuple(
        replace(token, text=mended.get(i, token.text)) for i, token in enumerate(talk.tokens)
    )
    return replace(talk, tokens=tokens, texts=tuple(token.text for token in tokens))


def _twin(talk: Talk, at: int, trade: TradeWords) -> str | None:
    """ "wavy pedals" are petals; not "a pedal bin", "as if dusted with flour"."""
    word = trade.twins.get(talk.texts[at])
    if word is None:
        return None
    near = set(talk.texts[max(0, at - _TWIN_WITHIN) : at + 2])
    beside = trade.unless.get(talk.texts[at].removesuffix("s"), frozenset())
    return None if near & beside else word


_TWIN_WITHIN = 5


def _meant(text: str, trade: TradeWords) -> str | None:
    if len(text) < _LEAST_LETTERS or text in trade.words or not text.isalpha():
        return None
    near = [
        (fuzz.ratio(text, word), word)
        for word in trade.by_sound.get(_sound(text), ())
        if text[0] == word[0]
    ]
    likeness, word = max(near, default=(0.0, ""))
    return word if likeness >= _LEAST_LIKENESS else None


@lru_cache(maxsize=65536)
def _sound(word: str) -> str:
    return jellyfish.metaphone(word)
