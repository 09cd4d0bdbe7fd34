"""From words to tokens: lower case, contractions opened, hyphens split, punctuation apart.

Contractions are opened by spaCy's English tokenizer ("isn't" is "is", "not"; "it's" is
"it", "'s"), so that every rule and every phrase of the vocabulary sees one spelling.
"""

import itertools
import re
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache

from spacy.lang.en import English
from spacy.tokenizer import Tokenizer

from diary.reading.bare_apostrophes import bare_contractions
from diary.reading.clause_starts import starts_clause
from diary.speech.transcript import Transcript

_NUMBER_WITH_UNIT = re.compile(
    r"^(\d+(?:\.\d+)?)(mm|cm|cms|m|mil|mils|p|in|ins|ft|am|pm|c|f|ml|l|kg|g|inch|inches)$"
)
_NUMBER_HYPHEN_WORD = re.compile(r"^(\d+(?:\.\d+)?)-([a-z]{2,}.*)$")
_WORD_HYPHEN_NUMBER = re.compile(r"^([a-z]{3,})-(\d.*)$")
_PRICE = re.compile(r"^[£$€](\d.*)$")
# Words whose full stop ends no sentence, and what note-takers write for "with".
_SHORTENED = frozenset(
    {"mr.", "mrs.", "dr.", "st.", "ms.", "approx.", "dia.", "diam.", "ca.", "cf.", "vs.", "w."}
)
_WITH = frozenset({"w.", "w/"})
_APART = frozenset({"/", "|", "+", "•"})  # between the entries of a note, as a comma is
_OPENED = {
    "n't": "not",
    "nt": "not",
    "ca": "can",
    "wo": "will",
    "sha": "shall",
    "ai": "is",
    "`": "'",
}
_ENDINGS = frozenset(
    {"'s", "'m", "'ve", "'ll", "'d", "'re"}
)  # as phrases of the vocabulary hold them
_BARE_ENDINGS = {"s": "'s", "m": "'m", "ve": "'ve", "ll": "'ll", "d": "'d", "re": "'re"}
_FRACTIONS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅝": "5/8", "⅜": "3/8", "⅞": "7/8"}
# A mark of a full stop or a comma, after a token.
STOP, QUERY, COMMA = ".", "?", ","
# One full stop in so many words at least, and the text counts as punctuated.
_WORDS_PER_STOP = 60


@dataclass(frozen=True, slots=True)
class Token:
    """One token: its canonical text, the word it comes from, and the mark after it."""

    text: str
    word: int
    capital: bool
    mark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Talk:
    """A transcript as tokens, cut into sentences and clauses (both half-open, in order)."""

    transcript: Transcript
    tokens: tuple[Token, ...]
    texts: tuple[str, ...]
    punctuated: bool
    sentences: tuple[tuple[int, int], ...]
    clauses: tuple[tuple[int, int], ...]

    def sentence(self, index: int) -> tuple[int, int]:
        """The sentence that holds the token at `index`."""
        return _around(self.sentences, index)

    def clause(self, index: int) -> tuple[int, int]:
        """The clause that holds the token at `index`."""
        return _around(self.clauses, index)

    def sentences_in(self, start: int, end: int) -> tuple[tuple[int, int], ...]:
        """The sentences that reach into tokens start..end-1."""
        return _reaching(self.sentences, start, end)

    def clauses_in(self, start: int, end: int) -> tuple[tuple[int, int], ...]:
        """The clauses that reach into tokens start..end-1."""
        return _reaching(self.clauses, start, end)

    def sentence_number(self, index: int) -> int:
        """Which sentence the token at `index` is in, from 0."""
        return max(0, bisect_right(self.sentences, (index, len(self.tokens) + 1)) - 1)

    def between(self, start: int, end: int, wanted: Sequence[str]) -> bool:
        """Whether a mark of `wanted` stands after one of the tokens start..end-1."""
        return any(token.mark in wanted for token in self.tokens[max(start, 0) : max(end, 0)])


def _reaching(
    spans: tuple[tuple[int, int], ...], start: int, end: int
) -> tuple[tuple[int, int], ...]:
    first = max(0, bisect_right(spans, (start, 1 << 60)) - 1)
    last = bisect_right(spans, (end - 1, 1 << 60))
    return spans[first:last]


def _around(spans: tuple[tuple[int, int], ...], index: int) -> tuple[int, int]:
    return spans[max(0, bisect_right(spans, (index, 1 << 60)) - 1)]


@cache
def _tokenizer() -> Tokenizer:
    return English().tokenizer


