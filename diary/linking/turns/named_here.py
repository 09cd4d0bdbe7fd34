"""A named plant that stands here: shown as kin, stood alongside, or there itself.

"And here is its mother, Tin Whistle", "that's the father of it, Tin Whistle, up in the basket",
"alongside I've stood Tin Whistle", "Porch. Tin Whistle itself." "That's the mother, Tin Whistle"
only tells a parent, and "or it's Tin Whistle" guesses.
"""

from diary.reading.mentions import Mentions, Ref

_KIN = frozenset(
    "mother father mum mam mom dad daddy sire dam parent grandmother grandfather granny sister "
    "brother original source aunt uncle cousin".split()
)
_OF_WHOM = frozenset("of it this that these him her them the lot all pair too as well".split())
_SELF = frozenset("itself herself himself".split())
_BETWEEN = frozenset(
    "the its his her their our my old great good dear plant seed pollen pod and very one here "
    "there over yonder behind beside now then up down in person again big wee own look "
    "see right".split()
)
_HERE = frozenset({"here", "there", "this"})
_THAT = frozenset({"that", "it", "she", "he"})
_IS = frozenset({"is", "'s", "stands", "sits", "comes", "hangs", "lives"})
_PLACED = frozenset(
    "here there over up down in on at under behind beside by next yonder above below out".split()
)
SITES = frozenset(
    "basket pot corner end floor bench shelf staging door path back front window tub border bed "
    "tray gravel porch house frame greenhouse wall gate tap step top bottom left right middle "
    "it him her this that here there over yonder row bed hedge line sundial".split()
)
_KIN_REACH, _PLACE_REACH = 12, 7


def shown_as_kin(mentions: Mentions, ref: Ref) -> int | None:
    """Where "and here's its mother, Tin Whistle" begins, if it is said before the name."""
    talk = mentions.talk
    low = max(talk.sentence(ref.start)[0] if talk.punctuated else 0, ref.start - _KIN_REACH)
    i = ref.start - 1
    kin = False
    while i > low and (
        talk.texts[i] in _BETWEEN or talk.texts[i] in _KIN | _SELF or talk.texts[i] in _OF_WHOM
    ):
        kin = kin or talk.texts[i] in _KIN
        if talk.texts[i] in _HERE and talk.texts[i + 1] in _IS:
            break
        if talk.texts[i - 1] in _HERE | _THAT and talk.texts[i] in _IS:
            break
        i -= 1
    if kin and talk.texts[i] in _IS and talk.texts[i - 1] in SITES - _POINTED:
        spot = [n for n in range(max(low, i - 5), i) if talk.texts[n] in _PLACED]
        return spot[0] if spot else None  # "up on the shelf is its father, Tin Whistle"
    if not kin or talk.texts[i] not in _IS or talk.texts[i - 1] not in _HERE | _THAT:
        return None
    if talk.texts[i - 1] in _THAT and not (
        _there(mentions, i + 1, ref) or placed_after(mentions, ref)
    ):
        return None
    return i - 2 if i > 1 and talk.texts[i - 2] in ("and", "now", "so", "oh", "then") else i - 1


def _there(mentions: Mentions, start: int, ref: Ref) -> bool:
    """ "that's the mother there, Tin Whistle", "that's the mother herself, Tin Whistle"."""
    return bool({"here", "there", "yonder", *_SELF} & set(mentions.talk.texts[start : ref.start]))


def placed_after(mentions: Mentions, ref: Ref) -> bool:
    """ "Tin Whistle, up in the basket", "Tin Whistle over there"; not "Tin Whistle in 2030"."""
    talk = mentions.talk
    stop = talk.sentence(ref.start)[1] if talk.punctuated else len(talk.texts)
    rest = talk.texts[ref.end : min(stop, ref.end + _PLACE_REACH)]
    return rest[:1] != () and rest[0] in _PLACED and bool(SITES & set(rest[:5]))


