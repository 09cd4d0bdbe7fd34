"""Where the talk is of another plant than the clip's: a passing comparison, its history.

From "Tallow Moth itself is only about an inch and a half", "which is about six" after a
plant compared with, or "the other one was", to the end of the sentence or to the next
"this" or "it's" that takes the subject back.
"""

from diary.linking.document import Plant
from diary.linking.likeness.likeness import Likeness
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions, Ref

_BACK = frozenset({"this", "it", "mine", "these"})
_LEADS = frozenset(
    {
        "and",
        "but",
        "so",
        "now",
        "well",
        "whereas",
        "because",
        "while",
        "although",
        "though",
        "cause",
        "unlike",
        "where",
    }
)
_VERBS = frozenset(
    "is was 's are were has had have itself himself herself threw gave got does did "
    "would never used wants sits flowers "
    "beats always only looks grew makes over there just could can hasn't came comes "
    "made had will might may should carried carries bore bears reached reaches measured "
    "measures opened opens stood managed manages topped holds held runs ran grow grew ended came "
    "lost died went turned smells caught gets keeps goes stands grows".split()
)


_UPON = (("on",), ("onto",), ("over",))
_BESIDE = frozenset({"beside", "behind", "alongside", "by", "above", "below", "under"})


def told_of_others(
    mentions: Mentions,
    start: int,
    end: int,
    said: int,
    plant: Plant,
    parents: tuple[Statement, ...],
    likenesses: tuple[Likeness, ...],
) -> set[int]:
    """Tokens of the clip that speak of another plant; up to `said` the words tell which it is."""
    talk = mentions.talk
    found: set[int] = set()
    for ref in mentions.refs_in(start, end):
        if _is_plant(mentions, ref, plant):
            continue
        if ref.cut is not None and not ref.cut[1]:
            continue
        begin = _as_subject(mentions, ref) if ref.start not in _consumed(parents) else None
        begin = begin if begin is not None else _relative(mentions, ref)
        if begin is not None:
            found |= set(range(begin, _until_back(mentions, begin, end)))
    found |= _all_but_this(mentions, start, end)
    for cue in mentions.vocabulary.cues["other_plant"].find(talk.texts, start, end):
        clause = talk.clause(cue.start)[0]
        clause = max([clause, *(r.end for r in mentions.refs_in(clause, cue.start))])
        which = talk.texts[cue.end : cue.end + 2]
        if which[:1] in (("which",), ("who",)) and which[1:] and which[1] in _VERBS:
            found |= set(range(cue.end, _until_back(mentions, cue.end, end)))
        shown = mentions.ref_ending(cue.start)
        begun = talk.sentence(cue.start)[0] == cue.start or talk.tokens[cue.start - 1].mark
        if shown is not None and not begun and _is_plant(mentions, shown, plant):
            continue  # "3108 her sister came out the same"
        if (
            cue.end > said + 1
            and cue.start - clause <= 1
            and talk.texts[cue.end : cue.end + 1]
            and talk.texts[cue.end] in _VERBS
            and talk.texts[cue.start - 1]
            not in ("got", "has", "have", "with")  # "got its mother's"
        ):
            found |= set(range(cue.start, _until_back(mentions, cue.start, end)))
    return found


def _all_but_this(mentions: Mentions, start: int, end: int) -> set[int]:
    """ "they've all got mildew bar this one": told of every plant but the one in hand."""
    talk = mentions.talk
    found: set[int] = set()
    for at in range(start + 2, end):
        i = at - 1
        while i > start and at - i < 3 and talk.texts[i] in ("for", "from", "just", "only"):
            i -= 1
        if talk.texts[at] not in ("this", "it", "her", "him") or talk.texts[i] not in _BUT:
            continue
        low = max(start, talk.sentence(i)[0], i - _ALL_WITHIN)
        if _EVERYTHING & set(talk.texts[low:i]):
            found |= set(range(low, i))
    return found


_BUT = frozenset({"bar", "barring", "except", "excepting", "apart"})
_EVERYTHING = frozenset("all every everything everybody everyone others rest most them".split())
_ALL_WITHIN = 12


def _consumed(parents: tuple[Statement, ...]) -> set[int]:
    return {s.start for s in parents}


def _is_plant(mentions: Mentions, ref: Ref, plant: Plant) -> bool:
    if ref.cut is not None:
        return (
            plant.number is not None
            and mentions.numbers.complete(ref.cut, plant.number) == plant.number
        )
    return ref.title in (plant.number, plant.name)


def _as_subject(mentions: Mentions, ref: Ref) -> int | None:
    """Where a statement about the other plant begins, if it is the subject of one."""
    talk = mentions.talk
    clause = talk.clause(ref.start)[0]
    i = ref.start
    while i > clause and talk.texts[i - 1] in _LEADS:
        i -= 1
    if i != clause and not (ref.start and talk.texts[ref.start - 1] in _LEADS):
        return None
    rest = talk.texts[ref.end : ref.end + 1]
    if (
        rest
        and rest[0] in _BESIDE
        and talk.texts[ref.end + 1 : ref.end + 2] in (("it",), ("this",))
    ):
        rest = talk.texts[ref.end + 2 : ref.end + 3]  # "2351 beside it has got a scent"
    if (
        talk.tokens[ref.end - 1].mark == ","
        and talk.punctuated
        and talk.sentence(ref.start)[0] == i
    ):
        return ref.start
    given = talk.texts[ref.end : ref.end + 2]
    if given == ("'s", "pollen") or (given[:1] == ("goes",) and given[1:] in _UPON):
        return None  # "Tin Whistle's pollen goes on it tonight", "Tin Whistle goes on tomorrow"
    if rest and rest[0] in _VERBS:
        return ref.start
    return None


def _relative(mentions: Mentions, ref: Ref) -> int | None:
    """ "bigger than Fenmarsh Lad, which is about six", "redder than Hobnail, that's a coral"."""
    rest = mentions.talk.texts[ref.end : ref.end + 2]
    if rest == ("that", "'s") and mentions.talk.texts[ref.start - 1] == "than":
        return ref.end
    if rest[:1] in (("which",), ("who",)) and rest[1:] and rest[1] in _VERBS:
        return ref.end
    return None


def _until_back(mentions: Mentions, begin: int, end: int) -> int:
    talk = mentions.talk
    stop = min(talk.sentence(begin)[1], end)
    for a, b in talk.clauses_in(begin, stop):
        if a <= begin or a >= stop:
            continue
        i = a
        while i < b and talk.texts[i] in _LEADS:
            i += 1
        if (
            i < b
            and talk.texts[i] in _BACK
            and (talk.texts[i] != "it" or talk.texts[a] in ("but", "so", "now", "whereas"))
        ):
            return a
        if a > begin + 1 and talk.texts[i : i + 1] in (("at",), ("for",), ("with",)):
            here = next((k for k in range(i, min(b, i + 7)) if talk.texts[k] == "this"), None)
            if here is not None and talk.texts[here + 1 : here + 2] in (("is",), ("'s",), ("one",)):
                return a  # "for at thirty-four millimetres this is a small flower"
    return stop
