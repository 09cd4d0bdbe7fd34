"""Parents in the usual wordings.

That the seed parent stands first in a cross is ICN Rec. H.2A.1 (Shenzhen Code 2018: the
female first) and the usage of pedigree records (`A/B` and `A x B`: A female).
"""

import pytest

from tests.reading.said import observed


def parents(*said: str) -> dict[str, object]:
    """What is told of the plant's origin."""
    traits = ("seed_parent", "pollen_parent", "sport_of", "pollination")
    return {o.trait: o.value for o in observed(*said) if o.trait in traits}


CROSS = {"seed_parent": "Fenmarsh Lad", "pollen_parent": "Copper Lantern"}


@pytest.mark.parametrize(
    "said",
    [
        "It's Fenmarsh Lad crossed with Copper Lantern.",
        "It's Fenmarsh Lad by Copper Lantern.",
        "It's Fenmarsh Lad times Copper Lantern.",
        "That's Fenmarsh Lad with Copper Lantern's pollen on it.",
        "Fenmarsh Lad was the mother and Copper Lantern was the father.",
        "The seed parent was Fenmarsh Lad and the pollen came from Copper Lantern.",
        "It's out of Fenmarsh Lad by Copper Lantern.",
        "Fenmarsh Lad, with Copper Lantern put to her.",
        "Mother, Fenmarsh Lad. Father, Copper Lantern.",
        "Fenmarsh Lad, seed parent; Copper Lantern, pollen parent.",
        "Fenmarsh Lad was the pod, Copper Lantern was the pollen.",
        "I crossed Copper Lantern onto Fenmarsh Lad.",
        "It's Fenmarsh Lad fertilised by Copper Lantern.",
        "It's by Copper Lantern out of Fenmarsh Lad.",
        "Pollen from Copper Lantern went on to Fenmarsh Lad.",
        "The parents are Fenmarsh Lad and Copper Lantern.",
        "Fenmarsh Lad, seed; Copper Lantern, pollen.",
        "This has Fenmarsh Lad for a mother and Copper Lantern for a father, God help it.",
        "The mum's definitely Fenmarsh Lad and the dad's obviously Copper Lantern.",
        "I pollinated Fenmarsh Lad with Copper Lantern.",
        "Its parents are Fenmarsh Lad, which bore the seed, and Copper Lantern.",
        "The mother of this was Fenmarsh Lad and I used Copper Lantern on her.",
        "She had Fenmarsh Lad for a mammy and Copper Lantern for a da.",
        "Seed from Fenmarsh Lad, pollen by courtesy of Copper Lantern.",
        "Fenmarsh Lad is the mother, and I dusted it with Copper Lantern.",
        "I took Copper Lantern's pollen and put it on Fenmarsh Lad.",
        "Fenmarsh Lad was his mother and Copper Lantern his father.",
        "I took Fenmarsh Lad and dusted her with Copper Lantern.",
        "Fenmarsh Lad got the pollen, and the father's not Hobnail at all, it's Copper Lantern.",
    ],
)
def test_the_seed_parent_first(said: str) -> None:
    assert parents(said) == CROSS


def test_numbers_are_parents_too() -> None:
    assert parents("It's twenty-two fourteen crossed with Copper Lantern.") == {
        "seed_parent": "22-14",
        "pollen_parent": "Copper Lantern",
    }


@pytest.mark.parametrize("said", ["It's Fenmarsh Lad selfed.", "It's a selfing of Fenmarsh Lad."])
def test_selfed(said: str) -> None:
    told = parents(said)
    assert told["seed_parent"] == "Fenmarsh Lad"
    assert told["pollination"] == "selfed"


@pytest.mark.parametrize(
    "said",
    [
        "Fenmarsh Lad, open pollinated.",
        "It's a bee-pollinated seedling of Fenmarsh Lad.",
        "Mother was Fenmarsh Lad. Father, ask the bees.",
        "A bairn of Fenmarsh Lad, and the bees set the seed.",
        "Fenmarsh Lad, bees.",
        "Bee's work, on Fenmarsh Lad.",
        "Off Fenmarsh Lad, that one. Open pollinated.",
        "It's off Fenmarsh Lad and it was the bees, not me.",
    ],
)
def test_open_pollinated(said: str) -> None:
    told = parents(said)
    assert told == {"seed_parent": "Fenmarsh Lad", "pollination": "open"}


def test_the_branch_of_a_sport_tells_of_what() -> None:
    told = "A branch of Copper Lantern that changed its mind, so it's a sport."
    assert parents(told) == {"sport_of": "Copper Lantern"}


def test_a_sport_has_no_second_parent() -> None:
    assert parents("It's a sport of Copper Lantern.") == {"sport_of": "Copper Lantern"}


