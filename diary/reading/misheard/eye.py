"""The eye of a flower that captions write as "i": "a small white i in it"."""

from dataclasses import replace

from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_LED = frozenset("a an the with little tiny small big neat dark pale darker paler wee no".split())
_SIZES = frozenset("little tiny small big neat dark pale darker paler wee great clear".split())
_AFTER = frozenset(
    "in on to and with at right dead as but it she he this that the there its too so or now then "
    "which nice single double".split()
)


def eyes_respelt(talk: Talk, vocabulary: Vocabulary) -> Talk:
    """ "it's pink with a white i and"; not "it's a pure white i measured it". Captions only."""
    if talk.punctuated:
        return talk
    eyes = {
        i
        for i, text in enumerate(talk.texts)
        if text == "i" and i and _is_eye(talk.texts, i, vocabulary)
    }
    if not eyes:
        return talk
    tokens = tuple(
        replace(token, text="eye") if i in eyes else token for i, token in enumerate(talk.tokens)
    )
    return replace(talk, tokens=tokens, texts=tuple(token.text for token in tokens))


def _is_eye(texts: tuple[str, ...], at: int, vocabulary: Vocabulary) -> bool:
    after = texts[at + 1 : at + 2]
    if after and after[0] not in _AFTER:
        return False
    if texts[at - 1] in _SIZES:
        return True
    for start in range(max(0, at - 3), at):
        colour = vocabulary.colours.at(texts, start)
        if colour is not None and colour.end == at:
            return start > 0 and texts[start - 1] in _LED
    return False
