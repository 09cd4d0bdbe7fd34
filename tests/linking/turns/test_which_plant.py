"""Which plant is talked of: named in passing, without a number, gone back to by its looks."""

import pytest

from tests.linking.turns.test_turns import plants
from tests.reading.said import read

FIRST = ("Right, first up is twenty-three oh four.", "It's pink with a white eye.")


@pytest.mark.parametrize(
    "passing",
    [
        "Twenty-three eleven that used to stand beside it was crawling with greenfly.",
        "Twenty-three eleven died on me.",
        "Twenty-three eleven I lost to the frost.",
        "Where twenty-three eleven is all leaf, this one flowers its head off.",
        "So does twenty-three eleven, but that's just thirst.",
        "Don't ask me about twenty-three eleven.",
        "I thought it was twenty-three eleven for a minute but no.",
        "Nothing on twenty-three eleven for size.",
        "This is Tilly Marsh put to itself.",
        "What it brings to mind, oddly, is Tilly Marsh.",
        "The neighbour swears it's Tilly Marsh.",
        "The father's not twenty-three eleven at all, it's twenty-two fourteen.",
        "Half the size of 23-11, and 23-11's no giant.",
        "If 23-11 comes up to this I'll be pleased.",
        "I'd have said 23-11 was darker.",
        "23-11 is not on the bench today.",
        "Tilly Marsh fathered it.",
        "Both it and 23-11 came from the same pod.",
        "Two sisters of it, 23-11 and 23-40, were composted.",
        "See also 23-11, same cross.",
        "You remember 23-11, I dare say.",
        "My wife likes 23-11 better.",
        "It came up alongside 23-11 and I parted them.",
        "I sold 23-11 at the spring fair.",
        "That's the Tilly Marsh coming out.",
        "So is 23-11, but 23-11's single.",
        "Its pollen went on 23-11 and 23-40.",
        "Last year's pick was 23-11; this beats it.",
        "The father of this lot is Tilly Marsh.",
        "23-11 beats it hands down.",
        "It shaded out poor old 23-11.",
        "I took the pot that 23-11 was in.",
        "That's 23-11 dead and gone, so this is all that's left.",
        "This one takes me back to Tilly Marsh in her prime.",
        "Bin that broken label, would you.",
        "The ticket's dropped off, I'll push it back in.",
        "Its label says single.",
        "Its mother, Tilly Marsh, drooped.",
        "That's the mother, Tilly Marsh.",
        "I've got Tilly Marsh already, so I don't need it.",
        "The father's Copper Lantern or it's Tilly Marsh.",
        "I'll give away a Tilly Marsh when the door opens.",
        "That's the sensible thing to do.",
        "The seed packet had no label.",
        "The pollen parent I can't give you, the ink has run.",
        "The father's half of the tag got rained on.",
        "There's a label missing from the box.",
        "It isn't in the book yet.",
        "It's a stray pollen job, that, I reckon.",
        "Lower petals, unmarked.",
        "Not a mark on it.",
        "This is what Tilly Marsh should have been.",
        "The tag's gone brittle, but you can still read it.",
        "And then there's one bud on the plant.",
        "There's no number on the packet.",
        "There's Tilly Marsh in it somewhere.",
        "I know what Tilly Marsh looks like.",
        "Its label's half gone, I'd better do another.",
        "Another one for the show, I'd say.",
        "No idea who the father is.",
        "That's Tilly Marsh for you, always throwing doubles.",
        "Next year I'll put Tilly Marsh on it.",
        "In the corner there's a tap that drips.",
        "Down at the base there's one bud on the plant.",
        "Not a patch on Tilly Marsh, is it.",
        "Shades of an old friend, Tilly Marsh.",
        "Pollen from the usual suspect, Tilly Marsh.",
        "I shall write it a new label.",
    ],
)
def test_in_passing(passing: str) -> None:
    assert plants(*FIRST, passing, "The leaf is zoned.") == ["23-04"]


def test_a_number_told_apart_from_one_that_sounds_like_it() -> None:
    assert plants("This is 23-40.", "Forty, mind; 23-04 is over yonder.") == ["23-40"]


