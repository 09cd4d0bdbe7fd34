"""What a length is the length of, and which of several holds.

1 inch = 25.4 mm (international yard and pound agreement, 1959; from memory). Coins: Royal
Mint and US Mint sizes and Reg. (EC) 975/98, as far as the trade notes give them.
"""

import pytest

from tests.reading.said import observed, values


@pytest.mark.parametrize(
    ("said", "trait", "mm"),
    [
        ("It's about five centimetres across.", "bloom_diameter", 50),
        ("The flower is two inches across.", "bloom_diameter", 50.8),
        ("Two and a half inches across.", "bloom_diameter", 63.5),
        ("The bloom measures forty-five millimetres.", "bloom_diameter", 45),
        ("Between three and four inches across.", "bloom_diameter", 88.9),
        ("The head's a good ten centimetres.", "head_diameter", 100),
        ("The heads are four inches across.", "head_diameter", 101.6),
        ("It's thirty centimetres tall.", "plant_height", 300),
        ("The plant stands about a foot high.", "plant_height", 304.8),
        ("The plant is forty centimetres wide.", "plant_spread", 400),
        ("It has a spread of half a metre.", "plant_spread", 500),
        ("The whole plant is thirty centimetres from wing to wing.", "plant_spread", 300),
        ("It's thirty odd centimetres wide already.", "plant_spread", 300),
        ("The flower is three comma four centimetres.", "bloom_diameter", 34),
        ("Height fourteen centimetres, spread nineteen.", "plant_spread", 190),
        ("The stem is twenty centimetres long.", "stem_length", 200),
        ("The leaf is eight centimetres across.", "leaf_width", 80),
    ],
)
def test_of_what(said: str, trait: str, mm: float) -> None:
    assert values(trait, said) == [pytest.approx(mm, abs=0.1)]


@pytest.mark.parametrize(
    ("said", "mm"),
    [
        ("It's five, no, four and a half centimetres across.", 45),
        ("It's six centimetres across, sorry, five centimetres across.", 50),
        ("It's two inches across, that's five centimetres.", 50),
        ("It's five centimetres, that's two inches, across.", 50),
    ],
)
def test_second_thoughts_and_two_units_leave_one_size(said: str, mm: float) -> None:
    assert values("bloom_diameter", said) == [mm]


@pytest.mark.parametrize(
    "said",
    [
        "It's in a nine-centimetre pot.",
        "It's still in a five inch pot.",
        "We had two inches of rain.",
        "It's a centimetre taller than that one.",
        "It's not five centimetres across.",
    ],
)
def test_no_size_of_the_plant(said: str) -> None:
    lengths = ("bloom_diameter", "plant_height", "plant_spread", "head_diameter")
    assert [o for o in observed(said) if o.trait in lengths] == []


def test_several_sizes_in_one_breath() -> None:
    said = "The flower's five centimetres across and the plant is thirty centimetres tall."
    assert values("bloom_diameter", said) == [50]
    assert values("plant_height", said) == [300]


def test_a_size_says_whether_it_was_hedged() -> None:
    (about,) = observed("It's about five centimetres across.")
    (exact,) = observed("It's five centimetres across.")
    assert about.hedged
    assert not exact.hedged


@pytest.mark.parametrize(
    ("said", "mm"),
    [
        ("The flower's the size of a two pound coin.", 28.4),
        ("It's as big as a ten pence piece.", 24.5),
        ("The bloom is about the size of a 50p.", 27.3),
    ],
)
def test_coins_as_sizes(said: str, mm: float) -> None:
    assert values("bloom_diameter", said) == [pytest.approx(mm, abs=0.5)]


@pytest.mark.parametrize(
    ("said", "trait", "mm"),
    [
        ("Nobbut two inch, the flower, but it earns its keep.", "bloom_diameter", 50.8),
        ("It's only a foot across, is the plant.", "plant_spread", 304.8),
        ("Forty-two centimetres of stem under it.", "stem_length", 420),
        ("Stalks long. Eighteen centimetres.", "stem_length", 180),
        ("Dwarf, twelve centimetres.", "plant_height", 120),
        ("The leaf's ever so small. It's two centimetres across.", "leaf_width", 20),
        ("It carries its flowers above the leaves, five centimetres each.", "bloom_diameter", 50),
        ("Stem length, from the soil to the flower: sixty centimetres.", "stem_length", 600),
        ("Leaves that swamp a plant, the broadest of them twelve centimetres.", "leaf_width", 120),
        ("Measure across the plant for me. Twenty centimetres, leaf to leaf.", "plant_spread", 200),
        ("It's ten inches up and a foot across.", "plant_height", 254),
        ("The plant is thirty by forty-five centimetres.", "plant_height", 300),
        ("The plant is thirty by forty-five centimetres.", "plant_spread", 450),
        ("Lovely straight stem on it. Thirty-five centimetres.", "stem_length", 350),
        ("The truss holds twenty pips and it's nine centimetres over all.", "head_diameter", 90),
        ("Plant's compact, seventeen centimetres by twenty.", "plant_spread", 200),
        ("All that from a plant no taller than twenty centimetres.", "plant_height", 200),
        ("It stops at nine inches, does this.", "plant_height", 228.6),
        ("Every pip on it is thirty-two millimetres.", "bloom_diameter", 32),
        ("Six centimetres; on the callipers it's sixty-three millimetres.", "bloom_diameter", 63),
    ],
)
def test_the_noun_may_stand_anywhere(said: str, trait: str, mm: float) -> None:
    assert values(trait, said) == [pytest.approx(mm, abs=0.1)]


