"""The part of a colour in a phrase right after it: "mauve on the bottom petals", "red below"."""

from diary.linking.colours.attached import Attached
from diary.linking.colours.places import PREPOSITION_FILL, PREPOSITIONS
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.words import ADJECTIVES
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.tokens import COMMA


def place_at(mentions: Mentions, at: int) -> Found | None:
    """ "below", "up top" where they end their phrase: not "below the blotch"."""
    talk = mentions.talk
    texts = talk.texts
    place = mentions.vocabulary.places.at(texts, at)
    if place is None and _outside(mentions, at):
        return Found(at, at + 1, "reverse")
    if place is None and texts[at : at + 1] in (("all",), ("right",), ("just",), ("down",)):
        place = mentions.vocabulary.places.at(texts, at + 1)
    if place is not None and place.label in ("edge", "reverse") and _of_a_leaf(mentions, at):
        return None
    if place is None or place.end >= len(texts) or talk.tokens[place.end - 1].mark:
        return place
    closed = texts[place.end] in ("and", "with", "but", "though", "as")
    longer = any(p.end > place.end for p in mentions.parts_in(place.start, place.end + 2))
    whole = place.end - place.start > 2 and not longer
    closed = closed or (whole and texts[place.end] not in ("of", "and"))  # "silver on the back"
    return place if closed or talk.clause(place.start)[1] == place.end else None


def _outside(mentions: Mentions, at: int) -> bool:
    """ "white inside and red | outside"; not "outside it's cerise", in the daylight."""
    talk = mentions.talk
    start, stop = talk.sentence(max(at - 1, 0))
    both = {"inside", "within", "in"} & set(talk.texts[start:stop])
    return talk.texts[at : at + 1] == ("outside",) and bool(both) and talk.tokens[at].mark != ""


def _of_a_leaf(mentions: Mentions, at: int) -> bool:
    """ "leaf variegated, cream round the outside"."""
    parts = mentions.parts_in(mentions.talk.sentence(at)[0], at)
    return bool(parts) and parts[-1].label == "leaf"


_ADVERBS = frozenset(
    "all right just only nearly left showing down deep mostly low bang slap smack dead high way "
    "far running run runs going goes coming spreading radiating bleeding creeping sitting sat set "
    "splashed laid painted smeared dusted brushed streaked worked starting mainly chiefly round "
    "up out tight close in particularly especially somewhere confined".split()
)


def _past_adverbs(mentions: Mentions, at: int) -> int:
    """Past "low down", "bang", "running right" before a preposition; not past one that is last."""
    talk = mentions.talk
    texts, i = talk.texts, at
    while i < len(texts) and i - at < 3 and texts[i] in _ADVERBS and not talk.tokens[i - 1].mark:
        i += 1
    if texts[i : i + 1] and texts[i] not in PREPOSITIONS and i > at:
        i -= 1  # "pink round the edge": the last of them is the preposition
    return i


def hemmed(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "a hair of magenta running round it", "a cerise thread round each": the edge."""
    talk = mentions.talk
    texts, i = talk.texts, colour.end
    if texts[i : i + 1] and texts[i] in _THREADS and not talk.tokens[i - 1].mark:
        i += 1
    elif not (texts[colour.start - 1] == "of" and texts[colour.start - 2] in _THREADS):
        return False
    while i < len(texts) and texts[i] in _RUNNING and not talk.tokens[i - 1].mark:
        i += 1
    if texts[i : i + 1] not in (("round",), ("around",)) or talk.tokens[i - 1].mark:
        return False
    parts = mentions.parts_in(i, i + 4)
    return not parts or parts[0].label in ("bloom", "edge")


_THREADS = frozenset("thread line hair wire ribbon rim piping hem cord".split())
_RUNNING = frozenset("running runs going goes all right just that it the whole way".split())


_MARKS = frozenset(
    "smudge smudges stain stains wash mark marks dab streak streaks line lines bar bars splash "
    "splashes touch glow tinge cast tint shading smear tick ticks dash whiskers pencilling".split()
)


def in_phrase_after(mentions: Mentions, colour: ColourHeard) -> Attached | None:
    """ "mauve on the bottom", "a hint of pink at the edge", "white with ... in the middle"."""
    talk, i = mentions.talk, colour.end
    texts = talk.texts
    place = None if talk.tokens[i - 1].mark else place_at(mentions, i)
    if place is not None:
        return Attached(
            part=place.label,
            rule="a colour placed on the flower",
            score=0.95,
            start=colour.start,
            end=place.end,
        )
    if hemmed(mentions, colour):
        return Attached(
            part="edge",
            rule="a colour placed on the flower",
            score=0.86,
            start=colour.start,
            end=colour.end,
        )
    if texts[i : i + 1] and texts[i] in _MARKS and not talk.tokens[i - 1].mark:
        i += 1  # "a purple | smudge | on each upper petal"
    i = _past_adverbs(mentions, i)
    if texts[i : i + 1] == ("to",) and {"goes", "runs", "going"} & set(texts[colour.end : i]):
        return None  # "the pink goes right to the edge"
    in_it = texts[i : i + 2] in (("in", "it"), ("on", "it")) and not talk.tokens[i - 1].mark
    if in_it:
        i += 2  # "a lot of green in it, in the centre"
    for_the = texts[i : i + 2] == ("for", "the")  # "violet for the flower"
    if texts[i : i + 1] == ("from",) and "to" in texts[i + 1 : i + 5]:
        return None  # "red from edge to edge": all of it
    if i >= len(texts) or (texts[i] not in PREPOSITIONS and not for_the):
        return None
    if talk.tokens[i - 1].mark not in (("", COMMA) if in_it else ("",)):
        return None
    j = i + 1
    while j < len(texts) and j - i <= 4:
        part = next(iter(mentions.parts_in(j, j + 1)), None)
        if (
            part is None
            and texts[j] in ("bottom", "top", "lower", "upper")
            and (
                j + 1 == len(texts)
                or talk.tokens[j].mark
                or texts[j + 1] in ("same", "and", "with")
            )
        ):
            name = "lower petals" if texts[j] in ("bottom", "lower") else "upper petals"
            return Attached(
                part=name,
                rule="a colour placed on a part",
                score=0.9,
                start=colour.start,
                end=j + 1,
            )
        if part is not None:
            if not is_of_plant(mentions, part):
                return None
            label = part.label
            if label == "bloom" and texts[i] in ("on", "in", "to"):
                return Attached(
                    part="bloom",
                    rule="a colour placed on a part",
                    score=0.88,
                    start=colour.start,
                    end=part.end,
                )
            return Attached(
                part=label,
                rule="a colour placed on a part",
                score=0.92,
                start=colour.start,
                end=part.end,
            )
        if texts[j] not in PREPOSITION_FILL | ADJECTIVES or talk.tokens[j].mark:
            return None
        j += 1
    return None
