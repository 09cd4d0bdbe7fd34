"""A plant told with its role: "mother was A", "A as the mother", "the pollen came off B".

Leaves alone "here's the father, A", which shows a plant, "the father of A", which tells of
A's own parents, and roles in crosses to come.
"""

from collections.abc import Iterator

from diary.linking.operands import Operand, after
from diary.linking.parents.origin import asserted, known, parent, planned, role_cues
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.tokens import COMMA

_ROLES = (("seed_parent", "mother"), ("pollen_parent", "father"))
_CORRECTED_WITHIN = 10
_IT = frozenset({"it", "he", "she", "this", "that"})
_SIDES = frozenset({"seed", "pollen", "pod", "parent", "side"})


def appositions(mentions: Mentions) -> Iterator[Statement]:
    """ "Pewter Vestry, seed parent; Harbour Semaphore, pollen parent": plant first, then role.

    Not "mother, A, father, B", where each role stands before its plant.
    """
    talk = mentions.talk
    for trait, role in _ROLES:
        words = mentions.vocabulary.classes[role]
        for ref in mentions.refs:
            if ref.cut is not None or talk.tokens[ref.end - 1].mark != COMMA:
                continue
            start, stop = talk.clause(ref.end)
            said = talk.texts[start:stop]
            if start != ref.end or not said or said[-1] not in words | _SIDES:
                continue
            if not set(said) <= words | {"the", "for", "on", "as"} | _SIDES:
                continue
            if _SIDES & set(said) and ("pollen" in said) != (trait == "pollen_parent"):
                continue
            if _role_first(mentions, talk.sentence(ref.start)[0], ref.start):
                continue
            operand = Operand(
                start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score
            )
            if asserted(mentions, ref.start, stop):
                yield parent(trait, operand, "a plant with its role after it", 0.93)


def fragments(mentions: Mentions) -> Iterator[Statement]:
    """ "Off Widow Ackerley, that one": a sentence that begins with where the seed came from."""
    texts = mentions.talk.texts
    for start, stop in mentions.talk.sentences:
        if not mentions.talk.punctuated or texts[start] not in ("off", "out"):
            continue
        operand = after(mentions, start + (2 if texts[start : start + 2] == ("out", "of") else 1))
        if operand is not None and known(operand) and operand.end <= stop:
            yield parent("seed_parent", operand, "a sentence of its origin", 0.85)


def _role_first(mentions: Mentions, start: int, end: int) -> bool:
    """Whether a role is named between the head of the sentence and its first plant."""
    first = next(iter(mentions.refs_in(start, end + 1)))
    roles = mentions.vocabulary.classes["mother"] | mentions.vocabulary.classes["father"]
    heard = set(mentions.talk.texts[start : first.start])
    return bool(heard & roles) or "parent" in heard


def before_cues(mentions: Mentions) -> Iterator[Statement]:
    """ "mother was A", "seedling of A", "the pollen came off B"; the longest cue decides."""
    texts = mentions.talk.texts
    found = [
        (cue, trait)
        for trait in ("seed_parent", "pollen_parent")
        for cue in role_cues(mentions, f"{trait} before")
    ]
    for cue, trait in sorted(found, key=lambda item: item[0].start - item[0].end):
        if mentions.talk.between(cue.end - 1, cue.end, (".", "?")) or mentions.masked[cue.start]:
            continue
        if planned(mentions, cue.start) or _shown_here(texts, cue) or _of_another(mentions, cue):
            continue
        if texts[cue.start - 1 : cue.start] in _MINE and texts[cue.end - 1] == "'s":
            continue  # "my mum's A is twice the plant": hers, and no parent
        vague = _is_vague(mentions, texts[cue.start : cue.end])
        operand = after(mentions, cue.end, unknown=not vague) or _apposed(mentions, cue.end)
        if operand is None and texts[cue.end : cue.end + 1] == ("not",):
            denied = after(mentions, cue.end + 1)
            if denied is not None and (said := _said_instead(mentions, denied)) is not None:
                yield parent(trait, said, "a parent put right", 0.9)
            continue
        if operand is None or not known(operand) or _in_doubt(mentions, operand):
            continue
        if texts[cue.start] in _ANY and mentions.talk.between(cue.end, operand.start, (COMMA,)):
            continue  # "one of mine, number twenty-one of the twenty-eights"
        if not asserted(mentions, cue.start, operand.end) or _given_away(mentions, cue):
            continue
        if _plant_owned(mentions, cue):
            continue
        if operand.ref is None and texts[cue.start - 1 : cue.start] in (
            ("no",),
            ("as",),
            ("good",),
            ("another",),
        ):
            continue
        score = 0.75 if vague else 0.95 if operand.ref is not None else 0.85
        yield parent(trait, operand, "a parent named after its role", score)


