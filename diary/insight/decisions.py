"""What the breeder has decided about a plant, from everything said over time. Pure.

Two kinds. A *fate* (keep, discard, watch) replaces the one before. A *task* (take cuttings,
breed, show, name, repot) stands beside it until the plant is discarded later on.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from diary.records.record import Moment, Record
from diary.records.register import Seedling

FATES = ("keep", "discard", "watch")
TASKS = ("propagate", "breed", "show", "name", "repot")
# how a register's status may be written
_STATUS = {"kept": "keep", "keeper": "keep", "discarded": "discard", "binned": "discard"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """One decision that stands: what, when, and the moment it was said (None: the register)."""

    value: str
    day: date | None
    moment: Moment | None
    hedged: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Decisions:
    """The fate of a plant, if any was decided, and the tasks that stand, oldest first."""

    fate: Decision | None
    tasks: tuple[Decision, ...]

    def task(self, value: str) -> Decision | None:
        """The standing task of this kind, or None."""
        return next((task for task in self.tasks if task.value == value), None)


def decided(records: Iterable[Record], seedling: Seedling | None = None) -> Decisions:
    """Fold the decisions of one plant's records, and its register entry's history.

    Of two on one day and in two recordings the register's comes last: it was written by hand.
    """
    said = [
        (record.moment.day or date.min, 0, record.moment.start_ms, _of(record))
        for record in records
        if record.trait == "decision" and not record.negated
    ]
    if seedling is not None:
        for change in seedling.history:
            value = _STATUS.get(change.status.casefold(), change.status.casefold())
            if value in FATES:
                decision = Decision(value=value, day=change.day, moment=None)
                said.append((change.day or date.min, 1, 0, decision))
    said.sort(key=lambda entry: entry[:3])
    fate: Decision | None = None
    tasks: dict[str, Decision] = {}
    for *_, decision in said:
        if decision.value in FATES:
            fate = decision
            if decision.value == "discard":
                tasks.clear()
        elif decision.value in TASKS:
            tasks.pop(decision.value, None)
            tasks[decision.value] = decision
    return Decisions(fate=fate, tasks=tuple(tasks.values()))


def _of(record: Record) -> Decision:
    return Decision(
        value=str(record.value),
        day=record.moment.day,
        moment=record.moment,
        hedged=record.hedged,
    )
