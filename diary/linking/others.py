"""Where the talk is of another plant than the clip's: a passing comparison, its history.

From "Tallow Moth itself is only about an inch and a half", "which is about six" after a
plant compared with, or "the other one was", to the end of the sentence or to the next
"this" or "it's" that takes the subject back.
"""

from collections.abc import Iterator

from diary.linking.document import Plant, PlantKind
from diary.linking.likeness.likened import Likeness
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
    "lost died damped went turned smells caught gets keeps goes stands grows".split()
)


_UPON = (("on",), ("onto",), ("over",))
_KIN = frozenset("its his her their the sister brother twin parent mother father".split())
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
    found: set[int] = set()
    for ref in mentions.refs_in(start, end):
        if _is_plant(mentions, ref, plant):
            continue
        if ref.cut is not None and not ref.cut[1]:
            continue
        begin = _as_subject(mentions, ref) if ref.start not in _consumed(parents) else None
        begin = begin if begin is not None else _relative(mentions, ref)
        if begin is not None:
            found |= set(
                range(begin, _still_of_it(mentions, _until_back(mentions, begin, end), end))
            )
    for begin in _spoken_of(mentions, start, end, said, plant):
        found |= set(range(begin, _to_next_subject(mentions, begin, end)))
    return found | _all_but_this(mentions, start, end)


def _still_of_it(mentions: Mentions, stop: int, end: int) -> int:
    """ "Tin Whistle was never like this | he was a great strong thing": told on, of the past."""
    talk = mentions.talk
    while not talk.punctuated and talk.texts[stop : stop + 2] in _HE_WAS and stop < end:
        stop = min(talk.sentence(stop)[1], end)
    return stop


_HE_WAS = tuple((who, was) for who in ("he", "she") for was in ("was", "had", "were"))
_GOVERNING = frozenset(
    "got has have with than like as of from to on off by for in unlike beside behind is 's was "
    "are were".split()
)
_PLAIN_VERBS = (("is",), ("was",), ("has",), ("had",))
_MODIFIED, _LONG_NAME, _SHOWING = 5, 3, 3
_OWN_PARTS = frozenset("it plant flower flowers bloom petals leaf leaves head truss".split())


def _spoken_of(mentions: Mentions, start: int, end: int, said: int, plant: Plant) -> Iterator[int]:
    """Where other plants are the subject: "its sister's white", "the rest of the batch came pink",
    "ignore the white at the back"; not "the rest of it is white", "it has its mother's eye".
    """
    talk = mentions.talk
    for cue in mentions.vocabulary.cues["other_plant"].find(talk.texts, start, end):
        if plant.kind is PlantKind.UNNAMED and cue.start - said <= _SHOWING:
            continue  # "nor has its neighbour, which is white": it is the plant shown
        which = talk.texts[cue.end : cue.end + 2]
        told = which[:1] in (("which",), ("who",)) and which[1:] and which[1] in _VERBS
        if told or which in (("that", "was"), ("that", "had")):
            yield cue.end
        shown = mentions.ref_ending(cue.start)
        begun = talk.sentence(cue.start)[0] == cue.start or talk.tokens[cue.start - 1].mark
        if shown is not None and not begun and _is_plant(mentions, shown, plant):
            continue  # "3108 her sister came out the same"
        clause = talk.clause(cue.start)[0]
        clause = max([clause, *(r.end for r in mentions.refs_in(clause, cue.start))])
        long = cue.end - cue.start >= _LONG_NAME
        headed = cue.start - clause <= 1 or (cue.end - cue.start > 1 and not talk.punctuated)
        reach = _MODIFIED if long else 0
        if (
            cue.end > said + 1
            and headed
            and talk.texts[cue.start - 1] not in _GOVERNING
            and not _names_a_part(mentions, cue.start, cue.end)
            and (_verb_after(mentions, cue.end, reach) or _is_one(talk.texts, cue.end))
        ):
            yield cue.start
    for cue in mentions.cue("others_told", start, end):
        heads = all(t in _LEADS for t in talk.texts[talk.clause(cue.start)[0] : cue.start])
        of_part = _names_a_part(mentions, cue.start, cue.end + 1)
        ails = mentions.vocabulary.terms.find(talk.texts, cue.start, cue.end)
        if any(f.label.startswith("health") for f in ails):
            continue  # "there's a touch of rust underneath"
        if cue.end > said + 1 and not of_part and (heads or not talk.punctuated):
            yield cue.start


_ARTICLES = frozenset("a an the all not only very still always got been nearly another".split())


def _is_one(texts: tuple[str, ...], at: int) -> bool:
    """ "The mother's | a trailing thing"; not "the neighbour's | cat"."""
    return texts[at - 1] == "'s" and texts[at : at + 1] != () and texts[at] in _ARTICLES


def _names_a_part(mentions: Mentions, start: int, end: int) -> bool:
    """ "There's a lilac flush over the upper two"; not "the rest of the batch"."""
    texts = mentions.talk.texts
    return any("rest" not in texts[p.start : p.end] for p in mentions.parts_in(start, end))


_CAPTIONED = 12
# "None of the others had a bud when this opened" is told of this one.
_WHEN = frozenset("when while before until till where after as".split())
_SUBJECTS = frozenset("it she he this i there".split())
_NO_SUBJECT_AFTER = frozenset("of to by behind beside below above under with for than".split())


def _to_next_subject(mentions: Mentions, begin: int, end: int) -> int:
    """Where the talk comes back; captions, which end no sentence, come back with a subject."""
    talk = mentions.talk
    if talk.punctuated:
        stop = _until_back(mentions, begin, end)
        pairs = (talk.texts[i : i + 2] for i in range(begin, stop))
        measured = any(two[0] in _WHEN and two[1:] == ("this",) for two in pairs)
        return begin if measured else stop
    stop = min(end, begin + _CAPTIONED)
    for i in range(begin + 3, stop - 1):
        if i in mentions.looks:
            return i
        part = next((p.end for p in mentions.parts_in(i, i + 1) if p.start == i), i + 1)
        pronoun = talk.texts[i] in _SUBJECTS and talk.texts[i - 1] not in _NO_SUBJECT_AFTER
        pronoun = pronoun and talk.texts[i - 2 : i] != ("same", "only")
        subject = pronoun or part > i + 1 or any(mentions.parts_in(i, i + 1))
        if subject and talk.texts[part : part + 1] != () and talk.texts[part] in _VERBS:
            return i
    return stop


def _verb_after(mentions: Mentions, at: int, reach: int) -> bool:
    """ "the rest | of the batch | came white"; not "the rest of it is white"."""
    talk = mentions.talk
    for i in range(at, min(len(talk.texts), at + reach + 1)):
        if talk.texts[i] in _VERBS:
            return True
        side = talk.texts[max(0, i - 2) : i] == ("side", "of")
        if talk.tokens[i].mark or (talk.texts[i] in _OWN_PARTS and not side):
            return False
        if _names_a_part(mentions, i, i + 1):
            return False
    return False


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
    while i > clause and talk.texts[i - 1] in _LEADS | _KIN:
        i -= 1
    rest = talk.texts[ref.end : ref.end + 1]
    if i != clause and not (ref.start and talk.texts[ref.start - 1] in _LEADS):
        unmarked = not (talk.punctuated or ref.is_number)
        unmarked = unmarked and talk.texts[ref.start - 1] not in _GOVERNING
        if not unmarked or rest not in _PLAIN_VERBS:
            return None  # captions: "five buds on it | hobnail is frilly"
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
