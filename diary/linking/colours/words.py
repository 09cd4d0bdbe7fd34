"""Closed classes of words around a colour that the colour rules share."""

from diary.reading.tokens import Talk

THE = frozenset("the its his her that those these this every each".split())
BE = frozenset("is 's are 're was were".split())
FRAGMENT_LEADS = frozenset(
    "a an the sort kind of very quite really almost nearly practically just more rather pure "
    "only all good proper lovely nice beautiful big oh well but and as near small large thin "
    "narrow broad wide fine long short round neat tiny little clear strong faint bold".split()
)
COPULAS = BE | {"goes", "go", "comes", "come", "turns", "turn", "gone", "looks", "look", "has"}

# Words that may stand between a colour and the part it is the colour of.
ADJECTIVES = frozenset(
    "little tiny thin fine narrow broad wide bold big great large small clear neat "
    "sharp wire heavy faint slight nice "
    "lovely sort of kind and looking coloured colored shaded tinted edged good strong "
    "central solid distinct soft round "
    "single double frilly ruffled crinkly picotee smudgy smudged feathery star velvety "
    "satin glossy old young opening "
    "two top upper bottom lower wee dinky ragged real spidery blurred irregular even "
    "proper whole fading".split()
)
# Words that may stand between a part and the colour it is said to be.
COPULAR = frozenset(
    "is are was 's 're were a an the more of nearly almost very really quite just sort "
    "kind that what i'd i 'd call would "
    "it it's come comes came out as in with by to all so rather practically pretty much "
    "lovely nice been has have its "
    "this such definitely properly proper real still always now on up and but or also "
    "mostly absolutely nearest thing "
    "to say um uh er well i think reckon suppose guess shading opening fading turning "
    "goes going gone tinged washed "
    "looks look looking nearer closer then only bit little about being another same "
    "beautiful good gorgeous fine "
    "plain simply just stained painted touched edged veined flushed coming strong rather "
    "somewhere between blush looks nearer own both dark darker deep paler you we swear "
    "right fair proper dead gey ever showing shows show stays stay stayed remains keeps glows "
    "gleams burns shines blazes".split()
)


def fragment_start(talk: Talk, at: int) -> int:
    """Where the verbless phrase before token `at` begins: "just | a thread of white"."""
    i = _past(talk, at, FRAGMENT_LEADS - {"of"})
    amount = _amount_start(talk, i)
    return _past(talk, amount, FRAGMENT_LEADS) if amount < i else _past(talk, i, FRAGMENT_LEADS)


def _past(talk: Talk, at: int, words: frozenset[str]) -> int:
    while at and not talk.tokens[at - 1].mark and talk.texts[at - 1] in words:
        at -= 1
    return at


def _amount_start(talk: Talk, at: int) -> int:
    """Where "a thread of", "a little touch of" before token `at` begins; else `at`."""
    if at < 3 or talk.texts[at - 1] != "of" or talk.texts[at - 2] in ("sort", "kind"):
        return at
    for i in range(at - 3, max(-1, at - 6), -1):
        if talk.tokens[i].mark or talk.tokens[i + 1].mark:
            return at
        if talk.texts[i] in ("a", "an", "the", "some"):
            return i
    return at
