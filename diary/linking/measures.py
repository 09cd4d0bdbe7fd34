"""What a length is the length of, and which of several lengths holds.

"fifty-five millimetres across" is the bloom, "thirty centimetres tall" the plant, "the
head's about nine" takes its unit from the length before. A length taken back ("five, no,
four and a half") is dropped; of one size in two units the metric figure wins. A pot, a cane
or rain has no size here, and "a centimetre taller" is no measurement.
"""

from dataclasses import dataclass, replace

from diary.linking.second_thoughts import repairs_in
from diary.linking.statement import Statement
from diary.reading.lengths import Length, bare_amount
from diary.reading.mentions import Mentions

_POT_BEFORE = frozenset({"in", "into", "to", "a", "an", "its", "that", "the", "up"})
_SAME_SIZE_WORDS = 16
_INHERIT_WORDS = 18
_BY_THE_WAY = 8
_LONG = {
    "bloom": 320,
    "leaf": 600,
}  # beyond this a length is no bloom: 1.9 of the trade notes, widened for dahlias
_TRAIT = {
    ("bloom", "across"): "bloom_diameter",
    ("bloom", ""): "bloom_diameter",
    ("bloom", "long"): "",
    ("bloom", "tall"): "plant_height",
    ("head", "across"): "head_diameter",
    ("head", ""): "head_diameter",
    ("head", "tall"): "head_diameter",
    ("head", "long"): "",
    ("plant", "across"): "plant_spread",
    ("plant", "tall"): "plant_height",
    ("plant", ""): "plant_height",
    ("plant", "long"): "",
    ("stem", ""): "stem_length",
    ("stem", "long"): "stem_length",
    ("stem", "tall"): "stem_length",
    ("stem", "across"): "",
    ("leaf", "across"): "leaf_width",
    ("leaf", ""): "leaf_width",
    ("leaf", "long"): "",
    ("leaf", "tall"): "",
    ("", "across"): "bloom_diameter",
    ("", "tall"): "plant_height",
    ("", "long"): "",
    ("", ""): "bloom_diameter",
}


_RAIN = frozenset({"rain", "rains", "rained", "snow", "snowed"})


@dataclass(frozen=True, slots=True, kw_only=True)
class _Measured:
    length: Length
    subject: str
    dimension: str
    dimension_end: int
    trait: str


def find_measurements(mentions: Mentions) -> tuple[Statement, ...]:
    """Sizes in millimetres, in order, second thoughts settled."""
    lengths = [x for x in mentions.lengths if not any(mentions.masked[x.start : x.end])]
    lengths = sorted([*lengths, *_without_unit(mentions, lengths)], key=lambda x: x.start)
    measured: list[_Measured] = []
    for x in lengths:
        m = _measured(mentions, x, measured[-1] if measured else None)
        if m is not None:
            measured.append(m)
    kept = _settled(mentions, measured)
    coins = _coins(mentions)
    return tuple(
        sorted([*(_statement(mentions, m) for m in kept if m.trait), *coins], key=lambda s: s.start)
    )


def _score(m: _Measured) -> float:
    """How far a size is to be believed: a plant's or a bloom's that is named, most (measured)."""
    if m.subject in ("plant", "bloom", "stem") and m.length.unit_said:
        return 0.95
    return 0.82


def _statement(mentions: Mentions, m: _Measured) -> Statement:
    return Statement(
        trait=m.trait,
        value=round(m.length.mm, 1),
        unit="mm",
        start=m.length.start,
        end=max(m.length.end, m.dimension_end),
        rule=f"a length of the {m.subject or 'flower'}"
        if m.length.unit_said
        else "a length whose unit was said before",
        score=_score(m),
        hedged=mentions.talk.texts[m.length.start] in ("between",),
    )


def _without_unit(mentions: Mentions, lengths: list[Length]) -> list[Length]:
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
            talk.texts[max(0, i - 4) : i]
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


def _measured(mentions: Mentions, length: Length, previous: "_Measured | None") -> _Measured | None:
    talk, vocabulary = mentions.talk, mentions.vocabulary
    texts = talk.texts
    low, _high = talk.sentence(length.start)
    after = texts[length.end] if length.end < len(texts) else ""
    if vocabulary.size_comparisons.at(texts, length.end) and not vocabulary.dimensions.at(
        texts, length.end
    ):
        return None
    if _RAIN & set(texts[max(0, length.start - 8) : length.end + 3]):
        return None
    if after == "too" or (
        after in ("of",)
        and texts[length.end + 1 : length.end + 2]
        in (("rain",), ("snow",), ("water",), ("compost",), ("space",), ("room",))
    ):
        return None
    near = _noun_after(mentions, length)
    dimension, dimension_end = _dimension(mentions, length)
    if near == "nothing" or _is_pot(mentions, length, near, dimension):
        return None
    subject = near or _subject(mentions, length, low, dimension)
    if (
        dimension == "across"
        and previous is not None
        and previous.trait == "plant_height"
        and length.start - previous.length.end <= _BY_THE_WAY
        and not _says_bloom(mentions, previous.length.end, length.start)
    ):
        subject = "plant"  # "thirty centimetres high by forty wide"
    if subject == "nothing":
        return None
    if dimension == "plant across":
        subject, dimension = "plant", "across"
    elif dimension == "across" and subject == "plant" and _says_bloom(mentions, low, length.start):
        subject = "bloom"
    if not subject and not dimension and length.mm > 260:
        return None
    if subject == "bloom" and dimension == "" and length.mm > _LONG["bloom"]:
        subject, dimension = "plant", "tall"
    if not subject and dimension == "across" and length.mm > 240:
        subject = "plant"
    trait = _TRAIT.get((subject, dimension), "")
    return _Measured(
        length=length,
        subject=subject,
        dimension=dimension,
        dimension_end=dimension_end,
        trait=trait,
    )


