"""Stretches that do not assert: for each habit of speech what it covers and leaves alone."""

import pytest

from diary.reading.habits.scope import Habit
from diary.reading.habits.scopes import find_scopes
from diary.reading.vocabulary import load_vocabulary
from tests.reading.said import talk


def habits(said: str, word: str) -> frozenset[Habit]:
    """The habits that hold over a word of the sentence."""
    words = talk(said)
    return find_scopes(words, load_vocabulary()).habits(words.texts.index(word))


@pytest.mark.parametrize(
    ("said", "word"),
    [
        ("There's no scent to speak of.", "scent"),
        ("It isn't red.", "red"),
        ("I wouldn't call it orange.", "orange"),
        ("It hasn't got a blotch.", "blotch"),
        ("There is not a trace of rust.", "rust"),
    ],
)
def test_denials(said: str, word: str) -> None:
    assert Habit.DENIAL in habits(said, word)


@pytest.mark.parametrize(
    ("said", "word"),
    [
        ("No, it's pink.", "pink"),
        ("It isn't red but pink.", "pink"),
        ("It's not very big but it is a double.", "double"),
        ("It's pink. There is no blotch.", "pink"),
    ],
)
def test_no_denial(said: str, word: str) -> None:
    assert Habit.DENIAL not in habits(said, word)


@pytest.mark.parametrize(
    ("said", "word"),
    [
        ("I was hoping for a yellow.", "yellow"),
        ("I wish it was scented.", "scented"),
        ("I'd love a white one.", "white"),
    ],
)
def test_wishes(said: str, word: str) -> None:
    assert Habit.WISH in habits(said, word)


@pytest.mark.parametrize(
    ("said", "word"),
    [("I wanted it double.", "double"), ("I like them tall.", "tall"), ("Wish it was red.", "red")],
)
def test_what_is_wanted_of_it(said: str, word: str) -> None:
    assert Habit.WISH in habits(said, word)


@pytest.mark.parametrize("said", ["I like it, it's double.", "I like them all, the double ones."])
def test_what_is_liked_in_it(said: str) -> None:
    assert Habit.WISH not in habits(said, "double")


def test_what_comes_instead_of_the_wish_is_told() -> None:
    assert Habit.WISH not in habits("I was hoping for a yellow but it's pink.", "pink")
    assert Habit.WISH not in habits("I love the white edge.", "white")


@pytest.mark.parametrize(
    ("said", "word"),
    [
        ("Is it scented?", "scented"),
        ("And has it got any rust?", "rust"),
        ("Whether it's scented I couldn't say.", "scented"),
        ("there's five buds on it is it scented i can't tell", "scented"),
    ],
)
def test_questions(said: str, word: str) -> None:
    assert Habit.QUESTION in habits(said, word)


def test_a_tag_asks_nothing() -> None:
    assert Habit.QUESTION not in habits("It's leggy, isn't it?", "leggy")
    assert Habit.QUESTION not in habits("Is that right? It's leggy.", "leggy")


@pytest.mark.parametrize(
    ("said", "word"),
    [
        ("Last year it had mildew.", "mildew"),
        ("It had rust last season.", "rust"),
    ],
)
def test_history(said: str, word: str) -> None:
    assert Habit.HISTORY in habits(said, word)


def test_history_ends_where_the_present_is_told() -> None:
    assert Habit.HISTORY not in habits("Last year it had mildew, but it's clean now.", "clean")
    assert Habit.HISTORY not in habits("It's more compact than last year.", "compact")


@pytest.mark.parametrize(
    ("said", "word"),
    [
        ("People tell me it's like a regal.", "regal"),
        ("They say it's scented.", "scented"),
    ],
)
def test_hearsay(said: str, word: str) -> None:
    assert Habit.REPORTED in habits(said, word)


def test_one_s_own_judgement_is_no_hearsay() -> None:
    assert Habit.REPORTED not in habits("I'd say it's scented.", "scented")


@pytest.mark.parametrize(
    ("said", "word"),
    [
        ("If it was a double I'd keep it.", "double"),
        ("If it were scented it would be perfect.", "scented"),
    ],
)
def test_hypotheticals(said: str, word: str) -> None:
    assert Habit.HYPOTHETICAL in habits(said, word)


def test_a_condition_does_not_reach_the_next_sentence() -> None:
    assert Habit.HYPOTHETICAL not in habits("See if it lasts. It's a double.", "double")


@pytest.mark.parametrize(
    ("said", "word"),
    [
        ("I can't remember the pollen parent.", "pollen"),
        ("I don't remember how many seeds I sowed.", "seeds"),
    ],
)
def test_what_is_not_remembered(said: str, word: str) -> None:
    assert Habit.NOT_RECALLED in habits(said, word)


def test_what_is_remembered() -> None:
    assert Habit.NOT_RECALLED not in habits("I remember the pollen parent.", "pollen")


@pytest.mark.parametrize(
    ("said", "word"),
    [
        ("She asked whether it was scented, and there's no eye to it.", "eye"),
        ("It's what they call a stellar.", "stellar"),
    ],
)
def test_hearsay_ends_where_the_plant_is_told(said: str, word: str) -> None:
    assert Habit.REPORTED not in habits(said, word)
