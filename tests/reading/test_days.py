"""Days said aloud, and what is a day of something else."""

from datetime import date

import pytest

from diary.reading.days import find_days
from tests.reading.said import talk

JUNE_2 = date(2031, 6, 2)


def heard(said: str, recorded: date | None = JUNE_2) -> list[date]:
    """The days heard."""
    return [d.day for d in find_days(talk(said), recorded)]


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("It's the second of May.", date(2031, 5, 2)),
        ("So this is the ninth now.", date(2031, 6, 9)),
        ("Today is the twenty-first of June.", date(2031, 6, 21)),
        ("Right, it's June the fourth today.", date(2031, 6, 4)),
        ("It's Tuesday the third.", date(2031, 6, 3)),
        ("It's the 14th of June.", date(2031, 6, 14)),
        ("It's the first of June twenty thirty-one.", date(2031, 6, 1)),
        ("Today is the thirtieth.", date(2031, 6, 30)),
        ("It's 5 July today.", date(2031, 7, 5)),
        ("Resumed, Saturday the seventh of June; same frame.", date(2031, 6, 7)),
        ("Ninth of June, half past six.", date(2031, 6, 9)),
        ("That's us on the fifth of June, then.", date(2031, 6, 5)),
        ("We're at the sixth of June now.", date(2031, 6, 6)),
        ("What follows I wrote down on Friday the sixth.", date(2031, 6, 6)),
        ("Now this is a second visit, on Monday the ninth of June.", date(2031, 6, 9)),
        ("The card is dated Monday the ninth.", date(2031, 6, 9)),
        ("Picking up again on the ninth.", date(2031, 6, 9)),
        ("Right, new day, the tenth.", date(2031, 6, 10)),
        ("As of today, the ninth of June, it's still shut.", date(2031, 6, 9)),
        ("I'm recording this part on the ninth of June.", date(2031, 6, 9)),
        ("The rest of this is from the ninth of June.", date(2031, 6, 9)),
        ("Morning all, Tuesday the tenth of June, and a fine one.", date(2031, 6, 10)),
        ("A week on now, so the tenth of June.", date(2031, 6, 10)),
        ("okay picking this up again on the 16th of june", date(2031, 6, 16)),
        ("So it's a week later.", date(2031, 6, 9)),
        ("Three days later, and we're back, because it rained.", date(2031, 6, 5)),
        ("I resume on Monday the ninth of June.", date(2031, 6, 9)),
        ("this next bit now we took on saturday the seventh because it was out", date(2031, 6, 7)),
        ("I'm back ten days later.", date(2031, 6, 12)),
        ("Next day now.", date(2031, 6, 3)),
        ("It's the following Monday now.", date(2031, 6, 9)),
        ("three days later now and i'm back", date(2031, 6, 5)),
        ("Looked at on Friday, the thirtieth of May.", date(2031, 5, 30)),
        ("This one was filmed on the first of June.", date(2031, 6, 1)),
    ],
)
def test_the_day_it_is(said: str, day: date) -> None:
    assert heard(said) == [day]


@pytest.mark.parametrize(
    "said",
    [
        "The show is on the sixteenth.",
        "My next visit is on the sixteenth.",
        "It should be out by the tenth of July.",
        "It's the first flower on it.",
        "It's the second year of trying.",
        "It may go on the heap.",
        "This is the third one of the cross.",
        "I sowed it on the fifth of March.",
        "By the ninth of June I'll know.",
        "That's the third pair this year.",
        "It's the first out in here every year.",
        "I'll be back on the ninth of June.",
        "Back on the ninth, all being well.",
        "A week later it was dead.",
        "Five came up. This is the fifth.",
        "I have five. It's the fifth.",
        "This cross I made on Thursday the fifth.",
        "It flowers a week later than its sister.",
        "It's two weeks later this year.",
        "It's a week after flowering.",
        "The next day I'm out I'll do it.",
        "It's the ninth bud on it.",
        "This is the second I opened.",
        "It was on the eighth of May that I sowed it.",
    ],
)
def test_days_of_other_things(said: str) -> None:
    assert heard(said) == []


def test_a_day_that_does_not_exist_is_none() -> None:
    assert heard("It's the thirty-first of June.") == []


def test_without_a_year_nothing_can_be_said() -> None:
    assert heard("It's the second of May.", None) == []
    assert heard("It's the second of May 2031.", None) == [date(2031, 5, 2)]
