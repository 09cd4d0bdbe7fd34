"""Traits that one word or turn of phrase gives: form, habit, foliage, flowering, scent, health.

Some words count only beside another ("dark" beside a leaf word is foliage, "tiny" beside a
flower word the size of the bloom); the vocabulary says which.
"""

from collections import defaultdict

from diary.linking.bloom_sizes import of_something_else, sizes_without_a_flower
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_FLOWER = frozenset(
    {
        "flower",
        "flowers",
        "bloom",
        "blooms",
        "blume",
        "blumes",
        "blossom",
        "blossoms",
        "floret",
        "florets",
        "pip",
        "pips",
        "flowered",
    }
)
_LEAF = frozenset({"leaf", "leaves", "foliage", "leafs", "leaved"})
_BLOCK_SIZE = frozenset(
    {
        "head",
        "heads",
        "truss",
        "trusses",
        "leaf",
        "leaves",
        "plant",
        "eye",
        "blotch",
        "throat",
        "bud",
        "buds",
        "pot",
        "bit",
        "shoot",
        "shoots",
        "than",
        "stripe",
        "edge",
        "stem",
        "stems",
        "zone",
        "patch",
        "spot",
        "spots",
        "star",
        "fan",
        "bracts",
        "batch",
        "cutting",
        "cuttings",
        "bench",
        "gap",
        "touch",
    }
)
_LINKS = frozenset(
    "is are 's 're the a an of very quite really rather its it so and was nice lovely "
    "good big old little more such in on real with all both just too though for proper "
    "terribly remarkably bit lot nobbut only fairly exceptionally surprisingly fairly "
    "pretty".split()
)


def find_word_traits(mentions: Mentions) -> tuple[Statement, ...]:
    """Statements of all traits given by words, longest phrase first at one place."""
    vocabulary = mentions.vocabulary
    found = [
        _said(mentions, f)
        for f in mentions.phrases(vocabulary.terms, vocabulary.never_terms)
        if not of_something_else(mentions, f)
    ]
    found += [
        s
        for f in mentions.phrases(vocabulary.near_terms, vocabulary.never_terms)
        if (s := _beside(mentions, f)) is not None
    ]
    found += _alone(mentions)
    found += sizes_without_a_flower(mentions)
    return _without_inner(found)


def _alone(mentions: Mentions) -> list[Statement]:
    """A note-taker's word that is a clause by itself: "Double.", "Single, wine red"."""
    talk = mentions.talk
    if not talk.punctuated:
        return []
    found = []
    for f in mentions.phrases(mentions.vocabulary.alone_terms, mentions.vocabulary.never_terms):
        start, stop = talk.clause(f.start)
        if start == f.start and (
            stop == f.end or talk.texts[f.end : stop] in (("again",), ("too",), ("still",))
        ):
            found.append(_said(mentions, f))
    return found


def _said(mentions: Mentions, f: Found) -> Statement:
    term = mentions.vocabulary.term_table[f.label]
    return Statement(
        trait=term.trait,
        value=term.value,
        start=f.start,
        end=f.end,
        rule=f"a word of the vocabulary: {term.trait}",
        score=0.92 if f.end - f.start > 1 else 0.9,
    )


def _beside(mentions: Mentions, f: Found) -> Statement | None:
    """The term, if one of the words it needs stands near it in the same clause."""
    talk, term = mentions.talk, mentions.vocabulary.term_table[f.label]
    low, high = talk.sentence(f.start)
    best: tuple[int, int] | None = None
    for kind in term.beside:
        if kind == "colour":
            places = [(c.start, c.end) for c in mentions.colours_in(low, high)]
        else:
            words = _LEAF if kind == "leaf" else _FLOWER
            places = [
                (i, i + 1)
                for i in range(low, high)
                if talk.texts[i] in words and not mentions.masked[i]
            ]
        for start, end in places:
            gap = range(end, f.start) if end <= f.start else range(f.end, start)
            if len(gap) > term.reach or (start < f.end and f.start < end):
                continue
            if kind == "flower" and not _size_gap(mentions, f, gap, start):
                continue
            if kind == "colour" and talk.between(
                min(f.end, end) - 1, max(f.start, start), (",", ".")
            ):
                continue
            if kind == "leaf" and not _leaf_gap(mentions, f, gap, start):
                continue
            if best is None or abs(start - f.start) < abs(best[0] - f.start):
                best = (start, end)
    if best is None:
        return None
    return Statement(
        trait=term.trait,
        value=term.value,
        start=min(f.start, best[0]),
        end=max(f.end, best[1]),
        rule=f"a word beside another: {term.trait}",
        score=0.88,
    )


