"""Colour words: each has a published value, and CIEDE2000 is the published formula."""

import re

import pytest

from diary.errors import VocabularyError
from diary.insight.swatches import (
    colour_distance,
    delta_e,
    lab_of,
    load_swatches,
    parse_swatches,
    srgb_of,
)

# G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000 Color-Difference Formula: Implementation Notes,
# Supplementary Test Data, and Mathematical Observations", Color Research and Application 30
# (2005) 21-30, table 1: L1 a1 b1, L2 a2 b2, difference. Pair 14 is left out: it turns on the last
# bit of the platform's arctan2.
SHARMA = """
50 2.6772 -79.7751 50 0 -82.7485 2.0425
50 -1.3802 -84.2814 50 0 -82.7485 1.0000
50 0 0 50 -1 2 2.3669
50 2.49 -0.001 50 -2.49 0.0009 7.1792
50 2.49 -0.001 50 -2.49 0.0011 7.2195
50 2.5 0 73 25 -18 27.1492
50 2.5 0 61 -5 29 22.8977
60.2574 -34.0099 36.2677 60.4626 -34.1751 39.4387 1.2644
22.7233 20.0904 -46.6940 23.0331 14.9730 -42.5619 2.0373
36.4612 47.8580 18.3852 36.2715 50.5065 21.2231 1.4146
90.8027 -2.0831 1.4410 91.1528 -1.6435 0.0447 1.4441
2.0776 0.0795 -1.1350 0.9033 -0.0636 -0.5514 0.9082
"""

# the colour words of the reading contract
WORDS = [
    "white",
    "cream",
    "ivory",
    "yellow",
    "lemon",
    "gold",
    "apricot",
    "peach",
    "orange",
    "salmon",
    "coral",
    "scarlet",
    "red",
    "crimson",
    "cherry",
    "burgundy",
    "maroon",
    "pink",
    "rose",
    "cerise",
    "magenta",
    "purple",
    "violet",
    "mauve",
    "lilac",
    "lavender",
    "plum",
    "wine",
    "blue",
    "green",
    "bronze",
    "copper",
    "brown",
    "black",
    "grey",
    "silver",
    "chartreuse",
]


@pytest.mark.parametrize("row", SHARMA.strip().splitlines())
def test_sharma_pairs(row: str) -> None:
    l1, a1, b1, l2, a2, b2, expected = map(float, row.split())
    assert delta_e((l1, a1, b1), (l2, a2, b2)) == pytest.approx(expected, abs=5e-5)
    assert delta_e((l2, a2, b2), (l1, a1, b1)) == pytest.approx(expected, abs=5e-5)


def test_every_colour_word_has_a_published_value() -> None:
    swatches = load_swatches()
    assert set(WORDS) <= set(swatches.words)
    for swatch in swatches.words.values():
        assert re.match(r"(SP 440|XKCD)\b.*: .+", swatch.source), swatch


def test_lab_of_white_by_hand() -> None:
    # sRGB 255/255/255 is L* 100 by definition (IEC 61966-2-1); our white is SP 440's centroid
    lab = lab_of("white")
    assert lab is not None
    assert 95 < lab[0] < 96
    assert abs(lab[1]) < 1
    assert abs(lab[2]) < 1


@pytest.mark.parametrize(
    ("word", "near", "far"),
    [
        ("cherry", "crimson", "lilac"),
        ("mauve", "lilac", "yellow"),
        ("cream", "ivory", "maroon"),
        ("salmon", "coral", "violet"),
        ("maroon", "burgundy", "white"),
        ("plum", "purple", "apricot"),
    ],
)
def test_breeders_neighbours(word: str, near: str, far: str) -> None:
    close, distant = colour_distance(word, near), colour_distance(word, far)
    assert close is not None
    assert distant is not None
    assert close < distant / 2


def test_modifiers_count_only_where_both_have_them() -> None:
    assert colour_distance("wine", "wine", ("deep",), ()) == pytest.approx(0, abs=1e-9)
    both = colour_distance("mauve", "mauve", ("deep",), ("pale",))
    assert both is not None
    assert both > 20
    pale, dark = lab_of("pink", ("pale",)), lab_of("pink", ("dark",))
    plain = lab_of("pink")
    assert pale is not None
    assert dark is not None
    assert plain is not None
    assert dark[0] < plain[0] < pale[0]


def test_the_colour_shown_is_the_published_one_and_moves_with_its_modifiers() -> None:
    words = load_swatches().words
    assert {word: srgb_of(word) for word in words} == {w: s.srgb for w, s in words.items()}
    pale, bare, dark = (lab_of("blue", m) for m in (("pale",), (), ("dark",)))
    assert pale
    assert bare
    assert dark
    assert pale[0] > bare[0] > dark[0]
    assert len({srgb_of("blue", ("pale",)), srgb_of("blue"), srgb_of("blue", ("dark",))}) == 3
    assert srgb_of("nonesuch") is None


def test_a_word_without_a_value_has_no_distance() -> None:
    assert lab_of("sparkly") is None
    assert colour_distance("sparkly", "red") is None


@pytest.mark.parametrize(
    ("entry", "message"),
    [
        ({"srgb": "f2f3f4", "source": "x"}, "words.odd"),
        ({"srgb": "#f2f3zz", "source": "x"}, "words.odd"),
        ({"srgb": "#f2f3f4"}, "source"),
    ],
)
def test_a_mistake_in_the_file_is_named(entry: dict[str, str], message: str) -> None:
    with pytest.raises(VocabularyError, match=message):
        parse_swatches({"words": {"odd": entry}})
