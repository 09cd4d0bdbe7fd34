"""Which of several lengths holds, and what a coin beside the bloom says of its size.

A length taken back ("five, no, four and a half") is dropped; of one size in two units the
metric figure wins. A coin held beside the bloom is a hedged size.
"""

from dataclasses import replace

from diary.linking.mended import mends_in, told_otherwise
from diary.linking.second_thoughts import repairs_in
from diary.linking.sizes.measured_what import Measured, measure
from diary.linking.sizes.size_again import sizes_again
from diary.linking.sizes.unsaid_units import without_unit
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_SAME_SIZE_WORDS, _LOOKED_WITHIN = 16, 24
_LEAST_MM = 0.1  # "nought millimetres" measures nothing
# "six centimetres and a bit; on the callipers it's sixty-three millimetres"
_INSTRUMENTS = frozenset("calipers callipers ruler rule tape gauge exactly exact precise".split())


def find_measurements(mentions: Mentions) -> tuple[Statement, ...]:
    """Sizes in millimetres, in order, second thoughts settled."""
    lengths = [x for x in mentions.lengths if not any(mentions.masked[x.start : x.end])]
    lengths = sorted([*lengths, *without_unit(mentions, lengths)], key=lambda x: x.start)
    measured: list[Measured] = []
    dropped = -1
    for x in lengths:
        if x.again and measured and x.start - measured[-1].length.end <= _LOOKED_WITHIN:
            measured[-1] = replace(measured[-1], length=x, dimension_end=x.end)
            continue
        second_side = mentions.talk.texts[x.start - 1 : x.start] == ("by",)
        m = measure(mentions, x, measured[-1] if measured else None)
        if m is None or (second_side and dropped == x.start - 1):
            dropped = x.end  # "the tray's fifteen inches by nine"
        else:
            measured.append(m)
    kept = sizes_again(mentions, _settled(mentions, measured))
    coins = _coins(mentions)
    sizes = (_statement(mentions, m) for m in kept if m.trait and m.length.mm >= _LEAST_MM)
    return tuple(sorted([*sizes, *coins], key=lambda s: s.start))


def _score(m: Measured) -> float:
    """How far a size is to be believed: a plant's or a bloom's that is named, most (measured)."""
    if m.subject in ("plant", "bloom", "stem") and m.length.unit_said:
        return 0.95
    return 0.82


def _statement(mentions: Mentions, m: Measured) -> Statement:
    return Statement(
        trait=m.trait,
        value=round(m.length.mm + 1e-6, 1),
        unit="mm",
        start=m.length.start,
        end=max(m.length.end, m.dimension_end),
        rule=f"a length of the {m.subject or 'flower'}"
        if m.length.unit_said
        else "a length whose unit was said before",
        score=_score(m),
        hedged=mentions.talk.texts[m.length.start] in ("between",),
    )


def _settled(mentions: Mentions, measured: list[Measured]) -> list[Measured]:
    """Second thoughts and two units: one of two lengths of the same thing remains."""
    talk = mentions.talk
    kept: list[Measured] = []
    for m in measured:
        previous = kept[-1] if kept else None
        if previous is None or m.length.start - previous.length.end > _SAME_SIZE_WORDS:
            kept.append(m)
            continue
        between = range(previous.length.end, m.length.start)
        repaired = (
            bool(mends_in(mentions, previous.length.end, m.length.start))
            or bool(repairs_in(mentions, m.length.end, m.length.end + 2))
            or told_otherwise(mentions, previous.length, m.length.start)
        )
        same_dimension = (
            not previous.dimension or not m.dimension or previous.dimension == m.dimension
        )
        same_subject = (
            m.subject in ("", previous.subject)
            or previous.subject == ""
            or _no_noun(mentions, between)
        )
        two_units = m.length.metric != previous.length.metric and m.length.unit_said
        alike = 0.39 <= m.length.mm / max(previous.length.mm, 0.1) <= 2.55
        close = 0.75 <= m.length.mm / max(previous.length.mm, 0.1) <= 1.35
        said = talk.texts[previous.length.end : m.length.start]
        anew = close and (bool(_INSTRUMENTS & set(said)) or said[-1:] in (("nearer",), ("closer",)))
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
            same_dimension
            and same_subject
            and ((repaired and alike) or anew)
            and (sentences <= _mending_reach(mentions, m) or not talk.punctuated)
        ):
            same = not m.dimension or (not m.subject and m.dimension == previous.dimension)
            kept[-1] = replace(m, trait=previous.trait if same else m.trait)
        else:
            kept.append(m)
    return kept


def _mending_reach(mentions: Mentions, m: Measured) -> int:
    """How many sentences on a second thought still mends: "No, I lie, my thumb ... Two."."""
    talk = mentions.talk
    span = talk.sentence(m.length.start)
    if span == (m.length.start, m.length.end):
        return 2
    if span[0] == 0 or span[0] != m.length.start:
        return 0
    before = talk.sentence(span[0] - 1)  # "Five centimetres. No. Fifty-three millimetres, ..."
    mends = mends_in(mentions, before[0], before[1])
    return 2 if before[1] - before[0] <= 3 and any(x[0] == before[0] for x in mends) else 0


def _no_noun(mentions: Mentions, between: range) -> bool:
    return not mentions.vocabulary.subjects.find(mentions.talk.texts, between.start, between.stop)


_OF_A_LEAF = frozenset("leaf leaves foliage bud buds eye blotch pot".split())


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
        low = mentions.talk.sentence(coin.start)[0]
        if _OF_A_LEAF & set(texts[max(low, coin.start - 10) : coin.start]):
            continue  # "leaf the size of a two-pound coin"
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