def kin_with_a_place(mentions: Mentions, ref: Ref) -> bool:
    """ "Its mother, Tin Whistle, is the one in the basket"; not "its mother, Tin Whistle, died"."""
    talk = mentions.talk
    start, stop = talk.sentence(ref.start)
    if not talk.punctuated or talk.tokens[ref.start - 1].mark != ",":
        return False
    head = talk.texts[start : ref.start]
    if not _KIN & set(head[-2:]) or not set(head) <= _BETWEEN | _KIN | {"and", "so", "now", "but"}:
        return False
    rest = talk.texts[ref.end : stop]
    if rest[:1] == () or rest[0] not in _IS:
        return False
    i = 3 if rest[1:3] == ("the", "one") else 1
    return rest[i : i + 1] != () and rest[i] in _PLACED and bool(SITES & set(rest[i : i + 5]))


def kin_placed_before(mentions: Mentions, ref: Ref) -> bool:
    """ "And its father's in that tub: Tin Whistle."; not "its father's sturdy: Tin Whistle."."""
    talk = mentions.talk
    start, stop = talk.sentence(ref.start)
    if not talk.punctuated or stop != ref.end or talk.tokens[ref.start - 1].mark != ",":
        return False
    return kin_stands(talk.texts[start : ref.start])


def kin_stands(head: tuple[str, ...]) -> bool:
    """ "And its father's in that tub"; not "its father's sturdy"."""
    kin = next((n for n, t in enumerate(head[:4]) if t in _KIN), None)
    if kin is None or not set(head[:kin]) <= _BETWEEN | {"so", "but"}:
        return False
    rest = head[kin + 1 :]
    return len(rest) > 2 and rest[0] in _IS and rest[1] in _PLACED and bool(SITES & set(rest[2:]))


_POINTED = frozenset({"it", "him", "her", "this", "that", "here", "there", "yonder"})
_POINTERS = frozenset({"that", "this", "the", "yon", "your"})


def thing_in_its_place(mentions: Mentions, ref: Ref) -> int | None:
    """Where "that big lump in the corner is Tin Whistle" begins; not "the one I lost is ..."."""
    texts = mentions.talk.texts
    i = ref.start - 1
    while i > 0 and texts[i] in ("the", "old", "my", "dear", "poor"):
        i -= 1
    if texts[i] not in ("is", "'s"):
        return None
    low = max(0, i - _KIN_REACH)
    if mentions.talk.punctuated:
        low = max(low, mentions.talk.sentence(ref.start)[0])
    if texts[i - 1] not in SITES - _POINTED or not _PLACED & set(texts[max(low, i - 4) : i]):
        return None
    found = [n for n in range(low, i - 2) if texts[n] in _POINTERS and texts[n - 1] not in _PLACED]
    if not found or _KIN & set(texts[found[-1] : i]) or mentions.refs_in(found[-1], i):
        return None
    if not {"that", "this", "yon"} & {texts[found[-1]]} and not mentions.talk.punctuated:
        return None
    return found[-1]


_BESIDE = frozenset("alongside beside behind next by above below under opposite near".split())
_PUT = frozenset("put stood set placed brought kept got have keep parked left hung staged".split())


def stood_alongside(mentions: Mentions, ref: Ref) -> bool:
    """ "Alongside it I have stood Tin Whistle"; not "I have put Tin Whistle on it"."""
    talk = mentions.talk
    i = ref.start - 1
    while i > 0 and talk.texts[i] in ("the", "old", "a", "my", "dear"):
        i -= 1
    if talk.texts[i] not in _PUT:
        return False
    low = talk.sentence(i)[0] if talk.punctuated else 0
    before = talk.texts[max(low, i - 8) : i]
    rest = talk.texts[ref.end : ref.end + 3]
    if not {"i", "we"} & set(before[-3:]) or rest[:2] in (("on", "it"), ("onto", "it")):
        return False
    if rest[:1] != () and rest[0] in _BESIDE and {"it", "this", "him", "her", "to"} & set(rest[1:]):
        return True  # "I keep a Tin Whistle beside it"
    low = max(low, i - 10)
    spot = [n for n in range(low, i) if talk.texts[n] in SITES and talk.texts[n - 1] == "the"]
    if spot and talk.texts[max(low, spot[-1] - 2)] in _PLACED:
        return True  # "at the back there I've stood Tin Whistle"
    near = [n for n, t in enumerate(before[:-1]) if t in _BESIDE]
    return any(before[n] != "next" or before[n + 1] == "to" for n in near)


