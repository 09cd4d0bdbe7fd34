"""Likeness to another plant, where it is asserted.

"very like twenty-three oh six", "a dead ringer for C", "Candle Wharf all over again", "you
couldn't tell it from its mother". Leaves alone "nothing like it", what other people say,
and "bigger than that one".
"""

from collections.abc import Iterator
from dataclasses import dataclass

from diary.linking.likeness.alike import alike
from diary.linking.likeness.asserted import denied_just_before, unsaid
from diary.linking.operands import Operand, after, before
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.tokens import QUERY, STOP

_KIN = (("seed_parent", "mother"), ("pollen_parent", "father"))
_OWN = frozenset({"its", "her", "his", "the", "their"})


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


def find_likenesses(mentions: Mentions) -> tuple[Likeness, ...]:
    """Every likeness spoken of, asserted or not, in order."""
    found = [
        *_inseparable(mentions),
        *_side_by_side(mentions),
        *_like(mentions),
        *_over_again(mentions),
        *_seen_alike(mentions),
        *_kin_it_is_like(mentions),
    ]
    kept: dict[int, Likeness] = {}
    for likeness in sorted(found, key=lambda x: (x.operand.start, -x.asserted, x.start)):
        kept.setdefault(likeness.operand.start, likeness)
    return tuple(sorted(kept.values(), key=lambda x: x.start))


