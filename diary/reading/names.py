"""Names of plants in talk, by spelling and by sound, over one to five words.

A recogniser splits, joins and respells rare names ("tall oh moth", "ink pot any"), so a
window of words is compared as one run of letters (edit distance) and as one run of sounds
(Metaphone). "None of these" is always possible: what is not close enough is no name.
"""

from collections import defaultdict
from dataclasses import dataclass
from functools import lru_cache
from math import ceil

import jellyfish
from rapidfuzz import fuzz, process

from diary.reading.known import Known
from diary.reading.numerals import ONES, TENS
from diary.reading.tokens import Talk, pieces

# Set on the practice scripts: shorter names must be closer.
_CLOSE_BY_LENGTH = ((5, 0.95), (8, 0.86), (11, 0.80), (99, 0.765))
_SPELLING_WEIGHT = 0.55
_MOST_EXTRA_WORDS = 2
_HOPELESS = 50.0  # per cent of the letters: no sound mends that
_SIZE = 0.7  # the shorter of two spellings has at least this share of the letters of the longer
# Words of ordinary talk: a window that holds one the name does not have is less likely a name.
_EVERYDAY = frozenset(
    "the a an and is are was were it he she this that i you we they on in of to at with "
    "for from not no so but "
    "petals petal flower flowers bloom leaf leaves edge throat eye blotch white pink "
    "red top bottom upper lower "
    "plant one ones have has had got be been will would there here what which very like "
    "lovely nice good little "
    "big small dark pale deep soft bright its his her all now then next back".split()
)
_EVERYDAY_PENALTY = 0.05
_AFTER_ARTICLE = 0.12
_TITLES = frozenset({"mrs", "mr", "miss", "ms", "dr", "sir", "lord", "lady"})


@dataclass(frozen=True, slots=True, kw_only=True)
class NameHeard:
    """A known name heard at tokens start..end-1; `exact` when spelt as on record."""

    start: int
    end: int
    name: str
    score: float
    exact: bool
    runner_up: str | None = None
    runner_up_score: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spelling:
    name: str
    letters: str
    sound: str
    words: frozenset[str]
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NameIndex:
    """The names on record, ready to be compared."""

    spellings: tuple[_Spelling, ...]
    # by first letter or sound, and the length of a window that may be the name
    by_initial: dict[tuple[str, int], tuple[_Spelling, ...]]
    letters: dict[tuple[str, int], tuple[str, ...]]  # the letters of each, in the same order
    most_words: int


def name_index(known: Known) -> NameIndex:
    """All names, synonyms, known mishearings, and names of seedlings and parents."""
    said: dict[str, str] = {}
    for entry in known.names:
        for form in (entry.name, *entry.synonyms, *entry.mishearings):
            said.setdefault(form, entry.name)
    for seedling in known.seedlings:
        if seedling.name:
            said.setdefault(seedling.name, seedling.name)
        for parent in (seedling.seed_parent, seedling.pollen_parent):
            if parent and not any(c.isdecimal() for c in parent) and len(parent) > 4:
                said.setdefault(parent, parent)
    for mishearing in known.mishearings:
        if mishearing.meant in said:
            said.setdefault(mishearing.heard, said[mishearing.meant])
    for form, name in list(said.items()):
        for alike in _number_heard_as_word(form):
            said.setdefault(alike, name)
        title, _, rest = form.partition(" ")
        if title.rstrip(".").casefold() in _TITLES and " " in rest:
            said.setdefault(rest, name)  # "Ottoline Bray" for Mrs Ottoline Bray
    spellings = []
    for form, name in said.items():
        words = [w for piece in form.split() for w in pieces(piece) if w != "'s"]
        letters = "".join(_spelt(w) for w in words)
        if letters:
            spellings.append(
                _Spelling(
                    name=name,
                    letters=letters,
                    sound=_sound(letters),
                    words=frozenset(words),
                    said=tuple(words),
                )
            )
    by_initial: dict[tuple[str, int], list[_Spelling]] = defaultdict(list)
    for spelling in spellings:
        for initial in _initials(spelling.letters, spelling.sound):
            size = len(spelling.letters)
            for heard in range(ceil(size * _SIZE), int(size / _SIZE) + 1):
                by_initial[initial, heard].append(spelling)
    return NameIndex(
        spellings=tuple(spellings),
        by_initial={k: tuple(v) for k, v in by_initial.items()},
        letters={k: tuple(s.letters for s in v) for k, v in by_initial.items()},
        most_words=max((len(s.words) for s in spellings), default=0),
    )


_ALIKE = {"two": ("to", "too"), "four": ("for",), "eight": ("ate",), "one": ("won",)}


def _number_heard_as_word(form: str) -> list[str]:
    """ "to left socks" of Two Left Socks: the number at its head as captions hear it."""
    first, _, rest = form.partition(" ")
    return [
        f"{word} {rest}" for word in _ALIKE.get(first.casefold(), ()) if len(rest) > _SHORT_REST
    ]


_SHORT_REST = 3


