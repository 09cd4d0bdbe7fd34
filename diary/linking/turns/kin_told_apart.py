"""Another plant of the family that is named only to be told apart from the one in hand.

"Its brother 23-05 got rust, but not this one", "her sister 23-05 was lost in the winter". Leaves
alone "next to it is its sister 23-05" and "its sister 23-05 is next".
"""

from diary.reading.mentions import Mentions, Ref

_OWNERS = frozenset("its his her their the this_one's".split())
_KIN = frozenset(
    "sister brother sibling twin parent mother father mum dad aunt cousin grandmother grandfather "
    "grandparent half-sister offspring".split()
)
_GONE = frozenset("lost died dead binned composted sold given thrown gone".split())
_HAVING = frozenset("was has had got is 's never did does went came wants gets".split())
_CONTRAST = (
    ("but", "not"), ("not", "this"), ("but", "this"), ("and", "this"), ("whereas", "this"),
    ("while", "this"), ("though", "this"), ("this", "has"), ("this", "does"), ("this", "did"),
    ("but", "it"),
)  # fmt: skip
_CAPTIONED = 14


def kin_told_apart(mentions: Mentions, ref: Ref) -> bool:
    """Whether the number is a sister's, say, and the sentence comes back to this one."""
    talk = mentions.talk
    before = talk.texts[max(0, ref.start - 3) : ref.start]
    if before[-1:] == () or before[-1] not in _KIN or not set(before[-2:-1]) & _OWNERS:
        return False
    if before[:1] in (("is",), ("'s",)) or talk.texts[ref.end : ref.end + 1] == ():
        return False
    if talk.texts[ref.end] not in _HAVING:
        return False
    stop = talk.sentence(ref.start)[1] if talk.punctuated else ref.end + _CAPTIONED
    rest = talk.texts[ref.end : stop]
    if _GONE & set(rest[:4]):
        return True
    return any(rest[n : n + 2] in _CONTRAST for n in range(len(rest) - 1))
