"""Colours that another would call it, or that are denied after they are said."""

from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.tokens import COMMA, QUERY, STOP


def denied_after(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "and black it is not"; not "black it is, not that I mind"."""
    texts, i = mentions.talk.texts, colour.end
    if mentions.talk.tokens[i - 1].mark or texts[i : i + 1] == ():
        return False
    said = texts[i] in ("it", "she", "he", "that") and texts[i + 1 : i + 3] in _IS_NOT
    after = texts[i + 3 : i + 4]
    closed = not after or bool(mentions.talk.tokens[i + 2].mark) or after[0] in ("but", "and")
    return said and closed and not mentions.talk.between(i, i + 2, (STOP, QUERY, COMMA))


def part_denied_after(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "Joan will have it there's a purple eye, and I've looked, and there's no eye at all"."""
    part = next((p for p in mentions.parts_in(colour.end, colour.end + 2)), None)
    if part is None or part.label == "bloom" or mentions.talk.tokens[colour.end - 1].mark:
        return False
    texts = mentions.talk.texts
    for again in mentions.parts_in(part.end, part.end + _DENIED_WITHIN):
        lead = texts[again.start - 3 : again.start]
        if again.label == part.label and lead[-1:] in (("no",), ("not",)):
            return bool({"'s", "is", "see", "got", "has", "find"} & set(lead))
    return False


def says_another_after(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "eye white, says the book, and I see no eye"; not "cherry red, said he, and I'd agree"."""
    talk, i = mentions.talk, colour.end
    teller = talk.texts[i + 1 : i + 3]
    if talk.texts[i : i + 1] not in (("says",), ("said",), ("say",)):
        return False
    person = mentions.vocabulary.classes["person"] | mentions.vocabulary.things | _OTHERS
    if not person & set(teller):
        return False
    agreed = mentions.vocabulary.cues["agreed"].find(talk.texts, i + 1, i + _DENIED_WITHIN)
    return not agreed


_DENIED_WITHIN = 14
_IS_NOT = (("is", "not"), ("'s", "not"), ("was", "not"), ("is", "never"))


def called_by_another(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "which my colleague insists upon calling black"; not "which we call plum"."""
    talk = mentions.talk
    start = max(talk.sentence(colour.start)[0], colour.start - 8)
    i = colour.start
    while i > start and talk.texts[i - 1] in ("it", "a", "an", "that", "this", "her", "him"):
        i -= 1
    i -= i > start and talk.texts[i - 1] in ("as", "down")
    while i > start and talk.texts[i - 1] in ("it", "that", "this", "her", "him", "down"):
        i -= 1
    held = talk.texts[i : i + 1] in (("it",), ("that",), ("this",), ("her",), ("him",))
    if i <= start or talk.texts[i - 1] not in (_CALLS | _HOLDS if held else _CALLS):
        return False
    words = talk.texts[start : i - 1]
    person = mentions.vocabulary.classes["person"] | _OTHERS
    teller = talk.tokens[i - 2]
    named = talk.punctuated and teller.capital and teller.text not in _NO_TELLER
    whose = next((w for w in reversed(words) if w in person | _MY_WORD), "")
    return (named and teller.text.isalpha() and teller.text not in _MY_WORD) or whose in person


_NO_TELLER = frozenset("which what who light sunlight sun cold heat age shade water feed".split())
_CALLS = frozenset({"call", "calls", "calling", "called"})
_HOLDS = frozenset("makes has puts swears".split())  # "Clem makes it blue"
_OTHERS = frozenset(
    "colleague colleagues books book trade catalogue catalogues people they he she some others "
    "customers judges everybody everyone somebody nurserymen".split()
)


def anothers_word(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "Jean would call it salmon", "she'd say red"; not "you'd call it red"."""
    talk = mentions.talk
    start = max(talk.clause(colour.start)[0], colour.start - 6)
    for i in range(start, colour.start - 1):
        if talk.texts[i : i + 1] not in (("would",), ("'d",), ("might",), ("will",), ("'ll",)):
            continue
        if talk.texts[i + 1] not in ("call", "say", "have", "tell") or i == 0:
            continue
        teller = talk.tokens[i - 1]
        named = talk.punctuated and teller.capital and teller.text not in _MY_WORD
        return named or teller.text in ("she", "he", "they", "people", "somebody", "folk")
    return False


_MY_WORD = frozenset("i you we one anyone anybody it that this nobody".split())
