"""The scent of the flower, where the answer stands apart from the word.

"Scent? None.", "as for scent, it has none", "it isn't scented". Leaves alone a leaf's scent
and "no scent yet to compare".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions

_ANSWER_WITHIN, _NONE_WITHIN = 4, 10
_NO = frozenset({"none", "no", "nil", "nothing", "nowt", "not", "nope", "zero", "never"})
_YES = frozenset({"yes", "yep", "aye", "plenty", "some", "strong", "sweet", "faint", "lovely"})


def answered_scents(mentions: Mentions) -> Iterator[Statement]:
    """ "Scent? Not a whiff.", "Scent: none.", "the scent, there's none at all"."""
    talk = mentions.talk
    words = mentions.vocabulary.classes["perfume"]
    for at, text in enumerate(talk.texts):
        if text not in words or mentions.masked[at] or _of_the_leaf(mentions, at):
            continue
        if talk.tokens[at].mark and at + 1 < len(talk.texts):
            answer = talk.texts[at + 1]
            if answer in _NO | _YES and talk.texts[at + 2 : at + 3] != ("matter",):
                yield _scent("none" if answer in _NO else "scented", at, at + 2)
                continue
        if _asked(talk.texts, at) and talk.texts[at + 1 : at + 2] in _PLAIN_NO:
            yield _scent("none", at - 3, at + 2)
            continue
        following = talk.sentence(at)[1]
        reply = talk.texts[following : following + 3]
        hasnt = talk.punctuated and (reply in _IT_HAS_NOT or reply[:2] in _HAS_NOT)
        if hasnt and talk.sentence(following)[1] <= following + 4:
            yield _scent("none", following, following + 3)
            continue  # "I was told it'd have a scent. It hasn't."
        for i in range(at + 1, min(len(talk.texts), at + _NONE_WITHIN)):
            if talk.texts[i] in mentions.vocabulary.classes["foliage"]:
                break
            if talk.texts[i] == "none" and talk.texts[i - 1] in ("has", "'s", "is", "got", "have"):
                yield _scent("none", i - 1, i + 1)
                break


_IT_HAS_NOT = tuple(
    (it, has, "not") for it in ("it", "she", "he", "this") for has in ("has", "does", "is", "'s")
)
_HAS_NOT = (("has", "not"), ("does", "not"), ("not", "any"))
_PLAIN_NO = (("no",), ("none",), ("nope",), ("nah",))


def _asked(texts: tuple[str, ...], at: int) -> bool:
    """ "has it a scent", "is there any scent", where captions lose the question mark."""
    before = texts[max(0, at - 4) : at]
    return any(
        before[i] in ("has", "is", "does", "any") and before[i + 1] in ("it", "there", "she", "he")
        for i in range(len(before) - 1)
    )


def sniffed_in_vain(mentions: Mentions) -> Iterator[Statement]:
    """ "I had my nose in every flower, nothing"; not "my nose, and nothing smells sweeter"."""
    texts = mentions.talk.texts
    for at, text in enumerate(texts):
        if text not in _SNIFF:
            continue
        for i in range(at + 1, min(len(texts), at + _NONE_WITHIN)):
            ends = i + 1 == len(texts) or mentions.talk.tokens[i].mark or texts[i + 1] in _THERE
            in_vain = texts[i] in ("anything", "owt") and {"not", "never"} & set(texts[at:i])
            if (texts[i] in ("nothing", "nowt", "none", "naught") or in_vain) and ends:
                yield _scent("none", i, i + 1)
                break


_SNIFF = frozenset({"nose", "sniff", "sniffed", "sniffing"})
_THERE = frozenset({"there", "at", "not", "no", "whatever", "and", "so", "but", "in", "to"})


def without_leaf_scents(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """Without scents, and scents denied, that are the leaf's."""
    return [
        s
        for s in found
        if s.trait != "scent"
        or _of_flower(mentions, s)
        or not (
            _of_a_name(mentions, s)
            or (_of_the_leaf(mentions, s.start) and not _told_before_the_leaf(mentions, s))
            or _of_the_garden(mentions, s)
            or (s.value == "scented" and _of_the_air(mentions, s))
        )
    ]


def _of_the_garden(mentions: Mentions, s: Statement) -> bool:
    """ "the lilac by the gate smells wonderful"; not "it smells of lilac"."""
    low = mentions.talk.clause(s.start)[0]
    return bool(mentions.vocabulary.classes["garden"] & set(mentions.talk.texts[low : s.start]))


def _told_before_the_leaf(mentions: Mentions, s: Statement) -> bool:
    """ "no smell, and the leaf doesn't smell either": the flower's is told first."""
    talk = mentions.talk
    start, stop = talk.clause(s.start)
    foliage = mentions.vocabulary.classes["foliage"]
    if s.value != "none" or foliage & set(talk.texts[start : s.end]):
        return False
    leaf = next(i for i in range(s.end, stop) if talk.texts[i] in foliage)
    return bool({"and", "but", "nor"} & set(talk.texts[s.end : leaf]))


def _of_a_name(mentions: Mentions, s: Statement) -> bool:
    """ "a whiff of Tin Whistle about it": a likeness."""
    texts = mentions.talk.texts
    at = s.end if texts[s.end - 1] == "of" else s.end + 1
    return texts[at - 1 : at] == ("of",) and mentions.ref_at(at) is not None


def _of_the_air(mentions: Mentions, s: Statement) -> bool:
    """ "there's a smell of creosote in here": of the house, or of what no flower smells of."""
    texts = mentions.talk.texts
    after = texts[s.end - 1 : min(s.end + 5, mentions.talk.clause(s.start)[1])]
    before = texts[max(0, s.start - 6) : s.start + 1]
    if "here" in before and before[before.index("here") - 1] == "in":
        return "only" not in before  # "the only one in here with a scent"
    if "in" in after and after[after.index("in") + 1 :][:1] in (("here",), ("there",)):
        return "smell" in texts[s.start : s.end]
    return bool(set(after) & mentions.vocabulary.classes["stink"]) and bool(
        {"of", "like"} & set(texts[s.start : s.end + 2])
    )


def _of_flower(mentions: Mentions, s: Statement) -> bool:
    start, stop = mentions.talk.clause(s.start)
    return bool(mentions.vocabulary.classes["bloom"] & set(mentions.talk.texts[start:stop]))


def denied_scents(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """The statements, where "it's not scented" is no scent.

    "The leaf isn't scented" says nothing of the flower.
    """
    return [
        _scent("none", _denial_begins(mentions, s), s.end)
        if s.trait == "scent" and s.value == "scented" and _only_denied(mentions, s)
        else s
        for s in found
    ]


def _denial_begins(mentions: Mentions, s: Statement) -> int:
    return min([s.start, *(x.cue for x in mentions.scopes.by_token[s.start])])


def _only_denied(mentions: Mentions, s: Statement) -> bool:
    habits = mentions.scopes.habits(s.start, s.end)
    return habits == {Habit.DENIAL} and not _of_the_leaf(mentions, s.start)


def _of_the_leaf(mentions: Mentions, at: int) -> bool:
    start, stop = mentions.talk.clause(at)
    leaf = mentions.vocabulary.classes["foliage"]
    return bool(leaf & set(mentions.talk.texts[start:stop]))


def _scent(value: str, start: int, end: int) -> Statement:
    return Statement(
        trait="scent",
        value=value,
        start=start,
        end=end,
        rule="a scent asked for",
        score=0.9,
    )
