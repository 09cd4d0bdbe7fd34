"""Of what a decision is: of the plant in hand, or of a label, the hose, its mother.

"Bin that broken label", "that fan earns its keep" and "its mother went on the compost" are
told in the same words as decisions about the plant.
"""

from diary.reading.mentions import Mentions
from diary.reading.numerals import quantity
from diary.reading.phrases import Found
from diary.reading.tokens import QUERY, STOP

_POINTERS = frozenset(
    {"that", "this", "those", "these", "the", "it", "her", "his", "its", "your", "my", "our"}
)
# Words that point at the plant by themselves; "that" and "this" only where no noun follows.
_PRONOUNS = frozenset({"it", "he", "she", "him", "them", "they", "one", "you"})
# A pot is spoken of beside repotting it, and cuttings beside taking them.
_OF_THINGS_TOO = frozenset({"keep", "discard", "watch", "show", "name"})
_SHOWN = (("that",), ("those",), ("my",))
_OBJECT_REACH, _SUBJECT_REACH = 4, 8


def is_of_the_plant(mentions: Mentions, found: Found) -> bool:
    """Whether what is to be kept, thrown out or shown is a plant, and this one."""
    return not (
        (found.label != "name" and thing_after(mentions, found))
        or (found.label in _OF_THINGS_TOO and thing_before(mentions, found))
        or kin_after(mentions, found)
        or noun_before(mentions, found)
        or (found.label in _OF_THINGS_TOO and thing_lately(mentions, found))
        or tally(mentions, found)
        or (found.label == "discard" and moved(mentions, found))
        or (found.label == "discard" and where_it_stands(mentions, found))
        or (found.label == "name" and called_by_its_looks(mentions, found))
        or (found.label == "breed" and role_of_another(mentions, found))
    )


def role_of_another(mentions: Mentions, found: Found) -> bool:
    """ "with Ember Lane as the mother", "bred from A, with B as the pollen parent"; not "it'll do
    for a mother", "seed parent for next year"."""
    talk, classes = mentions.talk, mentions.vocabulary.classes
    roles = classes["mother"] | classes["father"] | {"parent", "parents"}
    if talk.texts[found.start] not in ("for", "as") or talk.texts[found.end - 1] not in roles:
        return False
    if mentions.ref_ending(found.start) is not None:
        return True
    low = talk.sentence(found.start)[0]
    told = set(talk.texts[max(low, found.start - _TOLD_REACH) : found.start])
    return talk.texts[found.start] == "as" and "with" in told and not told & _USED


_TOLD_REACH = 6
_USED = frozenset("it this that him her use using used keep keeping 'll will going want".split())


def thing_after(mentions: Mentions, found: Found) -> bool:
    """ "bin that broken label", "watch that hose"; not "bin that, label and all"."""
    talk = mentions.talk
    begin = found.end
    if talk.texts[begin - 1] not in _POINTERS:
        if talk.texts[begin : begin + 1] not in _SHOWN or talk.tokens[begin - 1].mark:
            return False
        begin += 1
        if _other_noun(mentions, begin):
            return True
    if talk.tokens[begin - 1].mark:
        return False
    for i in range(begin, min(begin + _OBJECT_REACH, len(talk.texts))):
        if talk.texts[i] in _FUNCTION:
            return False
        thing = mentions.vocabulary.decision_things.at(talk.texts, i)
        if thing:
            return talk.texts[thing.end : thing.end + 1] not in (("or",), ("and",))
        if talk.tokens[i].mark:
            return False
    return False


def _other_noun(mentions: Mentions, at: int) -> bool:
    """ "pot up that lavender by the door": a noun that is no word for the plant in hand."""
    talk = mentions.talk
    if at + 1 >= len(talk.texts) or talk.texts[at] in _FUNCTION or talk.texts[at].endswith("ly"):
        return False
    if mentions.masked[at] or mentions.vocabulary.plant_nouns.at(talk.texts, at):
        return False
    if not talk.punctuated and talk.texts[at + 1] in ("'s", "is", "was", "has"):
        return False  # "she needs splitting | that clump's enormous"
    return bool(talk.tokens[at].mark) or talk.texts[at + 1] in _FUNCTION


