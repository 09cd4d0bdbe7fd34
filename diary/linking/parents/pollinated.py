"""No second parent: "A selfed", "A, open pollinated", "the bees did the rest", "a sport of A"."""

from collections.abc import Iterator
from dataclasses import replace

from diary.linking.operands import Operand, after, before
from diary.linking.parents.origin import asserted, known, parent, planned
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_FROM = frozenset({"of", "off", "from", "on"})
_SO = frozenset({"so", "that", "is", "'s", "it", "this", "of", "off", "from", "on", "just", "old"})
# "I selfed A", "by selfing A": the plant is what the verb is done to.
_SELFING = frozenset({"selfed", "selfing"})
_SELFERS = frozenset({"i", "we", "by", "from", "of", "and", "just", "simply", "only"})
_BEES_WITHIN = 10
# "A left to the bees", "leaving A for the bees"
_LEFT_TO = frozenset({"the", "to", "for", "left", "was", "up", "entirely", "all", "open", "out"})


def _named_after(mentions: Mentions, at: int) -> Operand | None:
    """ "selfed, off Biscuit Parade", "a selfing of A", "Selfed, so A": the plant right after."""
    texts = mentions.talk.texts
    if texts[at - 1] in _FROM or (texts[at - 1] in _SELFING and texts[at - 2] in _SELFERS):
        return after(mentions, at)
    i = at + 1 if texts[at : at + 1] in (("seed",), ("seedling",), ("seedlings",)) else at
    if i < len(texts) and texts[i] in _FROM:
        return after(mentions, i + 1)
    while i < len(texts) and i - at < 3 and texts[i] in _SO:
        i += 1
    told = texts[at : at + 1] in (("so",), ("that",)) and not mentions.talk.between(
        at - 1, i, (".", "?")
    )
    return after(mentions, i) if told else None


def selfed(mentions: Mentions) -> Iterator[Statement]:
    """ "A selfed", "a selfing of A", "same selfing"."""
    exceptions = {
        i
        for f in mentions.vocabulary.never_cues["selfed"].find(mentions.talk.texts)
        for i in range(f.start, f.end)
    }
    for cue in mentions.cue("selfed"):
        if exceptions & set(range(cue.start, cue.end)) or not asserted(
            mentions, cue.start, cue.end
        ):
            continue
        if planned(mentions, cue.start) or _being_done(mentions, cue.start, cue.end):
            continue
        if _done_to_it(mentions, cue.end):
            continue
        text = mentions.talk.texts[cue.start]
        operand = before(mentions, cue.start) or _named_after(mentions, cue.end)
        if operand is not None and known(operand):
            yield parent("seed_parent", operand, "a plant that was selfed", 0.95)
        elif text in ("by", "on", "self", "with", "to"):
            continue
        yield Statement(
            trait="pollination",
            value="selfed",
            start=cue.start,
            end=cue.end,
            rule="a plant that was selfed",
            score=0.95 if operand else 0.8,
        )


def _done_to_it(mentions: Mentions, at: int) -> bool:
    """ "selfing it came to nothing"; not "it's the same selfing. It has a blotch."."""
    talk = mentions.talk
    said = talk.texts[at : at + 2]
    itself = talk.texts[at - 1] in ("self", "selfing") and said[:1] == ("it",)
    return itself and not talk.tokens[at - 1].mark and said not in _NEW_CLAUSE


_NEW_CLAUSE = (("it", "'s"), ("it", "is"), ("it", "has"), ("it", "was"))


def _being_done(mentions: Mentions, start: int, end: int) -> bool:
    """ "I'm selfing her now", "that's her own pollen on the brush": a seed still to come."""
    talk = mentions.talk
    if {"'m", "am", "be"} & set(talk.texts[max(0, start - 3) : start]):
        return True
    low, high = talk.sentence(start)
    low, high = max(low, start - _BEES_WITHIN), min(high, end + _BEES_WITHIN)
    return "pollen" in talk.texts[start:end] and bool(_NOW & set(talk.texts[low:high]))


_NOW = frozenset({"now", "brush", "today", "tonight", "minute", "tomorrow"})


def open_pollinated(mentions: Mentions) -> Iterator[Statement]:
    """ "bee-pollinated off A", "A, open pollinated", "the bees did the rest"."""
    for cue in mentions.cue("open"):
        if not asserted(mentions, cue.start, cue.end):
            continue
        yield _open(cue.start, cue.end)
        operand = before(mentions, cue.start) or _named_after(mentions, cue.end)
        if operand is not None and known(operand):
            yield parent("seed_parent", operand, "open pollination", 0.85)


