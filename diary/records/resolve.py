"""Corrections laid over a reading: what the breeder should now see of one recording. Pure.

Events are folded in the order in which they were made; the last word per field wins, and
the breeder always beats the reader. Every live event ends in exactly one of `applied` and
`unplaced`. Which plant is which across recordings is decided afterwards, in plant_links.
"""

from bisect import bisect_left
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from diary.linking.document import Band, Plant, PlantKind, Reading
from diary.records.clip_changes import change_clips, named
from diary.records.corrections import (
    PLACELESS,
    AddClip,
    Confirm,
    Correction,
    Join,
    MergePlants,
    NamePlant,
    RemoveClip,
    SetDate,
    SetSeedling,
    SetSpan,
    Split,
    live,
)
from diary.records.drafts import ClipDraft, ObservationDraft, draft_clip, draft_observation
from diary.records.observation_changes import change_observations
from diary.records.placing import place
from diary.records.record import Moment, Origin, PlantRef, Record, RecordClip, RecordingId
from diary.speech.transcript import Transcript, Word

_ABOUT_CLIPS = (SetSeedling, SetSpan, Split, Join, AddClip, RemoveClip, SetDate, NamePlant)


@dataclass(frozen=True, slots=True, kw_only=True)
class Resolved:
    """The clips as they now stand, and the ids of the events that found a place or did not."""

    clips: tuple[RecordClip, ...]
    applied: tuple[str, ...]
    unplaced: tuple[str, ...]


def resolve(
    reading: Reading,
    corrections: Iterable[Correction],
    *,
    recording: RecordingId,
    transcript: Transcript,
    walk: RecordingId | None = None,
) -> Resolved:
    """Lay the live ones of `corrections` over `reading`.

    All events are taken to be about this recording. `walk` is the first recording of the
    walk this one is a part of, which its unnumbered plants are counted in.
    """
    clips = sorted((draft_clip(clip) for clip in reading.clips), key=lambda clip: clip.start_ms)
    observations = [
        draft_observation(observation, proposal=proposal)
        for clip in reading.clips
        for proposal, said in ((False, clip.observations), (True, clip.proposals))
        for observation in said
    ]
    standing = live(corrections)
    applied = {one.id for one in standing if _apply(clips, observations, one)}
    applied -= _house(clips, observations, standing)
    return Resolved(
        clips=_frozen(clips, observations, recording, walk or recording, transcript.words),
        applied=tuple(one.id for one in standing if one.id in applied),
        unplaced=tuple(one.id for one in standing if one.id not in applied),
    )


def own_key(plant: Plant, walk: RecordingId) -> str:
    """The key of a plant before the register is asked; an unnumbered one is of its walk."""
    return plant.number or plant.name or f"?{walk[:8]}/{plant.label}"


def _apply(
    clips: list[ClipDraft], observations: list[ObservationDraft], correction: Correction
) -> bool:
    change, span = correction.change, correction.span
    if isinstance(change, PLACELESS):
        return True
    if isinstance(change, MergePlants):
        return (span is None and change.number is not None) or (
            span is not None and place(span.start_ms, span.end_ms, clips) is not None
        )
    if span is None:
        return False
    if isinstance(change, _ABOUT_CLIPS) or (
        isinstance(change, Confirm) and correction.seen.trait is None
    ):
        return change_clips(clips, correction, span)
    return change_observations(observations, correction, span)


def _house(
    clips: list[ClipDraft],
    observations: list[ObservationDraft],
    standing: tuple[Correction, ...],
) -> set[str]:
    """Give what was added outside every clip one of its own; the ids of what found none."""
    homeless: set[str] = set()
    by_id = {correction.id: correction for correction in standing}
    for observation in [one for one in observations if one.origin is Origin.ADDED]:
        if _home(clips, observation) is not None:
            continue
        first = by_id[observation.corrections[0]]
        plant = first.seen.plant
        removed = any(
            isinstance(later.change, RemoveClip)
            and later.span is not None
            and later.span.overlap(observation.start_ms, observation.end_ms) > 0
            for later in standing
        )
        if plant is None or plant.startswith("?") or removed:
            homeless.update(observation.corrections)
            observations.remove(observation)
            continue
        clips.append(
            ClipDraft(
                start_ms=observation.start_ms,
                end_ms=max(observation.end_ms, observation.start_ms + 1),
                day=None,
                plant=named(PlantKind.SEEDLING, plant),
                heard=None,
                confidence=1.0,
                band=Band.SURE,
                origin=Origin.ADDED,
                evidence=None,
                corrections=[first.id],
            )
        )
    clips.sort(key=lambda clip: clip.start_ms)
    return homeless


def _home(clips: list[ClipDraft], observation: ObservationDraft) -> ClipDraft | None:
    """The clip an observation lies in most; one of no length lies where it begins."""

    def shared(clip: ClipDraft) -> int:
        end_ms = max(observation.end_ms, observation.start_ms + 1)
        return min(clip.end_ms, end_ms) - max(clip.start_ms, observation.start_ms)

    best = max(clips, key=shared, default=None)
    return best if best is not None and shared(best) > 0 else None


def _frozen(
    clips: list[ClipDraft],
    observations: list[ObservationDraft],
    recording: RecordingId,
    walk: RecordingId,
    words: tuple[Word, ...],
) -> tuple[RecordClip, ...]:
    starts = [word.start_ms for word in words]
    houses: dict[int, list[ObservationDraft]] = {}
    for observation in sorted(observations, key=lambda one: (one.start_ms, one.end_ms)):
        home = None if observation.rejected else _home(clips, observation)
        if home is not None:
            houses.setdefault(id(home), []).append(observation)
    frozen = []
    for clip in clips:
        title = clip.plant.title
        plant = PlantRef(kind=clip.plant.kind, key=own_key(clip.plant, walk), title=title)
        said = words[bisect_left(starts, clip.start_ms) : bisect_left(starts, clip.end_ms)]
        mine = houses.get(id(clip), [])
        records = tuple(_record(one, plant, recording, clip.day) for one in mine)
        moved = clip.heard is not None and clip.heard.title != title
        frozen.append(
            RecordClip(
                plant=plant,
                moment=Moment(
                    recording=recording,
                    start_ms=clip.start_ms,
                    end_ms=clip.end_ms,
                    day=clip.day,
                    text=" ".join(word.text for word in said),
                ),
                confidence=clip.confidence,
                band=clip.band,
                origin=clip.origin,
                heard_plant=clip.heard.title if moved and clip.heard else None,
                evidence=clip.evidence,
                corrections=tuple(clip.corrections),
                records=tuple(r for r, one in zip(records, mine, strict=True) if not one.proposal),
                proposals=tuple(r for r, one in zip(records, mine, strict=True) if one.proposal),
            )
        )
    return tuple(frozen)


def _record(
    one: ObservationDraft, plant: PlantRef, recording: RecordingId, day: date | None
) -> Record:
    return Record(
        plant=plant,
        moment=Moment(
            recording=recording,
            start_ms=one.start_ms,
            end_ms=one.end_ms,
            day=day,
            text=one.text,
        ),
        trait=one.trait,
        value=one.value,
        part=one.part,
        unit=one.unit,
        modifiers=one.modifiers,
        on=one.on,
        hedged=one.hedged,
        negated=one.negated,
        confidence=one.confidence,
        band=one.band,
        origin=one.origin,
        heard=one.heard,
        evidence=one.evidence,
        corrections=tuple(one.corrections),
        doubtful=one.doubtful,
    )
