"""The review list: what the breeder should look at, in order of the cost of being wrong."""

from collections.abc import Iterator
from dataclasses import dataclass

from diary.linking.document import Band, PlantKind
from diary.records.clip_rows import load_clips
from diary.records.corrections import Correction
from diary.records.journal import unplaced
from diary.records.pages import PlantSummary, plants, unnamed_and_around
from diary.records.record import Moment, PlantRef, Record, RecordClip
from diary.records.same_plant import propose_same
from diary.records.store import Store
from diary.records.suggestions import RegisterSuggestion, dismissed, suggestions_for

# A wrong plant spoils all that is said of it and of the other; a wrong decision throws a
# plant away; a wrong value is one value.
KINDS = ("plant", "number", "same", "decision", "conflict", "unplaced", "register", "value")
_IN_DOUBT = (
    "c.band != 'sure' OR k.kind = 'unnamed' OR EXISTS (SELECT 1 FROM records d "
    "WHERE d.clip = c.id AND (d.proposal = 1 OR d.doubtful = 1 "
    "OR (d.trait = 'decision' AND d.band != 'sure')))"
)
NEAR_MS = 3000  # a question about this place is the same one after re-reading


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewItem:
    """One question.

    `kind` is "plant" (which plant is this clip about), "number" (a number not on record),
    "same" (one plant or two), "decision", "conflict", "register", "value" or "unplaced" (a
    correction that fits nowhere); `rank` is its place by cost, 0 the dearest. `question` is
    a sentence; `choices` are the answers to offer, likeliest first. `id` is stable over
    re-reading and is what `Dismiss` names.
    """

    id: str
    kind: str
    rank: int
    question: str
    choices: tuple[str, ...]
    moment: Moment | None
    plant: PlantRef | None
    clip: RecordClip | None = None
    record: Record | None = None
    other: Moment | None = None
    correction: Correction | None = None
    suggestion: RegisterSuggestion | None = None


def review_list(store: Store) -> tuple[ReviewItem, ...]:
    """What is uncertain and not yet answered, dearest first."""
    summaries = plants(store)
    clips = load_clips(store, _IN_DOUBT)
    items = [
        *_plants(clips),
        *_same(store),
        *_values(clips),
        *_conflicts(summaries),
        *_register(store, summaries),
        *_unplaced(store),
    ]
    done = dismissed(store)
    open_items = [item for item in items if not _answered(item, done)]
    return tuple(sorted(open_items, key=lambda item: (item.rank, _confidence(item))))


def _confidence(item: ReviewItem) -> float:
    if item.record is not None:
        return item.record.confidence
    return item.clip.confidence if item.clip is not None else 1.0


def _answered(item: ReviewItem, done: frozenset[str]) -> bool:
    if item.id in done:
        return True
    stem, _, place = item.id.rpartition("@")
    if not stem or not place.isdigit():
        return False
    return any(
        other.rpartition("@")[0] == stem
        and other.rpartition("@")[2].isdigit()
        and abs(int(other.rpartition("@")[2]) - int(place)) <= NEAR_MS
        for other in done
    )


def _at(kind: str, moment: Moment, about: str) -> str:
    return f"{kind}:{moment.recording[:12]}:{about}@{moment.start_ms}"


def _plants(clips: tuple[RecordClip, ...]) -> Iterator[ReviewItem]:
    """Clips whose plant is in doubt, and one clip of each plant shown without a number."""
    seen: set[str] = set()
    for clip in clips:
        unnamed = clip.plant.kind is PlantKind.UNNAMED
        if (clip.band is Band.SURE and not unnamed) or clip.plant.key in seen:
            continue
        if unnamed:
            seen.add(clip.plant.key)
        evidence = clip.evidence
        runner_up = evidence.runner_up if evidence and evidence.runner_up else None
        choices = [] if unnamed else [clip.plant.title]
        choices += [runner_up] if runner_up else []
        asked = (
            f"Which plant is this? Shown without a number: {clip.plant.title}"
            if unnamed
            else f"Is this {clip.plant.title}" + (f", or {runner_up}?" if runner_up else "?")
        )
        yield ReviewItem(
            id=_at("plant", clip.moment, "" if unnamed else clip.plant.key),
            kind="plant",
            rank=KINDS.index("plant"),
            question=asked,
            choices=tuple(choices),
            moment=clip.moment,
            plant=clip.plant,
            clip=clip,
        )


