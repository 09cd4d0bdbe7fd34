"""Colours that are only wanted, sold, used or asked for: "I was fishing for a true lilac"."""

from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions

_REACH = 9
# What may stand between the wanting and the colour: "could do with | a bit more of a real | pink".
_BETWEEN = frozenset(
    "being coming turning opening it a an any some something anything one more bit of that true "
    "proper good real decent "
    "clean clear lovely beautiful little another nice strong for the to get have see it "
    "be in out 's is was".split()
)
_LIKENED = (("like",), ("as",), ("so",), ("quite",), ("to",))


def wanted(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the trade wants a yellow", "I never get a decent purple"; not "I want to call it pink"."""
    talk = mentions.talk
    if mentions.vocabulary.colour_habits["hoped_after"].at(talk.texts, colour.end) is not None:
        return True
    none = mentions.vocabulary.colour_habits["has_none"]
    if any(
        mentions.parts_in(colour.end, found.start) and found.start - colour.end <= 4
        for found in none.find(talk.texts, colour.end, colour.end + 10)
    ):
        return True  # "bred for the white centre. It hasn't got one."
    if _had_once(mentions, colour):
        return True
    start = max(0, talk.sentence(colour.start)[0], colour.start - _REACH)
    after = talk.texts[colour.end : colour.end + 1]
    for want in mentions.vocabulary.colour_habits["wanted"].find(talk.texts, start, colour.start):
        seldom = talk.texts[want.start] in ("never", "hardly", "can", "could")
        if seldom and (after in _LIKENED or talk.texts[colour.start - 1] == "more"):
            continue  # "I never saw a red like it", "it can't get any more magenta"
        between = talk.texts[want.end : colour.start]
        if len(between) <= 6 and set(between) <= _BETWEEN and _reaches(mentions, want.end, colour):
            return True
    return False


def _had_once(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "I'd a lovely white here last year that rotted": a plant of that colour."""
    talk, i = mentions.talk, colour.start
    while i and talk.texts[i - 1] in _GOOD:
        i -= 1
    if (
        i < 3
        or talk.texts[i - 1] not in ("a", "an", "my")
        or talk.texts[i - 2] not in ("'d", "had")
    ):
        return False
    owner = talk.texts[i - 3] in ("i", "we", "he", "she", "they")
    return owner and talk.texts[colour.end : colour.end + 1] in _SINCE


_GOOD = frozenset("lovely nice good decent beautiful great big little smashing fine grand".split())
_SINCE = tuple((w,) for w in "here there once last that which years before from off out".split())


def _reaches(mentions: Mentions, start: int, colour: ColourHeard) -> bool:
    """Not "it's all I wanted, it's pink", "I've got what I wanted: a pink"."""
    talk = mentions.talk
    return not talk.between(start - 1, colour.start, (".", "?", ",")) and not mentions.parts_in(
        start, colour.start
    )
