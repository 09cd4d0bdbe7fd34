"""Seeds sown and come up told as two figures with hardly a word: "fifteen in, four up".

"Four up from nine", "out of a pod of eleven, five came through", "sixteen sown for four", "all
but two of the dozen are up"; not "ten inches up from nine", nor "four up, six down".
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity, quantity

_WHOLE_LEADS = frozenset(
    "the a those that this my pod packet batch sowing lot total pot tray berry capsule head only "
    "sown original fat good plump poor some about round just full seedpod um er uh say maybe "
    "perhaps nearly".split()
)
_FROM = frozenset({"from", "of"})
_BETWEEN = frozenset(
    "and but for only just so then with i we got had have has 've of them those which the a "
    "mere measly grand poor miserable solitary by now there 's are is about all what came out "
    "it that to show seen saw".split()
)
_MOST_BETWEEN = 5
_YOUNG = frozenset({"plant", "plants", "seedling", "seedlings", "survivor", "survivors"})
_NOT_ALONE = (("came",), ("took",), ("bothered",), ("alive",), ("struck",), ("obliged",))
_ALL = frozenset("all both every everything each lot".split())
_ALL_GO_ON = frozenset(
    "of them those these the one last single blessed lot whole seeds seed ones have has 've 's "
    "did are is now went and on to".split()
)
_BUT = (("all", "but"), ("all", "bar"), ("all", "except"), ("every", "bar"), ("everything", "bar"))


@dataclass(frozen=True, slots=True)
class Pair:
    """How many were sown, where that is said here, and how many of them came up."""

    sown: Quantity
    up: Quantity


def sown_pairs(mentions: Mentions, amounts: list[Quantity]) -> Iterator[Pair]:
    """The pairs of neighbouring figures that tell of seeds by themselves."""
    for first, second in pairwise(amounts):
        if second.start - first.end > 12 or mentions.talk.between(
            first.end - 1, second.start - 1, ("?",)
        ):
            continue
        if first.value >= second.value and _whole_first(mentions, first, second):
            yield Pair(first, second)
        elif first.value <= second.value and _part_first(mentions, first, second):
            yield Pair(second, first)


def _part_first(mentions: Mentions, part: Quantity, whole: Quantity) -> bool:
    """ "four up from nine", "five germinated out of the dozen"."""
    talk = mentions.talk
    if talk.texts[part.end : whole.start] in (("out", "of"), ("out", "of", "the")):
        cue = mentions.vocabulary.germinated.at(talk.texts, _past(mentions, whole.end))
        return cue is not None and talk.texts[cue.start : cue.end] not in _NOT_ALONE
    cue = mentions.vocabulary.germinated.at(talk.texts, _past(mentions, part.end))
    if cue is not None and talk.texts[cue.start : cue.end] == ("struck",):
        return False
    if cue is None or cue.end > whole.start or talk.between(part.end, whole.start, (".",)):
        return False
    between = talk.texts[cue.end : whole.start]
    return bool(_FROM & set(between)) and set(between) <= _WHOLE_LEADS | _FROM | {"out", "off"}


def _whole_first(mentions: Mentions, whole: Quantity, part: Quantity) -> bool:
    """ "fifteen in, four up", "out of a pod of eleven, five came through", "12 sown for 3"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    texts = talk.texts
    cue = vocabulary.germinated.at(texts, _past(mentions, part.end))
    in_full = cue is not None and not talk.between(part.end - 1, cue.start, (".", "?"))
    if cue is not None and texts[cue.start : cue.end] == ("came",):
        in_full = in_full and _ends(mentions, cue.end)  # not "of four, two came red"
    seeds = texts[whole.end : whole.end + 1] in (("seed",), ("seeds",))
    if seeds and texts[part.end : part.end + 1] and texts[part.end] in _YOUNG:
        return set(texts[whole.end + 1 : part.start]) <= _BETWEEN  # "two seeds, one plant"
    put = vocabulary.sown_put.at(texts, whole.end)
    if put is not None and put.end <= part.start:
        between = texts[put.end : part.start]
        if len(between) > _MOST_BETWEEN or not set(between) <= _BETWEEN:
            return False
        return in_full or ("for" in between and _ends(mentions, part.end))
    i = whole.start
    while i > 0 and whole.start - i < 4 and texts[i - 1] in _WHOLE_LEADS:
        i -= 1
    led = bool(_FROM & set(texts[max(0, i - 1) : whole.start]))
    between = texts[whole.end : part.start]
    talk_of_seeds = _BETWEEN | {"seeds", "seed", "sown", "sowed", "in"}
    return led and in_full and len(between) <= _MOST_BETWEEN and set(between) <= talk_of_seeds


