"""To which part a colour belongs."""

import pytest

from tests.reading.said import colours, values


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("It's a soft salmon pink.", {"bloom soft salmon"}),
        ("The flower is white.", {"bloom white"}),
        ("A dark maroon blotch.", {"blotch dark maroon"}),
        ("The throat is cream.", {"throat cream"}),
        ("Cream throat.", {"throat cream"}),
        ("White edge all round.", {"edge white"}),
        ("The upper petals are deep red.", {"upper petals deep red"}),
        (
            "The upper petals are red and the lower petals are pink.",
            {"upper petals red", "lower petals pink"},
        ),
        ("Pink with a white eye.", {"bloom pink", "eye white"}),
        ("It's lavender with purple veins.", {"bloom lavender", "veins purple"}),
        ("The reverse is silver.", {"reverse silver"}),
        ("A white picotee edge on a red ground.", {"edge white", "base red"}),
        ("Pink and white petals.", {"bloom pink", "bloom white"}),
        ("The leaf is dark green.", {"leaf dark green"}),
        ("Dark green leaves with a bronze zone.", {"leaf dark green", "zone bronze"}),
        ("The buds are cream and it opens to apricot.", {"bud cream", "bloom apricot"}),
        ("The whole flower is crimson.", {"bloom crimson"}),
        ("Lovely red feathering on the lower petals.", {"feathering red"}),
        ("It's yellow, with red spots.", {"bloom yellow", "spots red"}),
        ("The stem is purple.", {"stem purple"}),
    ],
)
def test_a_colour_and_its_part(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("It's pink, or rather salmon.", {"bloom salmon"}),
        ("It's red, no, scarlet.", {"bloom scarlet"}),
        ("It's not red, it's scarlet.", {"bloom scarlet"}),
    ],
)
def test_second_thoughts(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    "said",
    [
        "I was hoping for a yellow.",
        "There's no blotch.",
        "It isn't white.",
        "It smells of lemon.",
        "Last year it was pink.",
        "Is it pink?",
    ],
)
def test_no_colour_of_this_plant(said: str) -> None:
    assert colours(said) == set()


@pytest.mark.parametrize(
    ("said", "marking"),
    [
        ("There's a broad stripe down each lower petal.", ["stripe"]),
        ("It's got a dark eye.", ["eye"]),
        ("Heavy feathering on the top petals.", ["feathering"]),
    ],
)
def test_a_marking_without_a_colour(said: str, marking: list[str]) -> None:
    assert values("marking", said) == marking