def there_itself(mentions: Mentions, ref: Ref) -> bool:
    """ "Porch. Tin Whistle itself, for the record."; not "Tin Whistle itself threw two"."""
    talk = mentions.talk
    start, stop = talk.sentence(ref.start)
    lead = talk.texts[start : ref.start]
    if not talk.punctuated or talk.texts[ref.end : ref.end + 1] == ():
        return False
    if talk.texts[ref.end] not in _SELF or not set(lead) <= {"and", "now", "then", "old", "the"}:
        return False
    return stop == ref.end + 1 or talk.tokens[ref.end].mark == ","


_RISES = frozenset(
    "towers stands sits is hangs sprawls lives lurks leans sulks grows rises trails climbs".split()
)


def stands_behind(mentions: Mentions, ref: Ref) -> bool:
    """ "Behind the pair of them towers Tin Whistle."; not "behind it all is Tin Whistle blood"."""
    talk = mentions.talk
    start, stop = talk.sentence(ref.start)
    lead = talk.texts[start : ref.start]
    ends = stop == ref.end or bool(talk.tokens[ref.end - 1].mark)
    places = _PLACED | _BESIDE | {"left", "right"}
    placed = len(lead) > 2 and (lead[0] in places or lead[1] in places)
    return talk.punctuated and ends and placed and lead[-1] in _RISES and not _KIN & set(lead)


def this_is_what(mentions: Mentions, ref: Ref) -> bool:
    """ "This is what Tin Whistle looks like"; not "I know what Tin Whistle looks like"."""
    texts = mentions.talk.texts
    before = tuple(t for t in texts[max(0, ref.start - 4) : ref.start] if t not in ("the", "a"))
    shown = before[-3:] in (("this", "is", "what"), ("that", "'s", "what"), ("here", "'s", "what"))
    return shown and texts[ref.end : ref.end + 1] in (("looks",), ("is",), ("does",))


_GUESSED = frozenset("or maybe perhaps possibly either even could might be it is 's was".split())


def only_guessed(mentions: Mentions, ref: Ref) -> bool:
    """ "the father's Copper Lantern or it's Tin Whistle": one of two that it may be."""
    i = ref.start - 1
    while i > 0 and mentions.talk.texts[i] in _GUESSED and mentions.talk.texts[i] != "or":
        i -= 1
    return i >= 0 and ref.start - i <= 4 and mentions.talk.texts[i] == "or"


_ELSEWHERE = frozenset(
    "already at indoors elsewhere back somewhere anyway besides too before".split()
)
_OWNED = frozenset("got have had 've grow keep".split())


def owned_elsewhere(mentions: Mentions, ref: Ref) -> bool:
    """ "I've got Tin Whistle already", "we give away a Tin Whistle": any plant of that name."""
    talk = mentions.talk
    rest, before = talk.texts[ref.end : ref.end + 1], talk.texts[max(0, ref.start - 3) : ref.start]
    if rest[:1] and rest[0] in _ELSEWHERE and _OWNED & set(before):
        return True
    if rest[:1] == ("for",) and talk.texts[ref.end + 1 : ref.end + 2] == ("you",):
        return True  # "that's Tin Whistle for you"
    if stood_alongside(mentions, ref):
        return False
    if rest[:1] == ("in",) and set(talk.texts[ref.end + 1 : ref.end + 2]) & {"it", "this", "him"}:
        return True  # "there's Tin Whistle in it somewhere"
    article = before[-1:] in (("a",), ("an",))
    return article and not {"is", "'s", "here", "this"} & set(before)
