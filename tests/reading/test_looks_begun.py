"""Where a look is told afresh in captions."""

import pytest

from tests.reading.said import caption_colours, mentions


@pytest.mark.parametrize(
    ("said", "begun"),
    [
        ("that went to my wife white with a maroon feather", "white with"),
        ("the mother was hobnail deep crimson with dark feathering", "deep crimson"),
        ("she's no child of mine salmon with a white throat", "salmon with"),
        ("twenty years i've had it cerise single and a good grower", "cerise single"),
        ("never mind the ticket bright violet magenta eye", "bright violet"),
        ("five years it stood doing nothing scarlet on a yellow ground", "scarlet on"),
        ("i've lost the docket for that plum all over", ""),
        ("he came a muddy white with an eye", ""),
        ("she's candyfloss pink with a white eye", ""),
        ("the one that was white with an eye", ""),
        ("upper petals plum with a dark blotch", ""),
        ("i binned the lot red tape and all", ""),
        ("It went to my wife, white with a maroon feather.", ""),
    ],
)
def test_where_a_look_is_told_afresh(said: str, begun: str) -> None:
    heard = mentions(said)
    starts = [" ".join(heard.talk.texts[i : i + 2]) for i in sorted(heard.looks)]
    assert starts == ([begun] if begun else [])


def test_what_went_before_is_not_said_of_the_look() -> None:
    assert caption_colours(
        "not to be taken for twenty three forty which went to my wife",
        "white with a maroon feather up the top petals",
    ) == {"bloom white", "feathering maroon"}
