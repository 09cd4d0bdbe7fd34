"""Lengths that are no size of the plant in hand: differences, limits, ways, pots, rain.

"two centimetres shy of what the class asks", "thirty metres of hose", "I moved it two feet
along", "it wants another inch" give none; "no more than four inches high" is a size.
"""

from diary.reading.lengths import Length
from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity

_RAIN = frozenset({"rain", "rains", "rained", "snow", "snowed"})
_LACKING = frozenset({"want", "wants", "need", "needs", "give", "gain", "gained", "grown", "put"})


def is_no_size(mentions: Mentions, length: Length) -> bool:
    """Whether the length measures something else, or only how far two things are apart."""
    return (
        _difference(mentions, length)
        or _of_a_stuff(mentions, length)
        or _limit(mentions, length)
        or _lacking(mentions, length)
        or _way(mentions, length)
        or _unknown_thing(mentions, length)
        or _past(mentions, length)
        or _sworn(mentions, length)
        or _hangs(mentions, length)
        or bool(_RAIN & set(mentions.talk.texts[max(0, length.start - 8) : length.end + 3]))
    )


def _difference(mentions: Mentions, length: Length) -> bool:
    """ "a centimetre taller", "two centimetres shy of", "bigger by a good inch"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    texts = talk.texts
    if texts[length.end : length.end + 1] == ("too",):
        return True
    if vocabulary.size_comparisons.at(texts, length.end) and not vocabulary.dimensions.at(
        texts, length.end
    ):
        return True
    i = length.start
    while i > 0 and length.start - i < 4 and texts[i - 1] in _ABOUT:
        i -= 1
    before = texts[i - 2] if i > 1 else ""
    return texts[i - 1 : i] == ("by",) and not (
        before in _DIMENSION_WORDS or quantity(texts, i - 2) or vocabulary.units.at(texts, i - 2)
    )


def _of_a_stuff(mentions: Mentions, length: Length) -> bool:
    """ "ten mils of feed", "thirty metres of hose"; not "fifteen centimetres of stem"."""
    texts = mentions.talk.texts
    if texts[length.end : length.end + 1] != ("of",) or mentions.talk.tokens[length.end - 1].mark:
        return False
    rest = texts[length.end + 1 : length.end + 5]
    skipped = 0
    while skipped < len(rest) and rest[skipped] in _QUALITIES:
        skipped += 1
    at = length.end + 1 + skipped
    noun = mentions.vocabulary.subjects.at(texts, at)
    if noun is not None:
        return noun.label == "nothing" and not covers_ground(mentions, length)
    return at < len(texts) and texts[at] not in _MEASURED_BY


_ABOUT = frozenset("a an about around some nearly good full of or so it them just over".split())
_DIMENSION_WORDS = frozenset({"high", "tall", "wide", "across", "deep"})
_IS = frozenset({"is", "'s", "are", "'re", "was", "were", "stands", "measures"})
_DETERMINED = frozenset("the my our your his her their a an that this".split())
_TELLING = frozenset(
    "one 1 ones size sizes measurement thing lot answer rule ruler tape gauge figure reading "
    "result average diameter width height spread whole best biggest largest widest broadest "
    "tallest longest smallest middle top rest other others first second third last mine two "
    "three four it that this she he they lad lass fellow fella boy girl kid child baby "
    "seedling seedlings sister brother daughter son double single cross self trumpet "
    "width total".split()
)


SEASONS = frozenset(
    "christmas easter whitsun michaelmas midsummer january february march april june july "
    "august september october november december spring summer autumn winter".split()
)


_SAYS = (("says",), ("said",), ("say",), ("reckons",), ("swears",), ("claims",))
_IT_WAS = (("it", "was"), ("he", "was"), ("she", "was"))


def _past(mentions: Mentions, length: Length) -> bool:
    """ "it was two inches tall at Christmas": what it was then."""
    talk = mentions.talk
    texts = talk.texts
    after = texts[length.end : length.end + 3]
    if after[:1] in (("she",), ("he",), ("they",)) and after[1:2] in _SAYS:
        return True  # "six inches, she says", of hers
    if after[:2] in _IT_WAS and after[2:] in (("before",), ("when",), ("once",), ("till",)):
        return True  # "ninety centimetres, he was, before I cut him back"
    if not {"was", "were", "had"} & set(texts[max(0, length.start - 4) : length.start]):
        return False
    for i in range(length.end, min(length.end + 4, len(texts) - 1)):
        if talk.between(length.end - 1, i, (".", ",", "?")):
            return False
        if texts[i] in ("at", "in", "by", "last") and texts[i + 1] in SEASONS | {"the"}:
            return texts[i + 1] in SEASONS or bool(SEASONS & set(texts[i + 2 : i + 3]))
    return False


def _sworn(mentions: Mentions, length: Length) -> bool:
    """ "she's two foot if she's an inch": the second only swears to the first."""
    texts = mentions.talk.texts
    if texts[length.start - 2 : length.start - 1] in (("give",), ("gave",)) and (
        texts[length.end : length.end + 2] == ("and", "it")
    ):
        return True  # "give it an inch and it takes a mile"
    would = {"'d", "would"} & set(texts[max(0, length.start - 5) : length.start])
    if (
        would
        and "if" in texts[length.end : length.end + 3]
        and (_UNREAL & set(texts[length.end : length.end + 6]))
    ):
        return True  # "it'd be thirty centimetres if it stood up straight"
    return texts[length.start - 3 : length.start - 2] == ("if",) and (
        texts[length.start - 1] in ("'s", "is", "are", "'re")
    )


_UNREAL = frozenset("stood was were had got grew could would stayed went lived".split())


_HANGING = frozenset(
    "hang hangs hanging hung dangle dangles dangling trail trails trailing cascade cascades "
    "cascading tumble tumbles tumbling droop droops drooping spill spills spilling".split()
)
_DOWN = frozenset("down over out about around a good to by for it full some nearly up".split())


def _hangs(mentions: Mentions, length: Length) -> bool:
    """ "it hangs down seventy centimetres": how far it trails is in no trait."""
    talk = mentions.talk
    if mentions.vocabulary.dimensions.at(talk.texts, length.end) is not None:
        return False
    i = length.start
    while i > 0 and length.start - i < 5 and talk.texts[i - 1] in _DOWN:
        i -= 1
    return talk.texts[i - 1 : i] != () and talk.texts[i - 1] in _HANGING


def covers_ground(mentions: Mentions, length: Length) -> bool:
    """ "it covers forty centimetres of bench", "takes up two foot of staging": its spread."""
    talk = mentions.talk
    low = max(talk.clause(length.start)[0], length.start - 5)
    covering = _COVERING & set(talk.texts[low : length.start])
    of_ground = talk.texts[length.end : length.end + 1] == ("of",) and (
        _GROUND & set(talk.texts[length.end + 1 : length.end + 4])
    )
    return bool(covering) and bool(of_ground)


_COVERING = frozenset(
    "cover covers covering covered take takes taking taken fill fills filling filled occupy "
    "occupies occupying claim claims claimed want wants need needs sprawls use uses has own "
    "owns".split()
)
_GROUND = frozenset("bench staging shelf sill windowsill space room table gravel bed".split())


def _unknown_thing(mentions: Mentions, length: Length) -> bool:
    """ "the path's a metre wide", "my boots are nine inches high": no word of a plant."""
    talk = mentions.talk
    texts = talk.texts
    low = talk.sentence(length.start)[0]
    i = length.start
    while i > low and length.start - i < 5 and texts[i - 1] in _ABOUT | {"only", "barely", "at"}:
        i -= 1
    noun = i - 2
    if noun - 1 < low or texts[i - 1] not in _IS or mentions.masked[noun]:
        return False
    if texts[noun] in _TELLING or texts[noun - 1] not in _DETERMINED:
        return False
    return not (
        mentions.vocabulary.subjects.find(texts, low, length.start)
        or mentions.vocabulary.parts.find(texts, noun, i)
        or mentions.vocabulary.terms.find(texts, noun, i)
        or mentions.colours_in(noun, i)
    )


_MEASURED_BY = frozenset({"it", "them", "this", "that", "ruler", "rule", "tape", "gauge"})
_QUALITIES = frozenset(
    "a the good bare straight clean stiff strong solid clear thick wiry of its nice lovely long "
    "proper pure sturdy fine".split()
)


def _limit(mentions: Mentions, length: Length) -> bool:
    """ "the class says no more than fifteen centimetres", "when I want thirty-eight"."""
    talk = mentions.talk
    low = max(talk.clause(length.start)[0], length.start - 9)
    low = max([low, *(x.end for x in mentions.lengths_in(low, length.start))])
    limits = mentions.vocabulary.size_limits.find(talk.texts, low, length.start)
    return any(talk.texts[f.start - 2 : f.start] not in _AS_IT for f in limits)


_AS_IT = tuple(("as", it) for it in ("it", "she", "he", "they"))  # "small, as it should be"


def _lacking(mentions: Mentions, length: Length) -> bool:
    """ "it needs another inch", "it's put on two inches"; not "the stem's another nine"."""
    talk = mentions.talk
    low = max(talk.clause(length.start)[0], length.start - 5)
    before = talk.texts[low : length.start]
    return bool(_LACKING & set(before)) and (
        bool({"another", "extra", "more", "on"} & set(before))
        or talk.texts[length.end : length.end + 1] in (("more",), ("extra",))
        or "another" in talk.texts[length.start : length.end]
    )


def _way(mentions: Mentions, length: Length) -> bool:
    """ "I moved it two feet along", "cut it back by six inches", "every two inches"."""
    talk = mentions.talk
    low = max(0, length.start - 8)
    return any(
        set(talk.texts[f.end : length.start]) <= _ABOUT
        and not talk.between(f.start, length.start, (".", ",", "?"))
        for f in mentions.vocabulary.size_ways.find(talk.texts, low, length.start)
    )
