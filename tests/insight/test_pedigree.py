"""Pedigrees: textbook coefficients, Wright's path formula through networkx, rings refused."""

from itertools import product

import networkx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from diary.errors import UsageError
from diary.insight.pedigree import (
    Parentage,
    Pedigree,
    ancestors,
    build_pedigree,
    coancestry,
    family_tree,
    graph_of,
    inbreeding,
)


def pedigree(*rows: str) -> Pedigree:
    """Rows such as "child seed pollen"; "-" is unknown."""
    parts = [row.split() for row in rows]
    return build_pedigree(
        Parentage(
            plant=child,
            seed_parent=None if seed == "-" else seed,
            pollen_parent=None if pollen == "-" else pollen,
        )
        for child, seed, pollen in parts
    )


@pytest.mark.parametrize(
    ("rows", "expected"),
    # D. S. Falconer and T. F. C. Mackay, Introduction to Quantitative Genetics, 4th ed. 1996,
    # ch. 5 (from memory); S. Wright, American Naturalist 56 (1922) 330-338
    [
        (["X A B"], 0),  # unrelated parents
        (["X A A"], 1 / 2),  # selfed
        (["C A B", "X A C"], 1 / 4),  # parent and offspring
        (["C A B", "D A B", "X C D"], 1 / 4),  # full sibs
        (["C A B", "D A E", "X C D"], 1 / 8),  # half sibs
        (["C A B", "D A B", "E C F", "X E D"], 1 / 8),  # uncle and niece
        (["C A B", "D A B", "E C F", "G D H", "X E G"], 1 / 16),  # first cousins
        (["C A B", "D A B", "E F G", "H F G", "I C E", "J D H", "X I J"], 1 / 8),  # double cousins
        (["C A -", "X C A"], 1 / 4),  # an unknown pollen parent adds nothing
        (["X A -"], 0),
    ],
)
def test_textbook_coefficients(rows: list[str], expected: float) -> None:
    assert inbreeding(pedigree(*rows), "X") == pytest.approx(expected)


def test_repeated_selfing_and_full_sib_mating() -> None:
    # Falconer and Mackay 1996, table 5.1 (from memory): selfing, full-sib mating
    selfed = pedigree("S1 S0 S0", "S2 S1 S1", "S3 S2 S2", "S4 S3 S3", "S5 S4 S4")
    series = [inbreeding(selfed, f"S{n}") for n in range(1, 6)]
    assert [round(value, 3) for value in series] == [0.5, 0.75, 0.875, 0.938, 0.969]
    rows, before = [], ("A", "B")
    for generation in range(1, 8):
        now = (f"P{generation}", f"Q{generation}")
        rows += [f"{name} {before[0]} {before[1]}" for name in now]
        before = now
    sibs = pedigree(*rows)
    series = [inbreeding(sibs, f"P{n}") for n in range(1, 8)]
    assert [round(value, 3) for value in series] == [0, 0.25, 0.375, 0.5, 0.594, 0.672, 0.734]


def _by_paths(family: Pedigree, plant: str) -> float:
    """Wright's F by the path formula: sum over paths of (1/2)^n (1 + F of the ancestor)."""
    entry = family.of(plant)
    if entry.seed_parent is None or entry.pollen_parent is None:
        return 0.0
    graph = graph_of(family)
    total = 0.0
    for ancestor in graph.nodes:
        left = _downward(graph, ancestor, entry.seed_parent)
        right = _downward(graph, ancestor, entry.pollen_parent)
        for one, other in product(left, right):
            if set(one) & set(other) == {ancestor}:
                length = len(one) + len(other) - 1
                total += 0.5**length * (1 + _by_paths(family, ancestor))
    return total


def _downward(graph: "networkx.DiGraph[str]", top: str, bottom: str) -> list[list[str]]:
    if top == bottom:
        return [[top]]
    return list(networkx.all_simple_paths(graph, top, bottom))


@st.composite
def families(draw: st.DrawFn) -> Pedigree:
    """Up to nine plants, each with two different earlier ones as parents, or none."""
    rows = []
    for index in range(2, draw(st.integers(3, 9))):
        parents = draw(
            st.none() | st.lists(st.integers(0, index - 1), min_size=2, max_size=2, unique=True)
        )
        seed, pollen = (None, None) if parents is None else (f"p{parents[0]}", f"p{parents[1]}")
        rows.append(Parentage(plant=f"p{index}", seed_parent=seed, pollen_parent=pollen))
    return build_pedigree(rows)


@given(families())
def test_agrees_with_the_path_formula_through_networkx(family: Pedigree) -> None:
    for plant in family.entries:
        assert inbreeding(family, plant) == pytest.approx(_by_paths(family, plant))


def test_a_hundred_generations_and_more() -> None:
    long = pedigree(*(f"g{n + 1} g{n} g{n}" for n in range(1500)))
    assert inbreeding(long, "g1500") == pytest.approx(1.0)
    assert ancestors(long, "g1500")["g0"] == 1500


def test_a_sport_is_its_mother_as_far_as_descent_goes() -> None:
    family = build_pedigree(
        [
            Parentage(plant="S", sport_of="A"),
            Parentage(plant="X", seed_parent="S", pollen_parent="A"),
        ]
    )
    assert inbreeding(family, "X") == pytest.approx(0.5)
    assert coancestry(family, "S", "A") == pytest.approx(0.5)


def test_family_tree_stops_at_the_depth_and_marks_what_was_seen() -> None:
    family = pedigree("F C D", "C A B", "D A E")
    tree = family_tree(family, "F")
    assert [(node.plant, node.role) for node in tree.parents] == [
        ("C", "seed parent"),
        ("D", "pollen parent"),
    ]
    assert [node.plant for node in tree.parents[1].parents] == ["A", "E"]
    assert family_tree(family, "F", depth=1).parents[0].parents == ()
    assert family.children("A") == ("C", "D")
    selfed = family_tree(pedigree("X C C", "C A B"), "X")
    assert [node.seen_above for node in selfed.parents] == [False, True]


def test_a_ring_is_refused_and_named() -> None:
    with pytest.raises(UsageError, match=r"own ancestor: .*->"):
        pedigree("A B C", "B A D")


def test_the_first_that_knows_a_parent_wins_and_gaps_are_filled() -> None:
    family = build_pedigree(
        [
            Parentage(plant="X", seed_parent="A"),
            Parentage(plant="X", seed_parent="Z", pollen_parent="B"),
        ]
    )
    assert family.of("X") == Parentage(plant="X", seed_parent="A", pollen_parent="B")
