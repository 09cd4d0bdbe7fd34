"""What goes wrong most often: each mistake by its trait, its kind and the rule behind it."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

from diary.evaluation.matching import SLACK_MS, Told
from diary.evaluation.score import Scored
from diary.evaluation.sides import Asked
from diary.evaluation.stretches import rightly_linked

LINK = "link"  # stands for a trait where a whole clip went to the wrong plant


class Kind(Enum):
    """What kind of mistake it is, in plain words."""

    MISSED = "said, not noticed"
    INVENTED = "noticed, not said"
    VALUE = "another value noticed"
    PART = "noticed of another part"
    PLANT = "noticed of another plant"
    LINK = "clip of another plant, or of none"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mistake:
    """One mistake: in which script, at which moment, what was asked and what was told.

    `rule` is the rule that told it; empty where nothing was told.
    """

    script: str
    at_ms: int
    trait: str
    kind: Kind
    rule: str
    plant: str
    asked: str
    told: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Common:
    """A mistake made so many times, with the words of one of them."""

    times: int
    trait: str
    kind: Kind
    rule: str
    example: Mistake


def mistakes(one: Scored) -> tuple[Mistake, ...]:
    """Every mistake of one script, by time; a miss and a false report of one thing are one."""
    false = list(one.matching.false)
    found: list[Mistake] = []
    for miss in one.matching.misses:
        instead = _instead(miss, false)
        if instead is None:
            found.append(_missed(one.script, miss))
            continue
        false.remove(instead[0])
        found.append(_told(one.script, instead[0], instead[1], asked=_asked(miss)))
    found += [_told(one.script, told, Kind.INVENTED, asked="") for told in false]
    found += [
        Mistake(
            script=one.script,
            at_ms=clip.start_ms,
            trait=LINK,
            kind=Kind.LINK,
            rule=clip.rule,
            plant=clip.title,
            asked=_plant_at(one, (clip.start_ms + clip.end_ms) // 2),
            told=clip.title,
            words="",
        )
        for clip in one.told
        if not rightly_linked(clip, one.asked)
    ]
    return tuple(sorted(found, key=lambda m: m.at_ms))


def commonest(found: Iterable[Mistake]) -> tuple[Common, ...]:
    """The mistakes counted by trait, kind and rule, the commonest first."""
    everything = list(found)
    counted = Counter((m.trait, m.kind, m.rule) for m in everything)
    return tuple(
        Common(
            times=times,
            trait=trait,
            kind=kind,
            rule=rule,
            example=next(m for m in everything if (m.trait, m.kind, m.rule) == (trait, kind, rule)),
        )
        for (trait, kind, rule), times in counted.most_common()
    )


def _instead(miss: Asked, false: list[Told]) -> tuple[Told, Kind] | None:
    """The false report that stands where the answer should, and how the two differ."""
    gold = miss.gold
    for kind in (Kind.PLANT, Kind.PART, Kind.VALUE):
        for told in false:
            o = told.observation
            if o.trait != gold.trait or (
                o.end_ms < miss.start_ms - SLACK_MS or o.start_ms > miss.end_ms + SLACK_MS
            ):
                continue
            same_plant = told.plant == miss.plant
            same_part = gold.trait != "colour" or o.part == gold.part
            same_value = o.value == gold.value
            if kind is Kind.PLANT and not same_plant and same_part and same_value:
                return told, kind
            if kind is Kind.PART and same_plant and same_value and not same_part:
                return told, kind
            if kind is Kind.VALUE and same_plant and same_part:
                return told, kind
    return None


def _missed(script: str, miss: Asked) -> Mistake:
    return Mistake(
        script=script,
        at_ms=miss.start_ms,
        trait=miss.gold.trait,
        kind=Kind.MISSED,
        rule="",
        plant=miss.title,
        asked=_asked(miss),
        told="",
        words=miss.gold.quote,
    )


def _told(script: str, told: Told, kind: Kind, *, asked: str) -> Mistake:
    o = told.observation
    return Mistake(
        script=script,
        at_ms=o.start_ms,
        trait=o.trait,
        kind=kind,
        rule=o.evidence.rule,
        plant=told.title,
        asked=asked,
        told=" ".join([*([o.part] if o.part else []), *o.modifiers, str(o.value)]),
        words=o.text,
    )


def _asked(miss: Asked) -> str:
    gold = miss.gold
    return " ".join([*([gold.part] if gold.part else []), *gold.modifiers, str(gold.value)])


def _plant_at(one: Scored, at_ms: int) -> str:
    return next((c.title for c in one.asked if c.start_ms <= at_ms < c.end_ms), "no plant")
