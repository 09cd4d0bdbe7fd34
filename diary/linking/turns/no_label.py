"""A plant shown without its number, in words of what became of the label or of knowing nothing.

"The slugs had the label", "the ink's all run", "your guess is as good as mine": besides the
turns of phrase of the vocabulary, a label beside a word of loss, and two numbers guessed at.
"Its label says single" and "I'll write it a new label" tell of a label that is there.
"""

from itertools import pairwise

from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_LABELS = frozenset(
    "label lable tag stick ticket marker nametag writing ink lettering pencil stake "
    "identity tally".split()
)
_LOSSES = frozenset(
    "lost lose loses losing gone washed bleached faded rubbed worn snapped broke broken chewed "
    "eaten ate blown blew fell fallen vanished disappeared missing blank clean run ran smudged "
    "smeared illegible unreadable pinched nicked stolen pulled walked scratched dissolved peeled "
    "crumbled perished rotted swallowed dropped shed cracked bleaching fading wiped whipped took "
    "taken off destroyed stripped buried useless knocked kicked yanked tore torn ripped "
    "used adrift astray unstuck sliced moved gnawed "
    "nibbled munched scoffed robbed lifted prised".split()
)
_THIEVES = frozenset(
    "slugs snails slug snail mouse mice dog puppy cat kitten badger blackbird blackbirds bird "
    "birds squirrel squirrels kids children grandchildren wind gale rain sun frost hens chickens "
    "possum possums pigeon pigeons rabbit rabbits fox magpie magpies weather hose mower strimmer "
    "goat goats rat rats somebody someone".split()
)
_TOOK = frozenset("had has 's have got took taken ate eaten pinched pulled chewed".split())
_WENT = frozenset("in into on out with west over down up missing walkabout awol flying".split())
_KEEPS = frozenset("says say reads read new proper says write writing wrote put stuck".split())
_ORDERS = frozenset(
    "bin pass hand give fetch pick chuck throw mind watch get stick write need find move keep "
    "take leave pop use".split()
)
_LEADS = frozenset("and now oh so well right then but please just".split())
_STILL_READ = frozenset("brittle soft green yellow brown grey curly mouldy crooked".split())
_REACH = 9


def label_losses(mentions: Mentions) -> tuple[int, ...]:
    """Tokens at which a label is said to be lost, or a number only guessed at."""
    talk = mentions.talk
    found = {f.start for f in mentions.cue("unlabelled") if not _put_aside(mentions, f)}
    for at, text in enumerate(talk.texts):
        if text in _LABELS and (start := _lost_at(mentions, at)) is not None:
            found.add(start)
    found |= set(_guessed_pairs(mentions))
    return tuple(sorted(found))


def _put_aside(mentions: Mentions, found: Found) -> bool:
    talk = mentions.talk
    after = talk.texts[found.end : min(talk.sentence(found.start)[1], found.end + _REACH)]
    return _ordered(mentions, found.start) or _legible(after)


def _ordered(mentions: Mentions, at: int) -> bool:
    """ "and bin that broken label": the sentence bids somebody do something with it."""
    head = mentions.talk.sentence(at)[0]
    while head < at and mentions.talk.texts[head] in _LEADS:
        head += 1
    return mentions.talk.texts[head] in _ORDERS


def _lost_at(mentions: Mentions, at: int) -> int | None:
    """Where the loss of the label at the token is told, if it is."""
    talk = mentions.talk
    first, stop = talk.sentence(at)
    if _ordered(mentions, at):
        return None
    low, high = max(first, at - _REACH), min(stop, at + _REACH)
    before, after = talk.texts[low:at], talk.texts[at + 1 : high]
    if _KEEPS & {*before[-3:], *after[:3]} - {talk.texts[at]}:
        return None
    if {"will", "'ll", "wants", "needs", "should"} & {*before, *after[:3]}:
        return None
    if before[-1:] in (("the",), ("that",), ("this",)) and after[:1] in (("that",), ("wants",)):
        return None  # "the label that's fallen on the floor"
    if _legible(after):
        return None
    lost = {*after[:3], *_after_but(after)}
    if before[-1:] and before[-1] in ("no", "a", "new") and not _LOSSES & lost:
        return None
    thieves = [low + i for i, t in enumerate(before) if t in _THIEVES]
    if thieves and any(t in _TOOK | _LOSSES for t in talk.texts[thieves[0] + 1 : at]):
        return at
    gone = after.index("gone") + 1 if "gone" in after else len(after)
    if _STILL_READ & set(after[gone : gone + 1]):
        return None  # "the tag's gone brittle, but you can still read it"
    if "by" in after and _THIEVES & set(after[after.index("by") :]):
        return at  # "the label has been got at by the slugs"
    if _unread(after):
        return at
    went = [i for i, t in enumerate(after) if t in ("went", "gone", "ended")]
    if went and after[went[0] + 1 : went[0] + 2] and after[went[0] + 1] in _WENT:
        return at  # "her stick went in the bonfire"
    if _LOSSES & set(after) or _LOSSES & set(before[-4:]):
        return at
    return None


_BUT = frozenset({"but", "only", "though", "except"})
_READING = frozenset({"read", "see", "tell", "make"})


def _after_but(words: tuple[str, ...]) -> tuple[str, ...]:
    """ "It has a label, but it's been bleached"."""
    return next((words[n:] for n, w in enumerate(words) if w in _BUT), ())


def _unread(words: tuple[str, ...]) -> bool:
    """ "The next label I can't read at all"."""
    refused = next((n for n, w in enumerate(words) if w in ("not", "hardly", "barely")), None)
    return refused is not None and bool({"read", "decipher"} & set(words[refused : refused + 3]))


def _legible(words: tuple[str, ...]) -> bool:
    """ "The label's faded, but you can still read it"; not "but I can't read it"."""
    rest = _after_but(words)
    can = next((n for n, w in enumerate(rest) if w in ("can", "could", "still")), None)
    return can is not None and bool(_READING & set(rest[can:])) and "not" not in rest


_GUESSING = frozenset("could might may either maybe perhaps possibly".split())
_PAIR_REACH = 8
_BETWEEN = frozenset(
    "or it could might may be is maybe perhaps possibly either equally well just as a an 's".split()
)


def _guessed_pairs(mentions: Mentions) -> list[int]:
    """ "it could be 2411, it could be 2412", "either 23-13 or 23-23"."""
    texts, found = mentions.talk.texts, []
    numbers = [r for r in mentions.refs if r.is_number]
    for one, other in pairwise(numbers):
        between = texts[one.end : other.start]
        if not 0 < len(between) <= _PAIR_REACH or not set(between) <= _BETWEEN:
            continue
        guessed = _GUESSING & set(texts[max(0, one.start - 4) : one.start])
        if guessed and ("or" in between or _GUESSING & set(between)):
            found.append(one.start)
    return found