@pytest.mark.parametrize(
    "said",
    [
        "It's two centimetres shy of what the class asks.",
        "I used thirty metres of hose.",
        "I moved it two feet along the bench.",
        "The class says no more than fifteen centimetres.",
        "It needs another inch.",
        "It wants to be fifteen centimetres.",
        "It's in a wee three inch one.",
        "Bigger than the last by a good centimetre.",
        "It missed the card by three millimetres.",
        "The path's a metre wide.",
        "My boots are nine inches high.",
        "The bench is three foot six high.",
        "I cut the stem back to six inches.",
        "I had it down as forty millimetres.",
        "I stopped it at four inches.",
        "Two inches nearer the glass and it would have scorched.",
        "The tray's fifteen inches by nine.",
        "It was two inches tall at Christmas.",
    ],
)
def test_differences_limits_and_ways_are_no_size(said: str) -> None:
    assert [o for o in observed(said) if o.unit == "mm"] == []


@pytest.mark.parametrize(
    ("utterances", "trait", "mm"),
    [
        (("Sizes in inches today.", "Two and three-quarter across."), "bloom_diameter", 69.85),
        (("Sizes in inches today.", "A good three, is that."), "bloom_diameter", 76.2),
        (("Sizes in millimetres today.", "Flower, fifty-two."), "bloom_diameter", 52),
        (("It was down as forty millimetres but it's nearer forty-four.",), "bloom_diameter", 44),
        (("It's two inches, it's two and a quarter, actually.",), "bloom_diameter", 57.15),
        (("Three inches. No, my thumb was in the way. Two and a half.",), "bloom_diameter", 63.5),
        (("A hundred and fifty across, and that's millimetres.",), "bloom_diameter", 150),
        (
            ("Three centimetres, no, I'm holding it crooked, three and a half.",),
            "bloom_diameter",
            35,
        ),
    ],
)
def test_a_unit_said_before_or_after(utterances: tuple[str, ...], trait: str, mm: float) -> None:
    assert values(trait, *utterances) == [pytest.approx(mm, abs=0.1)]


def test_a_bare_number_is_no_size_where_no_unit_was_told() -> None:
    assert [o for o in observed("A good three, is that.") if o.unit == "mm"] == []


@pytest.mark.parametrize(
    ("said", "trait", "mm"),
    [
        (
            "Thirty-two millimetres, no, wait, I'm reading the wrong side of the rule, she's "
            "thirty-eight.",
            "bloom_diameter",
            38,
        ),
        (
            "Sixteen centimetres, well, I'm flattering it, fifteen and a half.",
            "bloom_diameter",
            155,
        ),
        (
            "The leaf's eighteen centimetres wide, no, eighteen's the long way, it's fourteen "
            "wide.",
            "leaf_width",
            140,
        ),
        ("It's gone from twenty centimetres to thirty-one tall.", "plant_height", 310),
        (
            "Five centimetres. No. Fifty-three millimetres, now I've the gauge on it.",
            "bloom_diameter",
            53,
        ),
    ],
)
def test_the_later_figure_holds(said: str, trait: str, mm: float) -> None:
    assert values(trait, said) == [mm]


