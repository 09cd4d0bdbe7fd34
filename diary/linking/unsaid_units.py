"""Sizes said without a unit, which they take from the length before them.

"and twenty-five across", "the head's about nine", "no, call it five and a half".
"""

from diary.reading.lengths import Length, bare_amount
from diary.reading.mentions import Mentions

_INHERIT_WORDS = 18


def without_unit(mentions: Mentions, lengths: list[Length]) -> list[Length]:
    """ "and twenty-five across", "the head's about 9", "no, call it five and a half"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    found: list[Length] = []
    taken = {i for x in lengths for i in range(x.start, x.end)}
    repairs = {f.end for f in mentions.cue("repair")}
    refs = {i for r in mentions.refs if r.cut is None for i in range(r.start, r.end)}
    for previous in lengths:
        unit_mm = _unit_of(mentions, previous)
        stop = min(len(talk.texts), previous.end + _INHERIT_WORDS)
        i = previous.end
        while i < stop:
            if i in taken:
                break
            amount = None if i in refs else bare_amount(talk.texts, i)
            if amount is None:
                i += 1
                continue
            if any(j in taken for j in range(amount.start, amount.end)):
                break
            after = vocabulary.dimensions.at(talk.texts, amount.end)
            corrected = (
                any(e in repairs for e in range(max(previous.end + 1, i - 1), i + 1))
                and i - previous.end <= 7
            )
            headed = _subject_right_before(mentions, i)
            ends = (
                talk.tokens[amount.end - 1].mark
                or amount.end == len(talk.texts)
                or talk.clause(amount.end)[0] == amount.end
                or talk.texts[amount.end] in ("now", "and", "but", "with")
            )
            plausible = 1 <= amount.value <= 400 / unit_mm * 10
            if plausible and (after or (headed and ends) or (corrected and (ends or after))):
                found.append(
                    Length(
                        start=amount.start,
                        end=amount.end,
                        mm=round(amount.value * unit_mm, 2),
                        metric=previous.metric,
                        singular=False,
                        unit_said=False,
                    )
                )
                taken |= set(range(amount.start, amount.end))
            i = amount.end
    return found


def _unit_of(mentions: Mentions, length: Length) -> float:
    """Millimetres in the unit that the length was said in."""
    for i in range(length.end - 1, length.start - 1, -1):
        unit = mentions.vocabulary.units.at(mentions.talk.texts, i)
        if unit is not None and unit.end <= length.end:
            return mentions.vocabulary.unit_table[unit.label].mm
    return 10.0


def _subject_right_before(mentions: Mentions, at: int) -> bool:
    texts = mentions.talk.texts
    fill = (
        "'s",
        "is",
        "are",
        "about",
        "around",
        "at",
        "a",
        "good",
        "nearly",
        "roughly",
        "say",
        "maybe",
        "what",
        "an",
        "just",
        "measures",
        "was",
    )
    i = at
    while i > 0 and at - i < 4 and texts[i - 1] in fill:
        i -= 1
    return any(
        f.end == i and f.label != "nothing"
        for f in mentions.vocabulary.subjects.find(texts, max(0, i - 3), i)
    )
