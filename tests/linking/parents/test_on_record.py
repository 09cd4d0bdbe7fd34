"""Parents on record, named where kinship is spoken of (common practice: the label has both)."""

import pytest

from diary.reading.known import Known, KnownName, KnownSeedling
from tests.reading.said import read

KNOWN = Known(
    seedlings=(
        KnownSeedling(number="23-04", seed_parent="Plover Song", pollen_parent="Dimsey Thorn"),
        KnownSeedling(number="23-05"),
    ),
    names=tuple(KnownName(name=n) for n in ("Plover Song", "Dimsey Thorn", "Hobnail")),
)
SEED, POLLEN = {"seed_parent": "Plover Song"}, {"pollen_parent": "Dimsey Thorn"}


def parents(number: str, said: str) -> dict[str, object]:
    """The parents told of the plant."""
    (clip,) = read(f"this is {number}", said, known=KNOWN).clips
    return {o.trait: o.value for o in clip.observations if o.trait.endswith("_parent")}


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("you're plover song's baby aren't you and dimsey thorn was your dad", SEED | POLLEN),
        ("dimsey thorn and plover song that's who you came from", SEED | POLLEN),
        ("both sides of the family plover song and dimsey thorn were ruffled", SEED | POLLEN),
        ("there's plover song blood in that leaf", SEED),
        ("it isn't a patch on plover song", {}),
        ("plover song is bigger than this", {}),
        ("plover song's leaf is darker", {}),
    ],
)
def test_what_is_on_record(said: str, told: dict[str, object]) -> None:
    assert parents("23 04", said) == told


def test_nothing_on_record_nothing_told() -> None:
    assert parents("23 05", "there's plover song blood in that leaf") == {}
