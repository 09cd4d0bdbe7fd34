"""A plant gone back to by the name it was given on the way: "the lodger has four buds".

"We'll call it the lodger", "I call him Smudge", "known as the kero tin" give a plant in hand a
name for the day; said again at the head of a statement, that name turns the talk back to it.
"I'd call it salmon", "call it a day" and "I call that rude" give none.
"""

from dataclasses import dataclass

from diary.linking.document import Plant
from diary.linking.turns.walk import Turn, Walk
from diary.reading.mentions import Mentions

_CALLING = frozenset(
    "call calls calling called christen christened christening nickname nicknamed dub dubbed "
    "name named naming".split()
)
_KNOWN_AS = (("known", "as"), ("goes", "by"), ("answers", "to"), ("go", "by"), ("of", "as"))
_OBJECTS = frozenset({"it", "him", "her", "this", "that", "them"})
_ENDS = frozenset(
    "because as since for till until and but so now it he she i we you they this that is 's are "
    "was when with in on at which who cause if though then or to have has had do did about next "
    "right okay ok well oh anyway here there one two three four five".split()
)
_NOT_FIRST = frozenset("a an my what quits day off back out up no not one".split())
_MOST = 4  # words of a name
_AGAIN = 8  # words before it can be a coming back
_TELLS = frozenset(
    "is 's was has had wants needs will 'll again now next meanwhile could can would looks does "
    "gets goes stays stands too though also never still got".split()
)
_LEADS = frozenset(
    "and now oh so well right then but back to as for on about with again also going go here "
    "there 's is meanwhile poor old dear".split()
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Nickname:
    """Given at token `given` and said again at tokens start..end-1."""

    given: int
    start: int
    end: int


def nicknames_again(mentions: Mentions) -> tuple[Nickname, ...]:
    """All nicknames that are said again, in order."""
    talk = mentions.talk
    names: dict[str, list[tuple[int, tuple[str, ...]]]] = {}
    again: list[Nickname] = []
    for at, text in enumerate(talk.texts):
        for given, words in names.get(text, ()):
            end = at + len(words)
            if at - given >= _AGAIN and talk.texts[at:end] == words and _heads(mentions, at, end):
                again.append(Nickname(given=given, start=at, end=end))
        if text in _CALLING or talk.texts[at : at + 2] in _KNOWN_AS:
            words = _name_after(mentions, at)
            if words:
                names.setdefault(words[0], []).append((at, words))
    return tuple(again)


def _name_after(mentions: Mentions, at: int) -> tuple[str, ...]:
    """The name that follows the word of calling, or nothing."""
    talk = mentions.talk
    i = at + 1
    if (said := _name_before(mentions, at)) != ():
        return said
    if talk.texts[at] in _CALLING:
        if talk.texts[i : i + 1] and talk.texts[i] in _OBJECTS:
            i += 2 if talk.texts[i + 1 : i + 2] == ("one",) else 1
        elif at == 0 or talk.texts[at - 1] not in ("i", "we", "i've", "'ve"):
            return ()
    else:
        i = at + 2
    definite = talk.texts[i : i + 1] == ("the",)
    first = i
    while i < len(talk.texts) and i - first < _MOST + definite:
        if talk.texts[i] in _ENDS or (i == first and talk.texts[i] in _NOT_FIRST):
            break
        i += 1
        if talk.tokens[i - 1].mark:
            break
    words = talk.texts[first:i]
    if len(words) <= definite or mentions.colours_in(first, i) or mentions.refs_in(first, i):
        return ()
    named = definite or (not talk.punctuated) or talk.tokens[first].capital
    return words if named and all(w.isalpha() for w in words) else ()


def _name_before(mentions: Mentions, at: int) -> tuple[str, ...]:
    """ "Old Scratch, I call him."."""
    talk = mentions.talk
    if not talk.punctuated or talk.texts[at + 1 : at + 2] == () or not talk.tokens[at + 1].mark:
        return ()
    if talk.texts[at + 1] not in _OBJECTS or talk.texts[at - 1] not in ("i", "we"):
        return ()
    end = at - 1
    if end < 1 or talk.tokens[end - 1].mark != ",":
        return ()
    start = end - 1
    while start > 0 and end - start < _MOST and talk.tokens[start].capital:
        if talk.tokens[start - 1].mark or not talk.tokens[start - 1].capital:
            break
        start -= 1
    words = talk.texts[start:end]
    return words if talk.tokens[start].capital and not mentions.colours_in(start, end) else ()


def _heads(mentions: Mentions, at: int, end: int) -> bool:
    """Said as the subject: "Smudge, meanwhile, has four buds", not "I'd call it the lodger"."""
    talk = mentions.talk
    start = talk.clause(at)[0]
    led = all(t in _LEADS for t in talk.texts[start:at])
    rest = talk.texts[end : end + 1]
    tells = rest[:1] != () and rest[0] in _TELLS
    if talk.punctuated:
        return led and (tells or bool(talk.tokens[end - 1].mark))
    return tells and (
        led or talk.texts[at] == "the" or talk.texts[at - 1] in ("and", "but", "oh", "so", "to")
    )


def back_by_nickname(mentions: Mentions, nickname: Nickname, walk: Walk) -> Turn | None:
    """The turn to the plant that was in hand when the nickname was given."""
    plant = _in_hand(nickname.given, walk)
    if plant is None or plant == walk.current:
        return None
    first, start = mentions.talk.clause(nickname.start)[0], nickname.start
    while start > first and mentions.talk.texts[start - 1] in _LEADS - {"is", "'s"}:
        start -= 1
    return Turn(
        at=max(start, walk.turns[-1].said + 1),
        said=nickname.end - 1,
        plant=plant,
        score=0.8,
        rule="back to a plant by the name it was given on the way",
    )


def _in_hand(at: int, walk: Walk) -> Plant | None:
    for turn in reversed(walk.turns):
        if turn.at <= at:
            return turn.plant
    return None
