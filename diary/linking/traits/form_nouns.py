"""The form of the flower as a noun with any word before it: "a neat double", "an honest single".

Leaves alone "a double pot", "a single low branch", "like a double" and "not a proper double".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_NOUNS = {
    "double": "double",
    "single": "single",
    "semi": "semi-double",
    "trumpet": "trumpet",
    "stellar": "stellar",
    "spider": "spider",
    "rosebud": "rosebud",
}
_NOT_BEFORE = frozenset(
    "of like as than not no never every each semi the on in for to from with without half nearly "
    "almost".split()
)
_CLOSING = frozenset(
    "and but with so too mind this that it she he i which who really though if you then".split()
)
_BACK = 3


def form_nouns(mentions: Mentions) -> Iterator[Statement]:
    """ "a neat double", where the noun closes its clause."""
    talk = mentions.talk
    for at, text in enumerate(talk.texts):
        value = _NOUNS.get(text)
        if value is None or mentions.masked[at]:
            continue
        start = _article(mentions, at)
        if start is not None and _closes(mentions, at):
            yield Statement(
                trait="bloom_form",
                value=value,
                start=start,
                end=at + 1,
                rule="a form of the flower as a noun",
                score=0.86,
            )


def _article(mentions: Mentions, at: int) -> int | None:
    talk = mentions.talk
    low = max(talk.clause(at)[0], at - _BACK)
    for i in range(at - 1, low - 1, -1):
        if talk.texts[i] in ("a", "an"):
            before = talk.texts[i - 1 : i]
            return None if before and before[0] in _NOT_BEFORE else i
        if talk.texts[i] in _NOT_BEFORE:
            return None
    return None


def _closes(mentions: Mentions, at: int) -> bool:
    talk = mentions.talk
    if at + 1 >= len(talk.texts) or talk.tokens[at].mark or talk.clause(at)[1] == at + 1:
        return True
    return talk.texts[at + 1] in _CLOSING