def _like(mentions: Mentions) -> Iterator[Likeness]:
    """ "very like A", "the spit of A", "what it puts me in mind of is A"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    weak = {
        (f.start, f.end)
        for f in vocabulary.parent_cues.find(talk.texts)
        if f.label == "similar weak"
    }
    denied = {
        i
        for f in vocabulary.never_cues["similar"].find(talk.texts)
        for i in range(f.start, f.end)
        if f.end - f.start > 1
        and talk.texts[f.start]
        in (
            *(
                "not",
                "nothing",
                "unlike",
                "no",
                "do",
                "does",
                "n't",
                "is",
                "'s",
                "nowhere",
                "never",
            ),
            "same",
        )
    }
    for cue in vocabulary.cues["similar"].find(talk.texts):
        if any(mentions.masked[cue.start : cue.end]):
            continue
        if set(mentions.talk.texts[max(0, cue.start - 2) : cue.start]) & _WRITTEN:
            continue  # "the label looks like a G"
        if mentions.talk.texts[cue.end : cue.end + 2] in _PEAS:
            continue
        operand, kin = _operand_or_kin(mentions, cue.end)
        if (cue.start, cue.end) in weak and not _stands_alone(mentions, cue, operand):
            continue
        if operand is None:
            operand = _asked_first(mentions, cue)
        elif operand.start - cue.end > 2:
            operand = None
        if operand is None:
            continue
        asserted = (
            not unsaid(mentions, cue.start, cue.end, operand.end)
            and cue.start not in denied
            and cue.end - 1 not in denied
            and not denied_just_before(mentions, cue.start)
        )
        yield Likeness(
            start=cue.start,
            end=operand.end,
            operand=operand,
            asserted=asserted,
            score=0.95,
            kin=kin,
        )


_WRITTEN = frozenset("label tag letter number figure writing handwriting ticket marker".split())


def _stands_alone(mentions: Mentions, cue: Found, operand: Operand | None) -> bool:
    """ "Like A, this one" at the head of a sentence, "it's like A", "could be A at a distance"."""
    talk = mentions.talk
    if operand is not None and talk.texts[operand.end : operand.end + 3] in _FROM_AFAR:
        return True
    words = talk.texts[cue.start : cue.end]
    if words == ("near", "enough"):
        named = operand is not None and (operand.ref is None or not operand.ref.is_number)
        return named and talk.texts[cue.start - 1] in ("is", "'s")
    if words == ("another",) and operand is not None:
        return talk.texts[operand.end : operand.end + 2] == ("is", "what")
    if words == ("matches",) and talk.texts[cue.start - 1 : cue.start] in _SUBJECT:
        return True
    if words == ("like",) and talk.clause(cue.start)[0] == cue.start and talk.punctuated:
        return True
    subject = talk.texts[cue.start - 1 : cue.start]
    return words in (("is", "like"), ("'s", "like")) and subject in _SUBJECT


_PEAS = (("two", "peas"), ("two", "pins"), ("two", "eggs"))
_FROM_AFAR = (
    ("at", "a", "distance"), ("from", "a", "distance"), ("in", "the", "dark"), ("to", "look", "at"),
    ("across", "the", "house"), ("from", "the", "door"), ("at", "a", "glance"),
)  # fmt: skip
_SUBJECT = tuple((word,) for word in ("it", "this", "he", "she", "flower", "bloom", "face"))


def _operand_or_kin(mentions: Mentions, at: int) -> tuple[Operand | None, str | None]:
    operand = after(mentions, at)
    if operand is not None:
        return operand, None
    texts = mentions.talk.texts
    if texts[at : at + 1] and texts[at] in _OWN and at + 1 < len(texts):
        for trait, role in _KIN:
            if texts[at + 1] in mentions.vocabulary.classes[role]:
                return Operand(start=at, end=at + 2, title="", ref=None, score=0.9), trait
    return None, None


def _asked_first(mentions: Mentions, cue: Found) -> Operand | None:
    """ "what it does put me in mind of, and very strongly, is A": the plant after "is"."""
    texts = mentions.talk.texts
    low, high = mentions.talk.sentence(cue.start)
    if "what" not in texts[max(low, cue.start - 5) : cue.start]:
        return None
    return next(
        (
            Operand(start=r.start, end=r.end, title=r.title, ref=r, score=r.score)
            for r in mentions.refs_in(cue.end, min(high, cue.end + 9))
            if texts[r.start - 1] in ("is", "'s", "was")
        ),
        None,
    )


def _over_again(mentions: Mentions) -> Iterator[Likeness]:
    """ "A all over again", "A to the life"."""
    cues = mentions.vocabulary.parent_cues.find(mentions.talk.texts)
    for cue in [f for f in cues if f.label == "similar after"]:
        operand = before(mentions, cue.start)
        if operand is None or (
            mentions.talk.texts[cue.start : cue.end] == ("again",)
            and not _nothing_but(mentions, operand.start)
        ):
            continue
        qualified = mentions.talk.texts[cue.start] in _QUALIFIERS
        qualified |= mentions.talk.texts[cue.start : cue.end] == ("to", "look", "at")
        if qualified and not _said_to_be(mentions, operand.start):
            continue
        dressed = mentions.talk.texts[cue.start : cue.start + 2] == ("in", "a")
        if dressed and operand.ref is not None and operand.ref.is_number:
            continue  # "in eighty-seven, in a green hat"
        yield Likeness(
            start=operand.start,
            end=cue.end,
            operand=operand,
            asserted=not unsaid(mentions, operand.start, cue.end, cue.end),
            score=0.9,
        )


_QUALIFIERS = frozenset("but except save apart aside bar minus plus less give by".split())
_BEING = frozenset({"'s", "is", "just", "only", "simply", "really", "pure", "basically"})


def _said_to_be(mentions: Mentions, at: int) -> bool:
    """ "It's A to look at"; not "next we've A to look at", "everything went bar A"."""
    return bool(at) and mentions.talk.texts[at - 1] in _BEING


def _kin_it_is_like(mentions: Mentions) -> Iterator[Likeness]:
    """ "it's her mother she's like"; not "it's her mother that died"."""
    texts = mentions.talk.texts
    for cue in mentions.cue("like_it"):
        at = cue.start - 2
        if at < 1 or texts[at - 1] not in ("is", "'s", "was") or texts[at] not in _OWN:
            continue
        operand, kin = _operand_or_kin(mentions, at)
        if kin is not None and operand is not None:
            yield Likeness(
                start=at,
                end=cue.end,
                operand=operand,
                asserted=not unsaid(mentions, at, cue.end, cue.end),
                score=0.88,
                kin=kin,
            )


def _nothing_but(mentions: Mentions, at: int) -> bool:
    """ "basically A again", "pure A again"; "it's A again" turns back to A."""
    return bool(
        {"basically", "practically", "virtually", "pure", "essentially", "but"}
        & set(mentions.talk.texts[max(0, at - 1) : at])
    )


def _seen_alike(mentions: Mentions) -> Iterator[Likeness]:
    """ "she and A are twins", "a strong look of A about it", "it's A she's like"."""
    for x in alike(mentions):
        yield Likeness(
            start=x.start,
            end=x.end,
            operand=x.operand,
            asserted=not unsaid(mentions, x.start, x.end, x.end)
            and not denied_just_before(mentions, x.start),
            score=0.88,
        )


def _inseparable(mentions: Mentions) -> Iterator[Likeness]:
    """ "you couldn't tell it from A", "hard to tell from A"; not "you can tell it from A"."""
    for cue in mentions.vocabulary.cues["inseparable"].find(mentions.talk.texts):
        operand, kin = _operand_or_kin(mentions, cue.end)
        if operand is None or operand.start - cue.end > 2:
            continue
        yield Likeness(
            start=cue.start,
            end=operand.end,
            operand=operand,
            asserted=_hardly(mentions, cue.start)
            and not mentions.scopes.habits(cue.start) & {Habit.REPORTED, Habit.WISH},
            score=0.9,
            kin=kin,
        )


def _side_by_side(mentions: Mentions) -> Iterator[Likeness]:
    """ "put it beside A and you couldn't tell which was which"."""
    talk = mentions.talk
    for ref in mentions.refs:
        if talk.texts[ref.start - 1 : ref.start] not in _BESIDE and (
            talk.texts[ref.start - 2 : ref.start] != ("next", "to")
        ):
            continue
        for cue in mentions.cue("no_difference", ref.end, ref.end + 14):
            if talk.between(ref.end - 1, cue.start, (STOP, QUERY)) or not _hardly(
                mentions, cue.start
            ):
                continue
            yield Likeness(
                start=ref.start,
                end=ref.end,
                operand=Operand(
                    start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score
                ),
                asserted=Habit.REPORTED not in mentions.scopes.habits(ref.start),
                score=0.85,
            )


_BESIDE = tuple((w,) for w in ("beside", "against", "alongside", "by"))
_HARDLY_WITHIN = 9


def _hardly(mentions: Mentions, at: int) -> bool:
    """Whether it is hard or impossible, in the words right before the token."""
    low = max(0, at - _HARDLY_WITHIN)
    return any(cue.end <= at for cue in mentions.cue("hardly", low, at))
