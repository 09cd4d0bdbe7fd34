"""What is to become of a plant, and its denial."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("That's a keeper.", "keep"),
        ("I'll definitely keep this one.", "keep"),
        ("That'll go on the compost.", "discard"),
        ("That's one for the bin.", "discard"),
        ("I'll give it another year.", "watch"),
        ("I'll take some cuttings of it.", "propagate"),
        ("I'll use it as a parent.", "breed"),
        ("That's going on the show bench.", "show"),
        ("It deserves a name.", "name"),
        ("It needs potting on.", "repot"),
        # frames: a plant, a verb of staying, a place
        ("It's stopping with us.", "keep"),
        ("That's earned a spot on the top shelf.", "keep"),
        ("I couldn't part with him now.", "keep"),
        ("That one I'm keeping.", "keep"),
        # verbs of throwing, places of waste
        ("Yank it out and be done.", "discard"),
        ("In a bag and in the dustbin, him.", "discard"),
        ("That gets the fork.", "discard"),
        ("Time to say cheerio to this one.", "discard"),
        # spans of patience
        ("Another twelvemonth.", "watch"),
        ("One more spring, no longer.", "watch"),
        ("Back in the trial row for another twelve months.", "watch"),
        ("Judgement deferred until the autumn.", "watch"),
        # more of it
        ("Half a dozen cuttings wanted off that.", "propagate"),
        ("We bulk it up from February.", "propagate"),
        ("I'll do half a dozen off it on Tuesday.", "propagate"),
        ("This one's for slips.", "propagate"),
        # nobody else's, a mind made up
        ("Nobody's getting her off me.", "keep"),
        ("They'd best not try, they'll have to prise it out of my hands.", "keep"),
        ("I've made my mind up about a name: Pepper Gate.", "name"),
        ("I'm doing five off her before the frost.", "propagate"),
        ("We've made our minds up on a name, it's Gorse Lane.", "name"),
        ("I'll decide come the back end.", "watch"),
        # its pollen, its seed
        ("Its pollen's for Copper Lantern tomorrow.", "breed"),
        ("This one's going in the stud.", "breed"),
        # places of showing
        ("I'm staging it at the county.", "show"),
        ("It goes in a vase on the eighteenth.", "show"),
        ("It gets christened this winter.", "name"),
        ("It gets a bigger one tonight.", "repot"),
        ("Wants shifting up.", "repot"),
        ("It goes before the judges at the village hall.", "show"),
        ("I'll have it on our table at the county show.", "show"),
        ("i said wait no bin it", "discard"),
        # whole clauses
        ("So that goes.", "discard"),
        ("No, she stays.", "keep"),
        # a want and a deed
        ("It wants rooting.", "propagate"),
        ("Needs christening, does this.", "name"),
        ("Not going to be growing it again.", "discard"),
        ("Back under the bench till the spring.", "watch"),
        ("It can father the next lot.", "breed"),
        ("That's going into the permanent bed.", "keep"),
        ("Put it down for class four.", "show"),
        # dismissals, places of waste, fodder
        ("That gets its cards.", "discard"),
        ("Into the chook bucket.", "discard"),
        ("That's compost fodder.", "discard"),
        ("One-way ticket to the brush pile.", "discard"),
        ("So I'm afraid it's the green bin.", "discard"),
        ("Marked to cull.", "discard"),
        # approval, a place that is safe
        ("I've no intention of losing this one.", "keep"),
        ("She's not for parting with.", "keep"),
        ("Marked to keep.", "keep"),
        ("Hold for review in September.", "watch"),
        ("I want a dozen of these by spring.", "propagate"),
        ("She'll make a grand wee mother.", "breed"),
        ("I took pollen off it this morning.", "breed"),
        ("It gets my vote.", "keep"),
        ("Its place on the bench is quite safe.", "keep"),
        ("Not on your nelly am I chucking that.", "keep"),
        ("One last summer, then we'll know.", "watch"),
        ("She's in the waiting room.", "watch"),
        ("We could do with half a dozen more of these.", "propagate"),
        ("I'm making a mother out of this one.", "breed"),
        ("It's time this had a proper handle.", "name"),
        ("It's climbing out of its pot.", "repot"),
        ("it's been in that yoghurt pot long enough", "repot"),
        ("I'll pot up some offsets.", "propagate"),
        ("There's a dozen tips on it and I'm having four of them.", "propagate"),
        ("I'm not going to say yet.", "watch"),
        ("The kindest thing is the bonfire.", "discard"),
        ("We've decided to call it Moonraker.", "name"),
        ("I'll put it to Copper Lantern this week, in May as ever.", "breed"),
        ("I've made up my mind to name it for my sister.", "name"),
        ("I mean to put its pollen on anything that'll stand still.", "breed"),
        ("i know i said keep but i'm getting rid of it sorry", "discard"),
        ("I have not decided, and it will be inspected again in twelve months.", "watch"),
        ("It can stop where it is till I drop.", "keep"),
        # done before, and to be done again
        ("I divided it in September, so I'll be doing the same again this year.", "propagate"),
        ("I've bred from it three times and I'll do it again.", "breed"),
        ("I'm putting a bit of Copper Lantern on her tonight.", "breed"),
    ],
)
def test_decisions(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "I won't be breeding from it.",
        "I haven't decided about it.",
        "I'm not going to name it.",
        "The compost is too wet.",
        "It's thrown five new shoots since.",
        "I can't take credit for it.",
        "It's tall and leggy with nothing to show for it.",
        "That's an error, I'll strike it out.",
        "It's got a hold of my sleeve.",
        "I'd have to call it weak.",
        "That's all the ones that are out.",
        "It's off in quarantine from tonight.",
        "I must amend the entry for last year.",
        "I always keep the vents open in here.",
        "She wants four bags of compost.",
        "The compost's come up lovely.",
        "I got a name for being tidy once.",
        "The kettle's on, it'll keep.",
        "Keep your fingers off the blooms, please.",
        "Watch this, the petals close if you breathe on them.",
        "The mother of this was Copper Lantern.",
        # not the whole clause
        "Cerise it stays.",
        "She goes back on the bench.",
        "I'm taking no cuttings of it.",
        "I've had it on the bench at the village show twice.",
        "Another year gone by.",
        "It isn't going anywhere near a show.",
        "It might get a name some day.",
        "It goes and goes.",
        "He waits till I start talking.",
        "It's the pick of the bunch.",
        "Three pound eighty a pot, that would pay for the compost.",
        "so it's gone dead leggy",
        "That's the pot that was on the heap, I rinsed it.",
        "Let me move it into the light.",
        "We go to the show on Saturday.",
        "Up to the top shelf now.",
    ],
)
def test_no_decision(said: str) -> None:
    assert values("decision", said) == []
