"""How plants and crosses are written."""

import pytest

from diary.insight.names import formula, is_number, purdy, written
from diary.insight.pedigree import Parentage, build_pedigree


@pytest.mark.parametrize(
    "number", ["23-04", "R23/104", "S204", "2311", "22-14A", "24/6/3", "K12", "17.3"]
)
def test_numbers_take_no_quotes(number: str) -> None:
    assert is_number(number)
    assert written(number) == number


@pytest.mark.parametrize("name", ["Fenmarsh Lad", "Tilda's Waistcoat", "Été Mauve"])
def test_names_stand_in_single_quotes(name: str) -> None:
    # ICNCP 9th ed. (2016) Art. 14 (article number from memory)
    assert written(name) == f"'{name}'"
    assert written(written(name)) == f"'{name}'"


def test_formula_puts_the_seed_parent_first() -> None:
    # ICN (Shenzhen 2018) Art. H.2.1 and Rec. H.2A.1: multiplication sign, female first
    assert formula("Fenmarsh Lad", "21-06A") == "'Fenmarsh Lad' \u00d7 21-06A"
    assert formula("Fenmarsh Lad", None) == "'Fenmarsh Lad' \u00d7 unknown"
    assert formula("17.3", "17.3") == "17.3 selfed"
    assert formula(None, None) == "parents unknown"


def test_purdy_notation() -> None:
    # Purdy et al., Crop Science 8 (1968) 405-406: A/B//C is (A x B) as female to C
    family = build_pedigree(
        [
            Parentage(plant="1", seed_parent="A", pollen_parent="B"),
            Parentage(plant="2", seed_parent="1", pollen_parent="C"),
            Parentage(plant="3", seed_parent="D", pollen_parent="2"),
            Parentage(plant="4", seed_parent="A"),
        ]
    )
    assert purdy(family, "1") == "A/B"
    assert purdy(family, "2") == "A/B//C"
    assert purdy(family, "3") == "D/3/A/B//C"
    assert purdy(family, "4") == "A/UNKNOWN"
    assert purdy(family, "A") == "A"
