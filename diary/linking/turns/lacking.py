"""What is said to have no label: a plant in view, or a packet, a pod, a parent.

"The third pot has no label", "there's a seedling here that isn't in the book" and the note-taker's
"basket by the door, stick missing" show another plant; "the seed packet had no label", "the
father's tag got rained on" show none.
"""

from diary.linking.document import PlantKind
from diary.linking.turns.walk import Walk
from diary.reading.mentions import Mentions

_HAVING = frozenset(
    "but only though with has 's had have 've got is was does did do came comes come arrived "
    "turned carries never been not also still just simply sadly lost its his her their the a "
    "any up in out at all to me us here then now either gone having given seems looks that "
    "which who are i we".split()
)
_OBJECTS = frozenset({"it", "him", "her", "them"})
_FINITE = frozenset(
    "has 's had have got lost is was came comes arrived carries does did hasn never lacks wants "
    "seems turned".split()
)
_STARTS = frozenset(
    "the that this a an another one my our your yon some something somebody someone whatever "
    "whoever first second third fourth fifth sixth next last".split()
)
_INDEFINITE = frozenset("a an another one this some something somebody someone".split())
_PEOPLE = frozenset({"i", "we", "you", "they"})
_PAPER = frozenset(
    "packet packets bag bags envelope pod pods cross crosses parent parents parentage mother "
    "father mum mam mom dad sire seed seeds box book register bottle jar sack breeder breeding "
    "pollen origin side half daddy history donor label labels tag tags stick sticks ticket ink "
    "writing lettering pencil pen marker capsule paper card notebook page".split()
)
_VESSELS = frozenset("jar bottle bag box envelope sack".split())  # "one here in a jam jar"
_IN = frozenset({"in", "inside"})
_LABELS = frozenset("label labels tag tags stick sticks ticket marker".split())
_PARENTS = frozenset(
    "parent parents mother father mum mam mom dad daddy sire pollen pod cross parentage".split()
)
_SHOWING = frozenset("this another next one behind beside neighbour then here and".split())
_VERBS = frozenset(
    "is 's are 're was were am 'm has have 've had do does did will 'll would 'd can could "
    "should may might must think know see said say says got get put go goes went i we you he "
    "she it they".split()
)
_LEADS = frozenset(
    "and now so then oh well right but ooh ah hmm um er also plus here there".split()
)
_BESIDE = frozenset("behind beside by under above below alongside near opposite to after".split())
_GIVEN = frozenset("gave give gives given sold sent lent posted swapped".split())
_NEAR, _PHRASE = 12, 9


def of_paper(mentions: Mentions, at: int) -> bool:
    """ "The seed packet had no label", "the pollen parent's tag is gone": no plant is shown."""
    talk = mentions.talk
    start = talk.sentence(at)[0] if talk.punctuated else max(0, at - _NEAR)
    told = talk.texts[at + 1 : at + 8]
    whose = next((n for n, t in enumerate(told) if t in _PARENTS), None)
    if whose is not None and not _SHOWING & set(told[:whose]):
        return True  # "no idea who the father is"
    said = [i for i in range(max(start, at - 2 * _NEAR), at) if talk.texts[i] in _PARENTS]
    if said and not _SHOWING & set(talk.texts[said[-1] : at]):
        return True
    low = max(talk.clause(at)[0] if talk.punctuated else at - 6, talk.sentence(at)[0], at - _NEAR)
    before = talk.texts[max(0, low) : at]
    heads = [
        n
        for n, t in enumerate(before)
        if t in _PAPER and not (t in _VESSELS and _IN & set(before[max(0, n - 3) : n]))
    ]
    if not heads:
        return False
    after = set(before[heads[-1] + 1 :])
    return after <= _HAVING and before[heads[-1]] not in _LABELS


def shown_lacking(mentions: Mentions, at: int) -> int | None:
    """Where the plant begins to be spoken of that is said at the token to lack its label."""
    for told in (_there_is, _has_none, _in_a_row):
        if (start := told(mentions, at)) is not None:
            return start
    return None


_RANKS = frozenset("first second third fourth fifth sixth last next end far corner other".split())
_POTS = frozenset("pot plant one tub basket seedling fan bulb clump fella fellow chap pan".split())


def _in_a_row(mentions: Mentions, at: int) -> int | None:
    """ "The last pot on the row must have been a gift, for there's nothing on the label."."""
    talk = mentions.talk
    start = talk.sentence(at)[0]
    i = start
    while i < at and talk.texts[i] in _LEADS:
        i += 1
    words = talk.texts[i : min(i + 5, at)]
    if words[:1] not in (("the",), ("that",)) or not _RANKS & set(words[1:3]):
        return None
    return start if _POTS & set(words[2:]) or words[2:3] in (("on",), ("in",), ("of",)) else None


