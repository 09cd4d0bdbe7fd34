"""A plant named in passing, though it heads its clause: it hangs on another, or is told apart.

"Half the size of 23-18", "my wife likes 23-18 better", "so is 23-18"; "four-one, mind, because
fourteen you've just had" says a number again beside one that sounds alike. None turns the talk.
"""

import re

from diary.linking.document import PlantKind
from diary.linking.turns.lead_ins import LeadIn, LeadIns
from diary.linking.turns.lost import list_end
from diary.linking.turns.walk import Walk
from diary.reading.mentions import Mentions, Ref

_GOVERNING = frozenset(
    "of about than against from with like as for unlike alongside beside near behind "
    "versus vs".split()
)
_PAIRING = (("both",), ("between",), ("like",), ("than",))
_SIBLINGS = frozenset({"sisters", "brothers", "siblings", "halves", "parents"})
_OWN = frozenset(
    "the old poor my our that its his her brother sister twin sibling child parent".split()
)
_LIKEWISE = frozenset({"so", "nor", "neither"})
_AUXILIARIES = frozenset("is was are were does did do has had have will would can 's".split())
_ONTO = frozenset({"on", "onto", "to", "over", "with"})


def governed(mentions: Mentions, ref: Ref, lead: LeadIn) -> bool:
    """ "half the size of 23-18", "no sign of 23-18": it hangs on a word of another thing.

    Not "start with 23-18", "one more thing about 23-18": those lead in.
    """
    talk, at = mentions.talk, ref.start
    if talk.texts[at - 2 : at] in (("that", "was"), ("they", "were"), ("it", "was")):
        return True  # "so that was 23-18"
    before = talk.texts[max(0, at - 2) : at]
    if before[-1:] in (("was",), ("were",)) and not lead.moved:
        return True  # "last year's pick was 23-18"
    if len(before) == 2 and before[0] in _LIKEWISE and before[1] in _AUXILIARIES:
        return True  # "so is 23-18"
    first = talk.clause(at)[0]
    onto = before[-1:] != () and before[-1] in _ONTO and not lead.came_back
    if onto and "pollen" in talk.texts[max(first, at - 7) : at]:
        return True  # "its pollen went on 23-18"
    if talk.texts[at - 1 : at] == ("and",) and talk.texts[at - 3 : at - 2] in _PAIRING:
        return True  # "both it and 23-18"
    if set(talk.texts[max(0, at - 5) : at]) & _SIBLINGS and not lead.presented:
        return True  # "two sisters of it, 23-18 and 23-19"
    at = _without_owner(mentions, at)
    if at > 0 and talk.texts[at - 1] in ("unlike", "than"):
        return True  # "unlike its brother 23-18"
    if lead.any or lead.shown or talk.texts[ref.end : ref.end + 2] == ("which", "is"):
        return False
    return at > 0 and talk.texts[at - 1] in _GOVERNING and not talk.tokens[at - 1].mark


def _without_owner(mentions: Mentions, at: int) -> int:
    """Before "its old brother", within the clause: "for that. Thirty ninety now" owns nothing."""
    talk = mentions.talk
    while at > 0 and talk.texts[at - 1] in _OWN and not talk.tokens[at - 1].mark:
        at -= 1
    return at


_PLACING = frozenset(
    "next door to beside behind by near right just opposite close alongside".split()
)
_LIVES = frozenset("is 's was stands sits lives grew stood sat lived".split())
_THIS_ONE = frozenset("it he she this that which".split())


def says_where(mentions: Mentions, ref: Ref) -> bool:
    """ "it's next door to 23-18, that's how it got crossed"; not "next to it is 23-18"."""
    texts, i = mentions.talk.texts, ref.start
    while i > 0 and texts[i - 1] in _PLACING and not mentions.talk.tokens[i - 1].mark:
        i -= 1
    return 1 < i < ref.start and texts[i - 1] in _LIVES and texts[i - 2] in _THIS_ONE


_DID = frozenset("did does has had is was could would will".split())