def thing_before(mentions: Mentions, found: Found) -> bool:
    """ "that fan earns its keep", "its mother went on the heap"; not "on a cane, it's a keeper".

    The nearest word before that can be what is spoken of decides: a thing, or a pronoun.
    """
    talk = mentions.talk
    said = talk.texts[found.start : found.end]
    if _PRONOUNS & set(said) or said[0] in ("i", "we"):
        return False
    low = max(talk.clause(found.start)[0], found.start - _SUBJECT_REACH)
    for i in range(found.start - 1, low - 1, -1):
        text = talk.texts[i]
        shown = text == "one" and i > low and talk.texts[i - 1] in ("this", "that")
        if text in _PRONOUNS and i > low and talk.texts[i - 1 - shown] in _BESIDE:
            if _NEIGHBOURS & set(talk.texts[max(0, i - 4) : i]):
                return True
            continue  # "the pot behind it goes"
        if text in _PRONOUNS:
            return False
        if mentions.masked[i]:
            return False
        if _stood_on(talk.texts, i):
            continue
        if mentions.vocabulary.decision_things.at(talk.texts, i) or _is_kin(mentions, i):
            return i == low or bool(_POINTERS & set(talk.texts[max(low, i - 3) : i]))
        if text in ("that", "this", "these", "those", "her") and (
            i + 1 == found.start or talk.texts[i + 1] in _FUNCTION or talk.tokens[i].mark
        ):
            return False
    return False


def _stood_on(texts: tuple[str, ...], at: int) -> bool:
    """ "I'll have it on our table at the show": where something stands is not spoken of."""
    return texts[at - 1] in _POINTERS and texts[max(0, at - 2)] in _STANDING


_STANDING = frozenset({"on", "in", "at", "onto", "from", "into"})


def noun_before(mentions: Mentions, found: Found) -> bool:
    """ "the zonals can wait until May", "the begonias will go out"; not "the plant can wait"."""
    texts = mentions.talk.texts
    at = found.start - 1
    if _PRONOUNS & set(texts[found.start : found.start + 1]) or at < 1:
        return False
    while at > 0 and found.start - at <= _SUBJECT_REACH and texts[at] in _MODALS:
        at -= 1
    if at == found.start - 1 or at < 1 or texts[at] in _FUNCTION | _PRONOUNS | _POINTERS:
        return False
    if mentions.masked[at] or mentions.vocabulary.plant_nouns.at(texts, at):
        return False
    if texts[at] in _MINDS and texts[at + 1] == "to":
        return False  # "I've made up my mind to name it"
    return texts[at - 1] in ("the", "my", "our", "those", "these", "your")


def thing_lately(mentions: Mentions, found: Found) -> bool:
    """ "this label's split, that can go in the bin": what it is was told in the clause before."""
    talk = mentions.talk
    low = talk.clause(found.start)[0]
    said = {*talk.texts[found.start : found.end + 1], *talk.texts[low : low + 2]}
    if found.start < 2 or not _THE_THING & said:
        return False
    if low == 0 or found.start - low > _SUBJECT_REACH or talk.tokens[low - 1].mark in (STOP, QUERY):
        return False
    before = talk.clause(low - 1)[0]
    if not talk.punctuated:
        before = max(before, low - _THING_REACH)
    for i in range(before, min(before + 4, low)):
        thing = mentions.vocabulary.decision_things.at(talk.texts, i)
        shown = {"this", "that", "the", "my"} & set(talk.texts[before:i])
        if thing and shown and i - before <= 3:
            return talk.texts[thing.end : thing.end + 1] in _VERB_AFTER
    return False


_THING_REACH = 5  # "the watering can's leaking that wants chucking"
_THE_THING = frozenset({"it", "that", "this", "them", "those", "one"})
_BESIDE = frozenset({"to", "beside", "behind", "below", "above", "before", "after", "by", "of"})
_NEIGHBOURS = frozenset({"one", "ones", "plant", "seedling"})
_MINDS = frozenset("mind plan plans idea intention aim job time turn heart".split())
_MODALS = frozenset("can will 'll must shall should may could have has to just all both".split())
_VERB_AFTER = tuple((v,) for v in "'s is has was 've wants needs are".split())


