"""The plant that a phrase speaks of: a reference beside the phrase, or a name not on record."""

from dataclasses import dataclass

from diary.reading.mentions import Mentions, Ref

_SKIPPED = frozenset(
    "old the my good dear our that um er uh of own lovely another a some little big "
    "those poor wee young small said mr mrs missus "
    "one mine its sister brother was is 's actually just again probably definitely certainly "
    "surely obviously naturally clearly plainly".split()
)
_MOST_SKIPPED = 4
_NO_NAME = frozenset(
    "i i'm it and the a an but so is was which this that my our me from with for no not "
    "i'd on in by at or as "
    "then what who again too day".split()
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Operand:
    """A plant at tokens start..end-1; `ref` is None where it is not on record."""

    start: int
    end: int
    title: str
    ref: Ref | None
    score: float


def after(mentions: Mentions, at: int, *, unknown: bool = False) -> Operand | None:
    """The plant that begins at the token, small words skipped; with `unknown`, a new name too."""
    texts = mentions.talk.texts
    i = _past_one_of_mine(texts, at)
    for _ in range(_MOST_SKIPPED + 1):
        ref = _ref_from(mentions, i)
        if ref is not None:
            return Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)
        if (
            i >= len(texts)
            or texts[i] not in _SKIPPED
            or mentions.talk.tokens[i].mark in (".", "?")
        ):
            break
        i += 1
    if not unknown or mentions.talk.between(at - 1, i, (".", "?")):
        return None
    return _new_name(mentions, i)


def _past_one_of_mine(texts: tuple[str, ...], at: int) -> int:
    """ "the father was one of my own, 24-03": the token after "one of my own"."""
    if texts[at : at + 2] != ("one", "of") or texts[at + 2 : at + 3] not in _MINE:
        return at
    return at + 3 + (texts[at + 3 : at + 4] == ("own",))


_MINE = (("my",), ("me",), ("our",), ("mine",), ("ours",))


def before(mentions: Mentions, end: int, *, unknown: bool = False) -> Operand | None:
    """The plant whose words end right before the token (a possessive 's is skipped)."""
    texts = mentions.talk.texts
    stop = end - 1 if end and texts[end - 1] == "'s" else end
    ref = mentions.ref_ending(stop)
    if stop and mentions.talk.tokens[stop - 1].mark in (".", "?"):
        return None
    if ref is not None:
        return Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)
    if not unknown or not mentions.talk.punctuated:
        return None
    start = stop
    while start > 0 and stop - start < 3 and _name_word(mentions, start - 1):
        if mentions.talk.tokens[start - 1].mark and start < stop:
            break
        start -= 1
    return _operand(mentions, start, stop) if start < stop else None


def _ref_from(mentions: Mentions, at: int) -> Ref | None:
    return mentions.ref_at(at)


def _new_name(mentions: Mentions, at: int) -> Operand | None:
    """A name that is not on record: capitalised words of punctuated text."""
    if not mentions.talk.punctuated:
        return None
    end = at
    while end < len(mentions.talk.texts) and end - at < 4 and _name_word(mentions, end):
        end += 1
        if mentions.talk.tokens[end - 1].mark:
            break
    return _operand(mentions, at, end) if end > at else None


def _name_word(mentions: Mentions, at: int) -> bool:
    token = mentions.talk.tokens[at]
    return (
        token.capital
        and token.text not in _NO_NAME
        and token.text.isalpha()
        and not mentions.masked[at]
    )


def _operand(mentions: Mentions, start: int, end: int) -> Operand:
    words = mentions.talk.transcript.words
    first, last = mentions.talk.tokens[start].word, mentions.talk.tokens[end - 1].word
    title = " ".join(words[i].text.strip(" .,;:!?\"'") for i in range(first, last + 1))
    return Operand(start=start, end=end, title=title.removesuffix("'s"), ref=None, score=0.7)