@lru_cache(maxsize=65536)
def pieces(raw: str) -> tuple[str, ...]:
    """The canonical tokens of one written word, without its punctuation.

    >>> pieces("isn't"), pieces("24-11B"), pieces("nine-centimetre"), pieces("55mm")
    (('is', 'not'), ('24-11b',), ('nine', 'centimetre'), ('55', 'mm'))
    """
    if raw.lower() in _WITH:
        return ("with",)
    core = raw.replace("’", "'").replace("‘", "'").lower().strip(' "“”.,;:!?()[]…*_-–—')  # noqa: RUF001
    if not core:
        return ()
    if core in _ENDINGS:
        return (core,)
    for sign, spelt in _FRACTIONS.items():
        core = core.replace(sign, f" {spelt} ")
    if " " in core:
        return tuple(piece for part in core.split() for piece in pieces(part))
    if any(c.isdecimal() for c in core):
        if price := _PRICE.match(core):
            return ("£", *pieces(price[1]))
        core = core.rstrip("'")
        if core.endswith(("°", "°c")):
            return (core.split("°")[0], "degrees")
        if core.endswith("%"):
            return (core[:-1], "percent")
        if core.endswith('"'):
            return (core[:-1], "inches")
        if core.endswith("'s"):
            return (*pieces(core[:-2]), "'s")
        if unit := _NUMBER_WITH_UNIT.match(core):
            return (unit[1], unit[2])
        if hyphen := _NUMBER_HYPHEN_WORD.match(core):
            return (hyphen[1], *pieces(hyphen[2]))
        if hyphen := _WORD_HYPHEN_NUMBER.match(core):
            return (*pieces(hyphen[1]), *pieces(hyphen[2]))
        return (core,)
    found: list[str] = []
    for part in re.split(r"[-–—/]", core):  # noqa: RUF001
        if part:
            found += [_OPENED.get(token.text, token.text) for token in _tokenizer()(part)]
    if len(found) > 1 and "".join(found) == core and found[-1] in _BARE_ENDINGS:
        found[-1] = _BARE_ENDINGS[found[-1]]  # "thats", "dont": an apostrophe left out
    if found[:2] == ["gon", "na"]:
        return ("going", "to")
    if found[:2] == ["got", "ta"]:
        return ("got", "to")
    return tuple(found)


def _mark(raw: str) -> str:
    if raw.lower() in _SHORTENED:
        return ""
    if raw in _APART:
        return COMMA
    tail = raw[len(raw.rstrip(" \"'”’.,;:!?()[]…-–—")) :]  # noqa: RUF001
    if "?" in tail:
        return QUERY
    if "..." in tail or "…" in tail:
        return COMMA
    if "." in tail or "!" in tail:
        return STOP
    return COMMA if any(c in tail for c in ",;:-–—)") else ""  # noqa: RUF001


def tokenise(transcript: Transcript) -> Talk:
    """The talk of a transcript. An empty transcript gives an empty talk."""
    tokens: list[Token] = []
    line_ends = set(transcript.segment_starts) if transcript.clock.value == "lines" else set()
    bare = bare_contractions([word.text for word in transcript.words])
    for index, word in enumerate(transcript.words):
        parts = bare.get(index) or pieces(word.text)
        mark = _mark(word.text)
        if index in line_ends and tokens and tokens[-1].mark != QUERY:
            tokens[-1] = _marked(tokens[-1], STOP)
        if not parts:
            if mark and tokens and tokens[-1].mark == "":
                tokens[-1] = _marked(tokens[-1], mark)
            continue
        capital = word.text.lstrip("\"'“‘(")[:1].isupper()  # noqa: RUF001
        for part in parts[:-1]:
            tokens.append(Token(part, index, capital, ""))
        tokens.append(Token(parts[-1], index, capital, mark))
    stops = sum(1 for token in tokens if token.mark in (STOP, QUERY))
    punctuated = stops * _WORDS_PER_STOP >= len(tokens)
    texts = tuple(token.text for token in tokens)
    fresh = [i for i in range(len(texts)) if starts_clause(texts, i)]
    hard = [i + 1 for i, token in enumerate(tokens) if token.mark in (STOP, QUERY)]
    commas = [i + 1 for i, token in enumerate(tokens) if token.mark == COMMA]
    sentence_cuts = hard if punctuated else sorted({*hard, *fresh})
    return Talk(
        transcript=transcript,
        tokens=tuple(tokens),
        texts=texts,
        punctuated=punctuated,
        sentences=_spans(sentence_cuts, len(tokens)),
        clauses=_spans(sorted({*hard, *commas, *fresh}), len(tokens)),
    )


def cut_at(talk: Talk, starts: Sequence[int]) -> Talk:
    """The talk with sentences and clauses that begin at these tokens too."""
    if not starts:
        return talk
    end = len(talk.tokens)
    return replace(
        talk,
        sentences=_spans(sorted({*starts, *(a for a, _ in talk.sentences)}), end),
        clauses=_spans(sorted({*starts, *(a for a, _ in talk.clauses)}), end),
    )


def _marked(token: Token, mark: str) -> Token:
    return Token(token.text, token.word, token.capital, mark)


def _spans(cuts: list[int], length: int) -> tuple[tuple[int, int], ...]:
    edges = [0, *[c for c in cuts if 0 < c < length], length]
    return tuple((a, b) for a, b in itertools.pairwise(edges) if b > a)
