"""Parents as breeders say them, the seed parent always first.

"A crossed with B", "A by B", "A with B's pollen on it", "mother was A", "the pollen came
off B", "A as the mother and B as the father", "A selfed", "bee-pollinated off A", "a sport
of A". In a formula the female stands first: ICN Rec. H.2A.1, and breeding convention.

Leaves alone what cannot be remembered, wishes, questions and crosses still to be made.
"""

from collections.abc import Iterator
from dataclasses import replace

from diary.linking.operands import Operand, after, before
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.scope import Habit

_UNSAID = {Habit.WISH, Habit.QUESTION, Habit.NOT_RECALLED, Habit.DENIAL, Habit.HYPOTHETICAL}
# Joins that make a cross only where the talk is of a cross anyway.
_WEAK_JOINS = frozenset({"with", "to", "and", "into", "on", "over", "onto"})
_PLANS = frozenset(
    {"going", "want", "love", "will", "might", "could", "should", "'ll", "would", "plan", "hope"}
)


def find_parents(mentions: Mentions) -> tuple[Statement, ...]:
    """seed_parent, pollen_parent, pollination and sport_of, in order, each word used once."""
    found: list[Statement] = []
    used: set[int] = set()
    for rule in (_pairs, _after_cues, _before_cues, _selfed, _open, _sports):
        for statement in rule(mentions):
            span = range(statement.start, statement.end)
            if statement.trait in ("seed_parent", "pollen_parent", "sport_of"):
                if used & set(span):
                    continue
                used |= set(span)
            found.append(statement)
    found += _seed_before_pollen(mentions, found, used)
    return tuple(sorted(found, key=lambda s: s.start))


_NEAR_DENIAL = 3


def _asserted(mentions: Mentions, start: int, end: int) -> bool:
    for at in range(start, max(end, start + 1)):
        for scope in mentions.scopes.by_token[at]:
            if scope.habit not in _UNSAID:
                continue
            if scope.habit is Habit.DENIAL and start - scope.cue > _NEAR_DENIAL:
                continue  # "it's not a huge flower, mum was ..."
            return False
    return True


def _parent(trait: str, operand: Operand, rule: str, score: float) -> Statement:
    return Statement(
        trait=trait,
        value=operand.title,
        start=operand.start,
        end=operand.end,
        rule=rule,
        score=round(score * min(1.0, operand.score + 0.05), 3),
    )


def _known(operand: Operand | None) -> bool:
    return operand is not None and (operand.ref is None or operand.ref.cut is None)


def _pairs(mentions: Mentions) -> Iterator[Statement]:
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
        first = before(mentions, join.start, unknown=strong)
        second = after(mentions, join.end, unknown=strong)
        if first is None or second is None or not (_known(first) and _known(second)):
            continue
        if first.ref is None and second.ref is None and not strong:
            continue
        pollen_after = texts[second.end : second.end + 1] == ("pollen",) or (
            texts[second.end : second.end + 2] == ("'s", "pollen")
        )
        between = texts[first.start - 1 : first.start] == ("between",)
        led = first.start in leads or any(
            texts[i] in ("crossed", "cross", "put", "parents", "breeding", "used")
            for i in range(max(0, first.start - 4), first.start)
        )
        turned = join.start in backwards and texts[join.start] in ("on", "onto", "over")
        if not strong and not (
            pollen_after
            or between
            or (led and texts[join.start] != "and" and texts[join.start] != "to")
        ):
            continue
        if turned and texts[join.start - 1 : join.start] == ("and",):
            continue
        if not _asserted(mentions, first.start, second.end):
            continue
        if any(t in _PLANS for t in texts[max(0, first.start - 4) : first.start]):
            continue
        seed, pollen = (second, first) if turned else (first, second)
        score = 0.97 if strong else 0.9
        yield _parent("seed_parent", seed, "a cross named with both parents", score)
        yield _parent("pollen_parent", pollen, "a cross named with both parents", score)


def _cue_list(mentions: Mentions, label: str) -> list[Found]:
    return [
        f for f in mentions.vocabulary.parent_cues.find(mentions.talk.texts) if f.label == label
    ]


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


