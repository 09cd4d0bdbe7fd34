"""Traits that one word or turn of phrase gives: form, habit, foliage, flowering, scent, health.

Some words count only beside another ("dark" beside a leaf word is foliage, "tiny" beside a
flower word the size of the bloom); the vocabulary says which.
"""

from collections import defaultdict

from diary.linking.sizes.bloom_sizes import of_something_else, sizes_without_a_flower
from diary.linking.statement import Statement
from diary.linking.traits.ailments import without_others_ailments
from diary.linking.traits.flower_rations import flower_rations
from diary.linking.traits.flowering_order import flowering_order
from diary.linking.traits.flowering_spans import long_flowering
from diary.linking.traits.form_nouns import form_nouns
from diary.linking.traits.found_clean import found_clean
from diary.linking.traits.leaf_scent import touched_leaves
from diary.linking.traits.nosed import nosed
from diary.linking.traits.predicates import predicates
from diary.linking.traits.said_of_things import said_of_the_plant
from diary.linking.traits.scent_of import (
    answered_scents,
    denied_scents,
    sniffed_in_vain,
    without_leaf_scents,
)
from diary.linking.traits.sun_burnt import sun_burnt
from diary.linking.traits.superlatives import superlatives
from diary.linking.traits.waited_for import waited_for
from diary.linking.traits.weeks_apart import weeks_apart
from diary.linking.traits.word_meant import as_meant
from diary.linking.turns.beside import beside, leaves_again
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found


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
        if (s := beside(mentions, f)) is not None
    ]
    found += _alone(mentions)
    found += sizes_without_a_flower(mentions)
    found += [*touched_leaves(mentions), *leaves_again(mentions), *long_flowering(mentions)]
    found += [*answered_scents(mentions), *sniffed_in_vain(mentions), *nosed(mentions)]
    found += [*found_clean(mentions), *weeks_apart(mentions), *sun_burnt(mentions)]
    found += [*flowering_order(mentions), *waited_for(mentions), *flower_rations(mentions)]
    found += [*form_nouns(mentions), *predicates(mentions), *superlatives(mentions)]
    found = without_others_ailments(
        mentions, without_leaf_scents(mentions, denied_scents(mentions, found))
    )
    return _without_inner(as_meant(mentions, said_of_the_plant(mentions, found)))


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
