"""What is believed now of a plant, from everything said of it over time, and why. Pure."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from enum import Enum
from statistics import median

from diary.linking.document import Band, Value
from diary.records.record import Moment, Origin, Record
from diary.records.wording import value_words

# Sizes that stay as they are once grown: several measurements give their median.
SETTLED = frozenset({"bloom_diameter", "head_diameter", "stem_length", "leaf_width"})
# Sizes and numbers that change with the season: the latest holds.
CHANGING = frozenset({"plant_height", "plant_spread"})
# One value at a time; a different one before is worth a look.
SINGLE = frozenset(
    {"bloom_size", "scent", "seed_parent", "pollen_parent", "pollination", "sport_of"}
)
# One value at a time that is meant to change: a different one before is no conflict.
COURSE = "decision"
COUNT = "count_"
# Values of the last day on which the trait (of that part) was spoken of.
DAY = frozenset({"colour", "health"})
# Of these the later one holds; everything else of the trait may hold at once (our judgement).
OPPOSITES: dict[str, tuple[frozenset[str], ...]] = {
    "bloom_form": (
        frozenset({"single", "semi-double", "double"}),
        frozenset({"flat", "reflexed", "trumpet"}),
    ),
    "habit": (
        frozenset({"compact", "leggy", "spreading", "open"}),
        frozenset({"upright", "trailing"}),
        frozenset({"dwarf", "vigorous"}),
        frozenset({"weak", "vigorous"}),
    ),
    "foliage": (frozenset({"dark", "pale"}), frozenset({"small", "large"})),
    "flowering": (frozenset({"early", "late"}), frozenset({"free", "shy"})),
}
# Two measurements of one thing further apart than this are a conflict (our judgement: a
# size told by eye on a bench is seldom better than a sixth either way).
APART = 1.3
_BEST = tuple(Band)  # sure, likely, unsure
INCH_IN_CM = 2.54
INCH_SLACK = 0.1  # a ratio this near to 2.54 looks like inches taken for centimetres


class Why(Enum):
    """Which rule chose the value."""

    ONLY = "only"  # said once
    AGREED = "agreed"  # said more than once, always the same
    LATEST = "latest"  # the last thing said
    MEDIAN = "median"  # the median of several measurements
    CORRECTED = "corrected"  # the breeder's word


@dataclass(frozen=True, slots=True, kw_only=True)
class Belief:
    """One value held of a plant. Traits with several values at once give several beliefs.

    `because` is a sentence for the screen. `sources` are the moments it rests on, latest
    first. `conflict` says what speaks against it ("45 mm on 2 June, 80 mm on 3 June"), or
    None; `against` are the moments of that.
    """

    trait: str
    value: Value
    part: str | None
    unit: str | None
    modifiers: tuple[str, ...]
    band: Band
    why: Why
    because: str
    day: date | None
    sources: tuple[Moment, ...]
    conflict: str | None = None
    against: tuple[Moment, ...] = ()


def believe(records: Iterable[Record]) -> tuple[Belief, ...]:
    """Fold the records of one plant, in any order, into what is believed now.

    Where a trait has one value, the breeder's own word outvotes what was heard up to its
    day; what is heard on a later day counts again.
    """
    by_trait: dict[tuple[str, str], list[Record]] = {}
    for record in records:
        if not record.negated:
            by_trait.setdefault((record.trait, record.part or ""), []).append(record)
    beliefs: list[Belief] = []
    for (trait, _), said in sorted(by_trait.items()):
        said.sort(key=_when)
        if trait in SETTLED or trait in CHANGING:
            beliefs.append(_measured(trait, _standing(said)))
        elif trait in SINGLE or trait == COURSE or trait.startswith(COUNT):
            beliefs.append(_latest(_standing(said), wary=trait in SINGLE))
        elif trait in DAY:
            beliefs.extend(_of_the_day(said, wary=trait == "colour"))
        else:
            beliefs.extend(_together(trait, said))
    return tuple(beliefs)


def _when(record: Record) -> tuple[date, int]:
    return (record.moment.day or date.min, record.moment.start_ms)


def _by_hand(record: Record) -> bool:
    return record.origin is not Origin.HEARD


def _standing(said: list[Record]) -> list[Record]:
    """What is left once the breeder's own word has set aside what was heard before it."""
    own_days = [_when(record)[0] for record in said if _by_hand(record)]
    if not own_days:
        return said
    return [r for r in said if _by_hand(r) or _when(r)[0] > max(own_days)]


