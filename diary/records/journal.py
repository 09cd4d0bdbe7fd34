"""The breeder's corrections in the store: append, undo, redo, list, carry to another diary."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from diary.records.corrections import Change, Correction, Seen
from diary.records.record import Span
from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class JournalEntry:
    """A correction and what became of it: "applied", "unplaced" or "withdrawn"."""

    correction: Correction
    state: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Imported:
    """How many events of a file were new, and how many were here already."""

    new: int
    known: int


def correct(
    store: Store,
    change: Change,
    *,
    at: Span | None = None,
    seen: Seen | None = None,
    made_by: str = "breeder",
) -> Correction:
    """Append one event and lay it over the records. Raises UsageError if it makes no sense."""
    raise NotImplementedError


def undo(store: Store) -> Correction | None:
    """Withdraw the last event that still holds; returns it, or None if there is none."""
    raise NotImplementedError


def redo(store: Store) -> Correction | None:
    """Bring back what the last undo withdrew, if nothing else was done since."""
    raise NotImplementedError


def withdraw(store: Store, correction_id: str) -> Correction:
    """Withdraw one event by its id. Raises NotFound."""
    raise NotImplementedError


def journal(store: Store) -> tuple[JournalEntry, ...]:
    """Every event, oldest first, with what became of it."""
    raise NotImplementedError


def unplaced(store: Store) -> tuple[Correction, ...]:
    """Live events that fit nowhere any more: shown for review, never dropped."""
    raise NotImplementedError


def export_lines(store: Store) -> Iterator[str]:
    """The whole journal as JSON, one event a line."""
    raise NotImplementedError


def import_lines(store: Store, lines: Iterable[str]) -> Imported:
    """Take in a journal; an event already here is left alone. Raises UsageError with the line."""
    raise NotImplementedError
