"""What speaks for and against a turn, weighed: the rules have one voice, the signs another."""

from dataclasses import replace

from diary.linking.document import Plant, PlantKind
from diary.linking.turns.cut_short import completed, spelt_again
from diary.linking.turns.events import Event, EventKind
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.listed import in_list
from diary.linking.turns.openings import opening
from diary.linking.turns.plant_named import plant_of
from diary.linking.turns.signs import InHand, Signs
from diary.linking.turns.unnumbered import FAR_NUMBER, new_or_recalled, told_soon
from diary.linking.turns.walk import Turn, Walk
from diary.linking.weights import chance
from diary.reading.mentions import Mentions, Ref

BY_SIGNS = "a plant named as one that is turned to"
_LIKELY = 0.5  # the signs alone turn the talk
# Below these the signs speak against a turn that a rule makes.
_DOUBTED = {"number": 0.25, "name": 0.2, "cut": 0.3, "unnumbered": 0.25}
_HEARD = 0.55  # less sure of its words, only a rule turns to it
_OFF_RECORD = 0.65  # a number that is not on record needs more
_CUT = 0.6  # one that is cut short too
_UNLABELLED = 0.75  # a label that is said to be missing
_SAME_BREATH = 26


def weighed(
    mentions: Mentions,
    event: Event,
    by_rule: Turn | None,
    signs: Signs,
    leads: LeadIns,
    taken: set[int],
    walk: Walk,
) -> Turn | None:
    """The turn made at the place, where rules and signs are heard together."""
    kind, about = what_speaks(mentions, event, signs, leads, walk)
    share = chance(mentions.vocabulary.turn_signs[kind], about)
    if by_rule is not None and event.ref is None and _still_telling(event, walk):
        return by_rule  # "back to the pink one, the one with no label": which of them it is
    if by_rule is not None:
        named = kind in ("number", "name") and event.ref is not None
        score = _of(event.ref, share) if named and event.ref else by_rule.score
        return replace(by_rule, score=score) if share >= _DOUBTED[kind] else None
    if event.ref is None:
        return _unnumbered(mentions, event, share, leads, taken, walk)
    if event.ref.cut is not None:
        told = signs.tells(event.ref.start)
        return None if told else _cut(mentions, event.ref, share, leads, walk)
    return _named(mentions, event.ref, share, leads)


def what_speaks(
    mentions: Mentions, event: Event, signs: Signs, leads: LeadIns, walk: Walk
) -> tuple[str, tuple[str, ...]]:
    """Which weights count for the event, and its signs."""
    ref, hand = event.ref, in_hand(walk)
    if ref is None:
        return "unnumbered", signs.at(event, hand)
    if ref.cut is None:
        return "number" if ref.is_number else "name", signs.of(ref, hand)
    whole = completed(mentions, ref, leads.before(ref.start), leads, walk) or ("", False)
    return "cut", signs.cut_short(ref, *whole, hand)


def _named(mentions: Mentions, ref: Ref, share: float, leads: LeadIns) -> Turn | None:
    if share < (_LIKELY if ref.on_record else _OFF_RECORD) or ref.score < _HEARD:
        return None
    if in_list(mentions, ref):
        return None  # "23-06, 23-11 and 23-40 I sowed as one lot"
    return Turn(
        at=opening(mentions, leads, leads.before(ref.start), ref.start),
        said=ref.start,
        plant=plant_of(mentions, ref),
        score=_of(ref, share),
        rule=BY_SIGNS,
        runner_up=ref.runner_up,
        runner_up_score=ref.runner_up_score,
    )


def _cut(mentions: Mentions, ref: Ref, share: float, leads: LeadIns, walk: Walk) -> Turn | None:
    lead = leads.before(ref.start)
    whole = completed(mentions, ref, lead, leads, walk)
    if share < _CUT or whole is None or not whole[1] or spelt_again(ref, walk):
        return None
    return Turn(
        at=opening(mentions, leads, lead, ref.start),
        said=ref.start,
        plant=Plant(kind=PlantKind.SEEDLING, number=whole[0], on_record=True),
        score=round(0.9 * share, 3),
        rule="a number cut short, as one that is turned to",
    )


def _unnumbered(
    mentions: Mentions, event: Event, share: float, leads: LeadIns, taken: set[int], walk: Walk
) -> Turn | None:
    if event.kind is not EventKind.LABEL or share < _UNLABELLED:
        return None
    if told_soon(mentions, event.at, leads, taken, FAR_NUMBER):
        return None
    if _still_telling(event, walk):
        return None
    return Turn(
        at=leads.start_of(event.at, leads.move_near(event.at)),
        said=event.at,
        plant=new_or_recalled(mentions, event.at, leads, walk),
        score=round(0.9 * share, 3),
        rule="a plant shown without a number",
    )


def _still_telling(event: Event, walk: Walk) -> bool:
    """Whether a plant without a number has just been turned to, in the same breath."""
    unnamed = walk.current is not None and walk.current.kind is PlantKind.UNNAMED
    return unnamed and event.at - walk.turns[-1].said < _SAME_BREATH


def _of(ref: Ref, share: float) -> float:
    return round(min(ref.score * share, 0.99), 3)


def in_hand(walk: Walk) -> InHand:
    """The plant that the walk has come to."""
    if not walk.turns:
        return InHand()
    last = walk.turns[-1]
    return InHand(title=last.plant.title, at=last.at, shown=walk.titles)
