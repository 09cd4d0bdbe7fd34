"""The breeder's corrections in the store: append, undo, redo, list, carry to another diary."""

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from diary.errors import NotFound, UsageError
from diary.records.correction_rows import (
    all_corrections,
    append,
    has_correction,
    next_id,
)
from diary.records.corrections import (
    PLACELESS,
    Change,
    Correction,
    GiveName,
    MergePlants,
    Renumber,
    Seen,
    Withdraw,
    from_line,
    live,
    to_line,
)
from diary.records.readings import refresh
from diary.records.record import RecordingId, Span
from diary.records.register_rows import register_identities
from diary.records.store import Store, now


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
    _check(store, change, at)
    with store.db.atomic():
        correction = Correction(
            id=next_id(store),
            made_at=now(),
            made_by=made_by,
            span=at,
            change=change,
            seen=seen or Seen(),
        )
        append(store, correction)
        refresh(store, _touched(store, [correction]))
    return correction


def _check(store: Store, change: Change, at: Span | None) -> None:
    needs_no_place = isinstance(change, PLACELESS) or (
        isinstance(change, MergePlants) and change.number is not None
    )
    if at is None and not needs_no_place:
        raise UsageError(f"{type(change).__name__} needs a place in a recording.")
    if at is not None and at.end_ms < at.start_ms:
        raise UsageError("A place in a recording must end after it begins.")
    identities = register_identities(store)
    match change:
        case Renumber(number=number, to=to):
            if not to.strip():
                raise UsageError("The new number is empty.")
            if identities.number(to) != to:
                raise UsageError(
                    f"{to} is a former number of {identities.number(to)}: recordings that say "
                    f"{to} mean that plant. Choose another number."
                )
            if to in identities.present and identities.number(number) != to:
                raise UsageError(f"{to} is on record already. Merge {number} into it instead.")
        case MergePlants(number=str() as number, into=str() as into):
            if identities.number(number) == identities.number(into):
                raise UsageError(f"{number} and {into} are one plant already.")
        case GiveName(name=name) if not name.strip():
            raise UsageError("The name is empty.")
        case MergePlants(number=str(), into=None):
            raise UsageError("Say which plant it is to be merged into.")


def _touched(store: Store, corrections: Iterable[Correction]) -> tuple[RecordingId, ...]:
    """The recordings whose records these events may change."""
    touched: dict[RecordingId, None] = {}
    withdrawn = {c.change.of for c in corrections if isinstance(c.change, Withdraw)}
    everything = {c.id: c for c in all_corrections(store)} if withdrawn else {}
    queue = [*corrections]
    while queue:
        correction = queue.pop()
        if correction.span is not None:
            touched[correction.span.recording] = None
        if isinstance(correction.change, Withdraw) and correction.change.of in everything:
            queue.append(everything[correction.change.of])
    return tuple(touched)


def _undoable(store: Store) -> tuple[Correction, ...]:
    """What the breeder did and still holds, oldest first."""
    return tuple(
        one for one in live(all_corrections(store)) if not isinstance(one.change, Withdraw)
    )


def undo(store: Store) -> Correction | None:
    """Withdraw the last event that still holds; returns it, or None if there is none."""
    standing = _undoable(store)
    if not standing:
        return None
    correct(store, Withdraw(of=standing[-1].id))
    return standing[-1]


def redo(store: Store) -> Correction | None:
    """Bring back what the last undo withdrew, if nothing else was done since."""
    everything = all_corrections(store)
    standing = {one.id for one in live(everything)}
    by_id = {one.id: one for one in everything}
    for last in reversed(everything):
        if not isinstance(last.change, Withdraw):
            return None
        undone = by_id.get(last.change.of)
        if undone is None or isinstance(undone.change, Withdraw) or last.id not in standing:
            continue  # a redo, or an undo that was redone
        correct(store, Withdraw(of=last.id))
        return undone
    return None


def withdraw(store: Store, correction_id: str) -> Correction:
    """Withdraw one event by its id. Raises NotFound."""
    if not has_correction(store, correction_id):
        raise NotFound(f"No correction {correction_id!r}. `diary corrections list` shows them.")
    return correct(store, Withdraw(of=correction_id))


def journal(store: Store) -> tuple[JournalEntry, ...]:
    """Every event, oldest first, with what became of it."""
    everything = all_corrections(store)
    standing = {one.id for one in live(everything)}
    states = dict(store.db.execute("SELECT correction, state FROM placements").fetchall())
    return tuple(
        JournalEntry(correction=one, state=_state(one, one.id in standing, states.get(one.id)))
        for one in everything
    )


def _state(correction: Correction, stands: bool, placed: str | None) -> str:
    if not stands:
        return "withdrawn"
    if correction.span is None or isinstance(correction.change, PLACELESS):
        return "applied"
    # no placement: its recording is not in this diary (yet)
    return placed or "unplaced"


def unplaced(store: Store) -> tuple[Correction, ...]:
    """Live events that fit nowhere any more: shown for review, never dropped."""
    return tuple(entry.correction for entry in journal(store) if entry.state == "unplaced")


def export_lines(store: Store) -> Iterator[str]:
    """The whole journal as JSON, one event a line."""
    for correction in all_corrections(store):
        yield to_line(correction)


def import_lines(store: Store, lines: Iterable[str]) -> Imported:
    """Take in a journal; an event already here is left alone. Raises UsageError with the line.

    All or nothing: a file with a mistake in it changes nothing.
    """
    events: list[Correction] = []
    for number, line in enumerate(lines, start=1):
        if not line.strip():
            continue
        try:
            events.append(from_line(line))
        except (ValueError, TypeError, json.JSONDecodeError) as error:
            raise UsageError(f"line {number} of the corrections: {error}") from error
    with store.db.atomic():
        new = [event for event in events if not has_correction(store, event.id)]
        for event in {event.id: event for event in new}.values():
            append(store, event)
        refresh(store, _touched(store, new))
    fresh = len({event.id for event in new})
    return Imported(new=fresh, known=len(events) - fresh)