def kin_after(mentions: Mentions, found: Found) -> bool:
    """ "I binned its sister", "chucked the others"; not "bin it with the others"."""
    talk = mentions.talk
    end = found.end
    if talk.tokens[end - 1].mark or _PRONOUNS & set(talk.texts[found.start : end]):
        return False
    if talk.texts[end - 1] in ("her", "his", "its"):
        end -= 1
    if talk.texts[end : end + 1] not in (("its",), ("his",), ("her",), ("the",)):
        return False
    return end + 1 < len(talk.texts) and _is_kin(mentions, end + 1)


def tally(mentions: Mentions, found: Found) -> bool:
    """ "two on the heap", "nine looked at, one for the bench"; not "one for the bench"."""
    talk = mentions.talk
    if found.label == "propagate" or found.start == 0:
        return False
    before = talk.texts[found.start - 1]
    if before != "one" and quantity(talk.texts, found.start - 1) is not None:
        return not mentions.masked[found.start - 1]
    low = talk.sentence(found.start)[0]
    return (
        talk.texts[found.start] == "one"
        and before != "the"
        and any(
            quantity(talk.texts, i) is not None and talk.texts[i] not in ("a", "one")
            for i in range(low, found.start)
            if talk.clause(i)[0] == i
        )
    )


def where_it_stands(mentions: Mentions, found: Found) -> bool:
    """ "this poor devil in the bucket has no number"; not "that one's in the bucket"."""
    texts = mentions.talk.texts
    return texts[found.start] in ("in", "on") and texts[found.end : found.end + 1] in _VERB_AFTER


def called_by_its_looks(mentions: Mentions, found: Found) -> bool:
    """ "I'm calling it plum", "call it 20 centimetres"; not "I'm calling it after my mother"."""
    if not {"call", "calling"} & set(mentions.talk.texts[found.start : found.end]):
        return False
    near = range(found.end, found.end + 3)
    number = quantity(mentions.talk.texts, found.end) is not None
    return number or any(mentions.vocabulary.colours.at(mentions.talk.texts, i) for i in near)


def moved(mentions: Mentions, found: Found) -> bool:
    """ "dig it up and give it a proper pot"; not "dig it up and bin it".

    What is lifted to be potted, divided or planted is not thrown out.
    """
    talk, vocabulary = mentions.talk, mentions.vocabulary
    said = talk.texts[found.start : found.end]
    near = vocabulary.decisions.find(talk.texts, found.end, found.end + _THEN_REACH)
    if any(f.label == "show" and f.start <= found.end + 1 for f in near):
        return True  # "I'll chuck it in the show"
    if said[0] not in _LIFTING or _WASTED & set(said[1:]):
        return False
    high = min(talk.sentence(found.end - 1)[1], found.end + _THEN_REACH)
    if talk.texts[high : high + 1] == ("and",):
        high += _THEN_REACH
    after = vocabulary.decisions.find(talk.texts, found.end, high)
    planted = _PLANTING & set(talk.texts[found.end : high])
    return bool(planted) or any(f.label in ("repot", "propagate") for f in after)


_LIFTING = frozenset(
    "dig digging lift lifting tip tipping knock knocking turn turning pull pulling fork forking "
    "take taking get getting root rooting grub grubbing howk howking have having".split()
)
_WASTED = frozenset({"heap", "bin", "compost", "skip", "tip", "away"})
_PLANTING = frozenset({"plant", "replant", "replanting", "planting", "line"})
_THEN_REACH = 9


def _is_kin(mentions: Mentions, at: int) -> bool:
    return mentions.vocabulary.decision_kin.at(mentions.talk.texts, at) is not None


_FUNCTION = frozenset(
    "and or but so if as is 's are was will 'll would 'd can could may might must should "
    "has have had i we you it he she they in on at to for from with of off out up down over "
    "back again now then today tonight tomorrow next this because before after till until "
    "another one another more not no".split()
)