def by_bees(mentions: Mentions) -> Iterator[Statement]:
    """ "father, ask the bees", "it was the bees, not me", "Quay Street, bees".

    Not "the bees are all over it": near them must stand what they did, or the mother.
    """
    talk = mentions.talk
    bees = mentions.vocabulary.classes["bee"]
    for at, text in enumerate(talk.texts):
        if text not in bees or mentions.masked[at] or not _not_visiting(mentions, at):
            continue
        left = at
        while left > 0 and at - left < 4 and talk.texts[left - 1] in _LEFT_TO:
            left -= 1
        told = (before(mentions, left), _worked_on(mentions, at), _then_left(mentions, at))
        seed = next((operand for operand in told if operand is not None and known(operand)), None)
        low, high = _near(mentions, at)
        worked = any(cue.end <= high for cue in mentions.cue("bee_work", low, high))
        if not worked and seed is None:
            continue
        yield _open(at, at + 1)
        if seed is not None and asserted(mentions, seed.start, at + 1):
            yield parent("seed_parent", seed, "a plant left to the bees", 0.85)


def _worked_on(mentions: Mentions, at: int) -> Operand | None:
    """ "the bees did the honours on A": the plant a little later in the sentence."""
    stop = min(mentions.talk.sentence(at)[1], at + _WORKED_WITHIN)
    ref = next(iter(mentions.refs_in(at, stop)), None)
    if ref is None or ref.cut is not None:
        return None
    if mentions.talk.texts[ref.start - 1] not in _FROM or not mentions.cue(
        "bee_work", at, ref.start
    ):
        return None
    return Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)


_WORKED_WITHIN = 7


def _then_left(mentions: Mentions, at: int) -> Operand | None:
    """ "that was A and then the bees saw to the rest": the plant told before what they did."""
    texts = mentions.talk.texts
    start = at
    while start > 0 and at - start < _JOINED_WITHIN and texts[start - 1] in _JOINING:
        start -= 1
    operand = before(mentions, start) if {"and", "then"} & set(texts[start:at]) else None
    led = operand is not None and texts[operand.start - 1 : operand.start] in _TELLS
    worked = any(mentions.cue("bee_work", at, at + _WORKED_WITHIN))
    return operand if led and worked else None


_JOINED_WITHIN = 4
_JOINING = frozenset("and then the some a".split())
_TELLS = (("was",), ("is",), ("'s",), ("from",), ("off",), ("of",))


def _near(mentions: Mentions, at: int) -> tuple[int, int]:
    start, stop = mentions.talk.sentence(at)
    if mentions.talk.punctuated:
        return start, stop
    return max(0, at - _BEES_WITHIN), min(len(mentions.talk.texts), at + _BEES_WITHIN)


def _not_visiting(mentions: Mentions, at: int) -> bool:
    low, high = _near(mentions, at)
    return not any(cue.end <= high for cue in mentions.cue("bee_visits", low, high))


def _open(start: int, end: int) -> Statement:
    return Statement(
        trait="pollination", value="open", start=start, end=end, rule="open pollination", score=0.92
    )


def sports(mentions: Mentions) -> Iterator[Statement]:
    """ "a sport of A"; not "is it a sport?"."""
    for cue in mentions.cue("sport"):
        if mentions.talk.texts[cue.end - 1] not in ("of", "from", "off", "on"):
            operand = before(mentions, cue.start)
            if operand is None or mentions.talk.texts[cue.start] != "sport":
                operand = _branch_of(mentions, cue.start)
        else:
            operand = after(mentions, cue.end, unknown=True) or _branch_of(mentions, cue.start)
        if operand is None:
            operand = _found_on(mentions, cue.end)
        if operand is not None and known(operand) and asserted(mentions, cue.start, cue.end):
            yield replace(
                parent("sport_of", operand, "a sport of a plant", 0.95),
                start=min(cue.start, operand.start),
            )


_SPORTING = frozenset("branch shoot stem limb broke came turned appeared arose found threw".split())


def _found_on(mentions: Mentions, at: int) -> Operand | None:
    """ "a sport that turned up on A": the plant a little later in the sentence."""
    talk = mentions.talk
    ended = talk.sentence(max(at - 1, 0))[1] if talk.punctuated else len(talk.texts)
    stop = min(ended, at + _FOUND_WITHIN)
    for ref in mentions.refs_in(at, stop):
        if ref.cut is None and talk.texts[ref.start - 1] in _FROM:
            return Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)
    return None


_FOUND_WITHIN = 8


def _branch_of(mentions: Mentions, at: int) -> Operand | None:
    """ "it threw a branch on A, so it's a sport of that": the plant the branch was on."""
    texts = mentions.talk.texts
    low = mentions.talk.sentence(at)[0] if mentions.talk.punctuated else max(0, at - 14)
    for ref in mentions.refs_in(low, at):
        lead = texts[max(low, ref.start - 4) : ref.start]
        if ref.cut is None and lead and lead[-1] in _FROM and _SPORTING & set(lead):
            return Operand(start=ref.start, end=ref.end, title=ref.title, ref=ref, score=ref.score)
    return None
