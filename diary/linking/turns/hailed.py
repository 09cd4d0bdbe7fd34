"""A plant with no number spoken to, or asked about: "hello, who let you in?", "who's this?".

Leaves alone "gave one to a fellow who lost the label" and "as you can see".
"""

from diary.reading.mentions import Mentions

_SOMEBODY = frozenset(
    "somebody someone man woman lady people those anyone gentleman couple".split()
)


def asked_who(mentions: Mentions, before: tuple[str, ...]) -> bool:
    """ "Who's this, I've lost the label"; not "gave one to a fellow who lost the label"."""
    people = mentions.vocabulary.classes["person"] | _SOMEBODY
    return any(
        w == "what" or (w == "who" and (n == 0 or before[n - 1] not in people))
        for n, w in enumerate(before)
    )


def addressed(words: tuple[str, ...]) -> bool:
    """ "You've no label, have you", "nobody's written anything on you"; not "as you can see"."""
    return any(
        w == "you"
        and (
            words[n - 1 : n] in (("on",), ("for",), ("of",), ("to",))
            or words[n + 1 : n + 2]
            in (("'ve",), ("have",), ("'re",), ("are",), ("never",), ("got",))
        )
        for n, w in enumerate(words)
    )


_HAILED = frozenset({"you", "this", "here"})
_ASKING = frozenset({"whose", "who", "what", "where", "how", "why", "which"})


def hailed_before(mentions: Mentions, start: int, stop: int) -> bool:
    """ "Hello, who let you in?", "what on earth is this?": a plant is greeted just before."""
    words = mentions.talk.texts[start:stop]
    asked = mentions.talk.between(stop - 1, stop, ("?",)) if stop else False
    return asked and bool(_HAILED & set(words)) and bool(_ASKING & set(words[:4]))
