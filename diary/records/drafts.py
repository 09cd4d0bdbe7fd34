"""Clips and observations while corrections are being laid over them. Pure; used by resolve.

A draft is the only thing here that changes; what leaves `resolve` is frozen again.
"""

from dataclasses import dataclass, field
from datetime import date

from diary.linking.document import Band, Clip, Evidence, Observation, Plant, Value
from diary.records.record import Heard, Origin


@dataclass(slots=True, kw_only=True, eq=False)
class ClipDraft:
    """A clip in the making. `heard` is the plant the reader gave it, None for an added one."""

    start_ms: int
    end_ms: int
    day: date | None
    plant: Plant
    heard: Plant | None
    confidence: float
    band: Band
    origin: Origin
    evidence: Evidence | None
    corrections: list[str] = field(default_factory=list)

    def corrected(self, by: str) -> None:
        """Note the event, and that the clip is now the breeder's word."""
        self.corrections.append(by)
        self.confidence, self.band = 1.0, Band.SURE
        if self.origin is Origin.HEARD:
            self.origin = Origin.CORRECTED

    def piece(self, start_ms: int, end_ms: int) -> "ClipDraft":
        """A part of this clip, as a clip of its own."""
        return ClipDraft(
            start_ms=start_ms,
            end_ms=end_ms,
            day=self.day,
            plant=self.plant,
            heard=self.heard,
            confidence=self.confidence,
            band=self.band,
            origin=self.origin,
            evidence=self.evidence,
            corrections=list(self.corrections),
        )


@dataclass(slots=True, kw_only=True, eq=False)
class ObservationDraft:
    """An observation in the making. `rejected` ones stay, so that a later word can bring
    them back; `proposal` ones count only once the breeder has confirmed or changed them."""

    start_ms: int
    end_ms: int
    text: str
    trait: str
    value: Value
    part: str | None
    unit: str | None
    modifiers: tuple[str, ...]
    on: tuple[str, ...] = ()
    hedged: bool = False
    negated: bool = False
    confidence: float = 1.0
    band: Band = Band.SURE
    origin: Origin = Origin.ADDED
    heard: Heard | None = None
    evidence: Evidence | None = None
    proposal: bool = False
    rejected: bool = False
    doubtful: bool = False
    corrections: list[str] = field(default_factory=list)

    def corrected(self, by: str, *, doubtful: bool) -> None:
        """Note the event: what it touches holds, whatever the reader thought of it."""
        self.corrections.append(by)
        self.confidence, self.band = 1.0, Band.SURE
        self.proposal = self.rejected = False
        self.doubtful = self.doubtful or doubtful
        if self.origin is Origin.HEARD:
            self.origin = Origin.CORRECTED


def draft_clip(clip: Clip) -> ClipDraft:
    """The clip as it was read."""
    return ClipDraft(
        start_ms=clip.start_ms,
        end_ms=clip.end_ms,
        day=clip.day,
        plant=clip.plant,
        heard=clip.plant,
        confidence=clip.confidence,
        band=clip.band,
        origin=Origin.HEARD,
        evidence=clip.evidence,
    )


def draft_observation(observation: Observation, *, proposal: bool) -> ObservationDraft:
    """The observation as it was read."""
    return ObservationDraft(
        start_ms=observation.start_ms,
        end_ms=observation.end_ms,
        text=observation.text,
        trait=observation.trait,
        value=observation.value,
        part=observation.part,
        unit=observation.unit,
        modifiers=observation.modifiers,
        on=observation.on,
        hedged=observation.hedged,
        negated=observation.negated,
        confidence=observation.confidence,
        band=observation.band,
        origin=Origin.HEARD,
        heard=Heard(
            trait=observation.trait,
            value=observation.value,
            part=observation.part,
            unit=observation.unit,
            modifiers=observation.modifiers,
        ),
        evidence=observation.evidence,
        proposal=proposal,
    )
