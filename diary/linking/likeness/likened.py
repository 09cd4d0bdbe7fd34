"""A likeness as it is told, and the plant or the parent that it names."""

from dataclasses import dataclass

from diary.linking.operands import Operand, after
from diary.reading.mentions import Mentions

_KIN = (("seed_parent", "mother"), ("pollen_parent", "father"))
OWN = frozenset({"its", "her", "his", "the", "their"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Likeness:
    """At tokens start..end-1 the plant in hand is said to be like `operand`.

    `kin` is the trait that holds the other plant, where it is told as "its mother".
    """

    start: int
    end: int
    operand: Operand
    asserted: bool
    score: float
    kin: str | None = None


def operand_or_kin(mentions: Mentions, at: int) -> tuple[Operand | None, str | None]:
    operand = after(mentions, at)
    if operand is not None:
        return operand, None
    texts = mentions.talk.texts
    if texts[at : at + 1] and texts[at] in OWN and at + 1 < len(texts):
        for trait, role in _KIN:
            if texts[at + 1] in mentions.vocabulary.classes[role]:
                return Operand(start=at, end=at + 2, title="", ref=None, score=0.9), trait
    return None, None