def _there_is(mentions: Mentions, at: int) -> int | None:
    """ "There's a seedling that I never got round to numbering", "I've one here with no tag"."""
    talk = mentions.talk
    low = max(talk.sentence(at)[0] if talk.punctuated else 0, at - _NEAR)
    for i in range(at - 1, low, -1):
        if talk.texts[i] not in _INDEFINITE or talk.tokens[i].mark:
            continue
        lead = talk.texts[max(low, i - 3) : i]
        there = lead[-2:] in (("there", "'s"), ("there", "is"), ("here", "'s"), ("here", "is"))
        had = lead[-1:] in (("'ve",), ("have",), ("got",), ("is",)) and bool(_PEOPLE & set(lead))
        placed = lead[-1:] in (("is",), ("'s",), ("stands",), ("sits",)) and lead[-2:-1] not in (
            ("it",), ("that",), ("this",), ("he",), ("she",), ("which",), ("what",),
        )  # fmt: skip
        thing = talk.texts[i + 1 : i + 3]
        if (there or had or placed) and not (thing[0] in _PAPER or (_PAPER - _LABELS) & set(thing)):
            return talk.sentence(i)[0] if talk.punctuated else i - 1 - (there or had)
    return None


def _has_none(mentions: Mentions, at: int) -> int | None:
    """ "The third pot has no label", "basket by the door, stick missing"."""
    talk = mentions.talk
    start = talk.sentence(at)[0]
    low = max(start, at - _NEAR) if talk.punctuated else max(0, at - _NEAR)
    i = at
    while i > low and talk.texts[i - 1] in _HAVING and not talk.tokens[i - 1].mark:
        i -= 1
    finite = bool(_FINITE & set(talk.texts[i : at + 2]))
    if i == low and not talk.punctuated:
        return None
    if not finite and not (talk.punctuated and i > start and talk.tokens[i - 1].mark == ","):
        return None
    first = i
    while first > low and i - first < _PHRASE:
        if talk.texts[first - 2 : first - 1] and talk.texts[first - 2] in _BESIDE:
            first -= 2  # "the little thing behind it"
            continue
        if (
            first > 1
            and talk.texts[first - 1] in _OBJECTS
            and talk.texts[first - 2].endswith("ing")
        ):
            first -= 2  # "the one keeping it company"
            continue
        if talk.texts[first - 1] in _VERBS or (first < i and talk.tokens[first - 1].mark):
            break
        first -= 1
    while first < i and talk.texts[first] in _LEADS:
        first += 1
    words = talk.texts[first:i]
    numbered = any(r.cut is None for r in mentions.refs_in(first, i))
    if any(True for _ in mentions.parts_in(first, i)):
        return None  # "the lower petals, unmarked"
    if not words or _PAPER & set(words) or numbered or _GIVEN & set(words):
        return None  # "I gave one to a fellow who lost the label"
    if finite:
        heads = [n for n, t in enumerate(words) if t in _STARTS]
        if not heads or len(words) - heads[0] < 2:
            return None
        return first + heads[0]
    whole = first == start or all(t in _LEADS for t in talk.texts[start:first])
    return start if whole and not mentions.colours_in(first, i) else None


_SUBJECTS = frozenset({"it", "he", "she", "which", "that"})
_BACK, _ASKED = 3, 7


def of_one_in_hand(mentions: Mentions, at: int, walk: Walk) -> bool:
    """ "This is 24-60, which isn't in the book yet", "24-60. It isn't in the book.": the number
    has just been given.
    """
    if not walk.turns or walk.turns[-1].plant.kind is PlantKind.UNNAMED:
        return False
    said, talk = walk.turns[-1].said, mentions.talk
    number = mentions.ref_at(said)
    if any(talk.texts[i : i + 2] == ("this", "one") for i in range(at, at + _ASKED)):
        return False  # "don't ask me who this one is"
    start = talk.sentence(at)[0]
    subject = talk.texts[start] in _SUBJECTS and set(talk.texts[start + 1 : at]) <= _HAVING
    bare = at == start and talk.texts[at] in ("not", "never")
    last = at if subject or bare else at + 1
    for _ in range(_BACK):  # "24-60. It isn't in the book. That's a volunteer."
        if start == 0 or not (subject or bare):
            break
        start = talk.sentence(start - 1)[0]
        subject, bare = talk.texts[start] in _SUBJECTS, False
    between = talk.texts[number.end if number else said + 1 : last]
    return start <= said < at and not _OTHERS & set(between)


_OTHERS = frozenset("another beside behind one along a an neighbour neighbor this".split())
