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
