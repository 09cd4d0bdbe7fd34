"""A colour said of what is no part of the plant, going by the subject of its clause.

"Only my nails are red." "The greenhouse is green with algae." The subject is a noun that no
breeder says of a flower.
"""

from diary.linking.colours.words import COPULAR
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions

_OWNING = frozenset(
    "the my our his her your their 's some those these that this all both only any every".split()
)
_COPULAS = frozenset("is 's are was were has have turned goes went looks looked gone came".split())
SAID_OF_FLOWERS = frozenset(
    "whole rest result overall first second third last best general main other others lot pair "
    "open opening new old young outer inner remainder chief over under predominant inside outside "
    "word verdict answer impression trick catch surprise difference point trouble problem reason "
    "top bottom front underside backs sides half halves tips ends tops bottoms tip blotching "
    "interior exterior lip lips cup trumpet tube tubes claw spur wing wings keel combination "
    "contrast gradient pattern show display fellow chap lady girl boy specimen one it he she they "
    "this that these those what which who there here you i we and or but so now well".split()
)


def some_subject(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "my nails are red"; not "the flower is red", "the shade of it is red"."""
    talk = mentions.talk
    start = talk.clause(colour.start)[0]
    verb = colour.start - 1
    while verb > start and colour.start - verb <= 5 and talk.texts[verb] not in _COPULAS:
        if talk.texts[verb] not in COPULAR:
            return False
        verb -= 1
    if verb <= start or talk.texts[verb] not in _COPULAS:
        return False
    while verb - 1 > start and talk.texts[verb - 1] in _COPULAS:
        verb -= 1  # "the pond | 's gone | green"
    if talk.texts[verb] == "'s" and mentions.parts_in(colour.end, colour.end + 3):
        return False  # "her mother's white throat"
    return _is_foreign(mentions, start, verb)


def _is_foreign(mentions: Mentions, start: int, verb: int) -> bool:
    """Whether the noun right before the verb is no part, no plant and no word for a look."""
    talk = mentions.talk
    noun = talk.texts[verb - 1]
    if not noun.isalpha() or mentions.masked[verb - 1] or talk.tokens[verb - 1].mark:
        return False
    vocabulary = mentions.vocabulary
    said = vocabulary.said_of_colours | SAID_OF_FLOWERS | vocabulary.classes["plant_noun"]
    if noun in said or noun.endswith(("ly", "ing", "ed", "ish")):
        return False
    if vocabulary.modifiers.at(talk.texts, verb - 1) or vocabulary.colours.at(talk.texts, verb - 1):
        return False
    if mentions.parts_in(start, verb):
        return False
    owner = talk.texts[verb - 2] if verb - 2 >= start else ""
    return owner in _OWNING or talk.texts[verb - 3 : verb - 2] in (("the",), ("my",), ("our",))
