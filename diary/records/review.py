"""The review list: what the breeder should look at, in order of the cost of being wrong."""

from dataclasses import dataclass

from diary.records.corrections import Correction
from diary.records.record import Moment, PlantRef, Record, RecordClip
from diary.records.store import Store
from diary.records.suggestions import RegisterSuggestion


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
    raise NotImplementedError