def test_a_coloured_marking_is_told_once() -> None:
    assert values("marking", "A maroon blotch.") == []
    assert values("marking", "There's no blotch to speak of.") == []


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        # named after its colour, set off
        ("Yellow, the throat.", {"throat yellow"}),
        ("White, and the eye is cerise.", {"bloom white", "eye cerise"}),
        # a bare part before it
        ("Throat? Lemon.", {"throat lemon"}),
        ("The blotch, now, that's what you'd look at, black as your boot.", {"blotch black"}),
        ("The leaf's nicely zoned, and it's a soft pink.", {"bloom soft pink"}),
        # the subject of the clause, however far
        ("The bud's near enough brown.", {"bud brown"}),
        ("The throat, it says here, is a rich gold.", {"throat rich gold"}),
        ("the buds are small but they open up white", {"bloom white"}),
        # where it lies
        ("Crimson top pair, cherry red below.", {"upper petals crimson", "lower petals cherry"}),
        ("Turn it over and it's silver behind.", {"reverse silver"}),
        ("down below they're lavender", {"lower petals lavender"}),
        ("in the bud it's green", {"bud green"}),
        (
            "It's a smoky purple, and black when it's in the bud.",
            {"bloom smoky purple", "bud black"},
        ),
        ("Leaf variegated, cream round the outside.", {"leaf cream"}),
        ("on the back it's nearly silver", {"reverse silver"}),
        ("The beauty of this one is the reverse. Silver, like foil.", {"reverse silver"}),
        ("Its buds show pink before they open.", {"bud pink"}),
        ("Now the eye is what you come for, it's crimson.", {"eye crimson"}),
        ("The netting on it is fine as lace, and it's purple.", {"veins purple"}),
        ("pink with a neat eye and it's a lovely thing", {"bloom pink"}),
        ("Stems very red, nearly maroon.", {"stem red", "stem maroon"}),
        (
            "A tricolour leaf: green, cream and a touch of red.",
            {"leaf cream", "leaf red", "leaf green"},
        ),
        ("The eye? Well, you could call it red, I'd call it cherry.", {"eye cherry"}),
        ("The eye is neat? It's a lovely cherry flower.", {"bloom cherry"}),
        ("The two uppers are the colour of old port, call it burgundy.", {"upper petals burgundy"}),
        ("There's a lot of green in it, in the centre.", {"centre green"}),
        ("On the leaf there's a zone and it's chocolate brown.", {"zone chocolate"}),
        ("The throat, I'd say, has a bit of gold.", {"throat gold"}),
        ("The buds are cream, they turn yellow when they're open.", {"bud cream", "bloom yellow"}),
        ("The backs of the leaves are purple.", {"leaf purple"}),
        ("That's what I call a blotch. Maroon, right in the middle.", {"blotch maroon"}),
        ("If you turn it, the back is apricot.", {"reverse apricot"}),
        (
            "Put down violet for the flower and white for the throat.",
            {"bloom violet", "throat white"},
        ),
        ("Pink all over apart from the throat, which is green.", {"bloom pink", "throat green"}),
        ("Black as your hat, the blotch on it.", {"blotch black"}),
        ("The other thing is the bud, it's nearly black.", {"bud black"}),
        ("The throat, when you get down to it, has a bit of gold.", {"throat gold"}),
        (
            "The uppers have gone plum and the lowers have held their lilac.",
            {"upper petals plum", "lower petals lilac"},
        ),
        ("White, the rim in cerise, the rest pink.", {"bloom white", "edge cerise", "bloom pink"}),
        ("bottom petals lovely soft pink top petals a bit darker", {"lower petals soft pink"}),
        # the verb left out
        ("gold leaf bronze zone salmon flower", {"leaf gold", "zone bronze", "bloom salmon"}),
        ("eye white throat yellow edge violet", {"eye white", "throat yellow", "edge violet"}),
        (
            "top petals burgundy bottom petals mauve",
            {"upper petals burgundy", "lower petals mauve"},
        ),
        (
            "The lower petals are mauve and the upper ones a full purple.",
            {"lower petals mauve", "upper petals purple"},
        ),
        # pointed at
        ("Now the buds, funny enough, are green and pink.", {"bud green", "bud pink"}),
        ("White all over, bar the eye, and that's cherry.", {"bloom white", "eye cherry"}),
        ("What I like is the stem, it's long and it's nearly black.", {"stem black"}),
        ("What I like is the stem, it's nearly black.", {"stem black"}),
        # told on from another colour
        ("What a throat on it, gold, pure gold.", {"throat pure gold"}),
        ("The leaf is green splashed with cream.", {"leaf green", "leaf cream"}),
        ("Upper petals black. Rest of it, wine.", {"upper petals black", "lower petals wine"}),
        ("No eye, but a smudge of yellow low down in the throat.", {"throat yellow"}),
        ("Coral, with a bit of cream about the edges.", {"bloom coral", "edge cream"}),
        ("It's a cherry red from edge to edge.", {"bloom cherry"}),
        (
            "On the top two, a blotch of maroon. Round the edge, a thread of white.",
            {"blotch maroon", "edge white"},
        ),
        ("Blotches. Big ones. Mahogany, I suppose you'd call them.", {"blotch mahogany"}),
        ("It's the stems that get you, nearly black.", {"stem black"}),
        ("Its eye's gone from plum to something like black.", {"eye black"}),
        ("Cream, with maroon netting over the top pair.", {"bloom cream", "veins maroon"}),
        ("Pink, with the veining picked out in cerise.", {"bloom pink", "veins cerise"}),
        ("The petal is feathered in plum.", {"feathering plum"}),
        ("Reverse of the petals, mind, is another animal: silver.", {"reverse silver"}),
        ("The three lower ones are a clean pale rose.", {"lower petals pale rose"}),
        ("The three below are white. Each white petal has a stripe.", {"lower petals white"}),
        ("The young growth's bronze.", {"leaf bronze"}),
        ("There is a blotch, but you have to look for it, a smoky rose.", {"blotch smoky rose"}),
        ("Spots on the lower petals, brick red.", {"spots red"}),
        ("The throat holds a good deal of yellow.", {"throat yellow"}),
        (
            "Lavender, but the top two which have a splash of wine.",
            {"bloom lavender", "upper petals wine"},
        ),
        ("Bit of bronze in the young leaf.", {"leaf bronze"}),
        ("White with green tips to the petals.", {"bloom white", "edge green"}),
        ("I like the stripe, it's crimson.", {"stripe crimson"}),
        ("It's magenta, it can't get any more magenta.", {"bloom magenta"}),
        ("Lemon, and a blotch on the lemon.", {"bloom lemon"}),
        ("White, with a cerise thread round each.", {"bloom white", "edge cerise"}),
        ("Look how the veins stand out, black as wire.", {"veins black"}),
        (
            "The backs don't match: silver where the fronts are scarlet.",
            {"reverse silver", "bloom scarlet"},
        ),
        ("They're wine to look at, the upper petals.", {"upper petals wine"}),
        (
            "You see this blotch, because it's not black, it's a very dark green.",
            {"blotch dark green"},
        ),
        ("Leaves mid green, zoned in bronze.", {"leaf green", "zone bronze"}),
        ("The veins make it, they're a deep crimson on the lower petals.", {"veins deep crimson"}),
        ("Not a bad colour, cherry.", {"bloom cherry"}),
        (
            "The uppers have a blotch, and the lower ones have nothing, just clear pink.",
            {"lower petals pink"},
        ),
        ("Deepest in the middle, where it's nearly plum.", {"centre plum"}),
        ("There's a purple smudge on each upper petal.", {"blotch purple"}),
        ("Yellow at the throat shading out through cream.", {"throat yellow"}),
        ("The leaf is the making of it. Gold all spring.", {"leaf gold"}),
        ("The blotch sits low on the top petals and it's plum.", {"blotch plum"}),
        ("It's edged, ever so thinly, in silver.", {"edge silver"}),
        ("The eye's there all right, small and crimson.", {"eye crimson"}),
        ("A wine colour with a silver back.", {"bloom wine", "reverse silver"}),
        ("The pink goes right to the edge.", {"bloom pink"}),
        ("Whatever they say about orange, this is red.", {"bloom red"}),
        ("You'd have to call it burgundy.", {"bloom burgundy"}),
    ],
)
def test_the_part_spoken_of(said: str, expected: set[str]) -> None:
    assert colours(said) == expected


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("Rub the leaf and it's pure lemon.", set()),
        ("It's lemon, pure lemon.", {"bloom pure lemon"}),
        ("The sky was that pink this morning.", set()),
        ("It's the same pink as the sky.", {"bloom pink"}),
        ("It's more lilac than mauve.", {"bloom lilac"}),
        ("Deep red verging on burgundy.", {"bloom deep red"}),
        ("The council's painted the gate blue.", set()),
        ("The gate's blue and the flower's white.", {"bloom white"}),
        ("Somebody at the club grows a blue one.", set()),
        ("It's a blue one.", {"bloom blue"}),
        ("They all came pink, except this, and it's purple.", {"bloom purple"}),
        ("The petals, they all have a pink edge.", {"edge pink"}),
        ("She's pink herself and this has come magenta.", {"bloom magenta"}),
        ("It's pink and this has come early.", {"bloom pink"}),
        ("Seed off Copper Beadle.", set()),
        ("There was a purple haze over the allotments.", set()),
        ("I put a blue dot on the pot.", set()),
        ("It's a red beauty of a plant.", {"bloom red"}),
        ("Three of them were mauve.", set()),
        ("The last one had a white eye.", set()),
        ("There's more pink in Hobnail than in this.", set()),
        ("It wants to be blue but it's a violet.", {"bloom violet"}),
        ("I had it down as a violet.", set()),
        ("I'd dearly like one in pure white.", set()),
        ("It might go purple in the cold.", set()),
        ("I'll go with coral.", {"bloom coral"}),
        ("I've had a white out of this cross.", set()),
        ("She's got her mother's white throat.", {"throat white"}),
        ("The greenhouse is green with algae.", set()),
        ("The shade is a lovely pink.", {"bloom pink"}),
        ("There's white on the compost, some mould.", set()),
        ("It's the cream of the crop.", set()),
        ("It's white on the lower petals.", {"lower petals white"}),
        ("I crossed a red with a white.", set()),
        ("Out of a good home, and it's white.", {"bloom white"}),
        ("That whitish bloom on the leaf rubs off.", set()),
        ("The pollen's orange.", set()),
        ("Those yellow sticky traps are covered.", set()),
        ("Yon red thing at the end.", set()),
        ("I'd banked on a mauve.", set()),
        ("Not so much pink as salmon.", {"bloom salmon"}),
        ("It's lost the white edge it had.", set()),
        ("Got black spot on it.", set()),
        ("I'll put its pollen on the yellows.", set()),
        ("There was a frost, white over the whole field.", set()),
        ("Somebody's left an orange on the bench.", set()),
        ("I'd call it an orange.", {"bloom orange"}),
        ("There's a brown slug trail over it.", set()),
        ("It's written on a yellow one.", set()),
        ("Wexholt Plum. The upper petals are cerise.", {"upper petals cerise"}),
        ("Eye White, Throat Lemon.", {"eye white", "throat lemon"}),
        ("I've a fiver on it being white.", set()),
        ("Pink, if I'm lucky.", set()),
        ("The lowers are lilac where 140 is white.", {"lower petals lilac"}),
        ("Everything around it grey with mildew.", set()),
        ("The flower's nothing much, a pale pink thing.", {"bloom pale pink"}),
        ("Only my nails are red.", set()),
        ("The lip is red.", {"bloom red"}),
        ("There's a rose by the door.", set()),
        ("We'll have a glass of wine.", set()),
        ("Coral's what I'd call it; Jean would call it salmon.", {"bloom coral"}),
        ("You'd call it salmon.", {"bloom salmon"}),
        ("It was blue I was breeding for.", set()),
        ("I swapped a magenta for it.", set()),
        ("Pass us that green can.", set()),
        ("Purple flowers don't sell.", set()),
        ("Purple flowers, and small.", {"bloom purple"}),
        ("All I could see was red.", set()),
        ("The label says lilac.", set()),
        ("Every colour from white to black.", set()),
        ("Her last three were all salmon.", set()),
        ("Pure white, not so much as a whisker of pink in it.", {"bloom pure white"}),
        ("The judges like a clean white.", set()),
        ("I wouldn't give you tuppence for a brown flower.", set()),
        ("There's two whites and a red still to open.", set()),
        ("The cross was meant to put a white edge on it.", set()),
        ("There's a robin's nest, blue eggs and all.", set()),
        ("My sister grows the white form.", set()),
        ("Tell me whether it's red.", set()),
        ("She likes orange, does my wife.", set()),
        ("The pond's gone green.", set()),
        ("I'd a lovely white here last year.", set()),
        ("You'd get mauve from that.", set()),
        ("No white, no cream, nothing pale.", set()),
        ("They bred this for the white centre. It hasn't got one.", set()),
        ("I can picture it with a cherry edge.", set()),
        ("There's a wee green frog under it.", set()),
        ("I'm chasing a true blue.", set()),
        ("It'd look well beside something purple.", set()),
        ("My glasses make everything look yellow.", set()),
        ("A pink would sell better.", set()),
    ],
)
def test_colours_that_are_not_the_plants(said: str, expected: set[str]) -> None:
    assert colours(said) == expected