def _same(store: Store) -> Iterator[ReviewItem]:
    for pair in propose_same(unnamed_and_around(store)):
        yield ReviewItem(
            id=_at("same", pair.first.moment, f"{pair.second.moment.recording[:12]}"),
            kind="same",
            rank=KINDS.index("same"),
            question=(
                f"Is {pair.first.plant.title} the same plant as {pair.second.plant.title}? "
                f"({'; '.join(pair.reasons)})"
            ),
            choices=("same", "different"),
            moment=pair.second.moment,
            plant=pair.second.plant,
            clip=pair.second,
            other=pair.first.moment,
        )


def _values(clips: tuple[RecordClip, ...]) -> Iterator[ReviewItem]:
    """Decisions that are not sure; what is only proposed; corrections that fitted two places."""
    for clip in clips:
        for record, proposed in [
            *((record, False) for record in clip.records),
            *((record, True) for record in clip.proposals),
        ]:
            decision = record.trait == "decision"
            unsure = record.band is not Band.SURE if decision else proposed
            if not (unsure or record.doubtful):
                continue
            kind = "decision" if decision else "value"
            part = f" of {record.part}" if record.part else ""
            value = f"{record.value} {record.unit}" if record.unit == "mm" else record.value
            yield ReviewItem(
                id=_at(kind, record.moment, f"{record.trait}:{record.value}"),
                kind=kind,
                rank=KINDS.index(kind),
                question=(
                    f"{record.plant.title}: {record.trait.replace('_', ' ')}{part} {value}? "
                    f"Heard: “{record.moment.text}”"
                ),
                choices=(str(record.value),),
                moment=record.moment,
                plant=record.plant,
                clip=clip,
                record=record,
            )


def _conflicts(summaries: tuple[PlantSummary, ...]) -> Iterator[ReviewItem]:
    told: set[str] = set()
    for one in summaries:
        for belief in one.beliefs:
            question = (
                f"{one.plant.title}: {belief.trait.replace('_', ' ')}"
                f"{' of ' + belief.part if belief.part else ''}: {belief.conflict}"
            )
            if belief.conflict is None or question in told:
                continue
            told.add(question)
            yield ReviewItem(
                id=f"conflict:{one.plant.key}:{belief.trait}:{belief.part or ''}:{belief.conflict}",
                kind="conflict",
                rank=KINDS.index("conflict"),
                question=question,
                choices=(str(belief.value),),
                moment=belief.sources[0] if belief.sources else None,
                plant=one.plant,
                other=belief.against[0] if belief.against else None,
            )


def _register(store: Store, summaries: tuple[PlantSummary, ...]) -> Iterator[ReviewItem]:
    for suggestion in suggestions_for(store, summaries):
        kind = "number" if suggestion.kind == "unknown_number" else "register"
        yield ReviewItem(
            id=suggestion.id,
            kind=kind,
            rank=KINDS.index(kind),
            question=suggestion.sentence,
            choices=(suggestion.value,),
            moment=suggestion.moment,
            plant=suggestion.plant,
            suggestion=suggestion,
        )


def _unplaced(store: Store) -> Iterator[ReviewItem]:
    for correction in unplaced(store):
        span, seen = correction.span, correction.seen
        about = " ".join(str(one) for one in (seen.plant, seen.trait, seen.value) if one)
        moment = None
        if span is not None:
            moment = Moment(
                recording=span.recording,
                start_ms=span.start_ms,
                end_ms=span.end_ms,
                day=None,
                text="",
            )
        yield ReviewItem(
            id=f"unplaced:{correction.id}",
            kind="unplaced",
            rank=KINDS.index("unplaced"),
            question=(
                f"Your correction ({type(correction.change).__name__}"
                f"{': ' + about if about else ''}) fits nowhere any more"
            ),
            choices=(),
            moment=moment,
            plant=None,
            correction=correction,
        )