def _says_bloom(mentions: Mentions, low: int, at: int) -> bool:
    found = [
        f
        for f in mentions.vocabulary.subjects.find(mentions.talk.texts, low, at)
        if f.label in ("bloom", "plant")
    ]
    return bool(found) and found[-1].label == "bloom"


def _noun_after(mentions: Mentions, length: Length) -> str:
    """The noun of "a fifteen-centimetre stem", "a two inch flower", "a nine-centimetre pot"."""
    texts = mentions.talk.texts
    if mentions.talk.tokens[length.end - 1].mark:
        return ""
    for skip in (0, 1):
        i = length.end + skip
        if skip and not (
            i - 1 < len(texts)
            and (
                texts[i - 1]
                in (
                    "long",
                    "clay",
                    "plastic",
                    "wide",
                    "tall",
                    "flower",
                    "across",
                    "square",
                    "of",
                    "deep",
                    "flowering",
                )
            )
        ):
            break
        found = mentions.vocabulary.subjects.at(texts, i)
        if found is not None and (length.singular or skip or found.label == "nothing"):
            return found.label
    return ""


def _is_pot(mentions: Mentions, length: Length, noun: str, dimension: str) -> bool:
    """ "it's only in a six inch", "still in a nine centimetre": the pot is not said."""
    texts = mentions.talk.texts
    before = texts[max(0, length.start - 3) : length.start]
    if noun or dimension or not length.singular:
        return bool(noun == "nothing")
    return (
        before[-1:] in (("a",), ("an",), ("its",))
        and len(before) > 1
        and before[-2] in ("in", "into", "to", "still", "on", "of", "out", "from")
    )


def _dimension(mentions: Mentions, length: Length) -> tuple[str, int]:
    """The dimension said after the length ("across"), else right before it ("height, ...")."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    i = length.end
    while (
        i < len(talk.texts)
        and i - length.end < 3
        and talk.texts[i]
        in (
            "or",
            "so",
            "at",
            "the",
            "most",
            "least",
            "roughly",
            "about",
            "right",
            "nearly",
            "and",
            "bit",
            "a",
            "in",
            "all",
            "good",
            "fully",
            "maybe",
            "thereabouts",
        )
    ):
        found = vocabulary.dimensions.at(talk.texts, i)
        if found is not None:
            break
        if talk.tokens[i].mark in (".", "?") or talk.tokens[i - 1].mark in (".", "?"):
            return _dimension_before(mentions, length)
        i += 1
    found = vocabulary.dimensions.at(talk.texts, i)
    if found is not None and not talk.between(length.end - 1, i, (".", "?")):
        whole = talk.texts[found.end : found.end + 3]
        if (
            found.label == "across"
            and not talk.tokens[found.end - 1].mark
            and (whole[:2] in (("the", "plant"), ("the", "whole")) or whole[:1] == ("plant",))
        ):
            return "plant across", found.end
        if not (
            talk.texts[found.start] in ("up", "height", "stands", "width", "span", "length")
            and talk.tokens[found.start - 1].mark
        ):
            return found.label, found.end
    return _dimension_before(mentions, length)


def _dimension_before(mentions: Mentions, length: Length) -> tuple[str, int]:
    talk = mentions.talk
    low = talk.sentence(length.start)[0]
    start = max(low, length.start - 9)
    found = list(mentions.vocabulary.dimensions.find(talk.texts, start, length.start))
    for f in reversed(found):
        words = talk.texts[f.start : f.end]
        if words[0] in (
            "height",
            "across",
            "diameter",
            "width",
            "spread",
            "stands",
            "span",
            "in",
            "length",
            "tall",
            "high",
        ) and not any(
            max(low, f.start - 5) < x.end <= f.start
            and not talk.between(x.end - 1, f.start, (",", "."))
            for x in mentions.lengths_in(low, f.start)
        ):
            return f.label, length.end
    return "", length.end


def _subject(mentions: Mentions, length: Length, low: int, dimension: str) -> str:
    """The nearest noun before in the sentence, else after; height is the plant's."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    if dimension == "plant across":
        return "plant"
    nouns = [
        f
        for f in vocabulary.subjects.find(talk.texts, low, length.start)
        if not mentions.masked[f.start]
    ]
    nouns = [
        f
        for f in nouns
        if not (f.label == "nothing" and talk.clause(f.start) != talk.clause(length.start))
    ]
    if nouns:
        nearest = nouns[-1]
        if nearest.label == "nothing" and dimension == "tall":
            return "plant"
        if nearest.label in ("leaf", "stem") and dimension == "tall":
            return "plant"
        if nearest.label == "bloom" and dimension == "tall":
            return "plant"
        if nearest.label == "nothing" and dimension == "across":
            others = [f for f in nouns if f.label != "nothing"]
            return others[-1].label if others else "nothing"
        return nearest.label
    if dimension == "tall":
        return "plant"
    high = talk.sentence(length.start)[1]
    later = list(vocabulary.subjects.find(talk.texts, length.end, min(high, length.end + 5)))
    if later and (
        talk.texts[length.end : length.end + 1] in (("for",), ("of",), ("on",), ("the",))
        or not dimension
    ):
        between = talk.texts[length.end : later[0].start]
        if set(between) <= {
            "for",
            "the",
            "of",
            "on",
            "a",
            "each",
            "its",
            "whole",
            "it",
            "that",
            "flower",
        }:
            return later[0].label
    if not talk.punctuated or low == length.start or dimension == "across":
        return _carried_over(mentions, low)
    return ""


