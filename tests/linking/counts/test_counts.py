"""Counts of heads, buds, shoots, cuttings and seeds."""

import pytest

from tests.reading.said import observed


def counts(said: str) -> dict[str, object]:
    """The counts told."""
    return {o.trait: o.value for o in observed(said) if o.trait.startswith("count_")}


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("There are three heads open.", {"count_heads": 3}),
        ("It's got five trusses on it.", {"count_heads": 5}),
        ("A dozen buds still to come.", {"count_buds": 12}),
        ("Two heads open and fourteen buds.", {"count_heads": 2, "count_buds": 14}),
        (
            "I sowed ten seeds and three came up.",
            {"count_seeds_sown": 10, "count_germinated": 3},
        ),
        (
            "I sowed twelve seeds and only one of the twelve came up.",
            {"count_seeds_sown": 12, "count_germinated": 1},
        ),
        ("I've got four cuttings rooted.", {"count_cuttings": 4}),
        ("There are six shoots from the base.", {"count_shoots": 6}),
    ],
)
def test_counts(said: str, expected: dict[str, int]) -> None:
    assert counts(said) == expected


@pytest.mark.parametrize(
    "said",
    [
        "It has five petals.",
        "There are three pots of it.",
        "I want three cuttings of it.",
        "I wish it had three heads.",
        "I can't remember how many seeds I sowed.",
        "Two people asked for it.",
    ],
)
def test_what_is_not_counted(said: str) -> None:
    assert counts(said) == {}


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("Count the heads for me. Five, I make it.", {"count_heads": 5}),
        ("Buds? Seven.", {"count_buds": 7}),
        ("Not many buds, only the three.", {"count_buds": 3}),
        ("There's a single truss on it.", {"count_heads": 1}),
        ("It's full of buds, there's fourteen of them.", {"count_buds": 14}),
        ("Two cuttings struck off it yesterday.", {"count_cuttings": 2}),
        ("I took five tips off it.", {"count_cuttings": 5}),
        ("Four of the trusses are out.", {"count_heads": 4}),
        ("There's a new shoot at the base, just the one.", {"count_shoots": 1}),
        ("I took nine cuttings off it and lost two, so that's seven.", {"count_cuttings": 7}),
        ("Three new growths from the soil.", {"count_shoots": 3}),
    ],
)
def test_the_number_may_stand_after_its_noun(said: str, expected: dict[str, int]) -> None:
    assert counts(said) == expected


@pytest.mark.parametrize(
    ("said", "sown", "up"),
    [
        ("I sowed sixteen of that cross and five, sorry, six of them germinated.", 16, 6),
        ("Out of twelve seeds I got nine up.", 12, 9),
        ("The mother's Fenmarsh Lad. Five seeds went in and four came up.", 5, 4),
        ("Eleven seed in. Four up.", 11, 4),
        ("Sown, twelve; up, five.", 12, 5),
        ("Of the twenty seeds I put in, half a dozen showed.", 20, 6),
        ("Only four ever showed from the dozen I sowed.", 12, 4),
        ("It was one of five that came up from eighteen seeds.", 18, 5),
        ("I planted forty and only got six.", 40, 6),
        ("I put in seven of that cross and every one of them came up.", 7, 7),
        ("We put in twenty-five seeds and got thirteen seedlings.", 25, 13),
        ("I sowed about 50 of them and 38 came up.", 50, 38),
        ("I sowed heaps of that one, maybe sixty, and only got eleven.", 60, 11),
        ("Of the fifteen seeds I put in, four had the courtesy to appear.", 15, 4),
        ("I had ten seeds but lost two, so I sowed eight and three germinated.", 8, 3),
    ],
)
def test_seeds_in_any_order(said: str, sown: int, up: int) -> None:
    assert counts(said) == {"count_seeds_sown": sown, "count_germinated": up}


@pytest.mark.parametrize(
    "said",
    [
        "The heads are five inches across.",
        "Now the buds are green and pink, the two of them.",
        "It's all on the one shoot.",
        "The seed was sown two years ago.",
        "The seed came up, and of the seventeen this is the one I like.",
        "That cherry one came up last from the seed.",
        "I sowed thirty seeds of something else.",
        "I sow about forty of each cross, as a rule.",
        "I've had three trusses off it.",
        "I shall strike four cuttings of it in July.",
        "I'm going to have four cuttings off it.",
        "Each truss has thirty buds in it.",
    ],
)
def test_numbers_that_count_nothing_of_the_plant(said: str) -> None:
    assert counts(said) == {}


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("I took ten cuttings off it, no, I'm telling you wrong, it was eight.", 8),
        ("There's three buds to come, no, I'm wrong, four, there's one tucked behind.", 4),
        ("I sowed twenty seeds, no, thirty, it says on the packet.", 30),
        ("Did I sow forty? No, it says fifty on the packet.", 50),
        ("I told you four buds but it's five, I missed one.", 5),
        ("Two heads, no, three heads.", 3),
        ("Four buds, no, it's ten centimetres tall.", 4),
    ],
)
def test_a_count_taken_back_gives_way_to_the_later(said: str, expected: int) -> None:
    assert list(counts(said).values()) == [expected]


