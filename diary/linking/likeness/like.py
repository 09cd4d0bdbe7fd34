"""Likeness told before the other plant: "very like A", "a dead ringer for A", "the spit of it".

Leaves alone "nothing like A", "I'd like A to flower" and "the label looks like A".
"""

from collections.abc import Iterator

from diary.linking.likeness.apart import hardly
from diary.linking.likeness.asserted import denied_just_before, unsaid
from diary.linking.likeness.likened import Likeness, operand_or_kin
from diary.linking.operands import Operand
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found


def like(mentions: Mentions) -> Iterator[Likeness]:
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
        if _written(talk.texts, cue):
            continue  # "the label looks like a G"
        if mentions.talk.texts[cue.end : cue.end + 2] in _PEAS:
            continue
        operand, kin = operand_or_kin(mentions, cue.end)
        if (cue.start, cue.end) in weak and not _stands_alone(mentions, cue, operand):
            continue
        if operand is None:
            operand = _asked_first(mentions, cue) or _named_just_before(mentions, cue)
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


def _written(texts: tuple[str, ...], cue: Found) -> bool:
    """ "the label looks like a G"; not "with no label I'd have sworn it was A"."""
    before = texts[max(0, cue.start - 2) : cue.start]
    guess = before[-1:] in _GUESSERS or texts[cue.start] in ("i", "you", "we")
    return bool(_WRITTEN & set(before)) and not guess


_GUESSERS = (("i",), ("you",), ("we",), ("anyone",), ("anybody",))
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
        after = talk.texts[operand.end : operand.end + 2]
        return after == ("is", "what") or _not_told_apart(mentions, operand.end)
    if words == ("matches",) and talk.texts[cue.start - 1 : cue.start] in _SUBJECT:
        return True
    if words == ("like",) and talk.clause(cue.start)[0] == cue.start and talk.punctuated:
        return True
    subject = talk.texts[cue.start - 1 : cue.start]
    return words in (("is", "like"), ("'s", "like")) and subject in _SUBJECT


def _not_told_apart(mentions: Mentions, end: int) -> bool:
    """ "You get another A, you literally can't tell which is which"."""
    cues = mentions.cue("no_difference", end, end + _JUDGED_WITHIN)
    return any(hardly(mentions, cue.start) for cue in cues)


_JUDGED_WITHIN = 9
_PEAS = (("two", "peas"), ("two", "pins"), ("two", "eggs"))
_FROM_AFAR = (
    ("at", "a", "distance"), ("from", "a", "distance"), ("in", "the", "dark"), ("to", "look", "at"),
    ("across", "the", "house"), ("from", "the", "door"), ("at", "a", "glance"),
)  # fmt: skip
_SUBJECT = tuple((word,) for word in ("it", "this", "he", "she", "flower", "bloom", "face"))


_NAMED = frozenset({"it", "that", "him", "her"})


def _named_just_before(mentions: Mentions, cue: Found) -> Operand | None:
    """ "Which is not 23-12, though to my eye it's the double of it": the plant named before."""
    talk = mentions.talk
    if talk.texts[cue.end : cue.end + 1] == () or talk.texts[cue.end] not in _NAMED:
        return None
    if talk.texts[cue.end - 1] not in ("of", "for", "to", "from") or not (
        talk.tokens[cue.end].mark
    ):
        return None
    named = mentions.refs_in(talk.sentence(cue.start)[0], cue.start)
    if not named:
        return None
    ref = named[-1]
    return Operand(
        start=cue.end, end=cue.end + 1, title=ref.title, ref=ref, score=ref.score * _BY_PRONOUN
    )


_BY_PRONOUN = 0.9


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
