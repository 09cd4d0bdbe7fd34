"""Where a look is told afresh in captions: "went to my wife | white with a maroon feather".

A colour that hangs on no word before it, and that goes on as looks do (with a part, all over, a
single), begins a statement of its own, though no mark says so. Not "he's a muddy | white with an
eye", "the one that was | white with an eye".
"""

from collections.abc import Sequence

from diary.reading.colours import ColourHeard
from diary.reading.phrases import Found
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_LEADS = frozenset(
    "a an sort kind of proper real nice lovely just very good plain clear clean mostly mainly "
    "absolutely oh".split()
)
_ARTICLES = frozenset({"a", "an"})
_FORMS = frozenset("single double semi self selfs flower flowers bloom blooms".split())
_SIZED = frozenset("tiny teeny wee small little big great huge".split())
_CALLED = (("i", "'d", "call"), ("i", "'d", "say"), ("i", "would", "call"), ("i", "make", "it"))
_ALL_OVER = (
    ("all", "over"), ("all", "through"), ("right", "through"), ("top", "and"), ("no", "two"),
    ("from", "edge"), ("from", "top"), ("as", "a"), ("as", "the"), ("as", "can"),
)  # fmt: skip
_WITH = frozenset({"with", "and", "but", "on"})
_PART_REACH = 6
_CLOSING = frozenset(
    "mine yours ours it them me him us there here today yesterday tonight mind anyway though "
    "either again yet please parent mother father dad mum seed pollen".split()
)
_NAMING = frozenset("call called calling make makes is 's was are say put with".split())
_SHORT = frozenset("'s is was".split())
_PRONOUNS = frozenset("it she he this that they flower bloom one which who there what".split())


def looks_begun(
    talk: Talk,
    vocabulary: Vocabulary,
    masked: Sequence[bool],
    colours: Sequence[ColourHeard],
    parts: Sequence[Found],
) -> tuple[int, ...]:
    """The tokens where a look is told afresh; none where marks tell it."""
    if talk.punctuated:
        return ()
    begins = {p.start for p in parts}
    heard = {c.start for c in colours}
    ends = {p.end for p in parts} | {c.end for c in colours}
    return tuple(
        start
        for colour in colours
        if _goes_on(talk, colour.end, begins, heard)
        and (start := _begun(talk, vocabulary, masked, colour.start, ends))
    )


def _goes_on(talk: Talk, at: int, parts: set[int], colours: set[int]) -> bool:
    """Whether what follows the colour is how looks go on: "with a white eye", "all over"."""
    texts = talk.texts
    if at >= len(texts):
        return False
    own = at + 1 if at in colours else at  # "bright violet | magenta eye"
    if at in colours and any(i in parts for i in range(own, own + 3)):
        return True
    if texts[at] in _SIZED and texts[at + 1 : at + 3] != () and at + 1 in parts:
        return True
    if texts[at] in _FORMS or texts[at : at + 2] in _ALL_OVER or texts[at : at + 3] in _CALLED:
        return True
    if texts[at] not in _WITH:
        return False
    return any(i in parts for i in range(at + 1, at + _PART_REACH))


def _begun(
    talk: Talk, vocabulary: Vocabulary, masked: Sequence[bool], at: int, told: set[int]
) -> int:
    """Where the phrase of the colour begins, if it hangs on no word before; else 0."""
    texts = talk.texts
    while at and not masked[at - 1] and texts[at - 1] in _LEADS | _FORMS:
        at -= 1
    if at < 2 or at in told or talk.tokens[at - 1].mark:
        return 0
    if masked[at - 1]:
        return at
    governing = vocabulary.classes["governs_colour"]
    last, before = texts[at - 1], texts[at - 2]
    if last in _CLOSING and before not in _NAMING:
        return at  # "she's no child of mine | salmon with"
    if last in governing or last.endswith("ly"):
        return 0
    if before in _ARTICLES or before in vocabulary.classes["colour_copula"] - _SHORT:
        return 0  # "it came a muddy | white with an eye"
    if before in _SHORT and (at < 3 or texts[at - 3] in _PRONOUNS or at - 2 in told):
        return 0  # "she's candyfloss | pink with a white eye"; not "my wife's barrow | pink with"
    return at
