"""No second parent: "A selfed", "A, open pollinated", "the bees did the rest", "a sport of A"."""

from collections.abc import Iterator
from dataclasses import replace

from diary.linking.operands import Operand, after, before
from diary.linking.origin import asserted, known, parent, planned
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_FROM = frozenset({"of", "off", "from", "on"})


def _named_after(mentions: Mentions, at: int) -> Operand | None:
    """ "selfed, off Biscuit Parade", "a selfing of A": the plant named right after."""
    texts = mentions.talk.texts
    if texts[at - 1] in _FROM:
        return after(mentions, at)
    i = at + 1 if texts[at : at + 1] in (("seed",), ("seedling",), ("seedlings",)) else at
    return after(mentions, i + 1) if i < len(texts) and texts[i] in _FROM else None


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
        if planned(mentions, cue.start):
            continue
        text = mentions.talk.texts[cue.start]
        operand = before(mentions, cue.start) or _named_after(mentions, cue.end)
        if operand is not None and known(operand):
            yield parent("seed_parent", operand, "a plant that was selfed", 0.95)
        elif text in ("by", "on", "self"):
            continue
        yield Statement(
            trait="pollination",
            value="selfed",
            start=cue.start,
            end=cue.end,
            rule="a plant that was selfed",
            score=0.95 if operand else 0.8,
        )


def open_pollinated(mentions: Mentions) -> Iterator[Statement]:
    """ "bee-pollinated off A", "A, open pollinated", "the bees did the rest"."""
    for cue in mentions.cue("open"):
        if not asserted(mentions, cue.start, cue.end):
            continue
        yield Statement(
            trait="pollination",
            value="open",
            start=cue.start,
            end=cue.end,
            rule="open pollination",
            score=0.92,
        )
        operand = before(mentions, cue.start) or _named_after(mentions, cue.end)
        if operand is not None and known(operand):
            yield parent("seed_parent", operand, "open pollination", 0.85)


def sports(mentions: Mentions) -> Iterator[Statement]:
    """ "a sport of A"; not "is it a sport?"."""
    for cue in mentions.cue("sport"):
        if mentions.talk.texts[cue.end - 1] not in ("of", "from", "off", "on"):
            operand = before(mentions, cue.start)
            if operand is None or mentions.talk.texts[cue.start] != "sport":
                continue
        else:
            operand = after(mentions, cue.end, unknown=True)
        if operand is not None and known(operand) and asserted(mentions, cue.start, operand.end):
            yield replace(parent("sport_of", operand, "a sport of a plant", 0.95), start=cue.start)
