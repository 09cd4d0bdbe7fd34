"""Two plants with a join between them: "A crossed with B", "A with B's pollen on it", "B onto A".

In a formula the female stands first: ICN Rec. H.2A.1, and breeding convention. Leaves
alone crosses still to be made ("I'll put A on B next year").
"""

from collections.abc import Iterator

from diary.linking.operands import Operand, after, before
from diary.linking.parents.origin import PLANS, asserted, known, parent, planned, plans
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

# Joins that make a cross only where the talk is of a cross anyway.
_WEAK_JOINS = frozenset({"with", "to", "and", "into", "on", "over", "onto"})


def pairs(mentions: Mentions) -> Iterator[Statement]:
    """Two plants with a join between them."""
    texts = mentions.talk.texts
    leads = {f.end for f in mentions.cue("cross_lead")}
    joins: dict[int, Found] = {}
    for join in mentions.vocabulary.cues["cross"].find(texts):
        if (
            join.end - join.start
            > joins.get(join.start, join).end - joins.get(join.start, join).start
        ):
            joins[join.start] = join
        joins.setdefault(join.start, join)
    backwards = {
        f.start for f in mentions.vocabulary.parent_cues.find(texts) if f.label == "cross reversed"
    }
    for join in joins.values():
        if mentions.masked[join.start]:
            continue
        strong = tuple(texts[join.start : join.end]) not in {(w,) for w in _WEAK_JOINS}
        strong = strong and texts[join.start] not in ("on", "onto", "over")
        second = after(mentions, join.end, unknown=strong)
        first = before(mentions, join.start, unknown=strong)
        if first is None and strong and second is not None and not mentions.talk.punctuated:
            first = before(mentions, join.start - 1)  # "fog bound per | see by": an end left over
        if first is None or second is None or not (known(first) and known(second)):
            continue
        if first.ref is None and second.ref is None and not strong:
            continue
        if first.ref is None and texts[join.start] == "pollinated":
            continue  # "open pollinated, off A"
        if _role_told(mentions, second.end):
            continue
        pollen_after = _given(mentions, second.end)
        of_both = set(texts[max(0, first.start - 2) : first.start - 1]) & _UNIONS
        between = texts[first.start - 1 : first.start] == ("between",) and not (
            _only_places(texts, first, second)
        )
        between |= bool(of_both) and texts[first.start - 1] == "of"
        led = first.start in leads or _led(mentions, first.start)
        turned = join.start in backwards and bool(
            {"on", "onto", "over"} & set(texts[join.start : join.end])
        )
        if not strong and not (
            pollen_after
            or between
            or (led and texts[join.start] != "and" and texts[join.start] != "to")
            or _parents_named(texts, first.start)
        ):
            continue
        if turned and texts[join.start - 1 : join.start] == ("and",):
            continue
        if not asserted(mentions, first.start, second.end) or _to_come(texts, second.end):
            continue
        if plans(texts, first.start - 4, first.start):
            continue
        seed, pollen = (second, first) if turned else (first, second)
        score = 0.97 if strong else 0.9
        yield parent("seed_parent", seed, "a cross named with both parents", score)
        yield parent("pollen_parent", pollen, "a cross named with both parents", score)


def _to_come(texts: tuple[str, ...], at: int) -> bool:
    """ "A crossed with B is what I want to try next": a cross still to be made."""
    told = texts[at : at + 1] in (("is",), ("'s",), ("would",), ("might",))
    return told and bool(_COMING & set(texts[at : at + _COMING_WITHIN]))


_COMING = PLANS | {"next", "list", "try", "planned", "worth"}
_COMING_WITHIN = 8
_CROSSING = frozenset(
    "cross crosses crossed mating marriage union match bred made result product hybrid".split()
)


_UNIONS = frozenset("cross marriage union mating hybrid lovechild child mix match pairing".split())


def _only_places(texts: tuple[str, ...], first: Operand, second: Operand) -> bool:
    """ "between 23-10 and 23-12 on the shelf": two numbers, and nothing said of a cross."""
    numbers = all(o.ref is not None and o.ref.is_number for o in (first, second))
    return numbers and not _CROSSING & set(texts[max(0, first.start - 6) : first.start])


