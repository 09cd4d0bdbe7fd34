"""The part of a colour in a phrase of place before it: "in the bud it's green"."""

from diary.linking.colour_words import COPULAS, FRAGMENT_LEADS, THE
from diary.linking.plant_parts import is_of_plant
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.tokens import QUERY, STOP

_PLACING = frozenset("in on at round around down inside towards up over under along across".split())
_IT_IS = frozenset(
    "it 's they 're she he is are goes go turns turn comes come there a an more quite nearly "
    "almost "
    "very sort of kind like just all as and then you get i 'd call say gone going".split()
)


def placed(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "down below they're lavender", "turn it over and it's silver behind"."""
    talk = mentions.talk
    clause = talk.clause(colour.start)[0]
    return _place_in(mentions, clause, colour) or _place_in(
        mentions, _led_start(mentions, clause), colour
    )


def _place_in(mentions: Mentions, start: int, colour: ColourHeard) -> str | None:
    talk = mentions.talk
    for place in mentions.vocabulary.places.find(talk.texts, start, colour.start):
        lead = talk.texts[start : place.start]
        between = talk.texts[place.end : colour.start]
        if not talk.punctuated and start < talk.clause(colour.start)[0] == place.end:
            lead = ()  # no mark tells where the phrase of place begins
        if set(lead) <= {"and", "then", "but", "now", "so", "it", "'s", "she"} and (
            set(between)
            <= COPULAS | FRAGMENT_LEADS | {"it", "they", "she", "he", "that", "i", "'d", "call"}
        ):
            return place.label
    return None


def _led_start(mentions: Mentions, clause: int) -> int:
    """Where a short phrase of place before the clause begins: "down below | they're lavender"."""
    talk = mentions.talk
    if clause == 0 or talk.tokens[clause - 1].mark in (STOP, QUERY):
        return clause
    start = talk.clause(clause - 1)[0]
    if not talk.punctuated:
        return max(start, clause - 4)
    return start if clause - start <= 6 else clause


def led_in(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "in the bud it's green", "very nearly black when it's in the bud"."""
    talk = mentions.talk
    for part in mentions.parts_in(colour.start - 9, colour.start):
        i = part.start - (mentions.talk.texts[part.start - 1] in THE)
        between = talk.texts[part.end : colour.start]
        said = bool({"'s", "are", "'re", "is", "goes", "turns"} & set(between))
        if not is_of_plant(mentions, part) or not said or not set(between) <= _IT_IS:
            continue
        fresh = not mentions.colours_in(i - 5, part.start)
        if talk.texts[i - 1 : i] and talk.texts[i - 1] in _PLACING and fresh:
            return part.label
    for part in mentions.parts_in(colour.end, colour.end + 7):
        words = talk.texts[colour.end : part.start]
        while_it = words[:1] in (("when",), ("while",), ("as",)) and {"in", "a"} & set(words)
        if while_it and part.label == "bud":
            return "bud"
    return None


def opening_up(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "the buds are red but they open up white": what opens is the flower."""
    talk = mentions.talk
    start = max(talk.sentence(colour.start)[0], colour.start - 5)
    opens = [i for i in range(start, colour.start) if talk.texts[i] in _OPENS]
    follows = talk.texts[colour.end : colour.end + 5]
    if follows[:1] in (("when",), ("once",), ("as",)) and _OPENS & set(follows):
        return "bloom"  # "they turn yellow when they're open"
    return "bloom" if opens and not mentions.parts_in(opens[-1] - 2, colour.start) else None


_OPENS = frozenset({"open", "opens", "opened", "opening"})