def contrasted(mentions: Mentions, ref: Ref) -> bool:
    """ "23-18 got the sun and this didn't."; not "23-18 got the sun and did well"."""
    talk = mentions.talk
    if not talk.punctuated:
        return False
    words = talk.texts[ref.end : talk.sentence(ref.start)[1]]
    for n, word in enumerate(words[:-1]):
        if word != "this" or words[max(0, n - 1) : n] not in (("and",), ("but",), ("while",)):
            continue
        rest = words[n + 1 + (words[n + 1] == "one") :]
        if rest[:1] and rest[0] in _DID and rest[1:] in ((), ("not",), ("too",)):
            return True
    return False


_BOTH = frozenset("are were both look make have share came come will differ".split())
_PAIRED = frozenset({"she", "he", "it", "this", "that", "one"})


def paired(mentions: Mentions, ref: Ref) -> bool:
    """ "she and 23-18 are as alike as two peas", "23-17 and 23-18 are forever getting mixed".

    Not "and 23-18 is white".
    """
    talk = mentions.talk
    rest = talk.texts[ref.end : ref.end + 1]
    if talk.texts[ref.start - 1 : ref.start] == ("and",) and rest and rest[0] in _BOTH:
        before = talk.texts[ref.start - 2 : ref.start - 1]
        return (bool(before) and before[0] in _PAIRED) or (
            mentions.ref_ending(ref.start - 1) is not None
        )
    listed = list_end(mentions, ref)
    again = any(r.title == ref.title for r in mentions.refs_in(ref.end, listed))
    if listed > ref.end and not again and set(talk.texts[listed : listed + 1]) & _BOTH:
        return True  # "23-04, 23-05 and 23-06 came up together"
    other = mentions.ref_at(ref.end + 1) if rest == ("and",) else None
    if other is None or talk.tokens[ref.end - 1].mark:
        return False
    after = talk.texts[other.end : other.end + 1]
    return bool(after) and after[0] in _BOTH


_KIN_OF = frozenset("sister brother sibling twin half cousin close near next related".split())
_CLAIMS = frozenset("loses lost beats compared prefer second close similar down nearer".split())


def cut_in_passing(mentions: Mentions, ref: Ref) -> bool:
    """ "sister to two oh six", "so 141 loses to 140"; not "back to 140", "on to 141"."""
    texts = mentions.talk.texts
    before = texts[max(0, ref.start - 2) : ref.start]
    return (
        len(before) == 2
        and before[1] in ("to", "of", "than", "from")
        and (before[0] in _CLAIMS or before[0] in _KIN_OF - {"next"})
    )


_ACTS = frozenset(
    "likes like liked prefer prefers loves love hates beat beats shaded shades crowded crowds "
    "outgrew outgrown outgrows dwarfs dwarfed swap swapped smothered smothers overtook overtaken "
    "killed lost hid hides hiding resembles matches suits envy miss remember outshines "
    "outlasts outlasted knocks leaves touching crowding shading copies copied rivals sold lent "
    "sent binned gave given posted donated promised traded exchanged passed used".split()
)
_OBJECTS = frozenset({"it", "this", "him", "her", "them", "that"})
_DONE = frozenset("dead dealt done finished sorted gone over seen".split())