@pytest.mark.parametrize(
    ("said", "trait", "mm"),
    [
        ("Ten inches high and the same across.", "plant_spread", 254),
        ("It's thirty centimetres tall and as wide as it is high.", "plant_spread", 300),
        ("The flower's four centimetres, and twenty for the height of it.", "plant_height", 200),
        ("The pip's forty millimetres, and a hundred and ten for the head.", "head_diameter", 110),
        ("The stem under the bud is a good seven inches.", "stem_length", 177.8),
        ("It's shorter in the stem. It's forty-five millimetres across.", "bloom_diameter", 45),
        ("The rule says sixty-two millimetres.", "bloom_diameter", 62),
        ("Never gets above twenty centimetres, this one.", "plant_height", 200),
        ("The heads want to be ten centimetres and they're eight and a half.", "head_diameter", 85),
        ("Height is forty centimetres, width is forty-five.", "plant_spread", 450),
        ("Thirty-eight centimetres and still climbing, this plant.", "plant_height", 380),
        ("It's eleven inches by fourteen.", "plant_spread", 355.6),
        ("On foot-long stems, these.", "stem_length", 304.8),
        ("The individual pips don't exceed thirty millimetres.", "bloom_diameter", 30),
        ("Twenty inches of a stem under it and straight as a poker.", "stem_length", 508),
        ("Stem to the first flower is nine inches.", "stem_length", 228.6),
        ("Truss is wide, eleven centimetres.", "head_diameter", 110),
        ("It ought to be five centimetres and it's four.", "bloom_diameter", 40),
        ("Last year they were four centimetres, this year they're five.", "bloom_diameter", 50),
        ("She's two foot if she's an inch.", "plant_height", 609.6),
        ("It won't go over eight inches.", "plant_height", 203.2),
        ("I gave the stems as twenty centimetres, and they're sixteen.", "stem_length", 160),
        ("Dinny had the flower at six centimetres and it's five.", "bloom_diameter", 50),
        ("Three and a half centimetres across the whole flower.", "bloom_diameter", 35),
        (
            "The flower's four centimetres, and the plant's the picture of health.",
            "bloom_diameter",
            40,
        ),
        ("The leaves are two inches, and I'll say no more.", "leaf_width", 50.8),
        ("I put the callipers across and they read fifty-eight.", "bloom_diameter", 58),
        (
            "The stalk, which is what I wanted to show you, is twenty-two centimetres.",
            "stem_length",
            220,
        ),
        ("The judges ask for four inches. It's three.", "bloom_diameter", 76.2),
        ("Plant forty high, centimetres that is.", "plant_height", 400),
        ("There are seven heads open, and it's thirty centimetres tall.", "plant_height", 300),
        ("The plant's no more than eighteen centimetres over the leaves.", "plant_spread", 180),
        ("It's a yard across if it's an inch.", "plant_spread", 914.4),
        ("It's a small leaf. How wide? Eighteen millimetres.", "leaf_width", 18),
        ("Upright, to forty centimetres.", "plant_height", 400),
        (
            "The flower is fifty-eight millimetres, the average of three. In height it's fine.",
            "bloom_diameter",
            58,
        ),
        ("The head holds twenty flowers and is twelve centimetres across.", "head_diameter", 120),
    ],
)
def test_what_the_words_around_a_figure_make_of_it(said: str, trait: str, mm: float) -> None:
    assert values(trait, said) == [pytest.approx(mm, abs=0.1)]


@pytest.mark.parametrize(
    "said",
    [
        "It's as wide as it is high.",
        "There's all of two millimetres in it between the pair.",
        "I fed it five mil to the gallon.",
        "Its mother made a flower of six centimetres.",
        "The bench is waist high, about ninety centimetres.",
        "A four inch nail holds it.",
        "The book gives it eighteen inches.",
        "I'd want it under thirty centimetres for the front row.",
        "Bare as a broomstick for the bottom eight inches.",
        "Give it an inch and it takes a mile.",
        "With a white eye six millimetres wide.",
        "It'd be thirty centimetres if it stood up straight.",
    ],
)
def test_no_figure_of_this_plant(said: str) -> None:
    lengths = ("bloom_diameter", "plant_height", "plant_spread")
    assert [o for o in observed(said) if o.trait in lengths] == []


@pytest.mark.parametrize(
    ("utterances", "trait", "expected"),
    [
        (
            ("It was fifteen centimetres when I potted it.", "It's twenty-eight now."),
            "plant_height",
            [280],
        ),
        (("I'd said four centimetres.", "I was wrong, it's nearer five."), "bloom_diameter", [50]),
        (("How wide are we?", "Fifty centimetres."), "plant_spread", [500]),
        (
            ("Call it five centimetres.", "No, be honest.", "Four and three quarters."),
            "bloom_diameter",
            [47.5],
        ),
        (("It's three foot two at the back.",), "plant_height", [965.2]),
        (("It was sold to me as a six-inch dwarf.",), "bloom_diameter", []),
        (("It wants staking.", "It's gone up to eighty centimetres."), "plant_height", [800]),
        (("Fifty millimetres across when I last looked.",), "bloom_diameter", [50]),
        (("Smaller than its sister, which made six centimetres.",), "bloom_diameter", []),
        (("My neighbour measured hers.", "Six inches, she says."), "bloom_diameter", []),
        (("The vent's stuck.", "It only opens two inches."), "bloom_diameter", []),
        (("I put four canes round it.", "Each is sixty centimetres."), "plant_height", []),
    ],
)
def test_sizes_over_sentences(
    utterances: tuple[str, ...], trait: str, expected: list[float]
) -> None:
    assert values(trait, *utterances) == expected


@pytest.mark.parametrize(
    "said",
    [
        "It's forty centimetres tall, and as broad as it is high.",
        "It's as wide as it's high, and that's forty centimetres tall.",
        "Forty centimetres tall if I stretch it, and as broad as it is high.",
    ],
)
def test_one_figure_for_both_sides_of_a_plant(said: str) -> None:
    assert values("plant_height", said) == [400.0]
    assert values("plant_spread", said) == [400.0]