@pytest.mark.parametrize(
    "shown",
    [
        "This one, your guess is as good as mine.",
        "This poor soul's tag has been washed clean.",
        "Now this one here, the slugs had the label.",
        "Over by the tap there's one I never gave a number to.",
        "And this fella, goodness knows who he is.",
        "It could be 23-11 or it could be 23-40, this one.",
        "The next one's writing has all run.",
        "Here's one that escaped numbering.",
        "I've not got round to numbering this one.",
        "The label on that one's been eaten.",
        "And there's this wee one with nae label.",
        "This seedling hasn't been given a number yet.",
        "Its left-hand neighbour never had so much as a number.",
        "A seedling of I know not what. No label.",
        "This is the one whose label the cat used as a toothpick.",
        "The one in the blue pot hasn't got a number.",
        "And what have we here? It came up in the gravel.",
        "This little beggar, I couldn't say where he came from.",
        "Then comes Anonymous; her stick went in the bonfire by mistake.",
        "This wee thing, I haven't a notion what it is.",
        "This one came with no history whatever, a gift in a plain pot, unlabelled.",
        "The third pot has no label.",
        "The third part has no label.",
        "The little thing behind it lost its tag in the spring.",
        "There's a seedling here that I never got round to numbering.",
        "I've a self-sown one here in the gravel.",
        "Something has come up in the tray that isn't in the book.",
        "Basket by the door, stick missing.",
        "By the tap is one with no tag.",
        "This pot's label has been got at by snails.",
        "Hello, who let you in? No label, no number.",
        "And a wee stray that seeded itself in the path.",
        "You're not on my list, are you?",
        "What on earth is this one? It isn't on the plan.",
        "The one keeping it company has no tag to call its own.",
        "Half hidden by the fan is a seedling I've no record of.",
        "Number unknown, this next.",
        "The second from the end hasn't got anything written on it.",
        "Moving along, there's an empty label and a very full pot.",
        "Pot in the sink, unmarked.",
        "I dropped the tray in March, so what this one is, heaven alone knows.",
        "The last pot must have come from a friend, for there's nothing on the label.",
        "Then there's one that came up where I'd tipped the compost.",
        "No number on the next one, it must have washed off.",
        "There's a thing here that I can't account for at all.",
        "Who might you be? Nobody's written anything on you.",
        "The twin of that, but with its label missing.",
        "This big fella, I never did get a number on him.",
        "The label in the next pot is a blank.",
        "Squashed in between is a late arrival nobody numbered.",
        "Pot seven, tag illegible.",
        "A bonus seedling, this, that came up in another pot.",
        "And down at your feet there, that's no seedling, that's a sport off the windowsill.",
        "Over by the water butt there's a fine young seedling.",
    ],
)
def test_without_its_number(shown: str) -> None:
    assert plants(*FIRST, shown, "It's red with a yellow throat.") == ["23-04", "?"]


@pytest.mark.parametrize(
    "back",
    [
        "And him with the blank label.",
        "That spotty one has come on well.",
        "The foundling again, I see.",
        "Oh, and the spotty one by the tap.",
        "One more word on the spotty: three heads.",
        "Him by the tap, by the way, has three heads.",
        "As for that one by the tap, three heads.",
        "The spotty one, before I forget, has three heads.",
        "Let me just go back a step, to the spotty one.",
        "I should have said of the spotty one that it has three heads.",
    ],
)
def test_back_by_its_looks(back: str) -> None:
    shown = ("This one by the tap has no label.", "Red spots all over.")
    assert plants(*FIRST, *shown, "Next is 23-11.", "It's white.", back) == [
        "23-04",
        "?",
        "23-11",
        "?",
    ]


@pytest.mark.parametrize(
    "other",
    [
        "The pink ones do better.",
        "It's like the spotty one, this.",
        "I think that's the red thing to do.",
        "The eye is a red one.",
        "The old plant I'm throwing out with its spots.",
    ],
)
def test_no_way_back(other: str) -> None:
    shown = ("This one by the tap has no label.", "Red spots all over.")
    assert plants(*FIRST, *shown, "Next is 23-11.", "It's white.", other) == ["23-04", "?", "23-11"]


@pytest.mark.parametrize(
    ("called", "again"),
    [
        ("I'll call it Smudge.", "Smudge, meanwhile, has three heads."),
        ("We'll call her the lodger.", "And the lodger has three heads."),
        ("Old Scratch, I call him.", "Old Scratch has three heads, I see."),
        ("Known as the gatecrasher, in this house.", "Back to the gatecrasher: three heads."),
    ],
)
def test_back_by_its_nickname(called: str, again: str) -> None:
    shown = ("This one by the tap has no label.", called)
    assert plants(*FIRST, *shown, "Next is 23-11.", "It's white.", again)[2:] == ["23-11", "?"]


