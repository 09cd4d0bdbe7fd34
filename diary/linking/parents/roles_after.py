"""A plant told before its role: "A as the mother", "B's pollen on it", "I put B on her".

Leaves alone "the mother was A", told in `roles`, and roles in crosses to come.
"""

from collections.abc import Iterator

from diary.linking.decisions.crosses_to_make import made_just_now
from diary.linking.operands import Operand, before
from diary.linking.parents.origin import asserted, known, parent, planned, role_cues
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.tokens import COMMA, QUERY, STOP

_TOLD = frozenset({"is", "was", "were", "'s", "gave", "had", "carried", "bore", "took", "set"})
_GIVING = _TOLD - {"is", "was", "were", "'s"}  # not "A, which is the father of half of them"
_CLEFT = frozenset({"that", "who", "which", "as"})  # "it was A that gave the pollen"
_SOURCE = frozenset({"off", "from", "of", "on", "out"})
_SAYS = (("is",), ("was",), ("'s",), ("were",))


def after_cues(mentions: Mentions) -> Iterator[Statement]:
    """ "A as the mother", "B's pollen on it"; not "A. The mother ..."."""
    texts = mentions.talk.texts
    for trait in ("seed_parent", "pollen_parent"):
        for cue in role_cues(mentions, f"{trait} after"):
            who = texts[cue.start - 1] in _CLEFT and texts[cue.start] in _GIVING
            operand = before(mentions, cue.start - who)
            pointed = operand is None
            operand = operand or _just_told(mentions, cue)
            if (
                operand is None
                or not known(operand)
                or mentions.talk.between(operand.end - 1, cue.start, (STOP, QUERY))
                or (not who and mentions.talk.between(operand.end - 1, cue.start, (COMMA,)))
                or not asserted(mentions, operand.start, cue.end)
            ):
                continue
            told = cue.end + (texts[cue.end : cue.end + 1] in (("parent",), ("side",)))
            if texts[told : told + 1] in _SAYS and mentions.ref_at(told + 1):
                continue  # "this is 23-04 the mother was Tin Whistle"
            if _asked(texts, operand.start) or _of_next_clause(mentions, cue):
                continue
            words = texts[cue.start : cue.end]
            if words == ("pollen",) or (
                not pointed and words[0] not in _TOLD - {"'s"} and planned(mentions, operand.start)
            ):
                continue
            put = texts[operand.start - 1] in mentions.vocabulary.classes["put"]
            if put and words[-1] in _UPON and made_just_now(mentions, operand.start, cue.end):
                continue  # "I put A's pollen on it Tuesday": a cross of this week
            if words in (("seed",), ("seeds",)) and texts[operand.start - 1] not in _SOURCE:
                continue
            if texts[cue.end - 1] in mentions.vocabulary.classes["offspring"] and (
                texts[operand.start - 1 : operand.start] not in _CHILD_LEADS
                or _GUESSED & set(texts[max(0, operand.start - _GUESSED_WITHIN) : operand.start])
            ):
                continue
            yield parent(trait, operand, "a plant called the mother or the father", 0.95)


def _just_told(mentions: Mentions, cue: Found) -> Operand | None:
    """ "it looks like A, but that's its mum": the plant named right before."""
    texts = mentions.talk.texts
    if texts[cue.start] not in ("'s", "is", "was") or texts[cue.start - 1] not in ("that", "which"):
        return None
    at = cue.start - 1
    return before(mentions, at - (texts[at - 1] in ("but", "and", "well", "though")))


def _of_next_clause(mentions: Mentions, cue: Found) -> bool:
    """Roles and deeds of something else right after a plant.

    "seed from A, the father is not known", "A's pollen on the brush", "A took that class".
    """
    texts = mentions.talk.texts
    words, later = texts[cue.start : cue.end], texts[cue.end : cue.end + 2]
    if words[0] == "the" and (later[:1] in _SAYS or later[:1] in _CAME):
        return True
    if words[-1] in ("on", "onto") and later[1:] and later[1] in _BRUSHES:
        return True
    ended = not later or bool(mentions.talk.tokens[cue.end - 1].mark)
    return words[0] == "took" and words[-1] in ("that", "this", "the") and not ended


_CAME = (("come",), ("came",), ("comes",))
_BRUSHES = frozenset(
    "brush brushes finger fingers thumb cotton stick paintbrush bud sleeve".split()
)
_IT = frozenset({"it", "he", "she", "this", "that"})


def _asked(texts: tuple[str, ...], at: int) -> bool:
    """ "I did wonder was A the father"; not "it was A the father"."""
    before = texts[max(0, at - 2) : at]
    return len(before) == 2 and before[1] in ("was", "were") and before[0] not in _IT | {"which"}


_SIDES = frozenset({"seed", "pollen", "pod", "parent", "side"})
_CHILD_LEADS = tuple((word,) for word in ("of", "is", "'s", "was", "another", "a", "from"))


_GUESSED = frozenset("swear sworn think thought say guess guessed taken".split())
_GUESSED_WITHIN = 6  # "I'd swear this was a seedling of A if I hadn't made the cross"


def put_on_it(mentions: Mentions) -> Iterator[Statement]:
    """ "I put Parkin Night on her", "with Black Snicket put to her": the pollen parent.

    Not "I'll put A on it", and not "I put it on A", where this plant gives the pollen.
    """
    talk, classes = mentions.talk, mentions.vocabulary.classes
    for ref in mentions.refs:
        at = ref.end
        if talk.texts[at : at + 1] == ("'s",):
            at += 1
        if talk.texts[at : at + 1] == ("pollen",):
            at += 1
        led = classes["put"] & set(talk.texts[max(0, ref.start - 3) : ref.start])
        if talk.texts[at : at + 1] and talk.texts[at] in classes["put"]:
            led = led | {talk.texts[at]}
            at += 1
        if not led or ref.cut is not None or talk.between(ref.start, at, (STOP, QUERY)):
            continue
        joined = talk.texts[at : at + 2] == ("on", "to")
        onto = talk.texts[at : at + 1] and talk.texts[at] in ("on", "onto", "over", "to")
        to = at + (2 if joined else 1)
        if not onto or talk.texts[to : to + 1] == () or talk.texts[to] not in _UPON:
            continue
        if planned(mentions, ref.start) or not asserted(mentions, ref.start, to):
            continue
        if made_just_now(mentions, ref.start, to):
            continue
        operand = Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)
        yield parent("pollen_parent", operand, "a plant put on this one", 0.93)


_UPON = frozenset({"it", "her", "him", "them", "that", "this"})
