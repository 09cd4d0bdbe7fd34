"""Turns of phrase with words of padding inside: "I'm not, honestly, ever getting rid of it".

Adverbs, oaths and ums stand between any two words of a decision, and a phrase that had to
name them all would never end. So a phrase is looked for a second time in the talk without
them. What means something ("not", "maybe", "nearly") is no padding.
"""

from diary.reading.mentions import Mentions
from diary.reading.phrases import Found, PhraseBook
from diary.reading.tokens import COMMA, QUERY, STOP

# "I won't be keeping it" says "I won't keep it": "be" before a doing pads as well.
_BEFORE_BE = frozenset(
    {"not", "'ll", "will", "shall", "must", "should", "could", "would", "to", "'d", "might"}
)
_LONGEST_OVER_COMMA = 2


def padded(
    mentions: Mentions, book: PhraseBook, never: PhraseBook, plain: list[Found]
) -> list[Found]:
    """Phrases that are found only when padding is left out; `plain` is what was found with it.

    Catches "it's going, I'm afraid, on the heap"; leaves "not keeping" a denial.
    """
    talk = mentions.talk
    at = _without_padding(mentions)
    again = _named_again(mentions)
    shown = {i for start, end in again.items() for i in range(start, end)}
    inside = {i for start, end in again.items() for i in range(start + 1, end)}
    at = [i for i in at if i not in inside]
    texts = tuple("it" if i in again else talk.texts[i] for i in at)
    marks = [_mark_after(mentions, at, n) for n in range(len(at))]
    known = {(f.start, f.label): f.end for f in plain}
    exceptions = [f for f in never.find(texts) if f.end - f.start > 1]
    barred: dict[str, set[int]] = {}
    for f in exceptions:
        barred.setdefault(f.label, set()).update(range(f.start, f.end))
    found = []
    for f in book.find(texts):
        start, end = at[f.start], at[f.end - 1] + 1
        end = again.get(end - 1, end)
        over = marks[f.start : f.end - 1]
        stretched = end - start > f.end - f.start or bool(shown & set(range(start, end)))
        if not stretched or known.get((start, f.label), start) >= end:
            continue
        if (
            STOP in over
            or QUERY in over
            or set(range(f.start, f.end)) <= barred.get(f.label, set())
        ):
            continue
        if COMMA in over and f.end - f.start > _LONGEST_OVER_COMMA:
            continue
        if not any(mentions.masked[i] and i not in shown for i in range(start, end)):
            found.append(Found(start, end, f.label))
    return found


def _named_again(mentions: Mentions) -> dict[int, int]:
    """ "So I'm binning 17.8", said of 17.8: the first and last word of its number said again.

    Such a number is a pronoun. Another plant's number is not.
    """
    again: dict[int, int] = {}
    last = ""
    for ref in mentions.refs:
        if not ref.is_number or ref.cut is not None:
            continue
        if ref.title == last:
            again[ref.start] = ref.end
        last = ref.title
    return again


def _without_padding(mentions: Mentions) -> list[int]:
    """The tokens that are no padding."""
    texts = mentions.talk.texts
    dropped = {i for cue in mentions.cue("padding") for i in range(cue.start, cue.end)}
    dropped |= {
        i
        for i in range(1, len(texts) - 1)
        if texts[i] == "be" and texts[i - 1] in _BEFORE_BE and texts[i + 1].endswith("ing")
    }
    return [i for i in range(len(texts)) if i not in dropped]


def _mark_after(mentions: Mentions, at: list[int], n: int) -> str:
    """The mark before the next word that is no padding; commas around padding are none."""
    tokens = mentions.talk.tokens
    if n + 1 == len(at) or at[n + 1] == at[n] + 1:
        return tokens[at[n]].mark
    marks = {tokens[i].mark for i in range(at[n], at[n + 1])}
    return QUERY if QUERY in marks else STOP if STOP in marks else ""
