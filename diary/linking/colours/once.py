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
    if not {"was", "were"} & set(words) or {"this", "now"} & set(words):
        return False
    low = max(talk.sentence(clause)[0] if talk.punctuated else 0, colour.start - _REACH)
    had = mentions.vocabulary.colour_habits["once_had"].find(talk.texts, low, colour.start)
    return any(not mentions.refs_in(h.end, colour.start) for h in had)


def spoilt(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "brown where the petals are going over"; not "brown, where the others are red"."""
    if colour.value not in _DECAY:
        return False
    talk = mentions.talk
    stop = min(len(talk.texts), colour.end + 10)
    if talk.punctuated:
        stop = min(talk.sentence(colour.start)[1], stop)
    gone = mentions.vocabulary.colour_habits["spoilt"].find(talk.texts, colour.end, stop)
    return bool(gone)


_DECAY = frozenset({"brown", "grey", "black", "yellow"})
