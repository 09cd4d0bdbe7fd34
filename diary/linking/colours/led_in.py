"""The part of a colour in a phrase of place before it: "in the bud it's green"."""

from diary.linking.colours.heads import subject_before
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.words import COPULAS, FRAGMENT_LEADS, THE, fragment_start
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.tokens import QUERY, STOP

_PLACING = frozenset(
    "as in on at round around down inside towards up over under along across".split()
)
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
    places = mentions.vocabulary.places.find(talk.texts, start, colour.start)
    turned = {p.end for p in places}  # "turn it over | the back's a bit pinker"
    for place in places:
        lead = talk.texts[start : place.start]
        beside = talk.texts[place.start - 1 : place.start] in _STANDING
        if beside and not talk.tokens[place.start - 1].mark:
            continue  # "the one behind, it's a pink"
        between = talk.texts[place.end : colour.start]
        if not talk.punctuated and start < talk.clause(colour.start)[0] == place.end:
            lead = ()  # no mark tells where the phrase of place begins
        if place.start in turned:
            lead = ()
        if set(lead) <= {"and", "then", "but", "now", "so", "it", "'s", "she"} and (
            set(between)
            <= COPULAS
            | FRAGMENT_LEADS
            | {"it", "they", "she", "he", "that", "i", "'d", "call", "say", "bit", "shade", "touch"}
            | mentions.vocabulary.classes["more"]
        ):
            return place.label
    return None


_STANDING = tuple((w,) for w in "one plant pot pots row bench lot".split())


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
        if "and" in between and subject_before(mentions, talk.clause(colour.start)[0]):
            continue  # "the blotch sits low on the top petals and it's plum"
        if not is_of_plant(mentions, part) or not said or not set(between) <= _IT_IS:
            continue
        fresh = not mentions.colours_in(i - 5, part.start)
        if talk.texts[i - 1 : i] and talk.texts[i - 1] in _PLACING and fresh:
            lying = next((p for p in mentions.parts_in(i - 5, i) if p.end == i - 1), part)
            return lying.label  # "look at the zone on that leaf, it's nearly brown"
    for part in mentions.parts_in(colour.end, colour.end + 7):
        words = talk.texts[colour.end : part.start]
        while_it = words[:1] in (("when",), ("while",), ("as",)) and {"in", "a"} & set(words)
        if while_it and part.label == "bud":
            return "bud"
    return None


def headed_by_place(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "On the top two, | a blotch of maroon", "round the edge | a thread of white": no verb."""
    talk = mentions.talk
    texts, i = talk.texts, fragment_start(talk, colour.start)
    while i and not talk.tokens[i - 1].mark and texts[i - 1] in _BROUGHT_IN:
        i -= 1
    part = next((p for p in mentions.parts_in(i - 8, i) if p.end == i), None)
    if part is None or not is_of_plant(mentions, part):
        return None
    if talk.between(part.end - 1, part.end, (STOP, QUERY)):
        return None
    at = part.start
    while at and texts[at - 1] in _PLACE_FILL and not talk.tokens[at - 1].mark:
        at -= 1
    if not at or texts[at - 1] not in _PLACING or talk.tokens[at - 1].mark:
        return None
    at -= 1
    marking = next((p for p in mentions.parts_in(at - 4, at) if p.end == at), None)
    if marking is not None and not talk.tokens[at - 1].mark:
        return marking.label  # "a zone | on the leaf a sort of rusty brown"
    while at and texts[at - 1] in ("right", "just", "down", "up", "all", "then", "and", "but"):
        at -= 1
    if any(c.end == at for c in mentions.colours_in(at - 4, at)):
        return None  # "pink in the throat, white": the place is the pink's
    fresh = at == 0 or bool(talk.tokens[at - 1].mark) or talk.clause(part.start)[0] == at
    # "just a bead on the stem | white i think": the place may be something else's
    led = not talk.punctuated and texts[at - 1] in _BEGUN
    return part.label if fresh or led else None


_BEGUN = frozenset("and then but now so well up look it that there with got see then also".split())


_BROUGHT_IN = frozenset("there 's is you get you've 've got it has i'd say call i 'd".split())
_PLACE_FILL = THE | frozenset("very each every both all two three".split())


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
