"""Borders of a leaf, what has just been brought in, and what was once."""

import pytest

from tests.reading.said import caption_colours, colours, values


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("The leaf has a cream margin to it.", {"leaf cream"}),
        ("Every leaf is edged in white.", {"leaf white"}),
        ("There's a thin yellow edge to each leaf.", {"leaf yellow"}),
        ("Nice leaf, and a white edge to the flower.", {"edge white"}),
        ("The flower has a white margin and the leaf is plain.", {"edge white"}),
    ],
)
def test_the_border_of_a_leaf_is_the_leafs(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("There's a zone on the leaf, a dark brown one.", {"zone dark brown"}),
        ("It has a blotch, a small black one.", {"blotch black"}),
        ("It's a nice shape, and it's a red one.", {"bloom red"}),
    ],
)
def test_one_of_what_was_just_told(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


def test_one_of_them_in_captions() -> None:
    assert caption_colours("it's got a stripe down the petal a red one") == {"stripe red"}


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("It came up with yellow leaves, but it has greened up since.", set()),
        ("The buds were green for weeks and they've coloured up red.", {"bud red"}),
        ("It came white and it has stayed white.", {"bloom white"}),
        ("Salmon. Or it was last week; it has faded to a sort of shell pink.", {"bloom pink"}),
        ("Red. Well, it was red yesterday. This morning it's cerise.", {"bloom cerise"}),
    ],
)
def test_what_was_once(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("Magenta, and not a good magenta either.", {"bloom magenta"}),
        ("It's pink, but not a pink you'd want twice.", {"bloom pink"}),
        ("It's pink, not the white I was promised.", {"bloom pink"}),
        ("White, well, not white, I'd call it cream.", {"bloom cream"}),
        ("Pink, whatever the judge says about lilac.", {"bloom pink"}),
        ("There are white specks flying up when I knock it.", set()),
        ("There are white specks all over the petals.", {"spots white"}),
        ("Two petals with a black smudge, and three without.", {"blotch black"}),
        ("A smudge of yellow low down in the throat.", {"throat yellow"}),
        ("The veins running out in crimson.", {"veins crimson"}),
        ("There's a pencilling of crimson on each petal.", {"veins crimson"}),
        (
            "Wine on the top petals, and the bottom ones a shade lighter, call it rose.",
            {"upper petals wine", "lower petals rose"},
        ),
        ("The petal tips are green.", {"edge green"}),
    ],
)
def test_judged_promised_and_drawn(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


def test_from_tip_to_tip_is_no_edge() -> None:
    assert values("marking", "Five centimetres from petal tip to petal tip.") == []
    assert values("marking", "I've pencilled it in for the show.") == []


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("A bit of rust, orange spots underneath the leaf.", set()),
        ("The leaf has brown patches.", set()),
        ("Purple spots on the petals.", {"spots purple"}),
        ("Mum was white and dad was white, so go figure.", set()),
        ("The stems go nearly black in the sun.", {"stem black"}),
        ("There's white on the compost.", set()),
        ("It's white with green tips.", {"bloom white", "edge green"}),
        ("Bronze tips to the shoots.", {"bloom bronze"}),
        ("It's red, not dark red.", {"bloom red"}),
        ("It's not dark red, it's plain pink.", {"bloom pink"}),
    ],
)
def test_blemishes_tips_and_other_shades(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("I had one like this years back, and it was yellow by comparison.", set()),
        ("I'd a sister of this, and she was cerise.", set()),
        ("I had a look at it last week and it was red.", {"bloom red"}),
        ("There's a red version of this at a friend's place.", set()),
        ("There's a white halo where the two meet.", set()),
        ("It's salmon bar the throat.", {"bloom salmon"}),
        ("Muddy mauve, brown where the petals are going over.", {"bloom mauve"}),
        ("It's brown, where you'd expect a red.", {"bloom brown"}),
        ("It's not out, but the bud's showing colour and it's plum.", {"bud plum"}),
        ("White, and I mean refrigerator white.", {"bloom white"}),
        ("Candyfloss pink.", {"bloom pink"}),
    ],
)
def test_others_once_had_rings_decay_and_buds(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("The throat's white right through.", {"throat white"}),
        ("The eye stays a clear cerise all through.", {"eye cerise"}),
        ("It's white right through.", {"bloom white"}),
        ("The petals are cream on the reverse.", {"reverse cream"}),
        (
            "It's mauve on the lower petals and plum on the upper.",
            {"lower petals mauve", "upper petals plum"},
        ),
        ("The ground is white, the flush upon it lilac.", {"base white", "flush lilac"}),
        ("Look at the zone on that leaf, it's nearly brown.", {"zone brown"}),
        (
            "White, feathered crimson, and the crimson bleeds a little.",
            {"bloom white", "feathering crimson"},
        ),
    ],
)
def test_the_part_named_goes_before_the_flower_as_a_whole(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


def test_where_a_colour_lies_in_captions() -> None:
    said = "flip one over they're silver on the back how good is that"
    assert caption_colours(said) == {"reverse silver"}
    said = "upper petals burgundy near as makes no odds bottom ones pink and a silver rim"
    assert caption_colours(said) == {"upper petals burgundy", "lower petals pink", "edge silver"}
    said = "top petals a dark burgundy bottom petals a pale rose and that is about all"
    assert caption_colours(said) == {"upper petals dark burgundy", "lower petals pale rose"}


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        (
            "It's pink, with a cherry line drawn down each of the lower petals.",
            {"bloom pink", "stripe cherry"},
        ),
        ("Round the rim of every petal there's a thin cherry line.", {"edge cherry"}),
        ("There's a yellow line on the path.", set()),
        ("The leaf is cut nearly to the midrib and it's silver.", {"leaf silver"}),
        ("The leaf is nicely zoned, and it's a soft pink.", {"bloom soft pink"}),
        ("There's rot in it, just above the soil, as black as your boot.", set()),
        ("The older blooms go off brown at the edges.", set()),
        ("What's them silvery marks again, that's thrips.", set()),
        ("I should explain the labels: white for my own, and yellow for a friend's.", set()),
        ("I write for children who think purple is a personality.", set()),
        ("Three crosses pencilled in. The stems are a dark red.", {"stem dark red"}),
        ("Joan says there's a purple eye in there, and there's no eye at all.", set()),
        ("Eye white, says the book, and I see none.", set()),
        ("My aunt called it purple, and it's a magenta.", {"bloom magenta"}),
    ],
)
def test_lines_leaves_and_what_is_no_look(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        (
            "soft peach on the face when you turn it over the back's a bit pinker call it rose",
            {"bloom soft peach", "reverse rose"},
        ),
        (
            "leaf's gold when it's young and it goes green as it gets older",
            {"leaf gold", "leaf green"},
        ),
        ("it's got a throat like a lemon drop proper yellow that is", {"throat yellow"}),
        ("it's salmon with stripes in a deeper salmon", {"bloom salmon", "stripe salmon"}),
        ("margaret would have it that's purple but she would say that", set()),
        ("the leaf's gold and it goes pink", {"leaf gold", "bloom pink"}),
    ],
)
def test_what_a_colour_in_captions_is_of(said: str, expected: set[str]) -> None:
    assert caption_colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("The centre glows orange.", {"centre orange"}),
        ("It's ivory, and the eye's a speck of gold.", {"bloom ivory", "eye gold"}),
        ("It has a speck of gold on each petal.", {"spots gold"}),
        ("I've a mind to put it across something cream.", set()),
        ("At first the picotee was green, but it's bleached out since.", set()),
        (
            "It's salmon with a darker blotch, which is where the salmon in all these comes from.",
            {"bloom salmon"},
        ),
        ("And the foliage? Green, slightly bronzed at the margins.", {"leaf green", "leaf bronze"}),
    ],
)
def test_what_it_is_one_of_and_where_it_comes_from(said: str, expected: set[str]) -> None:
    assert colours(said) == expected
