"""Likeness where the other plant does not follow the words: pairs, what is seen in it, clefts.

"she and 23-06 are as alike as two peas", "a strong look of A about it", "it has the A look",
"it's her mother she's like". Leaves alone "it and A are both late" and "it has A's pollen".
"""

from collections.abc import Iterator
from dataclasses import dataclass

from diary.linking.operands import Operand
from diary.reading.mentions import Mentions, Ref
from diary.reading.tokens import QUERY, STOP

_SELF = frozenset({"it", "this", "she", "he", "that", "him", "her", "one"})
_ALIKE_WITHIN, _ABOUT_WITHIN, _LOOK_BEFORE = 9, 3, 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Alike:
    """At tokens start..end-1 the plant in hand is said to be like `operand`."""

    start: int
    end: int
    operand: Operand


def alike(mentions: Mentions) -> Iterator[Alike]:
    """Every likeness of these kinds, whether asserted or not."""
    for ref in mentions.refs:
        end = (
            _paired(mentions, ref)
            or _seen_in_it(mentions, ref)
            or _has_its_look(mentions, ref)
            or _cleft(mentions, ref)
            or _brought_to_mind(mentions, ref)
            or _known_from(mentions, ref)
        )
        if end is not None:
            start, stop = end
            yield Alike(start=start, end=stop, operand=_operand(ref))


def _operand(ref: Ref) -> Operand:
    return Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)


def _paired(mentions: Mentions, ref: Ref) -> tuple[int, int] | None:
    """ "she and A are as alike as two peas", "A and this could be twins"."""
    texts = mentions.talk.texts
    if texts[ref.start - 1 : ref.start] == ("and",) and texts[ref.start - 2] in _SELF:
        start, after = ref.start - 2, ref.end
    elif texts[ref.end : ref.end + 1] == ("and",) and set(texts[ref.end + 1 : ref.end + 3]) & _SELF:
        start, after = ref.start, ref.end + 2
    else:
        return None
    for cue in mentions.cue("two_alike", after, after + _ALIKE_WITHIN):
        if not mentions.talk.between(after - 1, cue.start, (STOP, QUERY)):
            return start, cue.end
    return None


def _seen_in_it(mentions: Mentions, ref: Ref) -> tuple[int, int] | None:
    """ "there's a lot of A in it", "a strong look of A about her"."""
    texts = mentions.talk.texts
    of = ref.start - 1
    while texts[of : of + 1] and texts[of] in ("the", "old", "our", "my"):
        of -= 1
    if of < 1 or texts[of] != "of":
        return None
    looks = mentions.vocabulary.classes["look"]
    if texts[of - 1] not in looks:
        return None
    if texts[of - 1] in ("look", "air", "stamp", "cut", "spit"):
        return of - 1, ref.end
    for i in range(ref.end, min(len(texts) - 1, ref.end + _ABOUT_WITHIN)):
        if texts[i] in ("in", "about", "to", "showing") and texts[i + 1] in _SELF | {"the", "its"}:
            return of - 1, i + 2
    return None


def _has_its_look(mentions: Mentions, ref: Ref) -> tuple[int, int] | None:
    """ "it has the A look about it", "it's got A's face", "with that A way of holding itself"."""
    texts = mentions.talk.texts
    at = ref.end + (texts[ref.end : ref.end + 1] == ("'s",))
    unlooked = texts[at : at + 1] == () or texts[at] not in mentions.vocabulary.classes["looks"]
    if ref.cut is not None or unlooked:
        return None
    before = texts[max(0, ref.start - _LOOK_BEFORE) : ref.start]
    if not set(before) & _WEARING:
        return None
    return ref.start, at + 1


_WEARING = {"has", "got", "with", "have", "'s", "wears", "wearing", "same", "in", "of"}


def _known_from(mentions: Mentions, ref: Ref) -> tuple[int, int] | None:
    """ "if you've seen A you've seen this", "picture A and you have it"."""
    talk = mentions.talk
    before = talk.texts[max(0, ref.start - _KNOWN_BEFORE) : ref.start]
    said = next((n for n, w in enumerate(before) if w in _SUPPOSING), None)
    if said is None or not _KNOWING & set(before[-1:]):
        return None
    for i in range(ref.end, min(len(talk.texts) - 2, ref.end + _KNOWN_WITHIN)):
        if talk.texts[i] == "you" and {"seen", "got", "know", "have"} & set(
            talk.texts[i + 1 : i + 3]
        ):
            return ref.start - len(before) + said, i + 2
    return None


_KNOWN_BEFORE, _KNOWN_WITHIN = 4, 7
_PICTURING = frozenset("picture imagine think take".split())
_SUPPOSING = frozenset({"if", "once"}) | _PICTURING
_KNOWING = frozenset("seen know knew met grow grown had of".split()) | _PICTURING


def _brought_to_mind(mentions: Mentions, ref: Ref) -> tuple[int, int] | None:
    """ "it brings A to mind", "it calls A straight back to mind"."""
    texts = mentions.talk.texts
    if texts[ref.start - 1 : ref.start] not in _BRINGS:
        return None
    after = texts[ref.end : ref.end + 4]
    return (ref.start - 1, ref.end) if "mind" in after and "to" in after else None


_BRINGS = (("brings",), ("bring",), ("calls",), ("call",), ("brought",), ("bringing",))


def _cleft(mentions: Mentions, ref: Ref) -> tuple[int, int] | None:
    """ "it's A she's like", "it's A it takes after"; not "it's A, it's like B"."""
    talk = mentions.talk
    if talk.texts[ref.start - 1 : ref.start] not in (("'s",), ("is",), ("was",), ("just",)):
        return None
    if talk.texts[max(0, ref.start - 3) : ref.start].count("it") == 0:
        return None
    if talk.tokens[ref.end - 1].mark:
        return None
    for cue in mentions.cue("like_it", ref.end, ref.end + 1):
        if not mentions.refs_in(cue.end, cue.end + 3):
            return ref.start, cue.end
    return None
