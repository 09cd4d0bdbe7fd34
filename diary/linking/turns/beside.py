"""Words that count only beside another: "dark" beside a leaf word, "tiny" beside a flower word.

"the leaf on it is ever so tiny", "a glossy leaf"; not "a dark zone on the leaf".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
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
        "corolla",
        "corollas",
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
    "is are 's 're the a an of sort kind type thing very quite really rather its it so and was "
    "nice lovely good big old little more such in on real with all both just too though for proper "
    "terribly remarkably bit lot nobbut only fairly exceptionally surprisingly fairly "
    "pretty come comes look looks on".split()
)
_COPULAS = frozenset(
    {"is", "are", "'s", "'re", "look", "looks", "and", "gone", "goes", "stay", "stays", "was"}
)
_HAD = frozenset({"foliage.glossy", "foliage.scented"})
_OWNERS = frozenset({"it", "this", "that", "her", "him", "them", "these"})
_THEY = frozenset({"these", "they", "those"})
_AGAIN_WITHIN, _LEAF_BACK = 8, 14


def beside(mentions: Mentions, f: Found) -> Statement | None:
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
    if best is None or _denied_between(mentions, f, best[1]):
        return None
    return Statement(
        trait=term.trait,
        value=term.value,
        start=min(f.start, best[0]),
        end=max(f.end, best[1]),
        rule=f"a word beside another: {term.trait}",
        score=0.88,
    )


def _denied_between(mentions: Mentions, f: Found, noun_end: int) -> bool:
    """ "a matt leaf, no shine on it": denied after the noun."""
    return any(
        scope.habit is Habit.DENIAL and noun_end <= scope.cue < f.start
        for scope in mentions.scopes.by_token[f.start]
    )


_HOW = frozenset("very quite really rather so ever too fairly pretty only".split())
_LOOKS = frozenset(
    "single double frilly flat round open great ruffled old blousy blowsy fat full floppy showy "
    "heavy soft silky glossy loose starry cupped bold gorgeous beautiful bright".split()
)


def _size_gap(mentions: Mentions, f: Found, gap: range, noun: int) -> bool:
    words = [mentions.talk.texts[i] for i in gap]
    if noun > f.start:
        between_ok = all(
            w in _LINKS or w in _LOOKS or any(c.end > i for c in mentions.colours_in(i - 5, i + 1))
            for i, w in zip(gap, words, strict=True)
        )
        return between_ok and not mentions.talk.between(f.end - 1, noun, (",", "."))
    after = mentions.talk.texts[f.end : f.end + 1]
    if after and after[0] in _BLOCK_SIZE and not mentions.talk.tokens[f.end - 1].mark:
        return False
    linked = {"is", "are", "'s", "'re", "was", "come", "comes", "look", "looks"} & set(words)
    if not words:  # "I'd call those flowers enormous"
        before = mentions.talk.texts[max(0, noun - 3) : noun]
        return bool({"call", "calling", "find", "found", "consider"} & set(before))
    if all(w in _HOW for w in words) and (not after or after[0] not in _FLOWER):
        return True  # "single flower quite small, about an inch"
    return bool(linked) and all(
        w in _LINKS or w.endswith("ly") or w in ("single", "double", "semi", "flat", "round")
        for w in words
    )


def _leaf_gap(mentions: Mentions, f: Found, gap: range, noun: int) -> bool:
    """The word belongs to the leaf: no other part, no new subject between."""
    words = _without_owner([mentions.talk.texts[i] for i in gap], noun < f.start)
    if words in (["it", "is"], ["it", "'s"]) and not mentions.talk.punctuated:
        return noun < f.start  # "I never marked the leaf | it's dark"
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
        if noun > f.start and {"off", "from", "on", "in", "to"} & set(words):
            return False  # "a great smell off the leaf"
        after = mentions.talk.texts[f.end : f.end + 1]
        if after and after[0] == "bit":
            return False
    return (
        noun > f.start
        or bool(_COPULAS & set(words))
        or (f.label in _HAD and bool({"has", "have", "'ve", "got"} & set(words)))
        or (not words and (not mentions.talk.tokens[noun].mark or _closes(mentions, f.end)))
        or (mentions.talk.punctuated and mentions.talk.sentence(noun)[0] == noun)
        or (mentions.talk.tokens[noun].mark == "," and _closes(mentions, f.end))
    )


def _closes(mentions: Mentions, end: int) -> bool:
    """ "leaf, glossy and dark"; not "under the leaf, little orange pimples"."""
    talk = mentions.talk
    if end >= len(talk.texts) or talk.tokens[end - 1].mark:
        return True
    return talk.clause(end)[0] == end or talk.texts[end] in (
        "and",
        "but",
        "with",
        "too",
        "as",
        "like",
    )


def _without_owner(words: list[str], noun_first: bool) -> list[str]:
    """ "the leaf | on it | is tiny": whose leaf it is does not part it from its word."""
    if noun_first and len(words) > 2 and words[0] in ("on", "of") and words[1] in _OWNERS:
        return words[2:]
    return words


def leaves_again(mentions: Mentions) -> Iterator[Statement]:
    """ "I've a horror of big leaves, and these are, I'm sorry to say, enormous"."""
    talk, terms = mentions.talk, mentions.vocabulary.term_table
    for f in mentions.phrases(mentions.vocabulary.near_terms, mentions.vocabulary.never_terms):
        if terms[f.label].trait != "foliage" or f.label == "foliage.scented":
            continue
        low = max(talk.sentence(f.start)[0], f.start - _AGAIN_WITHIN)
        said = [
            i
            for i in range(low, f.start)
            if talk.texts[i] in _THEY and talk.texts[i + 1] in ("are", "'re", "were", "look")
        ]
        if not said:
            continue
        nouns = list(mentions.parts_in(said[-1] - _LEAF_BACK, said[-1]))
        if nouns and nouns[-1].label == "leaf" and talk.texts[nouns[-1].start] != "leaf":
            yield Statement(
                trait="foliage",
                value=terms[f.label].value,
                start=said[-1],
                end=f.end,
                rule="leaves spoken of again",
                score=0.86,
            )
