"""What was said that belongs into the register, for the breeder to confirm."""

from dataclasses import dataclass
from datetime import date

from diary.records.record import Moment, PlantRef
from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class RegisterSuggestion:
    """One proposed entry. `kind` as in linking's Suggestion, and "parents" and "status".

    `id` is stable over re-reading. `before` is what the register holds now, if anything.
    """

    id: str
    kind: str
    plant: PlantRef | None
    value: str
    day: date | None
    moment: Moment
    before: str | None
    sentence: str  # "Put on record: 23-04 first flowered on 2 June 2031"


def suggestions(store: Store) -> tuple[RegisterSuggestion, ...]:
    """All that is not yet on record and not dismissed, latest first."""
    raise NotImplementedError


def accept(store: Store, suggestion_id: str) -> RegisterSuggestion:
    """Write a suggestion into the register. Raises NotFound."""
    raise NotImplementedError
