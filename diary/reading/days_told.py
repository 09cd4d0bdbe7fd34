"""Ways of saying that a date is the day of the talk: "it's the second", "Resumed, the ninth."."""

from diary.reading.calendar_dates import WEEKDAYS
from diary.reading.numerals import ONES
from diary.reading.tokens import Talk

_DEICTIC = (
    ("it", "'s"),
    ("it", "is"),
    ("this", "is"),
    ("today", "is"),
    ("today", "'s"),
    ("now", "it"),
    ("date", "is"),
    ("we", "'re"),
    ("we", "are"),
    ("date", "'s"),
    ("makes", "it"),
    ("'s", "me"),
    ("'s", "us"),
)
_BETWEEN = frozenset(
    "now the on today of , so um uh er already actually and still morning afternoon "
    "evening here at then".split()
)


def deictic_before(talk: Talk, at: int) -> bool:
    i = at
    while i > 0 and at - i < 6 and (talk.texts[i - 1] in _BETWEEN or talk.texts[i - 1] in WEEKDAYS):
        i -= 1
    return talk.texts[max(0, i - 2) : i] in _DEICTIC or (
        talk.texts[i - 1 : i] == ("is",) and talk.texts[i : i + 1] == ("now",)
    )


_VISITS = frozenset(
    "visit look walk round session recording video film morning afternoon evening day instalment "
    "part go entry page".split()
)
_THE_VISIT = frozenset("second third another next new fresh later further follow up".split())


_AS_NOW = frozenset("now today already still here".split())
_COUNTED_BACK = 24


def ranks(talk: Talk, at: int, end: int, number: int) -> bool:
    """ "Five germinated. This is the fifth." counts plants; not "so this is the ninth now"."""
    if talk.texts[at - 1] != "the" or _AS_NOW & {
        *talk.texts[at - 3 : at],
        *talk.texts[end : end + 2],
    }:
        return False
    if talk.texts[at - 3 : at - 1] in (("this", "is"), ("that", "'s"), ("that", "is")):
        return True
    said = {spoken for spoken, ones in ONES.items() if ones == number} | {str(number)}
    return bool(said & set(talk.texts[max(0, at - _COUNTED_BACK) : at]))


def visit_on(talk: Talk, at: int) -> bool:
    """ "Now this is a second visit, on Thursday the twenty-ninth"; not "the visit on the ninth"."""
    i = at
    while i > 0 and talk.texts[i - 1] in _BEFORE_DATE:
        i -= 1
    before = talk.texts[max(0, i - 7) : i]
    if before[-1:] == () or before[-1] not in _VISITS:
        return False
    shown = any(before[n : n + 2] in _DEICTIC for n in range(len(before) - 1))
    return shown and bool(_THE_VISIT & set(before))


_SET_DOWN = frozenset(
    "was were filmed recorded taken written noted measured photographed down this that "
    "these".split()
)
_BITS = frozenset("bit part clip piece film footage section half recording video pictures".split())
_SHOT = frozenset("took shot did made filmed recorded caught got taken done".split())
_SEEN = (("looked", "at"), ("seen", "last"), ("written", "up"), ("last", "seen"), ("was", "seen"))
_BEFORE_DATE = frozenset({"on", "the", *WEEKDAYS})


def written_then(talk: Talk, at: int) -> bool:
    """ "this was filmed on the first", "what follows I wrote down on Friday the sixth"."""
    i = at
    while i > 0 and talk.texts[i - 1] in _BEFORE_DATE:
        i -= 1
    if i > 0 and talk.texts[i - 1] == "dated":
        return True  # "the card is dated Wednesday the nineteenth"
    if i > 1 and talk.texts[i - 2 : i] in _SEEN and "on" in talk.texts[i:at]:
        return True
    if "on" in talk.texts[i:at] and i > 1 and talk.texts[i - 1] in _SHOT:
        low = talk.sentence(i - 1)[0] if talk.punctuated else 0
        told = talk.texts[max(low, i - 8) : i - 1]
        itself = told[-2:] in (("this", "i"), ("this", "we"), ("that", "i"), ("that", "we"))
        if itself or _BITS & set(told):
            return True  # "this next bit we took on Thursday the tenth"
    if "on" not in talk.texts[i:at] or i == 0 or talk.texts[i - 1] not in _SET_DOWN:
        return False
    before = talk.texts[max(0, i - 5) : i]
    if before[-1] in ("was", "were"):
        return before[-2:-1] != ("it",)
    return before[-1] not in ("this", "that", "these", "down") or bool(
        {"wrote", "took", "measured", "noted", "jotted", "set", "filmed", "recorded"} & set(before)
    )


_DATELINE = frozenset("resumed again back later now and so right well hello visit second".split())
_ENDS_LINE = (".", ",", "?")


def dateline(talk: Talk, at: int, end: int) -> bool:
    """ "Resumed, Saturday the seventh of June;": a date by itself at the head of a sentence.

    Not "the seventh of June is the show".
    """
    start = talk.sentence(at)[0]
    lead = talk.texts[start:at]
    if not talk.punctuated or at - start > 5 or not talk.between(end - 1, end, _ENDS_LINE):
        return False
    return all(t in _DATELINE or t in WEEKDAYS or t == "the" for t in lead)


_TALKED = frozenset(
    "today date resume resumed resuming pick carry continue restart picking carrying continuing "
    "recording filming talking doing "
    "moved later visit part again same back bit rest lot new session round walk into next hello "
    "morning evening afternoon all".split()
)
_LEADING = frozenset(
    "so right okay ok well now and hi good folks everybody 've have then here there i 'm am me "
    "we us 're are 's is it this that these the a an on at up to of as from for being been gone "
    "got with going still just about nearly exactly already one two three four five six seven "
    "eight nine ten couple few second third half week weeks fortnight days day month months "
    "after ahead further , bench shelf house greenhouse tunnel row side talk film video story "
    "walk-round time by".split()
)
_SPANS = frozenset("day days week weeks fortnight month months".split())
_STANDS = frozenset("'s is 'm am are 're have 've has".split())
_TALKERS = frozenset("it she he they i we that this".split())
_MOST = 9


def taken_up_again(talk: Talk, at: int, end: int) -> bool:
    """ "Picking up again on the ninth", "as of today, the ninth", "this bit's on the ninth".

    Not "back on the ninth" (a plan), "the show is on the ninth", "a week later, on the ninth, it
    died".
    """
    start = max(talk.sentence(at)[0], at - _MOST)
    if not talk.punctuated:
        while start < at and not _led(talk.texts[start:at]):
            start += 1
    words = talk.texts[start:at]
    if not words or not _led(words) or not (_TALKED & set(words) or _ahead(words)):
        return False
    if _TALKED & set(words) == {"back"} and not {"i", "we", "'m", "'re", "here"} & set(words):
        return False
    if _TALKED & set(words) <= {"next", "part", "day", "new"} and "of" in words[:-1]:
        return False
    after = () if talk.tokens[end - 1].mark else talk.texts[end : end + 2]
    return not (after[:1] and after[0] in _TALKERS and after[1:] and after[1] not in _STANDS)


def _ahead(words: tuple[str, ...]) -> bool:
    """ "A week on now, so the ninth of June"."""
    return bool(_SPANS & set(words)) and bool({"on", "after"} & set(words))


def _led(words: tuple[str, ...]) -> bool:
    return all(w in _LEADING or w in _TALKED or w in WEEKDAYS for w in words)