def _measured(trait: str, said: list[Record]) -> Belief:
    numbers = [float(record.value) for record in said if not isinstance(record.value, str)]
    if len(numbers) < len(said) or trait in CHANGING or len(said) == 1 or len(set(numbers)) == 1:
        belief = _latest(said, wary=False)
    else:
        middle = median(numbers)
        value = int(middle) if middle == int(middle) else middle
        listed = ", ".join(value_words(number) for number in numbers)
        belief = _belief(
            said,
            said[-1],
            why=Why.MEDIAN,
            because=f"the median of {len(said)} measurements ({listed} {said[-1].unit or 'mm'})",
            value=value,
        )
    if trait in SETTLED and numbers and min(numbers) > 0 and max(numbers) > APART * min(numbers):
        return _doubted(belief, said, numbers)
    return belief


def _doubted(belief: Belief, said: list[Record], numbers: list[float]) -> Belief:
    low = said[numbers.index(min(numbers))]
    high = said[numbers.index(max(numbers))]
    conflict = f"{_said(low)}, {_said(high)}"
    if abs(max(numbers) / min(numbers) / INCH_IN_CM - 1) <= INCH_SLACK:
        conflict += "; one may be inches taken for centimetres"
    return _with_conflict(belief, conflict, [low, high])


def _latest(said: list[Record], *, wary: bool) -> Belief:
    last = said[-1]
    agreeing = [record for record in said if record.value == last.value]
    others = [record for record in said if record.value != last.value]
    if others and not _by_hand(last):
        why, because = Why.LATEST, f"the latest of {len(said)}, {_on(last)}"
    else:
        why, because = _reason(agreeing)
    belief = _belief(agreeing, last, why=why, because=because)
    if wary and others:
        return _with_conflict(belief, f"{_said(others[-1])}, {_said(last)}", others)
    return belief


def _of_the_day(said: list[Record], *, wary: bool) -> list[Belief]:
    """Every value of the last day holds; what was said before and not again does not."""
    last_day = _when(said[-1])[0]
    values = dict.fromkeys(record.value for record in said if _when(record)[0] == last_day)
    gone = [record for record in said if record.value not in values]
    beliefs = [_one_value(said, value) for value in values]
    if wary and gone:
        told = f"{_said(gone[-1])}, {_said(said[-1])}"
        return [_with_conflict(belief, told, gone) for belief in beliefs]
    return beliefs


def _together(trait: str, said: list[Record]) -> list[Belief]:
    """Every value ever said holds, but for the earlier of two that exclude each other."""
    beliefs = []
    for value in dict.fromkeys(record.value for record in said):
        rivals = {
            other for group in OPPOSITES.get(trait, ()) if value in group for other in group
        } - {value}
        latest = [record for record in said if record.value == value][-1]
        against = [record for record in said if record.value in rivals]
        if any(_when(record) > _when(latest) for record in against):
            continue
        belief = _one_value(said, value)
        if against:
            belief = _with_conflict(belief, f"{_said(against[-1])}, {_said(latest)}", against)
        beliefs.append(belief)
    return beliefs


def _one_value(said: list[Record], value: Value) -> Belief:
    agreeing = [record for record in said if record.value == value]
    why, because = _reason(agreeing)
    return _belief(agreeing, agreeing[-1], why=why, because=because)


def _reason(agreeing: list[Record]) -> tuple[Why, str]:
    last = agreeing[-1]
    if any(_by_hand(record) for record in agreeing):
        own = [record for record in agreeing if _by_hand(record)][-1]
        if own.heard is not None and own.heard.value != own.value:
            heard = value_words(own.heard.value, own.heard.unit, own.heard.modifiers)
            return Why.CORRECTED, f"your correction (heard: {heard})"
        added = own.origin is Origin.ADDED
        return Why.CORRECTED, "you added it" if added else "you checked it"
    if len(agreeing) > 1:
        return Why.AGREED, f"said {len(agreeing)} times, last {_on(last)}"
    return Why.ONLY, f"said once, {_on(last)}"


def _belief(
    agreeing: Sequence[Record],
    last: Record,
    *,
    why: Why,
    because: str,
    value: Value | None = None,
) -> Belief:
    bands = {record.band for record in agreeing}
    return Belief(
        trait=last.trait,
        value=last.value if value is None else value,
        part=last.part,
        unit=last.unit,
        modifiers=last.modifiers,
        band=min(bands, key=_BEST.index),
        why=why,
        because=because,
        day=last.moment.day,
        sources=tuple(record.moment for record in reversed(agreeing)),
    )


def _with_conflict(belief: Belief, conflict: str, against: Sequence[Record]) -> Belief:
    return replace(
        belief, conflict=conflict, against=tuple(record.moment for record in reversed(against))
    )


def _said(record: Record) -> str:
    return f"{value_words(record.value, record.unit, record.modifiers)} {_on(record)}"


def _on(record: Record) -> str:
    day = record.moment.day
    return f"on {day.day} {day:%B} {day.year}" if day else "on a day not known"
