"""A part that the sentence before is there to name: "Throat? Lemon.", "Bar the throat. Yellow."."""

from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.words import THE
from diary.reading.mentions import Mentions

DEFINITE = (("the",), ("that",), ("this",), ("its",), ("his",), ("her",))
SHOWING = frozenset("what look how as now mind see then but bar except barring".split())


def bare_part(mentions: Mentions, sentence: int) -> str | None:
    """ "Throat? Lemon.": the sentence before is the part and nothing else."""
    if not sentence or not mentions.talk.punctuated:
        return None
    start, stop = _heading_before(mentions, sentence)
    parts = mentions.parts_in(start, stop)
    if mentions.colours_in(start, stop):
        return None
    if (
        parts
        and parts[-1].end == stop
        and parts[-1].label != "bloom"
        and _pointing_out(mentions.talk.texts[start : parts[-1].start])
    ):
        return parts[-1].label
    praised = parts and parts[0].label != "bloom" and len(parts) == 1 and stop - start <= 9
    if praised and mentions.talk.texts[parts[0].end : parts[0].end + 2] in _IS_THE:
        lead = mentions.talk.texts[start : parts[0].start]
        if set(lead) <= THE | {"and", "but", "now"} and is_of_plant(mentions, parts[0]):
            return parts[0].label  # "The leaf is the making of it. Gold."
    if stop - start > 4:
        return None
    if len(parts) != 1 or not is_of_plant(mentions, parts[0]):
        return None
    rest = {*mentions.talk.texts[start : parts[0].start], *mentions.talk.texts[parts[0].end : stop]}
    return parts[0].label if rest <= THE | SHOWING | {"and", "about", "now", "for"} else None


_IS_THE = tuple((be, the) for be in ("is", "'s", "are") for the in ("the", "what", "where", "why"))


def _heading_before(mentions: Mentions, sentence: int) -> tuple[int, int]:
    """The sentence before, past what is only thrown in: "Blotches. | Big ones. | Mahogany"."""
    talk = mentions.talk
    start, stop = talk.sentence(sentence - 1)
    for _ in range(2):
        told = mentions.parts_in(start, stop) or mentions.colours_in(start, stop)
        named = mentions.refs_in(start, stop) or mentions.lengths_in(start, stop)
        if not start or stop - start > _THROWN_IN or told or named:
            break
        start, stop = talk.sentence(start - 1)
    return start, stop


_THROWN_IN = 3


def _pointing_out(lead: tuple[str, ...]) -> bool:
    """ "what I like is the reverse.", "look at that throat.", "what I call a blotch."."""
    if lead[-1:] == ("a",) and lead[-2:-1] in (("call",), ("'s",)) and "there" not in lead[:-2]:
        return True
    return lead[-1:] in DEFINITE and lead[-2:-1] in (
        ("is",),
        ("'s",),
        ("at",),
        ("bar",),
        ("barring",),
        ("except",),
        ("for",),
        ("got",),
        ("like",),
        ("love",),
        ("about",),
    )
