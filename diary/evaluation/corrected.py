"""How often the breeder of a diary had to correct what was heard: sizes, colours, links."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from diary.evaluation.measure import measure
from diary.records.corrections import (
    Correction,
    Reject,
    RemoveClip,
)
from diary.records.record import Origin, Record, RecordClip

LINK, OTHER = "link", "other"


@dataclass(frozen=True, slots=True, kw_only=True)
class Corrected:
    """One kind of thing heard: how many, and what became of them.

    `heard` counts what the reader told; `confirmed`, `changed` and `taken_out` are those of
    them the breeder judged. `added` are those it had not heard.
    """

    what: str
    heard: int
    confirmed: int
    changed: int
    taken_out: int
    added: int

    @property
    def share(self) -> float | None:
        """The share of what was heard that was changed or taken out; None if nothing was."""
        return (self.changed + self.taken_out) / self.heard if self.heard else None


@dataclass(frozen=True, slots=True, kw_only=True)
class CommonChange:
    """A correction made so many times: of which trait, heard by which rule, one example."""

    times: int
    trait: str
    rule: str
    example: str


def corrected(
    clips: Iterable[RecordClip], applied: Iterable[Correction]
) -> tuple[tuple[Corrected, ...], tuple[CommonChange, ...]]:
    """By family and for the links, in the order of the families; and the commonest changes.

    `clips` are those of the whole diary, `applied` the corrections that hold.
    """
    clips = tuple(clips)
    counts: Counter[tuple[str, str]] = Counter()
    for clip in clips:
        counts[LINK, _fate_of_clip(clip)] += 1
        for record in clip.records:
            counts[_family(record.trait), _fate(record)] += 1
    for correction in applied:
        match correction.change:
            case Reject():
                counts[_family(correction.seen.trait or ""), "taken_out"] += 1
            case RemoveClip():
                counts[LINK, "taken_out"] += 1
    names = [*measure().families, OTHER, LINK]
    rows = tuple(
        Corrected(
            what=name,
            heard=sum(
                counts[name, fate] for fate in ("untouched", "confirmed", "changed", "taken_out")
            ),
            confirmed=counts[name, "confirmed"],
            changed=counts[name, "changed"],
            taken_out=counts[name, "taken_out"],
            added=counts[name, "added"],
        )
        for name in names
    )
    shown = tuple(row for row in rows if row.what != OTHER or row.heard or row.added)
    return shown, _commonest(clips)


def _family(trait: str) -> str:
    return measure().family.get(trait, OTHER)


def _fate(record: Record) -> str:
    if record.origin is Origin.ADDED:
        return "added"
    if _changed(record):
        return "changed"
    return "confirmed" if record.origin is Origin.CORRECTED else "untouched"


def _changed(record: Record) -> bool:
    heard = record.heard
    if heard is None:
        return False
    now = (record.trait, record.value, record.part, record.modifiers)
    return now != (heard.trait, heard.value, heard.part, heard.modifiers)


def _fate_of_clip(clip: RecordClip) -> str:
    if clip.origin is Origin.ADDED:
        return "added"
    if clip.heard_plant is not None and clip.heard_plant != clip.plant.title:
        return "changed"
    return "confirmed" if clip.origin is Origin.CORRECTED else "untouched"


def _commonest(clips: tuple[RecordClip, ...]) -> tuple[CommonChange, ...]:
    found: dict[tuple[str, str], list[str]] = {}
    for clip in clips:
        if _fate_of_clip(clip) == "changed":
            rule = clip.evidence.rule if clip.evidence else ""
            found.setdefault((LINK, rule), []).append(f"{clip.heard_plant} is {clip.plant.title}")
        for record in clip.records:
            heard = record.heard
            if heard is not None and _changed(record):
                rule = record.evidence.rule if record.evidence else ""
                was = f"{heard.part or ''} {heard.value}".strip()
                now = f"{record.part or ''} {record.value}".strip()
                found.setdefault((heard.trait, rule), []).append(f"{was} is {now}")
    ranked = sorted(found.items(), key=lambda item: -len(item[1]))
    return tuple(
        CommonChange(times=len(examples), trait=trait, rule=rule, example=examples[0])
        for (trait, rule), examples in ranked
    )
