"""How crosses and names are said and written, against the codes of nomenclature.

Seed parent first with the multiplication sign: International Code of Nomenclature for algae,
fungi, and plants (Shenzhen Code, 2018), Art. H.2.1 and Rec. H.2A.1 ("the female first").
Names of cultivars in single quotation marks: International Code of Nomenclature for Cultivated
Plants, 9th ed. (2016), Art. 14 (number from memory). Purdy notation, female first: Purdy and
others, Crop Science 8 (1968) 405-406, as BrAPI 2.1 asks for in `pedigreeString`.
"""

import pytest

from diary.export.chapters import chapter_title
from diary.insight.names import CROSS_SIGN, formula, purdy, written
from diary.insight.pedigree import Parentage, build_pedigree
from diary.linking.document import PlantKind
from diary.records.record import PlantRef
from tests.outside.talk import said_of_a_seedling, values

CROSSES = [
    "It's Fenmarsh Lad crossed with Copper Lantern.",
    "It's Fenmarsh Lad times Copper Lantern.",
    "It's Fenmarsh Lad by Copper Lantern.",
    "It's Fenmarsh Lad with Copper Lantern's pollen on it.",
    "The seed parent is Fenmarsh Lad, and the pollen parent is Copper Lantern.",
]


@pytest.mark.parametrize("said", CROSSES)
def test_a_cross_as_said_is_written_seed_parent_first(said: str) -> None:
    told = said_of_a_seedling(said)
    seed, pollen = values(told, "seed_parent"), values(told, "pollen_parent")
    assert (seed, pollen) == (["Fenmarsh Lad"], ["Copper Lantern"])
    assert formula(str(seed[0]), str(pollen[0])) == "'Fenmarsh Lad' \u00d7 'Copper Lantern'"
    family = build_pedigree(
        [Parentage(plant="23-04", seed_parent=str(seed[0]), pollen_parent=str(pollen[0]))]
    )
    assert purdy(family, "23-04") == "Fenmarsh Lad/Copper Lantern"


def test_the_sign_is_the_multiplication_sign() -> None:
    assert CROSS_SIGN == "\N{MULTIPLICATION SIGN}"


@pytest.mark.parametrize("name", ["Fenmarsh Lad", "Tilda's Waistcoat"])
def test_a_named_plant_stands_in_single_quotes_and_a_number_does_not(name: str) -> None:
    named = PlantRef(kind=PlantKind.CULTIVAR, key=name, title=name)
    numbered = PlantRef(kind=PlantKind.SEEDLING, key="23-04", title="23-04")
    assert (chapter_title(named), written(name)) == (f"'{name}'", f"'{name}'")
    assert chapter_title(numbered) == "23-04"
