"""What was once: a part before it changed, another plant one had, a petal before it spoilt.

"It came up with yellow leaves, but it has greened up since." "I had one like it, and it was red."
"Mauve, brown where the petals are going over."
"""

from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions

_PAST = frozenset("was were came had 'd started began opened used".split())
_REACH, _SENTENCES = 18, 1


def was_once(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the leaves were yellow, but it's greened up since"; not "it came white and stayed so"."""
    talk = mentions.talk
    low = max(talk.clause(colour.start)[0], colour.start - 8)
    if not _PAST & set(talk.texts[low : colour.start]):
        return False
    stop = min(len(talk.texts), colour.end + _REACH)
    since = mentions.vocabulary.colour_habits["since"].find(talk.texts, colour.end, stop)
    for found in since:
        apart = talk.sentence_number(found.start) - talk.sentence_number(colour.start)
        near = not talk.punctuated or apart <= _SENTENCES
        if near and not mentions.refs_in(colour.end, found.start):
            return True
    return False


def of_one_had(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "I had one like this, and it was yellow"; not "I had a look, and it was yellow"."""
    talk = mentions.talk
    clause = talk.clause(colour.start)[0]
    words = talk.texts[max(clause, colour.start - 6) : colour.start]
    if {"this", "now", "here"} & {*words, *talk.texts[colour.end : colour.end + 4]}:
        return False
    if not {"was", "were"} & set(words) and not ("it" in words and _CAME & set(words)):
        return _had_with(mentions, clause, colour.start)
    low = max(talk.sentence(clause)[0] if talk.punctuated else 0, colour.start - _REACH)
    had = mentions.vocabulary.colour_habits["once_had"].find(talk.texts, low, colour.start)
    return any(not mentions.refs_in(h.end, colour.start) for h in had)


def _had_with(mentions: Mentions, start: int, end: int) -> bool:
    """ "my mother grew one with | a yellow leaf": in the same breath, to the end of the clause."""
    talk = mentions.talk
    had = mentions.vocabulary.colour_habits["once_had"].find(talk.texts, start, end)
    for found in had:
        owner = talk.texts[found.start]
        mine = owner in ("i", "we") and talk.texts[found.start + 1] in ("'ve", "have")
        with_it = talk.texts[found.end : found.end + 5]
        if not mine and {"with", "that", "in"} & set(with_it) and owner not in ("it", "you"):
            return True
    return False


def spoilt(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "brown where the petals are going over"; not "brown, where the others are red"."""
    if colour.value not in _DECAY:
        return False
    talk = mentions.talk
    low = max(talk.sentence(colour.start)[0], colour.start - 5)
    before = talk.texts[low : colour.start]
    aged = bool(_AGED & set(before))
    if _SPENT & set(before) or (aged and {"flowers", "heads", "blooms"} & set(before)):
        return True
    if _of_rot(mentions, low, colour):
        return True
    stop = min(len(talk.texts), colour.end + 10)
    if talk.punctuated:
        stop = min(talk.sentence(colour.start)[1], stop)
    gone = mentions.vocabulary.colour_habits["spoilt"].find(talk.texts, colour.end, stop)
    return bool(gone)


def _of_rot(mentions: Mentions, low: int, colour: ColourHeard) -> bool:
    """ "there's rot just above the soil, black as a boot"; not "no rot, and it's black"."""
    talk = mentions.talk
    begin = max(talk.sentence(colour.start)[0], colour.start - _REACH)
    rot = [i for i in range(begin, colour.start) if talk.texts[i] in _ROT]
    if not rot or mentions.parts_in(rot[-1], colour.end + 3):
        return False
    words = set(talk.texts[max(begin, rot[-1] - 3) : rot[-1]]) | set(
        talk.texts[rot[-1] : colour.start]
    )
    return not words & {"no", "not", "never", "flower", "she", "he"}


_AGED = frozenset("old older oldest over".split())
_ROT = frozenset("rot rotted rotten rotting blackleg botrytis mush slime damping scorch".split())
_SPENT = frozenset("dead spent finished deadheads faded withered shrivelled".split())
_CAME = frozenset({"opened", "came", "turned", "went"})
_DECAY = frozenset({"brown", "grey", "black", "yellow"})
