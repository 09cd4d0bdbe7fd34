"""What a part was once and is no longer, told by what has become of it since.

"It came up with yellow leaves, but it has greened up since."
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
