"""Parents as breeders say them, the seed parent always first.

"A crossed with B", "A by B", "A with B's pollen on it", "mother was A", "the pollen came
off B", "A as the mother and B as the father", "A selfed", "bee-pollinated off A", "a sport
of A".

Leaves alone what cannot be remembered, wishes, questions and crosses still to be made.
"""

from collections.abc import Iterator

from diary.linking.operands import Operand
from diary.linking.parents.crosses import carried_over, pairs, sired
from diary.linking.parents.dusted import dusted_with
from diary.linking.parents.origin import parent
from diary.linking.parents.pollinated import by_bees, open_pollinated, selfed, sports
from diary.linking.parents.roles import appositions, before_cues, fragments
from diary.linking.parents.roles_after import after_cues, put_on_it
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_RULES = (
    pairs,
    carried_over,
    sired,
    appositions,
    after_cues,
    put_on_it,
    dusted_with,
    before_cues,
    fragments,
    selfed,
    open_pollinated,
    by_bees,
    sports,
)


def find_parents(mentions: Mentions) -> tuple[Statement, ...]:
    """seed_parent, pollen_parent, pollination and sport_of, in order, each word used once."""
    found: list[Statement] = []
    used: set[int] = set()
    for rule in _RULES:
        for statement in rule(mentions):
            span = range(statement.start, statement.end)
            if statement.trait in ("seed_parent", "pollen_parent", "sport_of"):
                if used & set(span):
                    continue
                used |= set(span)
            found.append(statement)
    found = _known_before_new(mentions, found)
    found += _seed_before_pollen(mentions, found, used)
    found += _other_parent(mentions, found, used)
    return tuple(sorted(found, key=lambda s: s.start))


def _known_before_new(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """ "with A for a mother and B for a father, God help it": God is no name where B is told."""
    talk = mentions.talk
    told = {(s.trait, talk.sentence_number(s.start)) for s in found if mentions.ref_at(s.start)}
    return [
        s
        for s in found
        if s.trait not in _OTHER
        or mentions.ref_at(s.start)
        or (s.trait, talk.sentence_number(s.start)) not in told
    ]


def _other_parent(
    mentions: Mentions, found: list[Statement], used: set[int]
) -> Iterator[Statement]:
    """ "Its parents are A, which bore the seed, and B": B is the other one.

    Not "its parents are A and B's sister", and not where both are told.
    """
    talk = mentions.talk
    told = sorted((s for s in found if s.trait in _OTHER), key=lambda s: s.start)
    numbers = [talk.sentence_number(s.start) for s in told]
    for s, number in zip(told, numbers, strict=True):
        if numbers.count(number) != 1:
            continue
        low, high = talk.sentence(s.start)
        if not talk.punctuated or not _BOTH & set(talk.texts[low : s.start]):
            continue
        rest = [r for r in mentions.refs_in(low, high) if not used & set(range(r.start, r.end))]
        if (
            len(rest) == 1
            and rest[0].cut is None
            and talk.texts[rest[0].end : rest[0].end + 1] != ("'s",)
        ):
            ref = rest[0]
            used |= set(range(ref.start, ref.end))
            yield parent(
                _OTHER[s.trait],
                Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score),
                "the other of two parents",
                0.8,
            )


_OTHER = {"seed_parent": "pollen_parent", "pollen_parent": "seed_parent"}
_BOTH = frozenset({"parents", "parentage", "cross"})
_GIVEN = frozenset({"with", "wi", "and", "had", "got", "a", "the", "dab", "of", "its", "some"})
_SHOWN = (("this", "is"), ("this", "'s"), ("here", "is"), ("here", "'s"))  # the plant in hand
_SEED_WITHIN = 10


def _seed_before_pollen(
    mentions: Mentions, found: list[Statement], used: set[int]
) -> list[Statement]:
    """ "so that's A, which is a regal, with the pollen of B": A is the seed parent."""
    extra = []
    talk = mentions.talk
    seeds = [s.start for s in found if s.trait == "seed_parent"]
    leads = {f.end for f in mentions.cue("cross_lead")}
    for pollen in [s for s in found if s.trait == "pollen_parent"]:
        number = talk.sentence_number(pollen.start)
        if any(abs(s - pollen.start) < _SEED_WITHIN for s in seeds):
            continue
        for ref in reversed(
            [r for r in mentions.refs_in(pollen.start - 15, pollen.start) if r.end <= pollen.start]
        ):
            if any(ref.start < s < pollen.start for s in seeds):
                break
            given = set(talk.texts[ref.end : pollen.start]) <= _GIVEN and ref.end < pollen.start
            shown = ref.is_number and talk.texts[max(0, ref.start - 2) : ref.start] in _SHOWN
            if (
                ref.cut is None
                and ((ref.start in leads and not shown) or given)
                and ref.start not in used
            ):
                if abs(talk.sentence_number(ref.start) - number) > 1 or any(
                    talk.sentence_number(s) == number for s in seeds
                ):
                    break
                operand = Operand(
                    start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score
                )
                extra.append(
                    parent("seed_parent", operand, "a plant told with the pollen it got", 0.85)
                )
                used |= set(range(ref.start, ref.end))
                break
    return extra
