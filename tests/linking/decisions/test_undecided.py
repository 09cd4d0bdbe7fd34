"""Decisions nearly made, somebody else's, foolish, conditional or long past do not hold."""

import pytest

from tests.reading.said import values


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ("I was going by the label, but it's a keeper.", "keep"),
        ("I'd keep it if I were you, and I will.", "keep"),
        ("It may simply need a bigger pot, so I'll give it one.", "repot"),
        ("Grandad says it needs a bigger pot, so we're doing that after lunch.", "repot"),
        ("My husband would throw it out, but I'll give it one more February.", "watch"),
        ("I'll use it as a parent if the pollen's any good.", "breed"),
        ("The wife says bin it, so I'll bin it.", "discard"),
        ("I'd be daft to lose it.", "keep"),
        ("I put it on the show bench.", "show"),
        ("My wife thinks not, so it shall have another year.", "watch"),
        ("i did say at easter i'd bin it and i'm not going to it's staying put", "keep"),
        ("That one was binned on Tuesday.", "discard"),
        ("i've written bin on the label and i'm sticking to it", "discard"),
        ("It's won its place.", "keep"),
        ("I am sorry to say this one is for the fire.", "discard"),
        ("I see no reason to keep it.", "discard"),
        ("I put its own pollen on it last week.", "breed"),
        (
            "It can sulk as long as it likes, and it's going to be the mother plant next year.",
            "breed",
        ),
    ],
)
def test_it_holds(said: str, decision: str) -> None:
    assert values("decision", said) == [decision]


@pytest.mark.parametrize(
    "said",
    [
        "I throw out half of them every year.",
        "You take cuttings of everything.",
        "I had a good name for it but I've forgotten.",
        "It's not one I would breed from.",
        "It needs a drink more than it needs a bigger pot.",
        "I was going to throw it out.",
        "I very nearly binned it.",
        "I can't see it making the show bench.",
        "My wife would bin it.",
        "They'd bin it.",
        "You'd throw that out, wouldn't you?",
        "I'm asked whether I name them after pupils.",
        "no wait till i get it out of the shade",
        "it's coral when you look at it straight",
        "I had it marked down for the tip on account of the orange.",
        "Our Susan wants to call it Sue's Blue.",
        "It's got a bit of blackfly in the tip.",
        "It was to have gone on the fire with the prunings.",
        "Bin it, says he.",
        "The day I throw that one out he's going with it.",
        "i did think of crossing him with copper lantern",
        "The man at the garden centre tried to sell me a bigger pot.",
        "They wanted me to take it to the show and I wouldn't.",
        "I'd propagate it if I knew the parents.",
        "I don't know that it's worth a bigger pot.",
        "I'd keep it if it had any colour.",
        "If it does nothing by June it's for the heap.",
        "Breeding from it would be madness.",
        "It'd be a crime to bin it.",
        "It went to the show and got nowhere.",
        "It was on the heap.",
    ],
)
def test_it_does_not_hold(said: str) -> None:
    assert values("decision", said) == []
