"""A colour without a part is the flower's only where something says so."""

import pytest

from tests.reading.said import caption_colours, colours, read


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("Salmon, with a white eye.", {"bloom salmon", "eye white"}),
        ("Nice clear pink, no fuss.", {"bloom pink"}),
        ("And what a red.", {"bloom red"}),
        ("Comes a right washed-out lilac.", {"bloom lilac"}),
        ("It's that old-fashioned sort of rose.", {"bloom rose"}),
        ("There's your apricot.", {"bloom apricot"}),
        ("I make that a cerise.", {"bloom cerise"}),
        ("Petals of a thick creamy white.", {"bloom cream"}),
        ("Flowering now, in scarlet.", {"bloom scarlet"}),
        (
            "It's white at the heart and a pale salmon everywhere else.",
            {"centre white", "bloom pale salmon"},
        ),
        ("Her orange never fades.", {"bloom orange"}),
        ("I must wash the brown off my hands.", set()),
        ("A petunia is over it, and that purple is nothing to do with me.", set()),
        ("I promised Mrs Pell a white.", set()),
        ("I've marked it in red.", set()),
        ("He's sat beside the yellow.", set()),
        ("I've still got the pink from last year.", set()),
        ("The mother, Hobnail, is scarlet.", set()),
    ],
)
def test_what_is_said_of_the_flower(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("about eight inches high pale pink with a white eye", {"bloom pale pink", "eye white"}),
        ("there's no tag in the pot at all peach i'd call that", {"bloom peach"}),
        ("so what have we got we've got a mauve", {"bloom mauve"}),
        ("the body of it is plum", {"bloom plum"}),
        ("it's between the red and the tap", set()),
        ("i had to borrow the wife's pink for it", set()),
    ],
)
def test_in_captions(said: str, expected: set[str]) -> None:
    assert caption_colours(said) == expected


def test_what_nothing_says_is_the_flowers_is_only_proposed() -> None:
    (clip,) = read("This is 23-04.", "I must wash the brown off my hands.").clips
    assert [o.value for o in clip.observations] == []
    assert [o.value for o in clip.proposals] == ["brown"]


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("It has faded in the sun to a pale peach.", {"bloom pale peach"}),
        ("The lower petals thin out to a pale rose.", {"lower petals pale rose"}),
        ("The label has faded to white.", set()),
        ("The flower is tiny, a single, in the palest pink.", {"bloom pale pink"}),
        ("He's a sort of tawny bronze.", {"bloom bronze"}),
        ("What I've got is a wishy-washy pink.", {"bloom pink"}),
    ],
)
def test_what_it_has_become(said: str, expected: set[str]) -> None:
    assert colours(said) == expected