def _after_cues(mentions: Mentions) -> Iterator[Statement]:
    """ "A as the mother", "B's pollen on it"."""
    for trait in ("seed_parent", "pollen_parent"):
        for cue in _cue_list(mentions, f"{trait} after"):
            operand = before(mentions, cue.start)
            if (
                operand is None
                or not _known(operand)
                or not _asserted(mentions, operand.start, cue.end)
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
            if words == ("pollen",) or (not told and _planned(mentions, operand.start)):
                continue
            yield _parent(trait, operand, "a plant called the mother or the father", 0.95)


def _planned(mentions: Mentions, at: int) -> bool:
    start = mentions.talk.clause(at)[0]
    return any(t in _PLANS for t in mentions.talk.texts[max(start, at - 8) : at])


def _before_cues(mentions: Mentions) -> Iterator[Statement]:
    """ "mother was A", "seedling of A", "the pollen came off B"; the longest cue decides."""
    texts = mentions.talk.texts
    found = [
        (cue, trait)
        for trait in ("seed_parent", "pollen_parent")
        for cue in _cue_list(mentions, f"{trait} before")
    ]
    for cue, trait in sorted(found, key=lambda item: item[0].start - item[0].end):
        if mentions.talk.between(cue.end - 1, cue.end, (".", "?")) or mentions.masked[cue.start]:
            continue
        vague = tuple(texts[cue.start : cue.end]) in _VAGUE_CUES
        operand = after(mentions, cue.end, unknown=not vague)
        if operand is None or not _known(operand):
            continue
        if not _asserted(mentions, cue.start, operand.end) or _planned(mentions, cue.start):
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
        yield _parent(trait, operand, "a parent named after its role", score)


def _shown_here(texts: tuple[str, ...], cue: Found) -> bool:
    """ "here's the father, Tippet Lace": the plant is shown, not told as a parent of this one."""
    start = cue.start - 1 if texts[cue.start - 1 : cue.start] == ("the",) else cue.start
    verb = texts[cue.end - 1] in ("is", "was", "were", "'s", "being", "of", "off", "from")
    return not verb and texts[max(0, start - 2) : start] in (
        ("here", "'s"),
        ("here", "is"),
        ("this", "is"),
    )


_FROM = frozenset({"of", "off", "from", "on"})


def _named_after(mentions: Mentions, at: int) -> Operand | None:
    """ "selfed, off Biscuit Parade", "a selfing of A": the plant named right after."""
    texts = mentions.talk.texts
    if texts[at - 1] in _FROM:
        return after(mentions, at)
    i = at + 1 if texts[at : at + 1] in (("seed",), ("seedling",), ("seedlings",)) else at
    return after(mentions, i + 1) if i < len(texts) and texts[i] in _FROM else None


def _selfed(mentions: Mentions) -> Iterator[Statement]:
    """ "A selfed", "a selfing of A", "same selfing"."""
    exceptions = {
        i
        for f in mentions.vocabulary.never_cues["selfed"].find(mentions.talk.texts)
        for i in range(f.start, f.end)
    }
    for cue in mentions.cue("selfed"):
        if exceptions & set(range(cue.start, cue.end)) or not _asserted(
            mentions, cue.start, cue.end
        ):
            continue
        if _planned(mentions, cue.start):
            continue
        text = mentions.talk.texts[cue.start]
        operand = before(mentions, cue.start) or _named_after(mentions, cue.end)
        if operand is not None and _known(operand):
            yield _parent("seed_parent", operand, "a plant that was selfed", 0.95)
        elif text in ("by", "on", "self"):
            continue
        yield Statement(
            trait="pollination",
            value="selfed",
            start=cue.start,
            end=cue.end,
            rule="a plant that was selfed",
            score=0.95 if operand else 0.8,
        )


def _open(mentions: Mentions) -> Iterator[Statement]:
    """ "bee-pollinated off A", "A, open pollinated", "the bees did the rest"."""
    for cue in mentions.cue("open"):
        if not _asserted(mentions, cue.start, cue.end):
            continue
        yield Statement(
            trait="pollination",
            value="open",
            start=cue.start,
            end=cue.end,
            rule="open pollination",
            score=0.92,
        )
        operand = before(mentions, cue.start) or _named_after(mentions, cue.end)
        if operand is not None and _known(operand):
            yield _parent("seed_parent", operand, "open pollination", 0.85)


def _sports(mentions: Mentions) -> Iterator[Statement]:
    """ "a sport of A"; not "is it a sport?"."""
    for cue in mentions.cue("sport"):
        if mentions.talk.texts[cue.end - 1] not in ("of", "from", "off", "on"):
            operand = before(mentions, cue.start)
            if operand is None or mentions.talk.texts[cue.start] != "sport":
                continue
        else:
            operand = after(mentions, cue.end, unknown=True)
        if operand is not None and _known(operand) and _asserted(mentions, cue.start, operand.end):
            yield replace(_parent("sport_of", operand, "a sport of a plant", 0.95), start=cue.start)


def _seed_before_pollen(
    mentions: Mentions, found: list[Statement], used: set[int]
) -> list[Statement]:
    """ "so that's A, which is a regal, with the pollen of B": A is the seed parent."""
    extra = []
    seeds = {mentions.talk.sentence_number(s.start) for s in found if s.trait == "seed_parent"}
    leads = {f.end for f in mentions.cue("cross_lead")}
    for pollen in [s for s in found if s.trait == "pollen_parent"]:
        number = mentions.talk.sentence_number(pollen.start)
        for ref in reversed(
            [r for r in mentions.refs_in(pollen.start - 15, pollen.start) if r.end <= pollen.start]
        ):
            if ref.cut is None and ref.start in leads and ref.start not in used:
                if abs(mentions.talk.sentence_number(ref.start) - number) > 1 or number in seeds:
                    break
                operand = Operand(
                    start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score
                )
                extra.append(
                    _parent("seed_parent", operand, "a plant told with the pollen it got", 0.85)
                )
                used |= set(range(ref.start, ref.end))
                break
    return extra