def _role_told(mentions: Mentions, at: int) -> bool:
    """ "this is 23-04, with A for a mother": the role says who it is, and 23-04 is no parent."""
    texts, classes = mentions.talk.texts, mentions.vocabulary.classes
    if texts[at : at + 1] == () or texts[at] not in ("for", "as"):
        return False
    at += 2 if texts[at + 1 : at + 2] and texts[at + 1] in _ARTICLES | classes["its"] else 1
    return texts[at : at + 1] != () and texts[at] in classes["mother"] | {"seed", "pod"}


_ARTICLES = frozenset({"a", "the", "my", "our"})


def _led(mentions: Mentions, at: int) -> bool:
    """ "I pollinated A with B", "by crossing A with B": a verb of crossing a little before."""
    texts, classes = mentions.talk.texts, mentions.vocabulary.classes
    said = set(texts[max(0, at - 4) : at])
    return bool(said & (_LEADING | classes["crossed"] | classes["crossing"]))


_LEADING = frozenset({"cross", "put", "parents", "breeding", "used"})


def carried_over(mentions: Mentions) -> Iterator[Statement]:
    """ "I took A's pollen and put it on B", "the pollen of A went over to B": B bore the seed.

    Not "I took A's pollen and put it in the fridge", and not a cross still to be made.
    """
    texts = mentions.talk.texts
    for ref in mentions.refs:
        i = ref.end
        while i < len(texts) and texts[i] in ("'s", "pollen"):
            i += 1
        of_it = {"pollen"} & set(texts[max(0, ref.start - 3) : ref.start] + texts[ref.end : i])
        if ref.cut is not None or not of_it:
            continue
        over = i
        while over < len(texts) and over - i < _CARRIED and texts[over] in _CARRYING:
            over += 1
        second = after(mentions, over)
        if over == i or second is None or not known(second) or second.start == ref.start:
            continue
        if texts[over - 1] not in ("on", "onto", "to", "over", "across"):
            continue
        if planned(mentions, ref.start) or not asserted(mentions, ref.start, second.end):
            continue
        first = Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)
        yield parent("pollen_parent", first, "pollen carried over", 0.93)
        yield parent("seed_parent", second, "pollen carried over", 0.93)


_CARRIED = 7
_CARRYING = frozenset(
    "and then i we put it that over across on onto to dabbed brushed dusted carried took taken "
    "went walked ran popped rubbed some a bit the straight back used with was".split()
)


def _parents_named(texts: tuple[str, ...], at: int) -> bool:
    """ "the parents are A and B", "mum and dad are A and B"."""
    before_it = texts[max(0, at - 4) : at]
    return "parents" in before_it or "parentage" in before_it or before_it[-2:-1] == ("dad",)


def sired(mentions: Mentions) -> Iterator[Statement]:
    """ "by A out of B", as horses are named: the pollen parent first."""
    texts = mentions.talk.texts
    for ref in mentions.refs:
        if ref.cut is not None or texts[ref.start - 1 : ref.start] != ("by",):
            continue
        if texts[ref.end : ref.end + 2] != ("out", "of") or before(mentions, ref.start - 1):
            continue
        second = after(mentions, ref.end + 2)
        if second is None or not known(second) or not asserted(mentions, ref.start, second.end):
            continue
        first = Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)
        yield parent("pollen_parent", first, "a sire and a dam", 0.95)
        yield parent("seed_parent", second, "a sire and a dam", 0.95)


_UPON = frozenset({"it", "her", "him", "them"})


def _given(mentions: Mentions, at: int) -> bool:
    """ "A with B's pollen", "A with B on it", "A with B put to her": B gave the pollen."""
    texts = mentions.talk.texts
    at += texts[at : at + 1] == ("'s",)
    if texts[at : at + 1] == ("pollen",):
        return True
    at += at < len(texts) and texts[at] in mentions.vocabulary.classes["put"]
    at += texts[at : at + 2] == ("on", "to")
    return (
        at + 1 < len(texts) and texts[at] in ("on", "onto", "over", "to") and texts[at + 1] in _UPON
    )
