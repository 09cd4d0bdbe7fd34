"""Sentences that are plainly about something else: what interrupts, and what ends the walk.

"That's the kettle clicking off", "it was six degrees in here last night", "somebody asked what I
feed with" interrupt; "that's the whole gang", "that's seven pots looked at" end the walk. "That's
the first bud showing" and "that's the best of them" do neither.
"""

from diary.reading.tokens import Talk

_LEADS = frozenset(
    "and but so now well oh och ooh ah hey right okay ok then there anyway um uh er sorry yes "
    "yeah no hang hold on just a one minute second wait only please".split()
)
_THAT = frozenset({"that", "there", "here", "this", "those", "these"})
_IS = frozenset({"'s", "is", "was", "'ll", "are", "were", "will"})
_ONLY = frozenset({"be", "only", "just", "probably", "not", "it", "him", "her"})
_OWN = frozenset("my our his their your next".split())
_OF_PLANTS = frozenset(
    "bud buds flower flowers bloom blooms blossom leaf leaves petal petals colour color truss "
    "head heads stem stems plant plants seedling seedlings throat eye edge blotch centre center "
    "one ones shoot shoots seed seeds pod pods pollen root roots cutting cuttings parent mother "
    "father first last best worst only way thing reason point trouble problem sort kind size "
    "shape habit label tag number pick favourite favorite cross scent smell same difference "
    "beauty mark markings pot floret pip pips spike tallest biggest smallest baby babies boy "
    "girl lad lass keeper second sport selfing third other next rust mildew rot virus thrips "
    "aphids greenfly whitefly botrytis damage".split()
)
_PEOPLE = frozenset(
    "wife husband son daughter brother sister nan gran mum dad grandson granddaughter neighbour "
    "neighbor neighbours neighbors bloke postman postie builders lodger boss missus phone dog "
    "cat alarm lad boy mate knee knees back kids".split()
)
_DOINGS = 5  # words within which the thing that interrupts is said to be doing something
_BIDS = frozenset(
    "mind watch careful excuse hush wheesht shush hark listen leave turn shut drop get bide "
    "stop ignore hand pass fetch bin".split()
)
_AWAY = frozenset(
    "down off out step head feet hose fan door doors vent gate noise back phone it there still "
    "sleeve that yourself puddle bucket barrow dog radio me label labels glasses snips cane".split()
)
_WEATHER = frozenset(
    "raining rained hailing hail snowing windy blowing chucking pouring freezing sweltering "
    "baking roasting drizzling thundering boiling perishing hot cold warm cool".split()
)
_ABOUT = frozenset({"it", "we", "weather", "wind", "rain"})
_ASKING = frozenset({"asked", "ask", "asks", "wondering", "wonders"})
_ASKERS = frozenset(
    "somebody someone people folk folks i everybody everyone anybody anyone you they those".split()
)
_UNITS_FROM = 9


def interrupts(talk: Talk, start: int, end: int) -> bool:
    """Whether the sentence at tokens start..end-1 is an interruption or about other things."""
    texts = talk.texts
    i = start
    while i < end and texts[i] in _LEADS and texts[i : i + 2] != ("there", "'s"):
        i += 1
    if i >= end:
        return False
    return (
        _something_there(texts, i, end)
        or _bidden(texts, i, end)
        or _weather(texts, i, end)
        or _asked_about(texts, i, end)
        or _of_people(texts, i, end)
    )


def goes_on(talk: Talk, before: tuple[int, int], start: int, end: int) -> bool:
    """Whether the sentence goes on about who has interrupted: "that was my nan. She wants tea"."""
    i = before[0]
    while i < before[1] and talk.texts[i] in _LEADS:
        i += 1
    if i >= before[1] or not (
        _something_there(talk.texts, i, before[1]) or _of_people(talk.texts, i, before[1])
    ):
        return False
    words = tuple(t for t in talk.texts[start : min(start + 6, end)] if t not in _LEADS)
    return bool(_PERSONS & set(words[:3]))


_PERSONS = frozenset({"he", "she", "they", "his", "her", "i"})


def _something_there(texts: tuple[str, ...], at: int, end: int) -> bool:
    """ "That's the telephone ringing", "that was my grandson"; not "that's the bud opening"."""
    i = at
    if texts[i] not in _THAT or i + 1 >= end:
        return False
    if texts[i + 1] not in _IS:
        return False
    i += 2
    while i < end and texts[i] in _ONLY:
        i += 1
    owned = texts[i : i + 1] != () and (texts[i] in _OWN or texts[i + 1 : i + 2] == ("'s",))
    if not owned and texts[i : i + 1] not in (("the",), ("a",), ("an",)):
        return False
    rest = texts[i + 1 : min(i + 1 + _DOINGS, end)]
    if not rest or _OF_PLANTS & set(rest[:3]):
        return False
    if owned and (_PEOPLE & set(rest[:3]) or "door" in rest[:1]):
        return True
    return any(w.endswith("ing") and len(w) > 5 for w in rest[1:]) or bool(
        {"off", "gone", "again", "now"} & set(rest[1:3])
    )


def _of_people(texts: tuple[str, ...], at: int, end: int) -> bool:
    """ "The neighbours are having a party"; not "my wife says it's a keeper"."""
    words = texts[at : min(at + 4, end)]
    if words[0] not in _OWN | {"the", "that"} or not _PEOPLE & set(words[1:3]):
        return False
    return not {"it", "this", "its", "these", "one"} & set(texts[at:end])


