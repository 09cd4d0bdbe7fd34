"""Early or late, told by the weeks between this plant and its kind.

"three weeks behind its sisters", "a full fortnight late", "into flower ten days ahead of the
rest". Leaves alone "we're three weeks behind with the sowing", "I potted it a week before the
others" and "two weeks before the show".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_SPANS = frozenset("week weeks day days fortnight month months".split())
_EARLY = frozenset({"early", "earlier", "ahead", "before", "sooner", "quicker", "forward"})
_LATE = frozenset({"late", "later", "behind", "after", "slower"})
_BY_ITSELF = frozenset({"early", "late", "earlier", "later", "ahead", "behind", "forward"})
_SMALL = frozenset(
    "of the than its her his their all any my our most to in every else other just a old".split()
)
_NOT_ITS = frozenset(
    "i we you they spring frost post sowing sowed sown potted pricked planted moved brought bought "
    "repotted pinched stopped fed watered sprayed rooted struck took germinated came_up bus show "
    "judge judging weather rain".split()
)
_OUT = frozenset({"flower", "flowered", "bloom", "bloomed", "opened", "open", "out", "colour"})
_NEXT = 5


def weeks_apart(mentions: Mentions) -> Iterator[Statement]:
    """A span of time and "behind", "ahead", "late" or "early", said of the plant."""
    talk = mentions.talk
    for at, text in enumerate(talk.texts[:-1]):
        if text not in _SPANS:
            continue
        word = talk.texts[at + 1]
        relation = at + 1
        if word == "in" and talk.texts[at + 2 : at + 4] in (("front", "of"), ("advance", "of")):
            word, relation = "ahead", at + 2
        if word not in _EARLY | _LATE or talk.tokens[at].mark in (".", "?"):
            continue
        end = _the_rest_after(mentions, relation)
        if end is None and (word not in _BY_ITSELF or not _closes(mentions, relation)):
            continue
        if _of_somebody(mentions, at) or (word == "later" and at - talk.clause(at)[0] <= 2):
            continue  # "Three days later, and we are back"
        yield Statement(
            trait="flowering",
            value="early" if word in _EARLY else "late",
            start=at,
            end=end or relation + 1,
            rule="weeks between this plant and its kind",
            score=0.88,
        )


def _the_rest_after(mentions: Mentions, relation: int) -> int | None:
    """The end of "than all its sisters", or None."""
    talk, rest = mentions.talk, mentions.vocabulary.classes["the_rest"]
    for i in range(relation + 1, min(len(talk.texts), relation + 1 + _NEXT)):
        if talk.tokens[i - 1].mark in (".", "?"):
            return None
        ref = mentions.ref_at(i)
        if talk.texts[i] in rest or (ref is not None and ref.cut is None):
            return i + 1
        if talk.texts[i] not in _SMALL:
            return None
    return None


def _closes(mentions: Mentions, relation: int) -> bool:
    """Nothing is told after it that it could be late for: "late", "late again", "late as usual"."""
    talk = mentions.talk
    if talk.tokens[relation].mark or relation + 1 >= len(talk.texts):
        return True
    return talk.clause(relation)[1] == relation + 1 or talk.texts[relation + 1] in _AGAIN


_AGAIN = frozenset("again as this every and but so to into out in coming opening flowering".split())


def _of_somebody(mentions: Mentions, at: int) -> bool:
    """ "we're three weeks behind", "I sowed it a week before": the grower, or his work."""
    talk = mentions.talk
    before = set(talk.texts[talk.clause(at)[0] : at])
    return bool(before & _NOT_ITS) and not before & _OUT
