"""A plant told with its role: "mother was A", "A as the mother", "the pollen came off B".

Leaves alone "here's the father, A", which shows a plant, and roles in crosses to come.
"""

from collections.abc import Iterator

from diary.linking.operands import after, before
from diary.linking.origin import asserted, known, parent, planned, role_cues
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_VAGUE_CUES = frozenset(
    {
        ("out", "of"),
        ("came", "off"),
        ("came", "from"),
        ("pollen",),
        ("come", "from"),
        ("come", "off"),
    }
)


def after_cues(mentions: Mentions) -> Iterator[Statement]:
    """ "A as the mother", "B's pollen on it"."""
    for trait in ("seed_parent", "pollen_parent"):
        for cue in role_cues(mentions, f"{trait} after"):
            operand = before(mentions, cue.start)
            if (
                operand is None
                or not known(operand)
                or not asserted(mentions, operand.start, cue.end)
            ):
                continue
            words = mentions.talk.texts[cue.start : cue.end]
            told = words[0] in (
                "is",
                "was",
                "were",
                "'s",
                "gave",
                "had",
                "carried",
                "bore",
                "took",
                "set",
            )
            if words == ("pollen",) or (not told and planned(mentions, operand.start)):
                continue
            yield parent(trait, operand, "a plant called the mother or the father", 0.95)


def before_cues(mentions: Mentions) -> Iterator[Statement]:
    """ "mother was A", "seedling of A", "the pollen came off B"; the longest cue decides."""
    texts = mentions.talk.texts
    found = [
        (cue, trait)
        for trait in ("seed_parent", "pollen_parent")
        for cue in role_cues(mentions, f"{trait} before")
    ]
    for cue, trait in sorted(found, key=lambda item: item[0].start - item[0].end):
        if mentions.talk.between(cue.end - 1, cue.end, (".", "?")) or mentions.masked[cue.start]:
            continue
        vague = tuple(texts[cue.start : cue.end]) in _VAGUE_CUES
        operand = after(mentions, cue.end, unknown=not vague)
        if operand is None or not known(operand):
            continue
        if not asserted(mentions, cue.start, operand.end) or planned(mentions, cue.start):
            continue
        if _shown_here(texts, cue):
            continue
        if operand.ref is None and texts[cue.start - 1 : cue.start] in (
            ("no",),
            ("as",),
            ("good",),
            ("another",),
        ):
            continue
        score = 0.75 if vague else 0.95 if operand.ref is not None else 0.85
        yield parent(trait, operand, "a parent named after its role", score)


def _shown_here(texts: tuple[str, ...], cue: Found) -> bool:
    """ "here's the father, Tippet Lace": the plant is shown, not told as a parent of this one."""
    start = cue.start - 1 if texts[cue.start - 1 : cue.start] == ("the",) else cue.start
    verb = texts[cue.end - 1] in ("is", "was", "were", "'s", "being", "of", "off", "from")
    return not verb and texts[max(0, start - 2) : start] in (
        ("here", "'s"),
        ("here", "is"),
        ("this", "is"),
    )
