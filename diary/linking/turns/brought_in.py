"""Whether a number or a name is brought in, or named only to be set aside."""

from diary.linking.turns.walk import UNSAID
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions, Ref

_SHOWN_AFTER = (
    ("next",),
    ("is", "next"),
    ("here",),
    ("over", "here"),
    ("is", "this", "one"),
    ("which", "is", "this"),
    ("comes", "next"),
    ("'s", "next"),
    ("you", "'re", "next"),
    ("there", "we", "are"),
    ("here", "we", "are"),
    ("now",),
    ("again",),
)


_SMALL = frozenset(
    "the a an this that is be to it was number again even quite with confused mixed mix "
    "up actually one ones".split()
)


def set_aside(mentions: Mentions, ref: Ref, moved_from: int | None = None) -> bool:
    """ "not twenty-three forty", "this isn't K12": the number is named to be set aside.

    `moved_from` is where words begin that move on to it: what was asked or wished before them
    ("shout if you want one, next to him S308") does not reach it.
    """
    texts = mentions.talk.texts
    if (
        texts[max(0, ref.start - 2) : ref.start] == ("not", "the")
        and not mentions.talk.tokens[ref.start - 2].mark
    ):
        return True  # "which isn't the 31-6 I got muddled with"
    for scope in mentions.scopes.by_token[ref.start]:
        if scope.habit is Habit.DENIAL:
            between = texts[scope.cue + 1 : ref.start]
            if all(t in _SMALL or t in ("not", "look", "at", "bother") for t in between):
                return True
        elif moved_from is not None and scope.cue < moved_from:
            continue
        elif scope.habit in UNSAID and (mentions.talk.punctuated or ref.start - scope.cue <= 6):
            return True
    return False


def shown_after(mentions: Mentions, ref: Ref) -> bool:
    rest = mentions.talk.texts[ref.end : ref.end + 3]
    return any(rest[: len(words)] == words for words in _SHOWN_AFTER)