def _apposed(mentions: Mentions, at: int) -> Operand | None:
    """ "the pollen came from the gentleman you've just met, K13": told, and then named."""
    talk = mentions.talk
    if talk.texts[at : at + 1] == () or talk.texts[at] not in ("the", "that", "our", "my"):
        return None
    ref = next(iter(mentions.refs_in(at, min(talk.sentence(at)[1], at + _APPOSED_WITHIN))), None)
    if ref is None or ref.cut is not None or talk.tokens[ref.start - 1].mark != COMMA:
        return None
    return Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)


_APPOSED_WITHIN = 9
_MINE = (("my",), ("our",), ("me",))
_ANY = frozenset({"one", "plant"})


def _is_vague(mentions: Mentions, words: tuple[str, ...]) -> bool:
    """ "came off", "it's off": only a plant on record makes them a parent."""
    classes = mentions.vocabulary.classes
    telling = classes["mother"] | classes["father"] | classes["offspring"] | _TELLING
    return words == ("pollen",) or not telling & set(words)


_TELLING = frozenset(
    "parent seed seeds pod raised grown bred pollen pollinated cross crossed self selfing "
    "plant mother's father's".split()
)


def _said_instead(mentions: Mentions, denied: Operand) -> Operand | None:
    """ "the father's not A at all, it's B": the plant put in its place."""
    texts = mentions.talk.texts
    for ref in mentions.refs_in(denied.end, denied.end + _CORRECTED_WITHIN):
        if ref.cut is None and texts[ref.start - 1] in ("is", "'s", "was", "but", "no"):
            return Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)
    return None


def _of_another(mentions: Mentions, cue: Found) -> bool:
    """ "the father of 23-06", "Lady Quill's mother was A": the parents of another plant."""
    texts = mentions.talk.texts
    classes = mentions.vocabulary.classes
    roles = classes["mother"] | classes["father"] | {"parent"}
    if texts[cue.end - 1] in roles and texts[cue.end : cue.end + 1] in (("of",), ("to",)):
        return True
    if texts[cue.end - 1] == "of" and texts[cue.end - 2] in roles:
        start = cue.start - (texts[cue.start - 1 : cue.start] == ("the",))
        subject = texts[max(0, start - 2) : start]
        if len(subject) == 2 and subject[0] in _IT and subject[1] in ("is", "'s", "was"):
            return True  # "it's the father of A"
    owned = cue.start if texts[cue.start] == "'s" else cue.start - 1
    if texts[owned : owned + 1] != ("'s",) or not roles & set(texts[cue.start : cue.end]):
        return False
    owner = mentions.ref_ending(owned)
    return owner is not None and not owner.is_number


def _in_doubt(mentions: Mentions, operand: Operand) -> bool:
    """ "the father's A or it's B", "I thought it was A but it isn't", "a child of A, is it?"."""
    texts = mentions.talk.texts
    later = texts[operand.end : operand.end + 4]
    if later[:2] in (("is", "it"), ("was", "it"), ("is", "she"), ("is", "he")):
        return True
    if later[:1] == ("but",) and later[2:3] in (("is",), ("was",)) and later[3:] == ("not",):
        return True
    return later[:1] == ("or",) and bool(mentions.refs_in(operand.end, operand.end + _OR_WITHIN))


_OR_WITHIN = 6


def _plant_owned(mentions: Mentions, cue: Found) -> bool:
    """ "I had a plant of A go down with that": another plant, and no seed of it."""
    texts = mentions.talk.texts
    owned = texts[max(0, cue.start - 3) : cue.start]
    if texts[cue.start] == "out" and {"something", "summat", "others"} & set(
        texts[max(0, cue.start - 5) : cue.start]
    ):
        return True  # "he had something of the sort out of A"
    return texts[cue.start] in ("plant", "one") and bool(_OWNED & set(owned))


_OWNED = frozenset({"had", "bought", "lost", "got", "have", "'ve", "kept", "saw"})


def _given_away(mentions: Mentions, cue: Found) -> bool:
    """ "I gave the seed of A away": seed of another plant, that went elsewhere."""
    low, high = mentions.talk.clause(cue.start)
    words = mentions.talk.texts[low:high]
    return bool(_SEED & set(words)) and bool(
        {"gave", "give", "sold", "sent", "swapped"} & set(words)
        and {"away", "to", "for"} & set(words)
    )


_SEED = frozenset({"seed", "seeds", "pod", "pods", "pollen"})


def _shown_here(texts: tuple[str, ...], cue: Found) -> bool:
    """ "here's the father, Tippet Lace": the plant is shown, not told as a parent of this one."""
    start = cue.start - 1 if texts[cue.start - 1 : cue.start] == ("the",) else cue.start
    verb = texts[cue.end - 1] in ("is", "was", "were", "'s", "being", "of", "off", "from")
    return not verb and texts[max(0, start - 2) : start] in (
        ("here", "'s"),
        ("here", "is"),
        ("this", "is"),
    )
