"""Traits given by one word or turn of phrase."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "trait", "value"),
    [
        ("It's a double.", "bloom_form", ["double"]),
        ("It's semi-double.", "bloom_form", ["semi-double"]),
        ("The petals are quite ruffled.", "bloom_form", ["frilled"]),
        ("It's a nice compact plant.", "habit", ["compact"]),
        ("It's getting leggy.", "habit", ["leggy"]),
        ("Masses of side shoots.", "habit", ["branching"]),
        ("It flowers its head off.", "flowering", ["free"]),
        ("The first bloom opened today.", "flowering", ["first_flower"]),
        ("It's nicely scented.", "scent", ["scented"]),
        ("There's no scent at all.", "scent", ["none"]),
        ("A touch of rust underneath.", "health", ["rust"]),
        ("There's greenfly on it.", "health", ["aphids"]),
        ("Nicely zoned leaf.", "foliage", ["zoned"]),
        ("The leaves are variegated.", "foliage", ["variegated"]),
        ("Nice big flowers.", "bloom_size", ["large"]),
        ("A tiny little bloom.", "bloom_size", ["small"]),
    ],
)
def test_a_trait_by_its_word(said: str, trait: str, value: list[str]) -> None:
    assert values(trait, said) == value


@pytest.mark.parametrize(
    ("said", "trait"),
    [
        ("It isn't a double.", "bloom_form"),
        ("If it was a double I'd keep it.", "bloom_form"),
        ("There's no rust on it.", "health"),
        ("Last year it had mildew.", "health"),
        ("I wish it was scented.", "scent"),
        ("Is it scented?", "scent"),
        ("It's in a big pot.", "bloom_size"),
        ("I opened the door.", "bloom_form"),
    ],
)
def test_not_of_this_plant_now(said: str, trait: str) -> None:
    assert [v for v in values(trait, said) if v not in ("clean",)] == []


@pytest.mark.parametrize(
    ("said", "sizes"),
    [
        ("Big double, the guts of thirteen centimetres.", ["large"]),
        ("The bloom's only three inches, so call it a small one.", ["small"]),
        ("The blooms are absolutely vast.", ["large"]),
        ("I'd call those flowers enormous.", ["large"]),
        ("The truss is a good size.", []),
        ("It's a big one, thirty centimetres tall.", []),
    ],
)
def test_size_of_the_bloom_that_the_talk_is_of(said: str, sizes: list[str]) -> None:
    assert values("bloom_size", said) == sizes
