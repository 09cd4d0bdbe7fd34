"""Whether a likeness is asserted, or denied, wished for, asked about, said by others."""

from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions

_UNSAID = {Habit.WISH, Habit.QUESTION, Habit.DENIAL, Habit.REPORTED, Habit.HYPOTHETICAL}
_JUST_BEFORE = 3
_DENYING = frozenset({"not", "hardly", "scarcely"})
_NO_DENIAL = frozenset({"help", "half", "only", "just", "but", "whether"})


def denied_just_before(mentions: Mentions, at: int) -> bool:
    """ "It's not the spit of A", "not to be muddled with A"; not "I can't help thinking of A",
    "if that isn't the spit of A".
    """
    talk = mentions.talk
    low = max(talk.clause(at)[0] if talk.punctuated else 0, at - _JUST_BEFORE)
    words = talk.texts[low:at]
    denied = next((n for n, w in enumerate(words) if w in _DENYING), None)
    if denied is None or _NO_DENIAL & set(words):
        return False
    return "if" not in talk.texts[max(0, low + denied - _JUST_BEFORE) : low + denied]


_GUESSING = frozenset("swear sworn said say thought think guess guessed taken told".split())
_AGREED_WITHIN = 6


def unsaid(mentions: Mentions, start: int, end: int, stop: int) -> bool:
    """Under a habit of speech that does not assert; the cue's own "I'd have" is none.

    "my wife says it's like A, and she's right" is asserted after all.
    """
    habits = {
        scope.habit
        for at in range(start, end)
        for scope in mentions.scopes.by_token[at]
        if scope.habit in _UNSAID and not start <= scope.cue < end
    }
    if _GUESSING & set(mentions.talk.texts[start:end]):
        habits -= {Habit.HYPOTHETICAL}  # "with no label I'd have sworn it was A"
    if habits == {Habit.REPORTED}:
        return not mentions.cue("agreed", stop, stop + _AGREED_WITHIN)
    return bool(habits)
