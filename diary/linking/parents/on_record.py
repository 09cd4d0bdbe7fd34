"""The parents on record, named where kinship is spoken of: what is said agrees with the register.

Catches "you're Plover Song's baby, and Dimsey Thorn was your dad", "both sides, Bishop Hartle
and Tabitha Gloam", of a plant with just these parents on record. Leaves alone "not a patch on
Plover Song" and a parent named with no word of kinship.
"""

from collections.abc import Iterator, Sequence

from diary.linking.document import Plant
from diary.linking.operands import Operand
from diary.linking.parents.origin import parent
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions, Ref

_TRAITS = ("seed_parent", "pollen_parent")
_KINSHIP = frozenset(
    "pollen seed pod parent parents parentage cross bred breeding raised blood side family line "
    "dame sired fathered mothered begot begat union".split()
)
_ORIGIN = frozenset("from by off out came times x between with on onto".split())
_WITHIN = 8
_UNSAID = {Habit.WISH, Habit.NOT_RECALLED, Habit.DENIAL, Habit.HYPOTHETICAL}


def parents_on_record(
    mentions: Mentions, start: int, end: int, plant: Plant, told: Sequence[Statement]
) -> list[Statement]:
    """Parents of the plant of tokens start..end-1 that no other rule has found."""
    record = mentions.numbers.seedling(plant.number) if plant.number else None
    if record is None:
        return []
    found = {s.trait for s in told}
    sports = [s for s in told if s.trait == "sport_of"]
    roles = {record.seed_parent: _TRAITS[0], record.pollen_parent: _TRAITS[1]}
    named = [r for r in _named(mentions, start, end) if r.title in roles]
    both = len(named) == 2 and named[0].title != named[1].title
    paired = both and named[1].start - named[0].end <= _WITHIN
    of_both = paired and _kinship(mentions, named[0].start, named[1].end, _ORIGIN)
    statements = []
    for ref in named:
        trait = roles[ref.title]
        if any(s.start <= ref.start < s.end for s in sports):
            continue  # "a sport of A", of a plant that has A for a parent
        if trait in found or not (of_both or _kinship(mentions, ref.start, ref.end)):
            continue
        found.add(trait)
        operand = Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)
        statements.append(parent(trait, operand, "a parent on record, told as kin", 0.85))
    return statements


def _named(mentions: Mentions, start: int, end: int) -> Iterator[Ref]:
    """The plants named as such: no part of theirs, nothing set beside them."""
    texts, classes = mentions.talk.texts, mentions.vocabulary.classes
    for ref in mentions.refs_in(start, end):
        owns = texts[ref.end : ref.end + 1] == ("'s",)
        kin = texts[ref.end + 1 : ref.end + 2]
        if owns and not (kin and kin[0] in classes["offspring"] | {"pollen"}):
            continue
        if any(s.habit in _UNSAID for s in mentions.scopes.by_token[ref.start]):
            continue
        if texts[ref.start - 1 : ref.start] not in (("than",), ("like",)):
            yield ref


def _kinship(mentions: Mentions, start: int, end: int, also: frozenset[str] = frozenset()) -> bool:
    """Whether kinship is spoken of near the names at tokens start..end-1, or a word of `also`."""
    talk, classes = mentions.talk, mentions.vocabulary.classes
    low, high = max(0, start - _WITHIN), end + _WITHIN
    if talk.punctuated:
        low, high = max(low, talk.sentence(start)[0]), min(high, talk.sentence(end - 1)[1])
    near = {t for i, t in enumerate(talk.texts[low:high], low) if not mentions.masked[i]}
    if (
        "side" in near
        and "by" in near
        and ("side", "by", "side")
        in zip(
            talk.texts[low:high],
            talk.texts[low + 1 : high],
            talk.texts[low + 2 : high],
            strict=False,
        )
    ):
        near.discard("side")  # "I've had them side by side"
    roles = classes["mother"] | classes["father"] | classes["offspring"]
    return bool(near & (roles | classes["crossed"] | classes["crossing"] | _KINSHIP | also))
