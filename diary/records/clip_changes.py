"""What each event about clips does to them: whose they are, where they begin and end. Pure.

Every function takes the clips of one recording in order of time, changes that list, and
says whether the event found its place. Clips never overlap: one that is added or widened
takes the room it needs from its neighbours.
"""

from datetime import date

from diary.linking.document import Band, Plant, PlantKind
from diary.records.corrections import (
    AddClip,
    Confirm,
    Correction,
    Join,
    NamePlant,
    RemoveClip,
    SetDate,
    SetSeedling,
    SetSpan,
    Split,
)
from diary.records.drafts import ClipDraft
from diary.records.placing import place
from diary.records.record import Origin, Span

BORDER_MS = 1000  # a split this near to an existing border means that border


def named(kind: PlantKind, title: str) -> Plant:
    """The plant that a correction names."""
    if kind is PlantKind.CULTIVAR:
        return Plant(kind=kind, name=title, on_record=True)
    if kind is PlantKind.UNNAMED:
        return Plant(kind=kind, label=title)
    return Plant(kind=kind, number=title, on_record=True)


def change_clips(clips: list[ClipDraft], correction: Correction, span: Span) -> bool:
    """Lay one event about clips over them. False: it fits nowhere."""
    change = correction.change
    match change:
        case AddClip():
            added = ClipDraft(
                start_ms=span.start_ms,
                end_ms=span.end_ms,
                day=_day_at(clips, span.start_ms),
                plant=named(change.kind, change.title),
                heard=None,
                confidence=1.0,
                band=Band.SURE,
                origin=Origin.ADDED,
                evidence=None,
                corrections=[correction.id],
            )
            _make_room(clips, added)
            return span.end_ms > span.start_ms
        case Split():
            return _split(clips, correction, change)
        case Join():
            return _join(clips, correction, span)
    placed = place(span.start_ms, span.end_ms, clips, lambda clip: _likeness(clip, correction))
    if placed is None:
        return False
    clip = placed.chosen
    match change:
        case SetSeedling():
            clip.plant = named(change.kind, change.title)
        case SetDate():
            clip.day = change.day
        case NamePlant():
            if clip.plant.kind is not PlantKind.UNNAMED:
                # it has a number by now: agreeing is fine, otherwise only this clip changes
                clip.plant = named(change.kind, change.title)
            else:
                label = clip.plant.label
                for other in clips:
                    if other.plant.kind is PlantKind.UNNAMED and other.plant.label == label:
                        other.plant = named(change.kind, change.title)
                        if other is not clip:
                            other.corrected(correction.id)
        case RemoveClip():
            clips.remove(clip)
            return True
        case SetSpan():
            if change.end_ms <= change.start_ms:
                return False
            clip.start_ms, clip.end_ms = change.start_ms, change.end_ms
            clips.remove(clip)
            _make_room(clips, clip)
        case Confirm():
            pass
        case _:
            return False
    clip.corrected(correction.id)
    return True


def _likeness(clip: ClipDraft, correction: Correction) -> int:
    seen = correction.seen.plant
    return int(seen is not None and seen in (clip.plant.title, clip.heard and clip.heard.title))


def _day_at(clips: list[ClipDraft], at_ms: int) -> date | None:
    """The day of the last clip that began before this moment."""
    before = [clip.day for clip in clips if clip.start_ms <= at_ms]
    return before[-1] if before else None


def _make_room(clips: list[ClipDraft], added: ClipDraft) -> None:
    kept: list[ClipDraft] = [added]
    for clip in clips:
        before = min(clip.end_ms, added.start_ms)
        after = max(clip.start_ms, added.end_ms)
        if before <= clip.start_ms and after >= clip.end_ms:
            continue  # wholly covered
        if before > clip.start_ms and after < clip.end_ms:
            kept.append(clip.piece(after, clip.end_ms))
            clip.end_ms = before
        elif before > clip.start_ms:
            clip.end_ms = before
        else:
            clip.start_ms = after
        kept.append(clip)
    clips[:] = sorted(kept, key=lambda clip: clip.start_ms)


def _split(clips: list[ClipDraft], correction: Correction, change: Split) -> bool:
    near = [clip for clip in clips if abs(clip.start_ms - change.at_ms) <= BORDER_MS]
    inside = [clip for clip in clips if clip.start_ms < change.at_ms < clip.end_ms]
    if near:
        second = min(near, key=lambda clip: abs(clip.start_ms - change.at_ms))
    elif inside:
        second = inside[0].piece(change.at_ms, inside[0].end_ms)
        inside[0].end_ms = change.at_ms
        clips.insert(clips.index(inside[0]) + 1, second)
    else:
        return False
    second.plant = named(change.kind, change.title)
    second.corrected(correction.id)
    return True


def _join(clips: list[ClipDraft], correction: Correction, span: Span) -> bool:
    touched = [clip for clip in clips if span.overlap(clip.start_ms, clip.end_ms) > 0]
    if not touched:
        return False
    first = touched[0]
    first.end_ms = max(clip.end_ms for clip in touched)
    first.corrected(correction.id)
    clips[:] = [clip for clip in clips if clip is first or clip not in touched]
    return True
