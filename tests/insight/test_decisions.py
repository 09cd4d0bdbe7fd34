"""What stands of several decisions: the last fate, and the tasks not done or dropped since."""

from datetime import date

from diary.insight.decisions import decided
from diary.records.register import Seedling, StatusChange

from .say import season, shown


def test_a_task_does_not_push_out_the_fate() -> None:
    # "So of those two D is the keeper, and I'll take some cuttings this week."
    found = season(shown("24-11D", "decision - keep", "decision - propagate"))
    decisions = found.decisions["24-11D"]
    assert decisions.fate is not None
    assert decisions.fate.value == "keep"
    assert [task.value for task in decisions.tasks] == ["propagate"]


def test_a_later_discard_ends_every_task() -> None:
    found = season(
        shown("24-11C", "decision - show", "decision - watch"),
        shown("24-11C", "decision - discard", said="C is for the compost"),
    )
    decisions = found.decisions["24-11C"]
    assert decisions.fate is not None
    assert (decisions.fate.value, decisions.tasks) == ("discard", ())
    assert decisions.fate.moment is not None
    assert decisions.fate.moment.text == "C is for the compost"


def test_off_the_heap_again() -> None:
    found = season(shown("H4", "decision - discard"), shown("H4", "decision - keep"))
    fate = found.decisions["H4"].fate
    assert fate is not None
    assert fate.value == "keep"


def test_the_register_counts_by_its_day() -> None:
    said = season(shown("7", "decision - keep", day=date(2031, 5, 18))).records["7"]

    def entry(day: date) -> Seedling:
        change = StatusChange(status="Discarded", day=day, reason="rot")
        return Seedling(number="7", history=(change,))

    before, after = decided(said, entry(date(2031, 5, 1))), decided(said, entry(date(2031, 6, 1)))
    assert before.fate is not None
    assert after.fate is not None
    assert (before.fate.value, after.fate.value) == ("keep", "discard")
    assert after.fate.moment is None