@pytest.mark.parametrize(
    "said",
    [
        "I can't remember the pollen parent.",
        "It isn't from Fenmarsh Lad.",
        "I might cross it with Copper Lantern next year.",
        "It's bigger than Fenmarsh Lad.",
        "It's the father of Copper Lantern.",
        "Copper Lantern's mother was Fenmarsh Lad.",
        "The flower's got the bees queueing for it.",
        "I did wonder was Fenmarsh Lad the father.",
        "I gave the seed of Fenmarsh Lad away.",
        "I gave the pollen of Fenmarsh Lad to my cousin.",
        "I dusted it with Copper Lantern this morning.",
    ],
)
def test_no_parents_told(said: str) -> None:
    assert parents(said) == {}


@pytest.mark.parametrize(
    "said",
    [
        "It's from Fenmarsh Lad, and it was Copper Lantern that gave the pollen.",
        "I pollinated Fenmarsh Lad with Copper Lantern.",
        "I took Copper Lantern's pollen and put it on Fenmarsh Lad.",
        "Parents: Fenmarsh Lad, seed. Copper Lantern, pollen.",
        "Fenmarsh Lad was her mother and Copper Lantern was her father.",
        "Fenmarsh Lad carried the pod and Copper Lantern obliged with the pollen.",
        "The parents are Fenmarsh Lad and, on the pollen side, Copper Lantern.",
        "By descent it is Fenmarsh Lad, pollinated from Copper Lantern.",
        "It's a love child of Fenmarsh Lad and Copper Lantern.",
        "Breeding, Fenmarsh Lad the seed, Copper Lantern the pollen.",
    ],
)
def test_who_gave_what(said: str) -> None:
    assert parents(said) == CROSS


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("I selfed Hobnail to get it.", {"seed_parent": "Hobnail", "pollination": "selfed"}),
        (
            "I got it by leaving Hobnail to the bees.",
            {"seed_parent": "Hobnail", "pollination": "open"},
        ),
        ("It's a sport that turned up on Hobnail.", {"sport_of": "Hobnail"}),
        ("The father was one of me own, 22-14.", {"pollen_parent": "22-14"}),
        ("The father's Hobnail or it's Tilly Marsh, take your pick.", {}),
        ("I thought its mother was Hobnail but it isn't.", {}),
        ("I had a plant of Hobnail go down with that.", {}),
        ("I'm selfing her here and now, that's her own pollen on the brush.", {}),
        ("I took Hobnail's pollen and put it in the fridge.", {}),
        (
            "It's Hobnail on her own pollen.",
            {"seed_parent": "Hobnail", "pollination": "selfed"},
        ),
        (
            "It was raised from Hobnail by self-pollination.",
            {"seed_parent": "Hobnail", "pollination": "selfed"},
        ),
        (
            "It's what we got from selfing Hobnail.",
            {"seed_parent": "Hobnail", "pollination": "selfed"},
        ),
        (
            "That was Hobnail and then the bees saw to the rest of it.",
            {"seed_parent": "Hobnail", "pollination": "open"},
        ),
        ("The bees did the job on Hobnail.", {"seed_parent": "Hobnail", "pollination": "open"}),
        ("The seed was gathered off Hobnail.", {"seed_parent": "Hobnail"}),
        ("The pollen came from the plant you've just seen, 22-14.", {"pollen_parent": "22-14"}),
        ("The pollen come off Hobnail.", {"pollen_parent": "Hobnail"}),
        ("Seed from Hobnail, the father is not known.", {"seed_parent": "Hobnail"}),
        ("It will be used as a seed parent next month, with Hobnail supplying the pollen.", {}),
        ("I'm using it for a mother next month, with Hobnail for the father.", {}),
        ("I've Hobnail's pollen on the brush for the next one.", {}),
        ("Hobnail took that class three years running.", {}),
        ("My mum's Hobnail on her sill is twice the plant.", {}),
        ("A child of Hobnail, is it? Well, your guess is as good as mine.", {}),
        ("He had something of the sort out of Hobnail.", {}),
        ("Open pollinated, off Hobnail.", {"seed_parent": "Hobnail", "pollination": "open"}),
        ("It's the same selfing. It has a blotch.", {"pollination": "selfed"}),
        (
            "It's crimped like a pie crust and Hobnail 's the mum.",
            {"seed_parent": "Hobnail"},
        ),
        ("Hobnail crossed with Tilly Marsh is what I want to try next.", {}),
        ("I'd swear this was a Hobnail seedling if I hadn't made the cross myself.", {}),
        ("Mum unknown, dad Hobnail, so the tag says.", {"pollen_parent": "Hobnail"}),
        ("Hobnail left open for the bees.", {"seed_parent": "Hobnail", "pollination": "open"}),
    ],
)
def test_one_parent_or_none(said: str, told: dict[str, object]) -> None:
    assert parents(said) == told
