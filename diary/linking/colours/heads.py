"""The part that a sentence is about: named first, or brought in by the clause before."""

from diary.linking.colours.headings import DEFINITE, SHOWING
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.words import BE, COPULAS, THE, fragment_start
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_INTRODUCING = (
    ("there", "'s"),
    ("there", "is"),
    ("there", "are"),
    ("'s", "got"),
    ("has", "got"),
    ("it", "has"),
    ("have", "got"),
    ("'ve", "got"),
    ("you", "get"),
    ("you", "'ve"),
)
INNER = frozenset(
    "throat eye centre blotch edge reverse star zone base veins feathering stripe spots "
    "flush".split()
)
FAR = 14


def head_of(mentions: Mentions, sentence: int, before: int) -> Found | None:
    """The part that the sentence begins with, while nothing else has taken its place."""
    talk = mentions.talk
    first = next(iter(mentions.parts_in(sentence, before)), None)
    if first is None or first.label == "bloom" or not is_of_plant(mentions, first):
        return None
    lead = talk.texts[sentence : first.start]
    if len(lead) > 3 or not set(lead) <= THE | SHOWING | {
        "and",
        "so",
        "well",
        "oh",
        "a",
        "big",
        "two",
        "three",
        "it",
        "'s",
    }:
        return None
    if mentions.colours_in(sentence, before):
        return None
    if any(p.label != first.label for p in mentions.parts_in(first.end, before)):
        return None
    return None if new_subject(talk.texts[first.end : before]) else first


def new_subject(words: tuple[str, ...]) -> bool:
    """Whether a statement about the flower begins: "..., it's a"."""
    return any(
        word in ("it", "she", "he", "flower", "bloom", "plant")
        and words[i + 1 : i + 2]
        and words[i + 1] in COPULAS
        for i, word in enumerate(words)
    )


def brought_in(mentions: Mentions, start: int, before: int) -> str | None:
    """ "there's a zone on the leaf", "it's got an edge": a marking or part brought in."""
    talk = mentions.talk
    if mentions.colours_in(start, before):
        return None
    parts = mentions.parts_in(start, before)
    parts = tuple(p for p in parts if p.label in INNER)
    if not parts:
        return None
    lead = talk.texts[start : parts[0].start]
    if {"dark", "darker", "pale", "paler", "no", "not"} & set(lead):
        return None
    pairs = {tuple(lead[i : i + 2]) for i in range(len(lead))}
    done = talk.texts[parts[-1].end - 1].endswith("ed") and parts[-1].label != "eye"
    return parts[0].label if done or pairs & set(_INTRODUCING) else None


def one_of_a_part(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "there's a zone on the leaf, a | bronze one": one of what has just been brought in."""
    talk = mentions.talk
    if talk.texts[colour.end : colour.end + 1] != ("one",) or talk.tokens[colour.end - 1].mark:
        return None
    start = fragment_start(talk, colour.start)
    if start == colour.start or talk.texts[start : start + 1] not in (("a",), ("an",), ("and",)):
        return None
    low = max(talk.sentence(start)[0], start - FAR)
    parts = [p for p in mentions.parts_in(low, start) if is_of_plant(mentions, p)]
    own = [p for p in parts if p.label in INNER]
    if not own or mentions.colours_in(own[0].end, start) or start - parts[-1].end > 3:
        return None
    return own[0].label


def part_at(mentions: Mentions, at: int) -> Found | None:
    """The part of the plant whose words begin at the token."""
    part = next(iter(mentions.parts_in(at, at + 1)), None)
    return part if part is not None and is_of_plant(mentions, part) else None


def subject_before(
    mentions: Mentions, start: int, also: frozenset[str] = frozenset()
) -> str | None:
    """ "the blotch sits low on the top petals | and it's plum": what the clause before is about."""
    talk = mentions.talk
    begin = talk.clause(start - 1)[0]
    first = next(iter(mentions.parts_in(begin, begin + 4)), None)
    told_of = INNER | {"stem", "reverse"} | also
    if first is None or first.label not in told_of or mentions.colours_in(begin, start):
        return None
    lead = talk.texts[begin : first.start]
    verb = talk.texts[first.end : first.end + 1]
    if not lead or lead[-1:] not in DEFINITE or not set(lead[:-1]) <= {"and", "but", "now", "well"}:
        return None
    stands = bool(verb) and (verb[0] in BE or (verb[0].endswith("s") and len(verb[0]) > 3))
    return first.label if stands and start - begin <= FAR else None