def find_names(
    talk: Talk, index: NameIndex, expected: frozenset[int] = frozenset()
) -> tuple[NameHeard, ...]:
    """Names in order, not overlapping, the best match of each stretch.

    At the tokens of `expected` a name is likely, and may be less close.
    """
    texts = talk.texts
    best: list[NameHeard] = []
    reach = min(index.most_words + _MOST_EXTRA_WORDS, 6)
    for start in range(len(texts)):
        if texts[start] in ("'s", "a", "the"):
            continue
        letters = ""
        for end in range(start + 1, min(start + reach, len(texts)) + 1):
            if texts[end - 1] != "'s":
                letters += _spelt(texts[end - 1])
            if end - 1 > start and talk.tokens[end - 2].mark in (".", "?", ","):
                break
            if not letters or texts[end - 1] == "'s":
                continue
            article = texts[start - 1 : start] in (("a",), ("an",))
            match = _best(
                letters, texts[start:end], index, article=article, expected=start in expected
            )
            if match is not None:
                best.append(
                    NameHeard(
                        start=start,
                        end=end,
                        name=match[0],
                        score=match[1],
                        exact=match[1] >= 1.0,
                        runner_up=match[2],
                        runner_up_score=match[3],
                    )
                )
    best.sort(key=lambda n: (-n.score, -(n.end - n.start), n.start))
    taken: list[NameHeard] = []
    covered: set[int] = set()
    for name in best:
        if covered.isdisjoint(range(name.start, name.end)):
            taken.append(name)
            covered.update(range(name.start, name.end))
    return tuple(sorted(taken, key=lambda n: n.start))


def _best(
    letters: str,
    words: tuple[str, ...],
    index: NameIndex,
    *,
    article: bool,
    expected: bool,
) -> tuple[str, float, str | None, float | None] | None:
    sound = _sound(letters)
    initials = _initials(letters, sound)
    pool = [
        spellings[at]
        for initial in initials
        if (spellings := index.by_initial.get(place := (initial, len(letters))))
        for _, _, at in process.extract(
            letters,
            index.letters[place],
            scorer=fuzz.ratio,
            score_cutoff=_HOPELESS,
            limit=None,
        )
    ]
    if not pool:
        return None
    scored: dict[str, float] = {}
    everyday = {word for word in words if word in _EVERYDAY}
    for spelling in pool:
        if len(words) > len(spelling.words) + _MOST_EXTRA_WORDS:
            continue
        if len(words) < len(spelling.words) and (
            spelling.letters.startswith(letters) or spelling.letters.endswith(letters)
        ):
            continue  # a part of a name is not the name
        score = _likeness(letters, sound, spelling.letters, spelling.sound)
        if _one_word_off(words, spelling.said):
            score = max(score, _ONE_WORD_OFF)
        if article and score < 1.0:
            score -= _AFTER_ARTICLE  # "a plain net curtain"
        if everyday - spelling.words and sound != spelling.sound and not expected:
            score -= _EVERYDAY_PENALTY * len(everyday - spelling.words)
        if score > scored.get(spelling.name, 0.0):
            scored[spelling.name] = score
    if not scored:
        return None
    ranked = sorted(scored.items(), key=lambda item: -item[1])
    name, score = ranked[0]
    needed = next(limit for size, limit in _CLOSE_BY_LENGTH if len(letters) <= size)
    if score < needed - (_EXPECTED if expected and len(letters) >= _LONG else 0.0):
        return None
    other = ranked[1] if len(ranked) > 1 else (None, None)
    return name, score, other[0], other[1]


_EXPECTED, _LONG = 0.06, 9
_ONE_WORD_OFF = 0.81
_HEARD_ALIKE = tuple(
    set(pair) for pair in ("vw", "ck", "cq", "kq", "sc", "sz", "gj", "jy", "fp", "bp")
)


def _one_word_off(words: tuple[str, ...], name: tuple[str, ...]) -> bool:
    """ "widow actually" for Widow Ackerley: all words but one, and that one begins alike."""
    if len(words) != len(name) or len(words) < 2:
        return False
    pairs = [(a, b) for a, b in zip(words, name, strict=True) if a != b]
    if len(pairs) != 1 or sum(len(w) for w in name if w in words and w not in _EVERYDAY) < 3:
        return False
    heard, meant = pairs[0]
    if heard in _EVERYDAY or len(heard) < 4 or len(meant) < 4:
        return False
    if heard[0] != meant[0] and {heard[0], meant[0]} not in _HEARD_ALIKE:
        return False
    return fuzz.ratio(_sound(heard), _sound(meant)) >= 60 and fuzz.ratio(heard, meant) >= 45


def _initials(letters: str, sound: str) -> tuple[str, ...]:
    """What a name may begin with, to the eye and the ear; one vowel is heard for another."""
    found = (letters[0], *sound[:1].lower())
    return tuple(dict.fromkeys(_SAME_INITIAL.get(letter, letter) for letter in found))


_SAME_INITIAL = dict.fromkeys("aeiou", "a") | {"y": "j"}  # "yuffer" for Juffer


@lru_cache(maxsize=65536)
def _likeness(letters: str, sound: str, name_letters: str, name_sound: str) -> float:
    """0..1: how alike two spellings are, to the eye and to the ear."""
    if letters == name_letters:
        return 1.0
    spelling = fuzz.ratio(letters, name_letters) / 100
    if spelling < 0.6:
        return 0.0
    hearing = fuzz.ratio(sound, name_sound) / 100
    return round(
        min(0.99, max(spelling, _SPELLING_WEIGHT * spelling + (1 - _SPELLING_WEIGHT) * hearing)), 4
    )


@lru_cache(maxsize=65536)
def _sound(letters: str) -> str:
    return jellyfish.metaphone(letters).replace(" ", "")


_DIGIT_WORDS = {str(n): word for word, n in (ONES | TENS).items()}


def _spelt(token: str) -> str:
    """Letters only; digits as words, since a name may be heard as a number ("mrs 12 trees")."""
    if token.isdecimal():
        return _DIGIT_WORDS.get(token, token)
    return "".join(c for c in token if c.isalpha())
