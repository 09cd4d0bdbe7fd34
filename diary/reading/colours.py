"""Colours as they are said: "a soft salmon pink", "reddish orange", "orangey red".

One mention is a run of modifiers and colour words. A basic and a specific word together
give the specific one; two basic words give the last, the first becoming a modifier (the
extraction contract, after the rule for -ish words in Kelly & Judd, NBS SP 440, 1976).
"""

from collections.abc import Sequence
from dataclasses import dataclass

from diary.reading.misheard.colours import misheard_at
from diary.reading.phrases import Found
from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_COLOURED = frozenset({"coloured", "colored", "tinted", "toned", "tone", "shade", "shaded"})


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourHeard:
    """A colour at tokens start..end-1: `head_start` is where its first colour word stands."""

    start: int
    end: int
    head_start: int
    value: str
    modifiers: tuple[str, ...]


def find_colours(
    talk: Talk, vocabulary: Vocabulary, masked: Sequence[bool]
) -> tuple[ColourHeard, ...]:
    """Colours in order, outside names and numbers (`masked` says which tokens those are)."""
    texts, found, at = talk.texts, [], 0
    while at < len(texts):
        if masked[at]:
            at += 1
            continue
        heard = _colour_at(talk, at, vocabulary, masked)
        if heard is None:
            at += 1
            continue
        found.append(heard)
        at = heard.end
    return tuple(found)


def _shade_at(talk: Talk, at: int, vocabulary: Vocabulary) -> bool:
    """ "brick | red", "shell | pink": a word for a shade, which is no colour by itself."""
    if talk.texts[at] not in vocabulary.classes["shade"] or talk.tokens[at].mark:
        return False
    return vocabulary.colours.at(talk.texts, at + 1) is not None


def _toned(word: str, colour: str) -> bool:
    """ "pinky", "creamy"; not "ivory", which is the colour itself."""
    return word.endswith("y") and word != colour


def _begins_another(talk: Talk, first: str, at: int, second: Found, vocabulary: Vocabulary) -> bool:
    """ "it's salmon | green throat"; not "salmon pink", "a pinky white", "orange red"."""
    if talk.punctuated or _toned(talk.texts[at - 1], first) or first == second.label:
        return False
    if (first, second.label) in vocabulary.blends:
        return False
    basic = vocabulary.basic_colours
    if first not in basic and second.label not in basic:
        return vocabulary.parts.at(talk.texts, second.end) is not None  # "salmon | coral edge"
    return True


def _colour_at(
    talk: Talk, at: int, vocabulary: Vocabulary, masked: Sequence[bool]
) -> ColourHeard | None:
    texts, i = talk.texts, at
    modifiers: list[str] = []
    colours: list[str] = []
    ish: list[str] = []
    head = -1
    while i < len(texts) and not masked[i]:
        if i > at and talk.tokens[i - 1].mark and (colours or talk.tokens[i - 1].mark != ","):
            break
        if not colours and not ish and _shade_at(talk, i, vocabulary):
            i += 1
            continue
        colour = vocabulary.colours.at(texts, i) or misheard_at(talk, vocabulary, i, at)
        tint = vocabulary.ish.at(texts, i)
        modifier = vocabulary.modifiers.at(texts, i)
        if (
            colour is not None
            and colours
            and _begins_another(talk, colours[-1], i, colour, vocabulary)
        ):
            break
        if colour is not None:
            head = i if head < 0 else head
            colours.append(colour.label)
            i = colour.end
        elif tint is not None:
            head = i if head < 0 else head
            ish.append(tint.label)
            i = tint.end
        elif modifier is not None and not colours:
            if modifier.label not in modifiers:
                modifiers.append(modifier.label)
            i = modifier.end
        else:
            break
    if not colours and not ish:
        return None
    end = i + 1 if i < len(texts) and texts[i] in _COLOURED else i
    basic = vocabulary.basic_colours
    tints = ish
    if not colours:
        colours, tints = [ish[-1]], []
    specific = [c for c in colours if c not in basic]
    if specific:
        value, extra = specific[0], []
    else:
        value, extra = colours[-1], [c for c in [*tints, *colours[:-1]] if c != colours[-1]]
    return ColourHeard(
        start=at,
        end=end,
        head_start=head,
        value=value,
        modifiers=(*modifiers, *dict.fromkeys(extra)),
    )
