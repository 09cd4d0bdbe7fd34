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
        ("Dead round in outline.", "bloom_form", ["rounded"]),
        ("Petals so wavy that you'd think somebody had been at them.", "bloom_form", ["frilled"]),
        ("A rounded bloom, and I'd call it semi-double.", "bloom_form", ["rounded", "semi-double"]),
        ("It's a double, but only just, I'd say semi.", "bloom_form", ["semi-double"]),
        ("Rosebud flowers.", "bloom_form", ["rosebud"]),
        ("It breaks from every joint.", "habit", ["branching"]),
        ("A poor weak thing.", "habit", ["weak"]),
        ("Stands up like a guardsman.", "habit", ["upright"]),
        ("It's trailing, well, I say trailing, it's more spreading.", "habit", ["spreading"]),
        ("It's more spreading than trailing.", "habit", ["spreading"]),
        ("The leaf on it is ever so tiny.", "foliage", ["small"]),
        ("I've a horror of coarse leaves, and these are, I fear, enormous.", "foliage", ["large"]),
        ("Leaf shines like a wet slate.", "foliage", ["glossy"]),
        ("Brush past the leaf, it's pure lemon sherbet.", "foliage", ["scented"]),
        ("Give the leaf a rub and you get mint.", "foliage", ["scented"]),
        ("The leaf's gone ever so pale.", "foliage", ["pale"]),
        ("It's been out every day since the tenth.", "flowering", ["long"]),
        ("It came out in March and it's not paused for breath since.", "flowering", ["long"]),
        ("It's a late beggar.", "flowering", ["late"]),
        ("It's mean with its flowers, two since June.", "flowering", ["shy"]),
        ("So many at a time that the foliage is hidden.", "flowering", ["free"]),
        ("First flower Thursday gone.", "flowering", ["first_flower"]),
        ("Scent? Not a whiff.", "scent", ["none"]),
        ("It's not scented.", "scent", ["none"]),
        ("If you stroke the leaf there's a smell of ginger.", "foliage", ["scented"]),
        ("Nearly a double, let's say semi-double.", "bloom_form", ["semi-double"]),
        ("As for scent, it has none.", "scent", ["none"]),
        ("I had my nose in every flower, nothing.", "scent", ["none"]),
        ("It dangles nicely over the side of the pot.", "habit", ["trailing"]),
        ("Nothing holds it back.", "habit", ["vigorous"]),
        ("A bit of a miser with its blooms.", "flowering", ["shy"]),
        ("Hasn't had a week off since Whitsun.", "flowering", ["long"]),
        ("Grey mould got into it.", "health", ["botrytis"]),
        ("Nice big flowers.", "bloom_size", ["large"]),
        ("A tiny little bloom.", "bloom_size", ["small"]),
        ("It's never had a day without a flower since Easter.", "flowering", ["long"]),
        ("Six trusses open, and it's been like that since Whitsun.", "flowering", ["long"]),
        ("It's blackened at soil level.", "health", ["rot"]),
        ("Small, mind, an inch and a bit.", "bloom_size", ["small"]),
        ("It's a single, and the eye is white.", "bloom_form", ["single"]),
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
        ("The leaves are thick and crinkled.", "bloom_form"),
        ("It's bursting its pot, poor thing.", "habit"),
        ("Crush the leaf and there's nothing.", "foliage"),
        ("I've had it since the spring.", "flowering"),
        ("It's been in that pot for six weeks.", "flowering"),
        ("My sister was on at me about greenfly but no, there's none on it.", "health"),
        ("I thought it had some kind of virus, which it hasn't.", "health"),
        ("My neighbour lost twenty to the rot.", "health"),
        ("The whitefly are all on the tomatoes.", "health"),
        ("I sprayed against rust.", "health"),
        ("I dust with sulphur for the mildew.", "health"),
        ("My neighbour's is a double.", "bloom_form"),
        ("It might come double next year.", "bloom_form"),
        ("It would be bushier with a pinch.", "habit"),
        ("Not fully double.", "bloom_form"),
        ("It doesn't sprawl.", "habit"),
        ("I sniffed, and nothing smells sweeter than rain.", "scent"),
        ("The lilac by the gate smells wonderful.", "scent"),
        ("The last one went down with rust.", "health"),
        ("The mother plant is much more vigorous.", "habit"),
        ("The leaf's got no smell to it.", "scent"),
        ("It was found on a single low branch.", "bloom_form"),
        ("The variegation is gone.", "foliage"),
        ("It's Hobnail's double.", "bloom_form"),
        ("Small, mind, ten inches tall.", "bloom_size"),
        ("It had rust, but that's a while back now.", "health"),
        ("There's greenfly on it. No, as you were, it's only dust.", "health"),
        ("The greenfly's off the beans.", "health"),
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