@pytest.mark.parametrize(
    ("called", "again"),
    [
        ("I'd call it salmon.", "Salmon, would you believe."),
        ("I'll call it a day soon.", "A day is long."),
        ("I'll call it Smudge.", "I'd have taken it for Smudge."),
    ],
)
def test_no_nickname(called: str, again: str) -> None:
    shown = ("This one by the tap has no label.", called)
    assert plants(*FIRST, *shown, "Next is 23-11.", "It's white.", again)[2:] == ["23-11"]


def test_what_is_denied_tells_no_plant() -> None:
    coral = "It's a bonny coral, with a white eye, and four centimetres across when I measured it."
    said = ("This one has no label.", coral, "The plant is twenty centimetres tall and compact.")
    other = ("Just behind it is one without a label.", "White, and none of the coral.")
    clips = read(*said, *other, "Next is 23-11.", "It's white.", "Back to the coral one.").clips
    assert [c.plant.label for c in clips if c.plant.label] == [
        "unnamed 1",
        "unnamed 2",
        "unnamed 1",
    ]


def test_back_to_a_numbered_plant_by_its_looks() -> None:
    said = ("Next is 23-11.", "It's white.", "Now the pink one again: three heads.")
    assert plants(*FIRST, *said) == ["23-04", "23-11", "23-04"]


@pytest.mark.parametrize(
    "shown",
    [
        "Where's Tilly Marsh got to?",
        "And Tilly Marsh itself is here at its elbow.",
        "Tilly Marsh I keep here for a yardstick.",
        "This is the old mother herself, Tilly Marsh.",
        "Tilly Marsh behind it is sulking.",
        "Right, Tilly Marsh.",
        "Tilly Marsh, ladies and gentlemen.",
        "I've brought Tilly Marsh out to stand alongside.",
        "And here's its old man, Tilly Marsh.",
        "And here is its mother, Tilly Marsh, which most of you know.",
        "Its mother, Tilly Marsh, is the one in the basket.",
        "That's the mother of it, Tilly Marsh, up in the basket.",
        "Alongside it I have stood Tilly Marsh, purely as a yardstick.",
        "Tilly Marsh itself, for the record.",
        "Tilly Marsh is sitting right behind it.",
        "A shop plant now, for contrast: Tilly Marsh.",
        "Behind the pair of them towers Tilly Marsh.",
        "Up on the shelf is its father, Tilly Marsh.",
        "She's called Tilly Marsh and I've had her years.",
        "This is what Tilly Marsh looks like.",
        "I keep a Tilly Marsh beside it so I can tell them apart.",
        "And its father's in that tub: Tilly Marsh.",
        "Now for something I didn't raise: Tilly Marsh.",
        "That big lump in the corner is Tilly Marsh.",
        "Behind that one, Tilly Marsh.",
        "In the corner, Tilly Marsh, and it's an old plant.",
        "Then old faithful, Tilly Marsh.",
        "Not one of mine, this: Tilly Marsh.",
        "You all know Tilly Marsh, and here it is.",
        "Speaking of Tilly Marsh, there she is, up on the hook.",
        "At the back there I've stood Tilly Marsh so you can see.",
        "And Tilly Marsh is beside the tap, looking sorry for itself.",
        "Mother's at the end of the row. Tilly Marsh, as I live and breathe.",
    ],
)
def test_a_name_shown(shown: str) -> None:
    assert plants(*FIRST, shown, "It's red.") == ["23-04", "Tilly Marsh"]


def test_a_child_is_shown_and_is_no_parent() -> None:
    said = ("And its kid is 23-11 with the pollen of 23-40.", "It's red.")
    assert plants(*FIRST, *said) == ["23-04", "23-11"]


def test_one_without_a_label_after_another() -> None:
    said = ("No label. White, and frilled.", "No label. Red.", "Next is 23-11.")
    assert plants(*FIRST, "Next is 24-07.", "It's white.", *said)[2:] == ["?", "?", "23-11"]


def test_numbers_on_either_side() -> None:
    said = ("That's Tilly Marsh on the left, white, and 23-11 on the right, pink.",)
    assert plants(*said) == ["Tilly Marsh", "23-11"]


def test_a_look_at_two_numbers() -> None:
    assert plants("a quick look at 23 04 and a quick look at 23 11") == ["23-04", "23-11"]


@pytest.mark.parametrize(
    "said",
    [
        ("Twenty-four oh seven next. Not in the book yet, that.",),
        ("Twenty-four oh seven. It isn't in the book.", "That's a volunteer."),
        ("This is twenty-four oh seven, which is not on the list.",),
    ],
)
def test_a_number_just_given_lacks_none(said: tuple[str, ...]) -> None:
    assert plants(*FIRST, *said, "It's mauve.") == ["23-04", "24-07"]