def acted_on(mentions: Mentions, ref: Ref, lead: LeadIn) -> bool:
    """ "my wife likes 23-18 better", "23-18 beats it hands down", "the trouble 23-18 had".

    Not "hand me 23-18", "23-18 beats the lot".
    """
    talk, at = mentions.talk, ref.start
    rest = talk.texts[ref.end : ref.end + 2]
    if talk.texts[max(0, at - 2) : at] == ("that", "'s") and rest[:1] and rest[0] in _DONE:
        return True  # "that's 23-18 dealt with"
    if lead.came_back or lead.moved:
        return False
    if _owned_by_others(mentions, at):
        return True
    if _subordinate(mentions, at) and rest[:1] != () and rest[0] in _AUXILIARIES | {"got"}:
        return True  # "there's nothing in it that 23-18 hasn't got"
    trailing = rest[:1] in (("had",), ("did",)) or (
        rest in (("was", "in"), ("is", "in"), ("was", "on"), ("came", "in"))
    )
    within = not lead.at_head and not lead.any and at > 0
    if within and trailing and not talk.tokens[at - 1].mark:
        return True
    if lead.presented:
        return False
    i = ref.end
    while talk.texts[i : i + 1] and talk.texts[i] in _MODAL and not talk.tokens[i - 1].mark:
        i += 1
    deed = talk.texts[i : i + 2]
    if len(deed) == 2 and deed[0] in _ACTS and deed[1] in _OBJECTS:
        return True  # "23-18 will always beat it"
    if talk.texts[max(0, at - 3) : at] in (("i", "'ve", "seen"), ("i", "have", "seen")):
        return True  # "but then I've seen 23-18"
    at = _without_owner(mentions, at)
    before = talk.texts[at - 1 : at]
    if before in (("out",), ("off",), ("over",)) and at > 1:
        before = talk.texts[at - 2 : at - 1]  # "it shaded out 23-18"
    return bool(before) and before[0] in _ACTS and not talk.tokens[at - 1].mark


_ANY = frozenset("it nothing anything everything something all little much thing".split())


def _subordinate(mentions: Mentions, at: int) -> bool:
    """ "nothing in it that 23-18"; not "I told you that 23-18 was for the compost"."""
    talk = mentions.talk
    that, before = (*reversed(talk.texts[max(0, at - 2) : at]), "", "")[:2]
    return that == "that" and before in _ANY and not talk.between(at - 2, at, (".", ","))


_MODAL = frozenset(
    "will would 'll 'd can could might always still never just has had usually only easily".split()
)
_OWNING = frozenset("has had wants wanted grows grew keeps got bought saw fancies fancied".split())
_OTHERS = frozenset(
    "he she they sister brother mother father mum dad wife husband daughter son neighbour neighbor "
    "friend mate somebody someone everybody everyone nobody judge judges club aunt uncle cousin "
    "people folk".split()
)


def _owned_by_others(mentions: Mentions, at: int) -> bool:
    """ "my sister has 23-18 and she wants this too", "you'd want 23-18 for the colour"."""
    verb, who = (*reversed(mentions.talk.texts[max(0, at - 2) : at]), "", "")[:2]
    if mentions.talk.tokens[at - 1].mark:
        return False
    return (verb in _OWNING and who in _OTHERS) or (verb == "want" and who in ("'d", "would"))


_ALIKE_REACH = 18
_BRINGING = frozenset("is 's to next here and now then got have number plant".split())


def only_told_apart(mentions: Mentions, ref: Ref, lead: LeadIn, leads: LeadIns, walk: Walk) -> bool:
    """ "Four-one, mind, because fourteen you've just had": it sounds like the number just shown.

    Not "24-13, white. Next 24-30": something has been told, or the talk moves on.
    """
    brought = mentions.talk.texts[max(0, ref.start - 1) : ref.start]
    if not walk.turns or lead.moved or lead.came_back or set(brought) & _BRINGING:
        return False
    last = walk.turns[-1]
    if last.plant.kind is not PlantKind.SEEDLING or ref.start - last.said > _ALIKE_REACH:
        return False
    if leads.told_before(ref.start) > last.said + 1:
        return False
    number = last.plant.number or ""
    return ref.title != number and sounds_alike(number, ref.title)


def sounds_alike(one: str, other: str) -> bool:
    """Whether the last groups are a teen and its tens (13, 30), or the same digits turned."""
    a, b = _last(one), _last(other)
    if len(a) != len(b) or a == b or len(a) < 2 or a[:-2] != b[:-2]:
        return False
    a, b = a[-2:], b[-2:]
    return a == b[::-1] or _teen_of(a, b) or _teen_of(b, a)


def _teen_of(teen: str, tens: str) -> bool:
    return teen[0] == "1" and tens == teen[1] + "0"


def _last(number: str) -> str:
    groups = re.findall(r"\d+", number)
    return groups[-1] if groups else ""
