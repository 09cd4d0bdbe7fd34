"""Rules and learnt signs heard together: what brings a plant in, and what only names it."""

import pytest
from scipy.special import expit

from diary.linking.weights import ALWAYS, chance
from tests.reading.said import on_record, read

REGISTER = on_record(
    ("24-09", "24-13", "24-22", "24-30", "25-07"), ("Quilted Heron", "Tin Whistle")
)
OPENING = ("Right, this is 24-09.", "Pink, single, four centimetres across, and I'm keeping it.")
TOLD = ("It's a white one, double, two inches across.", "The compost for that.")


def turned_to(*talk: str) -> list[str]:
    return [clip.plant.title for clip in read(*OPENING, *talk, known=REGISTER).clips]


def test_the_chance_is_the_logistic_function_of_what_the_signs_weigh() -> None:
    weights = {ALWAYS: -1.0, "next to it": 1.5, "compared": -2.0}
    for signs in ((), ("next to it",), ("next to it", "compared"), ("never seen", "compared")):
        total = weights[ALWAYS] + sum(weights.get(sign, 0.0) for sign in signs)
        assert chance(weights, signs) == pytest.approx(expit(total))  # scipy.special


def test_a_sign_told_twice_counts_once() -> None:
    assert chance({ALWAYS: 0.0, "a": 1.0}, ("a", "a")) == chance({ALWAYS: 0.0, "a": 1.0}, ("a",))


@pytest.mark.parametrize(
    "brought",
    [
        "Round the corner to 24-22.",
        "I'd got as far as 24-22.",
        "Now brace yourselves, because 24-22 is the tragedy of the row.",
        "Going along the row, 24-22, I told you about.",
        "A word about 24-22, then.",
        "By the pillar you'll find 24-22.",
    ],
)
def test_numbers_brought_in_by_sentences_that_no_rule_knows(brought: str) -> None:
    assert turned_to(brought, *TOLD) == ["24-09", "24-22"]


@pytest.mark.parametrize(
    "passing",
    [
        "It's much the same height as 24-22.",
        "Quilted Heron was the mother, and it shows.",
        "She's by Tin Whistle, no, she's Quilted Heron by Tin Whistle.",
    ],
)
def test_plants_only_named(passing: str) -> None:
    assert turned_to(passing, "It has a good leaf on it, dark and glossy.") == ["24-09"]


def test_a_figure_that_counts_things_is_no_plant() -> None:
    known = on_record(("S40", "S88", "S102", "S115"), ())
    clips = read(
        "right this is s eighty eight and it's pink",
        "had i seen a pallet with forty slabs on it he says",
        "now s one oh two that's white",
        known=known,
    ).clips
    assert [clip.plant.title for clip in clips] == ["S88", "S102"]
