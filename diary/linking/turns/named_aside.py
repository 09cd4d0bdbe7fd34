"""A name that is said of the plant in hand and shows no other: parents, likeness, opinion.

"This is Tin Whistle put to itself", "what it puts me in mind of, very strongly, is Absent
Verger", "the neighbour swears it's Early Bobbin".
"""

from diary.reading.mentions import Mentions, Ref

_CROSSING = frozenset(
    "put pollinated dusted selfing fertilised bred married wed self pollen blood".split()
)
_STRAIN = frozenset("blood side influence genes in leaf habit look".split())
_OPINION = frozenset(
    "swears reckons insists claims thinks swear reckon insist claim think says say said told "
    "thought bet guess wondered wonder mistook called calls asks asked".split()
)
_WRITTEN = frozenset("label tag stick book ticket card register notes notebook i".split())
_REACH = 7


def crossed_after(mentions: Mentions, ref: Ref) -> bool:
    """ "Tin Whistle put to itself", "Tin Whistle with its own pollen"."""
    talk = mentions.talk
    if talk.tokens[ref.end - 1].mark:
        return False
    rest = talk.texts[ref.end : ref.end + 4]
    article = talk.texts[max(0, ref.start - 1) : ref.start] in (("the",), ("some",), ("more",))
    if article and rest[:1] != () and (rest[0].endswith("ing") or rest[0] in _STRAIN):
        return True  # "that's the Tin Whistle coming out"
    return rest[:1] != () and (
        rest[0] in _CROSSING
        or rest[:3] in (("with", "its", "own"), ("on", "its", "own"))
        or rest[:2] in (("on", "itself"), ("on", "herself"), ("on", "himself"), ("to", "itself"))
    )


_KIN = frozenset("father mother mum dad sire dam parent parents".split())
_POINTING = frozenset("this that here there these".split())


def parent_told(mentions: Mentions, ref: Ref) -> bool:
    """ "The father of this lot is Tin Whistle"; not "this is the old mother herself"."""
    start = mentions.talk.sentence(ref.start)[0]
    head = mentions.talk.texts[start : min(start + 4, ref.start)]
    kin = next((n for n, t in enumerate(head) if t in _KIN), None)
    return kin is not None and not _POINTING & set(head[:kin])


def only_likened(mentions: Mentions, ref: Ref) -> bool:
    """A likeness right before it: "what it brings to mind, oddly, is Tin Whistle"."""
    start = mentions.talk.sentence(ref.start)[0]
    start = max(start, ref.start - 3 * _REACH)
    texts = mentions.talk.texts
    if any(texts[i : i + 2] in (("in", "mind"), ("to", "mind")) for i in range(start, ref.start)):
        return True
    if {"take", "takes", "took", "taking"} & set(texts[max(start, ref.start - 5) : ref.start]):
        return "back" in texts[start : ref.start]  # "this one takes me back to Tin Whistle"
    return texts[start : start + 1] == ("what",) and bool(
        mentions.vocabulary.cues["similar"].find(texts, start, ref.start)
    )


def others_opinion(mentions: Mentions, ref: Ref) -> bool:
    """ "Neighbour swears it's Early Bobbin"; not "the label says it's Early Bobbin"."""
    if mentions.talk.texts[ref.start - 2 : ref.start] in (("'s", "called"), ("is", "called")):
        return False  # "she's called Tin Whistle"
    start = max(mentions.talk.sentence(ref.start)[0], ref.start - _REACH)
    words = set(mentions.talk.texts[start : ref.start])
    return bool(words & _OPINION) and not words & _WRITTEN