def _past(mentions: Mentions, at: int) -> int:
    """Past the few words between a figure and what it did: "four of them have come up"."""
    texts = mentions.talk.texts
    stop = at + 4
    while at < min(stop, len(texts)) and texts[at] in (
        "of",
        "them",
        "those",
        "have",
        "has",
        "'ve",
        "seedlings",
        "are",
        "is",
        "only",
        "now",
        "plants",
        "so",
        "far",
        "did",
        "that",
        "which",
    ):
        if mentions.vocabulary.germinated.at(texts, at) is not None:
            break
        at += 1
    return at


def _ends(mentions: Mentions, end: int) -> bool:
    talk = mentions.talk
    return end >= len(talk.texts) or bool(talk.tokens[end - 1].mark) or talk.clause(end)[0] == end


def all_but(mentions: Mentions, sown: Quantity) -> Quantity | None:
    """ "and all but two of them are up": how many that leaves of the seeds sown."""
    texts = mentions.talk.texts
    stop = min(len(texts), sown.end + 20)
    for at in range(max(0, sown.start - 8), stop - 2):
        if texts[at : at + 2] not in _BUT:
            continue
        lost = quantity(texts, at + 2)
        if lost is None or lost.value >= sown.value:
            continue
        if mentions.vocabulary.germinated.find(texts, lost.end, min(len(texts), lost.end + 9)):
            return Quantity(at, lost.end, sown.value - lost.value)
    return None


def all_of_them(mentions: Mentions) -> Iterator[tuple[int, int, bool]]:
    """ "every one has germinated", "both seeds grew": where that is said, and whether of two."""
    texts, germinated = mentions.talk.texts, mentions.vocabulary.germinated
    for at, text in enumerate(texts):
        if text not in _ALL or texts[at - 1 : at] == ("not",) or texts[at : at + 2] in _BUT:
            continue
        i = at + 1
        while i < len(texts) and i - at < 7 and texts[i] in _ALL_GO_ON:
            if germinated.at(texts, i) is not None:
                break
            i += 1
        cue = germinated.at(texts, i) if i > at else None
        if cue is None or mentions.talk.between(at, cue.start, (".", "?")):
            continue
        of_them = text != "both" or {"of", "seeds"} & set(texts[at + 1 : i]) != set()
        plain = i > at + 1 or texts[cue.start : cue.end] not in _NOT_ALONE
        if plain or of_them:
            yield at, cue.end, text == "both"


def told_how_many(mentions: Mentions, amounts: list[Quantity]) -> Iterator[tuple[Quantity, bool]]:
    """ "How many seeds? Sixteen. And how many came up? Nine.": the figure, and if of those up."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    for amount in amounts:
        start = talk.sentence(amount.start)[0]
        if start != amount.start or not start or not _ends(mentions, amount.end):
            continue
        before = talk.sentence(start - 1)
        words = talk.texts[before[0] : start]
        if "how" not in words or "many" not in words:
            continue
        up = bool(vocabulary.germinated.find(talk.texts, before[0], start))
        if up or {"seed", "seeds", "sow", "sown", "sowed"} & set(words):
            yield amount, up