def _size_gap(mentions: Mentions, f: Found, gap: range, noun: int) -> bool:
    words = [mentions.talk.texts[i] for i in gap]
    if noun > f.start:
        between_ok = all(
            w in _LINKS
            or w
            in ("single", "double", "frilly", "flat", "round", "open", "great", "ruffled", "old")
            or any(c.end > i for c in mentions.colours_in(i - 5, i + 1))
            for i, w in zip(gap, words, strict=True)
        )
        return between_ok and not mentions.talk.between(f.end - 1, noun, (",", "."))
    after = mentions.talk.texts[f.end : f.end + 1]
    if after and after[0] in _BLOCK_SIZE and not mentions.talk.tokens[f.end - 1].mark:
        return False
    linked = {"is", "are", "'s", "'re", "was"} & set(words)
    return bool(linked) and all(
        w in _LINKS or w.endswith("ly") or w in ("single", "double", "semi", "flat", "round")
        for w in words
    )


def _leaf_gap(mentions: Mentions, f: Found, gap: range, noun: int) -> bool:
    """The word belongs to the leaf: no other part, no new subject between."""
    words = [mentions.talk.texts[i] for i in gap]
    if {
        "flower",
        "flowers",
        "bloom",
        "it",
        "plant",
        "head",
        "throat",
        "edge",
        "zone",
        "with",
        "but",
        "petals",
        "blotch",
    } & set(words) and not (f.label == "foliage.scented" and {"it"} & set(words)):
        return False
    if any(p.label not in ("leaf",) for p in mentions.parts_in(gap.start, gap.stop)):
        return False
    if any(
        c.head_start in gap for c in mentions.colours_in(gap.start - 5, gap.stop)
    ) and f.label in (
        "foliage.dark",
        "foliage.pale",
    ):
        return False
    if f.label in ("foliage.dark", "foliage.pale"):
        # "dark green leaf" is a colour of the leaf, "a dark zone on the leaf" a zone
        if any(f.start < c.end for c in mentions.colours_in(f.start - 5, f.start + 1)):
            return False
        after = mentions.talk.texts[f.end : f.end + 1]
        if after and after[0] in (
            "zone",
            "ring",
            "eye",
            "centre",
            "edge",
            "veins",
            "vein",
            "horseshoe",
            "zoning",
            "blotch",
        ):
            return False
    if f.label in ("foliage.small", "foliage.large") and noun < f.start:
        after = mentions.talk.texts[f.end : f.end + 1]
        if after and after[0] in (
            "bit",
            "touch",
            "zone",
            "flower",
            "amount",
            "patch",
            "spot",
            "bloom",
        ):
            return False
    if f.label in ("foliage.small", "foliage.large"):
        after = mentions.talk.texts[f.end : f.end + 1]
        if after and after[0] == "bit":
            return False
    return (
        noun > f.start
        or bool({"is", "are", "'s", "'re", "look", "looks", "and"} & set(words))
        or not words
        or (mentions.talk.punctuated and mentions.talk.sentence(noun)[0] == noun)
        or mentions.talk.tokens[noun].mark == ","
    )


_BIN = 32  # tokens; overlaps are looked for in neighbouring bins only


def _without_inner(found: list[Statement]) -> tuple[Statement, ...]:
    """One trait has one value at one place: the longest phrase wins ("semi-double")."""
    kept: list[Statement] = []
    at: dict[tuple[str, int], list[Statement]] = defaultdict(list)
    for s in sorted(found, key=lambda s: (-(s.end - s.start), s.start)):
        inside = [k for k in at[s.trait, s.start // _BIN] if k.start < s.end and s.start < k.end]
        if any(
            k.value == s.value or (s.trait != "foliage" and k.start <= s.start and s.end <= k.end)
            for k in inside
        ):
            continue
        if s.trait != "foliage" and s.trait != "health" and inside:
            continue
        kept.append(s)
        for n in range(s.start // _BIN - 1, s.start // _BIN + 2):
            at[s.trait, n].append(s)
    return tuple(sorted(kept, key=lambda s: s.start))