@pytest.mark.parametrize(
    ("said", "sown", "up"),
    [
        ("Four up from nine.", 9, 4),
        ("Fifteen in, four up, the rest mouse food.", 15, 4),
        ("Sixteen sown for four.", 16, 4),
        ("Out of a pod of eleven, five came through.", 11, 5),
        ("I'd a dozen seeds off that cross and all but two of them are plants now.", 12, 10),
        ("I sowed all three seeds, and the one came.", 3, 1),
    ],
)
def test_seeds_in_two_figures(said: str, sown: int, up: int) -> None:
    assert counts(said) == {"count_seeds_sown": sown, "count_germinated": up}


@pytest.mark.parametrize(
    "said",
    [
        "Two in the house and one up on the shelf.",
        "I've thirty more seeds of something else to sow.",
        "Thank you to all 417 of you who came.",
        "Two buds dropped in the heat.",
        "I cut three heads off for the vase.",
        "Two shoots to come off for cuttings.",
        "You need at least eight trusses open to show it.",
        "I want six of it.",
        "I never had more than two seeds off its mother.",
        "If I had ten seeds from it I'd be happy.",
        "It had eleven heads in June.",
        "I took two heads off to see the label.",
    ],
)
def test_what_is_gone_asked_for_or_yet_to_sow_is_no_count(said: str) -> None:
    assert counts(said) == {}


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("There's four of it rooting under the mist.", {"count_cuttings": 4}),
        ("I've struck six of it.", {"count_cuttings": 6}),
        ("Eight starts of it rooted.", {"count_cuttings": 8}),
        ("It's down to two shoots.", {"count_shoots": 2}),
        ("Not a lot of bud on it. Four.", {"count_buds": 4}),
        ("There's to trusses out on it.", {"count_heads": 2}),
        ("The same goes for heads.", {}),
    ],
)
def test_counts_without_the_plain_noun_or_figure(said: str, expected: dict[str, int]) -> None:
    assert counts(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        (
            "I put down twenty-four seeds, and nineteen of the beggars grew.",
            {"count_seeds_sown": 24, "count_germinated": 19},
        ),
        (
            "There were six seeds and every one has germinated.",
            {"count_seeds_sown": 6, "count_germinated": 6},
        ),
        ("Both seeds grew.", {"count_germinated": 2}),
        ("Three out of four came up.", {"count_seeds_sown": 4, "count_germinated": 3}),
        ("Two out of three judges liked it.", {}),
        ("There are twenty seeds in the packet for next year.", {}),
        ("A fifth head's just pushing up, so call it five.", {"count_heads": 5}),
        ("It has sent up four stems from the base.", {"count_shoots": 4}),
        ("I've promised four cuttings to the society.", {}),
        ("There's fourteen come up out of that lot.", {"count_germinated": 14}),
        ("Two seeds, one plant.", {"count_seeds_sown": 2, "count_germinated": 1}),
        (
            "One of three that germinated out of a pod of nine.",
            {"count_seeds_sown": 9, "count_germinated": 3},
        ),
        ("Buds to come: sixteen.", {"count_buds": 16}),
        ("Head, twelve centimetres.", {}),
        ("Buds? I stopped at forty.", {"count_buds": 40}),
        ("I'll sow thirty of it next year.", {}),
        ("It had eight heads out last week and there are five today.", {"count_heads": 5}),
        ("I took five cuttings of it and three are alive.", {"count_cuttings": 3}),
        ("It's down to its last three buds.", {"count_buds": 3}),
        ("Heads open: 4. Buds: 11.", {"count_heads": 4, "count_buds": 11}),
        ("The first three cuttings off it have rooted.", {"count_cuttings": 3}),
        (
            "I told you eight cuttings rooted, and it's nine, because one was hiding.",
            {"count_cuttings": 9},
        ),
    ],
)
def test_more_ways_to_count(said: str, expected: dict[str, int]) -> None:
    assert counts(said) == expected


@pytest.mark.parametrize(
    ("utterances", "expected"),
    [
        (("How many seeds did I sow?", "Sixteen."), {"count_seeds_sown": 16}),
        (("And how many of the seeds came up?", "Nine."), {"count_germinated": 9}),
        (
            ("There's not so many trusses this time.", "Three, that I can see."),
            {"count_heads": 3},
        ),
        (("I sowed all twenty seeds.", "Three came."), {"count_seeds_sown": 20}),
        (("It had two heads last week, it's got five this week.",), {"count_heads": 5}),
        (("The judges want six open heads.",), {}),
        (("Cuttings?", "I've five in the sand and all five are rooted."), {"count_cuttings": 5}),
        (("It's pushing. Four shoots.", "Five, with that one."), {"count_shoots": 5}),
        (("I had four heads on it then and I've six on it now.",), {"count_heads": 6}),
        (("I sowed two pods.",), {}),
    ],
)
def test_counts_over_sentences(utterances: tuple[str, ...], expected: dict[str, int]) -> None:
    told = {o.trait: o.value for o in observed(*utterances) if o.trait.startswith("count_")}
    assert expected.items() <= told.items()
    assert 23 not in told.values()
