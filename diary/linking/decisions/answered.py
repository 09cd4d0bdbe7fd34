"""Questions the speaker answers himself: "Should I keep it? Of course I shall." keeps.

"Bin it? Never." keeps too. A question left open ("what would you do, keep it?") decides
nothing, and a tag ("that's a keeper, isn't it?") is no question.
"""

from enum import Enum

from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.tokens import QUERY

_ASKING = frozenset(
    "is are am should shall will would do does did can could what who why how which where has "
    "have".split()
)
_ASKING_I = (("shall", "i"), ("shall", "we"), ("should", "i"), ("should", "we"))
_LEADS = frozenset("and so but well now then or right".split())
_SHORT, _ANSWER_WITHIN = 5, 3


class Answer(Enum):
    """What follows a decision that is asked."""

    NOT_ASKED = "not asked"
    YES = "yes"
    NO = "no"
    OPEN = "open"


def answer(mentions: Mentions, found: Found) -> Answer:
    """Whether the decision is asked, and what the answer is."""
    talk = mentions.talk
    start, stop = talk.sentence(found.start)
    if talk.punctuated:
        head = next((i for i in range(start, stop) if talk.texts[i] not in _LEADS), start)
        asks = talk.tokens[stop - 1].mark == QUERY and (
            talk.texts[head] in _ASKING or stop - start <= _SHORT
        )
    else:
        asks = Habit.QUESTION in mentions.scopes.habits(found.start, found.end)
        shall_i = talk.texts[found.start - 2 : found.start] in _ASKING_I
        asks = asks or (shall_i and not talk.texts[found.start].startswith("'"))
        stop = found.end
    if not asks:
        return Answer.NOT_ASKED
    for said, habit in ((Answer.YES, "answer_yes"), (Answer.NO, "answer_no")):
        cues = mentions.cue(habit, stop, stop + _ANSWER_WITHIN)
        if any(talk.texts[cue.end : cue.end + 1] != ("not",) for cue in cues):
            return said
    return Answer.OPEN
