"""Colours that captions write as a word they sound like: "a whine stripe", "deep rows".

Only where a colour is expected, and only in talk without marks: "a soft more of with a plumb
blotch"; not "more of them came up", "two rows of cuttings", "the wind blew petals about".
"""

from diary.reading.phrases import Found
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_COLOUR_NOUNS = frozenset("colour color coloured colored shade tinted toned tint".split())
_NO_COLOUR_BEFORE = frozenset("of a an the it that this them those these my up for i you".split())
_BEFORE_NOUN = frozenset(
    "a an the with and of its his her nice lovely little big thin fine broad great good proper "
    "real bold narrow sort very quite or in two some is are 's got has that wee neat is".split()
)
_SOFTENING = frozenset(
    "a an the more very quite sort kind of just pure real proper nice lovely all almost nearly "
    "rather good gone come turned".split()
)
_BE = frozenset("is are 's 're was goes".split())
_ROUND_OFF = frozenset("with all throughout right and".split())
_ALSO_DESCRIBING = frozenset({"serious", "violent", "plump", "sirius"})


def misheard_at(talk: Talk, vocabulary: Vocabulary, at: int, run: int) -> Found | None:
    """The colour that the words at `at` stand for; the run of its modifiers begins at `run`."""
    if talk.punctuated:
        return None
    found = vocabulary.misheard_colours.at(talk.texts, at)
    if found is None:
        return None
    after = talk.texts[found.end : found.end + 1]
    if after and after[0] in _NO_COLOUR_BEFORE:
        return None
    expected = (
        run < at
        or (bool(after) and after[0] in _COLOUR_NOUNS)
        or _before_a_colour(talk, vocabulary, found.end)
        or _before_a_part(talk, vocabulary, found)
        or _said_of_a_part(talk, vocabulary, found)
    )
    return found if expected else None


def _before_a_colour(talk: Talk, vocabulary: Vocabulary, at: int) -> bool:
    """ "rows pink", "whine and white"."""
    if vocabulary.colours.at(talk.texts, at) is not None:
        return True
    joined = talk.texts[at : at + 1] in (("and",), ("or",))
    return joined and vocabulary.colours.at(talk.texts, at + 1) is not None


def _before_a_part(talk: Talk, vocabulary: Vocabulary, found: Found) -> bool:
    """ "with serious veins"; not "the wind blew petals about"."""
    if vocabulary.parts.at(talk.texts, found.end) is None or found.start == 0:
        return False
    return talk.texts[found.start - 1] in _BEFORE_NOUN


def _said_of_a_part(talk: Talk, vocabulary: Vocabulary, found: Found) -> bool:
    """ "the throat's more of", "the vanes are a darker rows"; not "the spots are serious"."""
    if talk.texts[found.start] in _ALSO_DESCRIBING:
        return False
    i = found.start
    while i and found.start - i < 4 and talk.texts[i - 1] in _SOFTENING | {"darker", "paler"}:
        i -= 1
    if i < found.start and talk.texts[i] in ("darker", "paler"):
        return True
    if i == 0:
        return False
    if found.end - found.start > 1 and i == found.start:  # "lower ones like lack"
        near = vocabulary.parts.find(talk.texts, max(0, i - 5), i)
        if any(p.end == i for p in near):
            return True
    if talk.texts[i - 1] not in _BE:
        return False
    parts = vocabulary.parts.find(talk.texts, max(0, i - 6), i - 1)
    if any(p.end == i - 1 for p in parts):
        return True
    it = talk.texts[i - 2 : i - 1] in (("it",), ("she",), ("he",), ("they",))
    rest = talk.texts[found.end : found.end + 1]
    return it and bool(rest) and rest[0] in _ROUND_OFF
