"""Names of plants by spelling and by sound; "none of these" is always possible."""

import pytest

from diary.reading.known import Known, KnownName, Mishearing
from diary.reading.names import find_names, name_index
from tests.reading.said import NAMES, on_record, talk


def heard(said: str, known: Known | None = None) -> list[str]:
    """The names heard."""
    return [
        n.name
        for n in find_names(
            talk(said),
            name_index(known or on_record(names=(*NAMES, "Jubilee Loaf", "Two Left Socks"))),
        )
    ]


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("that came from Fenmarsh Lad", "Fenmarsh Lad"),
        ("that came from fenmarsh lad", "Fenmarsh Lad"),
        ("that came from fen marsh lad", "Fenmarsh Lad"),
        ("that came from fenmarch lad", "Fenmarsh Lad"),
        ("it is Copper Lantern's pollen", "Copper Lantern"),
        ("it is copper lantons pollen", "Copper Lantern"),
        ("crossed with tilly marsh", "Tilly Marsh"),
        ("crossed with tillie marsh", "Tilly Marsh"),
        ("bigger than the duchess of orrin", "Duchess of Orrin"),
        ("bigger than Duchess of Orin", "Duchess of Orrin"),
        ("crossed with hobnail", "Hobnail"),
        ("crossed with hob nail", "Hobnail"),
        ("out of copper linton", "Copper Lantern"),
        ("crossed with fenmarsh ladder", "Fenmarsh Lad"),
        ("crossed with yubilee loaf", "Jubilee Loaf"),
        ("that was to left socks", "Two Left Socks"),
    ],
)
def test_a_name_as_it_is_said_or_misheard(said: str, name: str) -> None:
    assert heard(said) == [name]


@pytest.mark.parametrize(
    "said",
    [
        "the bench is a bit of a marsh",
        "a lovely copper colour",
        "he was a good lad",
        "under the lantern",
        "it will be nailed down",
        "a duchess would like it",
        "by a tilly lamp",
        "nothing on record sounds like Windle Grove",
    ],
)
def test_ordinary_words_are_no_names(said: str) -> None:
    assert heard(said) == []


def test_two_names_side_by_side_are_told_apart() -> None:
    assert heard("Fenmarsh Lad by Copper Lantern") == ["Fenmarsh Lad", "Copper Lantern"]


def test_a_synonym_and_a_mishearing_lead_to_the_name() -> None:
    known = Known(
        names=(
            KnownName(
                name="Quill Harbour", synonyms=("Harbour Girl",), mishearings=("quilt arbour",)
            ),
        ),
        mishearings=(Mishearing(heard="chill barber", meant="Quill Harbour"),),
    )
    assert heard("that is harbour girl", known) == ["Quill Harbour"]
    assert heard("that is quilt arbour", known) == ["Quill Harbour"]
    assert heard("that is chill barber", known) == ["Quill Harbour"]


def test_an_exact_name_beats_one_that_sounds_alike() -> None:
    known = on_record((), ("Mary Fenn", "Merry Fen"))
    assert heard("crossed with Merry Fen", known) == ["Merry Fen"]
    assert heard("crossed with Mary Fenn", known) == ["Mary Fenn"]


def test_nothing_on_record_nothing_heard() -> None:
    assert heard("Fenmarsh Lad by Copper Lantern", Known()) == []
