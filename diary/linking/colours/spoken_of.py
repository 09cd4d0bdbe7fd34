"""The part that the whole sentence is about, or the parts spoken of as "they"."""

from diary.linking.colours.attached import Attached
from diary.linking.colours.plant_parts import is_of_plant
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions

_SUBJECT_BREAK = frozenset(
    {
        "it",
        "this",
        "he",
        "she",
        "they",
        "that",
        "flower",
        "flowers",
        "bloom",
        "blooms",
        "plant",
        "with",
        "there",
    }
)


def subject_of_sentence(mentions: Mentions, colour: ColourHeard) -> Attached | None:
    """The part that the sentence is about: "the leaves are deeply cut, chartreuse"."""
    starts = (
        _subject_from(mentions, start, colour) for start in _sentence_starts(mentions, colour)
    )
    return next((attached for attached in starts if attached is not None), None)


def _sentence_starts(mentions: Mentions, colour: ColourHeard) -> tuple[int, ...]:
    """Where its sentence begins; in captions also what "i'm calling it plum" goes on from."""
    talk = mentions.talk
    start, _ = talk.sentence(colour.start)
    if talk.punctuated:
        return (start,)
    clause = talk.clause(colour.start)[0]
    naming = {"call", "calling", "say", "would", "'d"} & set(talk.texts[clause : colour.start])
    if talk.texts[clause : clause + 2] not in _CALLING or not naming or clause == 0:
        return (start,)
    start = talk.sentence(clause - 1)[0]
    return (start, talk.sentence(start - 1)[0]) if start and start > clause - 8 else (start,)


def _subject_from(mentions: Mentions, start: int, colour: ColourHeard) -> Attached | None:
    talk = mentions.talk
    first = next(iter(mentions.parts_in(start, colour.start)), None)
    if first is None or first.label == "bloom" or not is_of_plant(mentions, first):
        return None
    shown = mentions.refs_in(start, first.start)
    lead = talk.texts[shown[-1].end if shown else start : first.start]
    if len(lead) > 4 or any(c.start < first.start for c in mentions.colours_in(start, first.start)):
        return None
    after_part = talk.texts[first.end : first.end + 2]
    told = {"is", "'s", "are", "'re", "has", "'ve", "come"} & set(after_part)
    if talk.punctuated and not told and first.start != start:
        return None
    between = talk.texts[first.end : colour.start]
    earlier = mentions.colours_in(first.end, colour.start)
    if earlier and {"on", "over", "against"} & set(talk.texts[earlier[-1].end : colour.start]):
        return None  # "veined red on cream"
    others = [p for p in mentions.parts_in(first.end, colour.start) if p.label != first.label]
    if others or (talk.punctuated and (_SUBJECT_BREAK - {"that"}) & set(between)):
        return None
    return Attached(
        part=first.label,
        rule="a colour of the part spoken of",
        score=0.78,
        start=colour.start,
        end=colour.end,
    )


_CALLING = (
    *(("i", "'d"), ("what", "would"), ("i", "would"), ("i", "'m"), ("i", "'ll"), ("i", "call")),
    *(("we", "'d"), ("we", "'ll"), ("we", "call"), ("you", "'d"), ("let", "'s")),
)
_PLURALS = frozenset(
    {
        "bud",
        "leaf",
        "upper petals",
        "lower petals",
        "stem",
        "veins",
        "spots",
        "reverse",
        "edge",
        "blotch",
        "stripe",
    }
)
_THEY_REACH = 14


def of_them(mentions: Mentions, colour: ColourHeard) -> Attached | None:
    """ "there are fourteen buds on it, and they're a pale green": they are the buds."""
    talk = mentions.talk
    clause = talk.clause(colour.start)[0]
    words = talk.texts[clause : colour.start]
    ones = {"new", "young", "old", "other", "younger", "older", "open", "opening"}
    if not ("ones" in words and ones & set(words)) and ("they" not in words[:3] or "one" in words):
        return None
    before = mentions.parts_in(clause - _THEY_REACH, clause)
    if (
        not before
        or before[-1].label not in _PLURALS
        or not talk.texts[before[-1].end - 1].endswith("s")
    ):
        return None
    return Attached(
        part=before[-1].label,
        rule="a colour of the parts spoken of as they",
        score=0.8,
        start=colour.start,
        end=colour.end,
    )