def _bidden(texts: tuple[str, ...], at: int, end: int) -> bool:
    """ "Mind your head", "get down out of that", "turn that fan down"; not "mind the colour"."""
    words = texts[at : min(at + 7, end)]
    return words[0] in _BIDS and bool(_AWAY & set(words[1:]))


def _weather(texts: tuple[str, ...], at: int, end: int) -> bool:
    """ "It was six degrees in here", "it's blowing a gale"; not "it flowers till it's cold"."""
    words = texts[at : min(at + _UNITS_FROM, end)]
    if "degrees" in words:
        return True
    if words[0] not in _ABOUT or not _WEATHER & set(words[1:5]):
        return False
    return bool({"in", "out", "here", "again", "a", "outside"} & set(words[3:]))


def _asked_about(texts: tuple[str, ...], at: int, end: int) -> bool:
    """ "Somebody asked what I feed with", "a word about the compost, since I'm asked"."""
    words = texts[at:end]
    if words[:1] == ("a",) and "word" in words[:3] and "about" in words[:4]:
        return not _OF_PLANTS & set(words[3:7])
    first = next((n for n, w in enumerate(words) if w in _ASKING), None)
    return (
        first is not None
        and bool(_ASKERS & set(words[max(0, first - 3) : first]))
        and (bool({"feed", "what", "how", "why", "since", "before"} & set(words)))
    )


_ALL = frozenset("me us them everybody everyone all lot end wrap whole yours finis full".split())
_STRETCHES = frozenset(
    "row rows bench benches field shelf shelves house frame side tray trays gang bunch family "
    "bed beds staging border crew tour walk wall top bottom collection tunnel tier table rack "
    "half hour minutes battery light daylight lads regals zonals ivies uniques scenteds angels "
    "stellars".split()
)
_DONE = frozenset(
    "done finished over seen looked written sorted through up complete completed gone filled "
    "wrapped told shown dealt visited ticked counted measured in".split()
)
_COUNTED = frozenset(
    "one two three four five six seven eight nine ten eleven twelve dozen thirteen fourteen "
    "fifteen sixteen twenty thirty forty fifty".split()
)
_POTS = frozenset(
    "pots plants of seedlings looked done baskets bulbs fans clumps on off in".split()
)
_MAKES_END = frozenset("completes concludes ends finishes wraps brings rounds".split())


_HAVE_IT = frozenset("you yous ye we".split())


def _takes_leave(words: tuple[str, ...]) -> bool:
    """ "That'll do for one day", "off to bed with me", "I'll love you and leave you"."""
    return (
        words[:4] in (("that", "'ll", "do", "for"), ("that", "will", "do", "for"))
        or (words[:2] in (("off", "to"), ("away", "to"), ("home", "to")) and "me" in words[2:7])
        or words[:2] in (("good", "night"), ("night", "night"), ("night", "all"))
        or words[:4] in (("i", "'ll", "love", "you"), ("i", "will", "love", "you"))
        or ("leave" in words[:3] and words[3:4] == ("you",) and "i" in words[:1])
    )


def wraps_up(talk: Talk, start: int, end: int) -> bool:
    """Whether the sentence says that the walk, or a stretch of it, is at its end."""
    texts = talk.texts
    i = start
    while i < end and texts[i] in _LEADS:
        i += 1
    if i > start and texts[i - 1] == "there" and texts[i] in _HAVE_IT and i + 2 < end:
        i += 2  # "so there you are, that's the whole of it"
        while i < end and texts[i] in _LEADS:
            i += 1
    words = texts[i : min(i + 10, end)]
    if _takes_leave(words):
        return True
    if words[:1] != ("that",) or len(words) < 2:
        return words[:1] in (("end",), ("entry",), ("total",)) and len(words) < 8
    if words[1] in _MAKES_END:
        return True
    if words[1] not in _IS:
        return False
    rest = tuple(w for w in words[2:] if w not in ("then", "about", "be", "just", "nearly", "only"))
    if "with" in rest[:4]:
        return False  # "that's me finished with it"
    if rest[:1] == () or _MEASURED & set(rest[:4]):
        return False
    if rest[0] == "all":
        return rest[1:2] == () or rest[1] in ("i", "for", "folks", "we", "of", "from", "there")
    if rest[:2] == ("the", "whole") and rest[2:3] in (("of",), ("lot",), ("thing",), ()):
        return True
    if rest[0] in _ALL or (
        rest[0] in ("the", "your", "my", "both") and rest[1:2] != () and rest[1] in _ALL
    ):
        return True
    if rest[0] in _COUNTED or rest[0].isdecimal():
        return rest[1:2] != () and rest[1] in _POTS
    named = bool(_STRETCHES & set(rest[1:4])) and not _OF_PLANTS & set(rest[1:3])
    finished = bool(_DONE & set(rest[1:7])) and not _OF_PLANTS & set(rest[1:4])
    return rest[0] in ("the", "this", "both", "my", "our", "half", "your") and (named or finished)


_MEASURED = frozenset(
    "centimetres centimetre inches inch millimetres mil cm mm across wide tall high heads buds "
    "shoots years weeks months".split()
)