def _carried_over(mentions: Mentions, low: int) -> str:
    """The subject of the clause right before, where this one has none of its own."""
    if low == 0:
        return ""
    start, stop = mentions.talk.sentence(low - 1)
    if mentions.talk.punctuated:
        return ""
    nouns = [
        f
        for f in mentions.vocabulary.subjects.find(mentions.talk.texts, start, stop)
        if f.label in ("head", "plant", "bloom", "leaf", "stem")
    ]
    return (
        nouns[-1].label
        if nouns and stop - nouns[-1].end <= 6 and nouns[-1].label in ("head", "bloom", "plant")
        else ""
    )


def _settled(mentions: Mentions, measured: list[_Measured]) -> list[_Measured]:
    """Second thoughts and two units: one of two lengths of the same thing remains."""
    talk = mentions.talk
    repairs = repairs_in(mentions)
    kept: list[_Measured] = []
    for m in measured:
        previous = kept[-1] if kept else None
        if previous is None or m.length.start - previous.length.end > _SAME_SIZE_WORDS:
            kept.append(m)
            continue
        between = range(previous.length.end, m.length.start)
        repaired = any(s in between for s, _ in repairs)
        same_dimension = (
            not previous.dimension or not m.dimension or previous.dimension == m.dimension
        )
        same_subject = (
            m.subject in ("", previous.subject)
            or previous.subject == ""
            or _no_noun(mentions, between)
        )
        two_units = m.length.metric != previous.length.metric and m.length.unit_said
        close = 0.75 <= m.length.mm / max(previous.length.mm, 0.1) <= 1.35
        sentences = talk.sentence_number(m.length.start) - talk.sentence_number(
            previous.length.start
        )
        if same_dimension and same_subject and two_units and close:
            winner = m if m.length.metric else previous
            kept[-1] = replace(
                winner,
                trait=previous.trait
                if not m.dimension and previous.trait
                else m.trait or previous.trait,
            )
        elif (
            same_dimension and same_subject and repaired and (sentences == 0 or not talk.punctuated)
        ):
            kept[-1] = replace(m, trait=previous.trait if not m.dimension else m.trait)
        else:
            kept.append(m)
    return kept


_NEXT_BREATH = 9


def _more_exact(first: _Measured, second: _Measured) -> bool:
    """ "six centimetres, sixty-three millimetres to be exact": said again, in the finer unit."""
    near = second.length.start - first.length.end <= _NEXT_BREATH
    alike = 0.88 <= second.length.mm / max(first.length.mm, 0.1) <= 1.12
    return near and alike and second.length.unit_said


def _no_noun(mentions: Mentions, between: range) -> bool:
    return not mentions.vocabulary.subjects.find(mentions.talk.texts, between.start, between.stop)


def _coins(mentions: Mentions) -> list[Statement]:
    """ "about the size of a ten pence piece": a hint of the bloom's size, hedged."""
    found: list[Statement] = []
    texts = mentions.talk.texts
    for coin in mentions.vocabulary.coins.find(texts):
        before = texts[max(0, coin.start - 6) : coin.start]
        if not ({"size", "big", "bigger", "like"} & set(before) and ({"of", "as"} & set(before))):
            continue
        if "bigger" in before or "smaller" in before:
            continue
        if found and coin.start < found[-1].end:
            continue
        found.append(
            Statement(
                trait="bloom_diameter",
                value=float(coin.label),
                unit="mm",
                start=max(0, coin.start - len(before)),
                end=coin.end,
                rule="a size by coin",
                score=0.72,
                hedged=True,
            )
        )
    return found
