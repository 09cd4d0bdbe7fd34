"""A name cut to its last word: "a sport of Nettie" for Plain Nettie, "Lucy is the redder".

Only where the word belongs to one name on record and to no other vocabulary, and where it is
written as a name or the whole name was said before. Leaves alone "like a lantern", "the lad".
"""

from collections import Counter
from collections.abc import Sequence

from diary.reading.names import NameHeard, NameIndex
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_SCORE = 0.85
_SHORTEST = 4
_CALENDAR = frozenset(
    "monday tuesday wednesday thursday friday saturday sunday january february march april may "
    "june july august september october november december easter christmas spring summer "
    "winter".split()
)
_LEADS = frozenset("than like of to by on with from basically off over unlike again is and".split())


def short_names(
    talk: Talk, heard: Sequence[NameHeard], index: NameIndex, vocabulary: Vocabulary
) -> tuple[NameHeard, ...]:
    """Names told by their last word alone, beside those heard in full."""
    shares = Counter(word for spelling in index.spellings for word in spelling.words)
    lasts = {
        spelling.said[-1]: spelling.name
        for spelling in index.spellings
        if len(spelling.said) > 1
        and len(spelling.said[-1]) >= _SHORTEST
        and shares[spelling.said[-1]] == 1
    }
    first_said: dict[str, int] = {}
    for name in heard:
        first_said.setdefault(name.name, name.end)
    covered = {i for name in heard for i in range(name.start, name.end)}
    return tuple(
        NameHeard(start=i, end=i + 1, name=lasts[text], score=_SCORE, exact=False)
        for i, text in enumerate(talk.texts)
        if text in lasts
        and i not in covered
        and _as_name(talk, i, first_said.get(lasts[text]))
        and not _ordinary(talk, i, vocabulary)
    )


def _as_name(talk: Talk, at: int, said_before: int | None) -> bool:
    """After its full name or a word of origin or likeness; with a capital where there are any."""
    after_full = said_before is not None and said_before <= at
    led = at > 0 and talk.texts[at - 1] in _LEADS
    if talk.punctuated:
        within = talk.tokens[at].capital and talk.sentence(at)[0] != at
        return within and (after_full or led)
    return after_full and led


def _ordinary(talk: Talk, at: int, vocabulary: Vocabulary) -> bool:
    if talk.texts[at] in _CALENDAR:
        return True
    books = (vocabulary.colours, vocabulary.parts, vocabulary.terms, vocabulary.units)
    return any(book.at(talk.texts, at) for book in books)
