"""What is believed now, and why: latest, corrected, median; and what speaks against it."""

from datetime import date
from statistics import median

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diary.linking.document import Band, PlantKind, Value
from diary.records.beliefs import Belief, Why, believe
from diary.records.record import Heard, Moment, Origin, PlantRef, Record
from tests.records.making import JUNE_2, JUNE_20, RECORDING

PLANT = PlantRef(kind=PlantKind.SEEDLING, key="23-04", title="23-04")
JULY = date(2031, 7, 1)


def said(
    trait: str,
    value: Value,
    day: date | None = JUNE_2,
    at_ms: int = 0,
    *,
    part: str | None = None,
    heard: Value | None = None,
    origin: Origin = Origin.HEARD,
    band: Band = Band.SURE,
    negated: bool = False,
) -> Record:
    unit = None if isinstance(value, str) else "mm"
    if heard is not None:
        origin = Origin.CORRECTED
    return Record(
        plant=PLANT,
        moment=Moment(recording=RECORDING, start_ms=at_ms, end_ms=at_ms + 1000, day=day, text=""),
        trait=trait,
        value=value,
        part=part,
        unit=unit,
        band=band,
        origin=origin,
        negated=negated,
        heard=None
        if heard is None
        else Heard(trait=trait, value=heard, part=part, unit=unit, modifiers=()),
    )


def one(*records: Record) -> Belief:
    (belief,) = believe(records)
    return belief


def values(*records: Record) -> list[Value]:
    return [belief.value for belief in believe(records)]


def test_several_measurements_give_their_median() -> None:
    belief = one(
        said("bloom_diameter", 43),
        said("bloom_diameter", 45, JUNE_20),
        said("bloom_diameter", 52, JULY),
    )
    assert (belief.value, belief.why) == (45, Why.MEDIAN)
    assert belief.because == "the median of 3 measurements (43, 45, 52 mm)"
    assert [moment.day for moment in belief.sources] == [JULY, JUNE_20, JUNE_2]
    assert belief.conflict is None


@given(st.lists(st.integers(20, 90), min_size=2, max_size=9, unique=True))
def test_the_median_is_the_statisticians(sizes: list[int]) -> None:
    # reference: the standard library's statistics.median
    belief = one(*(said("bloom_diameter", size, at_ms=n) for n, size in enumerate(sizes)))
    assert belief.value == pytest.approx(median(sizes))


def test_two_sizes_far_apart_are_a_conflict() -> None:
    belief = one(said("bloom_diameter", 45), said("bloom_diameter", 80, JUNE_20))
    assert belief.conflict == "45 mm on 2 June 2031, 80 mm on 20 June 2031"
    assert [moment.day for moment in belief.against] == [JUNE_20, JUNE_2]


def test_inches_taken_for_centimetres_are_noticed() -> None:
    # 25.4 mm to the inch: "three" as inches is 76 mm, as centimetres 30
    belief = one(said("bloom_diameter", 30), said("bloom_diameter", 76, JUNE_20))
    assert belief.conflict is not None
    assert "inches taken for centimetres" in belief.conflict


def test_a_plant_grows_so_its_latest_height_holds() -> None:
    belief = one(said("plant_height", 200, JUNE_20), said("plant_height", 120))
    assert (belief.value, belief.why, belief.conflict) == (200, Why.LATEST, None)


def test_the_breeders_word_outvotes_what_was_heard_before() -> None:
    belief = one(said("bloom_diameter", 80), said("bloom_diameter", 45, at_ms=5000, heard=115))
    assert (belief.value, belief.why) == (45, Why.CORRECTED)
    assert belief.because == "your correction (heard: 115 mm)"
    assert one(said("decision", "keep", origin=Origin.ADDED)).because == "you added it"


def test_what_is_heard_on_a_later_day_counts_again() -> None:
    belief = one(said("decision", "keep", heard="discard"), said("decision", "discard", JUNE_20))
    assert (belief.value, belief.why) == ("discard", Why.LATEST)


def test_a_changed_decision_is_no_conflict_but_a_changed_parent_is() -> None:
    assert one(said("decision", "watch"), said("decision", "keep", JUNE_20)).conflict is None
    parent = one(said("seed_parent", "A Lad"), said("seed_parent", "B Lass", JUNE_20))
    assert parent.conflict == "A Lad on 2 June 2031, B Lass on 20 June 2031"


def test_two_colours_of_one_day_hold_together() -> None:
    together = [said("colour", "white", part="bloom"), said("colour", "pink", part="bloom")]
    assert values(*together) == ["white", "pink"]
    later = believe([*together, said("colour", "red", JUNE_20, part="bloom")])
    assert [belief.value for belief in later] == ["red"]
    assert later[0].conflict == "pink on 2 June 2031, red on 20 June 2031"


def test_habits_add_up_but_opposites_give_way() -> None:
    assert values(said("habit", "bushy"), said("habit", "compact", JUNE_20)) == [
        "bushy",
        "compact",
    ]
    leggy = believe([said("habit", "compact"), said("habit", "leggy", JUNE_20)])
    assert [(belief.value, belief.conflict) for belief in leggy] == [
        ("leggy", "compact on 2 June 2031, leggy on 20 June 2031")
    ]


def test_health_is_that_of_the_last_look() -> None:
    assert values(said("health", "rust"), said("health", "clean", JUNE_20)) == ["clean"]


def test_saying_it_again_agrees() -> None:
    belief = one(said("habit", "bushy", band=Band.LIKELY), said("habit", "bushy", JUNE_20))
    assert (belief.why, belief.band) == (Why.AGREED, Band.SURE)
    assert belief.because == "said 2 times, last on 20 June 2031"


def test_what_is_denied_is_not_believed() -> None:
    assert values(said("marking", "eye", negated=True)) == []


def test_a_day_not_known_comes_first() -> None:
    assert one(said("decision", "keep", None), said("decision", "discard")).value == "discard"
