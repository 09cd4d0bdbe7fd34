"""Sentences that are plainly about something else and interrupt what is told of a plant.

"That's the kettle clicking off", "it was six degrees in here last night", "somebody asked what I
feed with". Leaves alone "that's the first bud showing".
"""

from diary.reading.tokens import Talk

LEADS = frozenset(
    "and but so now well oh och ooh ah hey right okay ok then there anyway um uh er sorry yes "
    "yeah no hang hold on just a one minute second wait only please".split()
)
_THAT = frozenset({"that", "there", "here", "this", "those", "these"})
IS = frozenset({"'s", "is", "was", "'ll", "are", "were", "will"})
_ONLY = frozenset({"be", "only", "just", "probably", "not", "it", "him", "her"})
_OWN = frozenset("my our his their your next".split())
OF_PLANTS = frozenset(
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
_FORBEARS = frozenset(
    "mother father mam ma pa dad mum granny grandad grandfather grandmother aunt auntie uncle "
    "cousin sister brother daughter son".split()
)
_OF_THEM = frozenset(
    "used always never said swore taught told had was lived would reckoned".split()
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
    while i < end and texts[i] in LEADS and texts[i : i + 2] != ("there", "'s"):
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
    while i < before[1] and talk.texts[i] in LEADS:
        i += 1
    if i >= before[1] or not (
        _something_there(talk.texts, i, before[1]) or _of_people(talk.texts, i, before[1])
    ):
        return False
    words = tuple(t for t in talk.texts[start : min(start + 6, end)] if t not in LEADS)
    return bool(_PERSONS & set(words[:3]))


_PERSONS = frozenset({"he", "she", "they", "his", "her", "i"})


PERSONS = frozenset({"he", "she", "him", "her"})
_DOES = frozenset(
    "'s is 'll will has got gets had needs wants won goes went stays deserves".split()
)
_A = frozenset("the a an my our his her their only".split())
_SAID = frozenset("said says asked told reckons thinks called name".split())


def of_the_plant(talk: Talk, start: int, end: int, called: set[str]) -> bool:
    """ "It's going in for the cup at the hall"; not "it's the only train that's on time".

    `called` holds "she", "her" where the plant in hand is spoken of so: "she leans to the church".
    """
    while start < end and talk.texts[start] in LEADS:
        start += 1
    if called & set(talk.texts[start:end]) and not _SAID & set(talk.texts[start:end]):
        return True
    words = talk.texts[start : min(start + 3, end)]
    return len(words) == 3 and words[0] == "it" and words[1] in _DOES and words[2] not in _A


def _something_there(texts: tuple[str, ...], at: int, end: int) -> bool:
    """ "That's the telephone ringing", "that was my grandson"; not "that's the bud opening"."""
    i = at
    if texts[i] not in _THAT or i + 1 >= end:
        return False
    if texts[i + 1] not in IS:
        return False
    i += 2
    while i < end and texts[i] in _ONLY:
        i += 1
    owned = texts[i : i + 1] != () and (texts[i] in _OWN or texts[i + 1 : i + 2] == ("'s",))
    if not owned and texts[i : i + 1] not in (("the",), ("a",), ("an",)):
        return False
    rest = texts[i + 1 : min(i + 1 + _DOINGS, end)]
    if not rest or OF_PLANTS & set(rest[:3]):
        return False
    if owned and (_PEOPLE & set(rest[:3]) or "door" in rest[:1]):
        return True
    return any(w.endswith("ing") and len(w) > 5 for w in rest[1:]) or bool(
        {"off", "gone", "again", "now"} & set(rest[1:3])
    )


def _of_people(texts: tuple[str, ...], at: int, end: int) -> bool:
    """ "The neighbours are having a party"; not "my wife says it's a keeper"."""
    words = texts[at : min(at + 4, end)]
    if words[0] in ("my", "our") and words[1:2] != () and words[1] in _FORBEARS:
        of_it = {"it", "this", "she", "he"} & set(texts[at + 2 : at + 6])
        return bool(_OF_THEM & set(words[2:])) and not of_it  # "my mother used to say talk to them"
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
        return not OF_PLANTS & set(words[3:7])
    first = next((n for n, w in enumerate(words) if w in _ASKING), None)
    return (
        first is not None
        and bool(_ASKERS & set(words[max(0, first - 3) : first]))
        and (bool({"feed", "what", "how", "why", "since", "before"} & set(words)))
    )
