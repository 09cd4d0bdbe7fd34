"""Progeny of crosses and parents, wanted traits, and pairs not crossed yet."""

import pytest
from scipy.stats import binomtest

from diary.errors import UsageError
from diary.insight.combinations import untested, unused
from diary.insight.overview import Overview
from diary.insight.progeny import crosses_with, parents, progeny
from diary.insight.wanted import has, wanted
from diary.records.register import Cross, NamedPlant, Seedling

from .say import belief, season, shown


@pytest.fixture
def bench() -> Overview:
    """Cross 17 (four seedlings), 17.3 selfed (two), a cross not in flower, and a stray."""

    def entry(number: str, seed: str, pollen: str, cross: str | None = None) -> Seedling:
        return Seedling(number=number, seed_parent=seed, pollen_parent=pollen, cross=cross)

    return season(
        shown(
            "17.3",
            "colour bloom violet deep",
            "colour throat yellow",
            "bloom_diameter - 60",
            "decision - keep",
        ),
        shown("17.8", "colour bloom lilac", "decision - discard", "colour throat white"),
        shown("17.13", "colour bloom lilac", "bloom_diameter - 40", "bloom_form - frilled"),
        shown("22.4", "colour bloom white", "bloom_form - frilled", "decision - breed"),
        shown("22.6", "colour throat yellow", "count_seeds_sown - 30", "count_germinated - 12"),
        seedlings=(
            entry("17.3", "Lady Wexcombe", "Inkwell Lane", "17"),
            entry("17.8", "Lady Wexcombe", "Inkwell Lane"),
            entry("17.13", "Lady Wexcombe", "Inkwell Lane"),
            entry("17.30", "Lady Wexcombe", "Inkwell Lane"),
            entry("22.4", "17.3", "17.3"),
            entry("22.6", "17.3", "17.3"),
            entry("31.1", "Inkwell Lane", "Open Ledger"),
        ),
        crosses=(
            Cross(
                code="17",
                seed_parent="Lady Wexcombe",
                pollen_parent="Inkwell Lane",
                seeds_sown=60,
                germinated=41,
            ),
        ),
        named=(NamedPlant(name="Inkwell Lane", synonyms=("Inky",)),),
    )


def test_a_cross_is_counted(bench: Overview) -> None:
    cross = progeny(bench)[0]
    assert (cross.code, cross.formula) == ("17", "'Lady Wexcombe' \u00d7 'Inkwell Lane'")
    assert [one.key for one in cross.plants] == ["17.13", "17.3", "17.30", "17.8"]
    assert (cross.sown, cross.germinated) == (60, 41)
    assert (cross.flowered.count, cross.flowered.total) == (3, 4)
    assert (cross.kept.count, cross.discarded.count) == (1, 1)
    # the reference library on the same counts
    theirs = binomtest(41, 60).proportion_ci(0.95, method="wilson")
    assert cross.germination is not None
    assert (cross.germination.low, cross.germination.high) == pytest.approx(
        (theirs.low, theirs.high)
    )


def test_the_spread_counts_only_those_described(bench: Overview) -> None:
    cross = progeny(bench)[0]
    spread = {(one.trait, one.part): one for one in cross.spreads}
    bloom = spread["colour", "bloom"]
    assert bloom.described == 3
    assert [(value.value, value.share.count) for value in bloom.values] == [
        ("lilac", 2),
        ("violet", 1),
    ]
    assert [one.key for one in bloom.values[0].plants] == ["17.13", "17.8"]
    assert spread["bloom_form", None].described == 1
    (size,) = cross.sizes
    assert (size.trait, size.measured, size.least, size.middle, size.most) == (
        "bloom_diameter",
        2,
        40,
        50,
        60,
    )


def test_counts_said_on_the_bench_stand_in_for_the_register(bench: Overview) -> None:
    selfed = next(cross for cross in progeny(bench) if cross.seed_parent == "17.3")
    assert selfed.formula == "17.3 selfed"
    assert (selfed.code, selfed.sown, selfed.germinated) == (None, 30, 12)


def test_what_a_parents_children_show(bench: Overview) -> None:
    by_name = {parent.parent: parent for parent in parents(bench)}
    inkwell = by_name["Inkwell Lane"]
    assert (inkwell.as_seed_parent, inkwell.as_pollen_parent) == (1, 4)
    assert inkwell.partners == ("Lady Wexcombe", "Open Ledger")
    selfer = by_name["17.3"]
    assert (selfer.as_seed_parent, selfer.as_pollen_parent, selfer.kept.total) == (2, 2, 2)


