"""What is taken back at once falls; what is said instead takes its place."""

import pytest

from tests.reading.said import colours, values


@pytest.mark.parametrize(
    ("said", "trait", "expected"),
    [
        ("It's a single, no, sorry, semi-double.", "bloom_form", ["semi-double"]),
        ("I'll keep it, or rather, no, it can go on the compost.", "decision", ["discard"]),
        ("It's five centimetres across, I mean six.", "bloom_diameter", [60]),
        ("Heap. No, hang on, I'm being hasty. Another year.", "decision", ["watch"]),
        ("Keep it. Actually, take some cuttings of it too.", "decision", ["keep", "propagate"]),
    ],
)
def test_the_last_word_counts(said: str, trait: str, expected: list[object]) -> None:
    assert values(trait, said) == expected


@pytest.mark.parametrize(
    "said",
    [
        "Fenmarsh Lad is the mother. No, other way round, Fenmarsh Lad's the father.",
        "The seed parent is Fenmarsh Lad, sorry, wrong way about, he's the mother no longer, "
        "the pollen parent is Fenmarsh Lad.",
    ],
)
def test_parents_the_other_way_round(said: str) -> None:
    assert values("pollen_parent", said) == ["Fenmarsh Lad"]
    assert values("seed_parent", said) == []


def test_what_replaces_a_colour_takes_its_part() -> None:
    assert colours("The throat is white, no, cream.") == {"throat cream"}


def test_two_things_side_by_side_both_stand() -> None:
    assert colours("It's pink, with a white eye.") == {"bloom pink", "eye white"}
    assert values("habit", "Compact and bushy.") == ["compact", "bushy"]


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("Red. Well, I say red. Cherry, more like.", {"bloom cherry"}),
        ("Mauve, would you say? I'd say plum.", {"bloom plum"}),
        ("I told you to write coral. Cross that out and put salmon.", {"bloom salmon"}),
        ("You'd call it pink, but it's a dusky mauve.", {"bloom dusky mauve"}),
        ("It's a plum, isn't it, a deep plum.", {"bloom deep plum"}),
        ("he says it's red i say it's cerise", {"bloom cerise"}),
        ("You'd think it was white until you look, and then it's cream.", {"bloom cream"}),
        ("Photographs pink. It isn't, it's cerise.", {"bloom cerise"}),
        ("I said lavender on the day it opened, now it's lilac.", {"bloom lilac"}),
        ("It was sold to me as purple. It's pink.", {"bloom pink"}),
        ("It's yellow, well, more of a cream really.", {"bloom cream"}),
        ("What they would have called puce and I call brown.", {"bloom brown"}),
        ("It was white this morning and it's pink now.", {"bloom pink"}),
        ("A brown blotch to the uppers, well, no, bronze is fairer.", {"blotch bronze"}),
        ("It's not quite white, it's got a bit of cream about it.", {"bloom cream"}),
        ("With a yellow edge, or rather gold.", {"edge gold"}),
        (
            "The throat is white, or so I took it to be last night, but no doubt it's cream.",
            {"throat cream"},
        ),
        ("Raspberry or cerise, yes, cerise.", {"bloom cerise"}),
        ("I'd call it pink, with a mauve edge.", {"bloom pink", "edge mauve"}),
        ("It's pink, and the bottom ones are lilac.", {"bloom pink", "lower petals lilac"}),
    ],
)
def test_a_colour_gives_way_to_a_better_one(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


def test_a_marking_denied_at_once_was_none() -> None:
    assert values("marking", "There's a stripe, no, it's not a stripe, it's veins.") == ["veins"]


def test_a_marking_asked_for_and_denied_is_none() -> None:
    assert values("marking", "Stripes? Not one.") == []
    assert values("marking", "Stripes? Plenty.") == ["stripe"]


def test_what_is_spotted_by_the_speaker_is_no_marking() -> None:
    assert values("marking", "I've spotted something.") == []
    assert values("marking", "The petals are spotted.") == ["spots"]


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("Purple, I'd have said indoors. Outside it's cerise.", {"bloom cerise"}),
        ("I'd have said purple.", {"bloom purple"}),
        (
            "it's orange you'd say from there but it isn't when you get close it's salmon",
            {"bloom salmon"},
        ),
        ("it's white it isn't big it has a pink eye", {"bloom white", "eye pink"}),
        ("himself says purple but himself is colour blind it's magenta", {"bloom magenta"}),
        ("Red. Scratch that, I was looking through the netting. It's cerise.", {"bloom cerise"}),
        ("It's an orange, it's not, not in the daylight, that's a salmon.", {"bloom salmon"}),
        ("Orange. What am I saying, orange, it's scarlet.", {"bloom scarlet"}),
        ("I think it's white, but there's a hint of lemon.", {"bloom white", "bloom hint lemon"}),
        ("burgundy would be the color no i take that back it's a wine", {"bloom wine"}),
        ("I was certain it was violet on Sunday; it's plum.", {"bloom plum"}),
        ("he's orange no what am i on about he's salmon", {"bloom salmon"}),
    ],
)
def test_a_colour_that_was_only_a_first_guess(said: str, expected: set[str]) -> None:
    assert colours(said) == expected