def test_a_synonym_is_the_same_parent() -> None:
    found = season(
        seedlings=(
            Seedling(number="1", seed_parent="Inky", pollen_parent="Open Ledger"),
            Seedling(number="2", seed_parent="Inkwell Lane", pollen_parent="Open Ledger"),
        ),
        named=(NamedPlant(name="Inkwell Lane", synonyms=("Inky",)),),
    )
    assert [len(cross.plants) for cross in progeny(found)] == [2]


def test_a_named_seedling_is_one_plant_as_a_parent() -> None:
    found = season(
        seedlings=(
            Seedling(number="9", name="Quill Harbour", seed_parent="A Lad", pollen_parent="B Lad"),
            Seedling(number="10", seed_parent="Quill Harbour", pollen_parent="A Lad"),
        ),
    )
    assert found.pedigree().of("10").seed_parent == "9"
    assert {parent.parent for parent in parents(found)} == {"9", "A Lad", "B Lad"}


def test_which_crosses_gave_a_wanted_trait(bench: Overview) -> None:
    found = crosses_with(bench, wanted("yellow throat"))
    assert [(one.progeny.formula, one.share.count, one.share.total) for one in found] == [
        ("17.3 selfed", 1, 1),
        ("'Lady Wexcombe' \u00d7 'Inkwell Lane'", 1, 2),
    ]
    assert [one.key for one in found[1].plants] == ["17.3"]


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("white throat", True),
        ("a yellow throat", False),
        ("white", True),
        ("dark wine upper petals", True),
        ("pale wine upper petals", False),
        ("blotch", True),
        ("veins", False),
        ("compact", True),
        ("leggy", False),
        ("frilled", None),
        ("bloom over 50 mm", True),
        ("bloom under 2 inches", False),
        ("height over 10 cm", None),
        ("scented", None),
    ],
)
def test_has_what_is_wanted(text: str, answer: bool | None) -> None:
    plant = (
        belief("colour", "white", "throat"),
        belief("colour", "wine", "upper petals", "dark"),
        belief("colour", "maroon", "blotch"),
        belief("habit", "compact"),
        belief("bloom_diameter", 55.0),
    )
    assert has(plant, wanted(text)) is answer


@pytest.mark.parametrize("text", ["sparkly", "over 50 mm"])
def test_what_cannot_be_understood_is_said(text: str) -> None:
    with pytest.raises(UsageError, match=r"Say it like|size of what"):
        wanted(text)


def test_crosses_without_a_flower_are_untested(bench: Overview) -> None:
    assert [cross.formula for cross in untested(bench)] == ["'Inkwell Lane' \u00d7 'Open Ledger'"]


def test_pairs_not_crossed_yet(bench: Overview) -> None:
    pairs = {frozenset((one.first, one.second)): one for one in unused(bench)}
    assert frozenset(("Lady Wexcombe", "Inkwell Lane")) not in pairs
    assert frozenset(("Lady Wexcombe", "Open Ledger")) in pairs
    # 17.3 with its own parent: F = 1/4 (Falconer and Mackay 1996, ch. 5, from memory)
    assert pairs[frozenset(("17.3", "Inkwell Lane"))].inbreeding == pytest.approx(0.25)
    assert "17.8" not in {one for pair in pairs for one in pair}


def test_pairs_that_bring_a_wanted_trait(bench: Overview) -> None:
    found = unused(bench, wanted("frilled"))
    assert found
    assert all(one.reasons for one in found)
    reasons = {reason for one in found for reason in one.reasons}
    assert "22.4: has frilled" in reasons


def test_a_coloured_marking_counts_as_a_marking() -> None:
    found = season(
        shown("1", "colour blotch maroon", "seed_parent - Tansy", "pollen_parent - Lad"),
        shown("2", "marking - veins", "seed_parent - Tansy", "pollen_parent - Lad"),
        # its colours were described and no marking was named: it counts as having none
        shown("3", "colour bloom white", "seed_parent - Tansy", "pollen_parent - Lad"),
        shown("4", "colour leaf green", "seed_parent - Tansy", "pollen_parent - Lad"),
    )
    (cross,) = progeny(found)
    spread = next(one for one in cross.spreads if one.trait == "marking")
    assert spread.described == 3
    assert [(one.value, one.share.count, one.share.total) for one in spread.values] == [
        ("blotch", 1, 3),
        ("veins", 1, 3),
    ]
