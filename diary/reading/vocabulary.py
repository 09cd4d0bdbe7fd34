"""The words a breeder uses, loaded from the TOML files in data/ and checked.

A folder of the breeder's own may hold files of the same names: their keys are laid over
the shipped ones, top-level key by key.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from diary.errors import VocabularyError
from diary.reading.misheard.trade_words import TradeWords, trade_words
from diary.reading.phrases import PhraseBook
from diary.reading.vocabulary_files import opened_classes, weights_of, with_classes, words_of

_FILES = (
    "colours",
    "parts",
    "traits",
    "units",
    "coins",
    "measures",
    "counts",
    "decisions",
    "cues",
    "trade_words",
)
_KINDS = ("marking", "petals", "organ")


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """A unit of length: millimetres in one of it, and whether it is metric."""

    name: str
    mm: float
    metric: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """A value of a trait that is said by a phrase, or by a word beside another word."""

    trait: str
    value: str
    beside: tuple[str, ...]
    reach: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Vocabulary:
    """All terms, once loaded. Phrase books carry labels; tables say what a label means."""

    basic_colours: frozenset[str]
    blends: frozenset[tuple[str, str]]  # two colours that run together into one
    colours: PhraseBook  # label: colour name
    ish: PhraseBook  # label: colour name
    misheard_colours: PhraseBook  # label: colour name; words that sound like it
    modifiers: PhraseBook  # label: modifier
    things: frozenset[str]
    said_of_colours: frozenset[str]  # words that may stand after the colour of a plant
    fragrant_colours: frozenset[str]  # also the name of a smell or a taste
    places: PhraseBook  # label: the part that lies there
    colour_habits: Mapping[str, PhraseBook]  # turns of phrase about colours only
    parts: PhraseBook  # label: part
    part_kinds: Mapping[str, str]
    terms: PhraseBook  # label: "trait.value"
    near_terms: PhraseBook  # label: "trait.value"
    alone_terms: PhraseBook  # label: "trait.value": a whole clause by themselves
    predicate_terms: PhraseBook  # label: "trait.value": where a sentence is built round them
    never_terms: PhraseBook  # label: "trait.value"
    term_table: Mapping[str, Term]
    units: PhraseBook  # label: unit name
    unit_table: Mapping[str, Unit]
    other_units: PhraseBook
    coins: PhraseBook  # label: millimetres
    subjects: PhraseBook  # label: bloom, head, plant, stem, leaf, nothing
    dimensions: PhraseBook  # label: across, tall, long
    size_comparisons: PhraseBook
    size_limits: PhraseBook  # before a length: what a class asks, what is wanted
    size_ways: PhraseBook  # before a length: how far a thing was moved, cut, set apart
    size_topics: PhraseBook  # label: "plant tall", "plant across"
    size_again: PhraseBook  # "the same across": as much as was said last, the other way
    slips: PhraseBook  # a figure is taken back: "I had my thumb over the end"
    counted: PhraseBook  # label: trait, or "seeds"
    between: Mapping[str, frozenset[str]]
    count_gone_before: PhraseBook  # before a count of what was lost or cut
    count_gone_after: PhraseBook  # after it
    cuttings_exist: PhraseBook
    struck_before: PhraseBook  # before "six of it": cuttings
    struck_after: PhraseBook  # after it
    sown: PhraseBook
    sown_before: PhraseBook  # before the number of seeds
    sown_after: PhraseBook  # after it
    unsown: PhraseBook  # after it, where they are still to be sown
    sown_put: PhraseBook  # right after it, where what came up follows: "fifteen in, four up"
    germinated: PhraseBook
    germinated_before: PhraseBook  # before the number that came up
    decisions: PhraseBook  # label: decision
    decisions_last: PhraseBook
    decisions_done: PhraseBook
    decisions_deeds: PhraseBook
    decisions_refused: PhraseBook  # what, refused, decides
    decisions_judged: PhraseBook  # what, for another time, watches
    decisions_bare: PhraseBook
    decisions_never: PhraseBook
    decision_things: PhraseBook  # what is binned and kept and is no plant
    plant_nouns: PhraseBook  # words for the plant in hand
    decision_kin: PhraseBook  # other plants than the one in hand
    cues: Mapping[str, PhraseBook]  # habit -> its phrases
    never_cues: Mapping[str, PhraseBook]
    parent_cues: PhraseBook  # label: "seed_parent before", ...
    trade: TradeWords  # rightly spelt, to be told by sound
    turn_signs: Mapping[str, Mapping[str, float]]  # what is turned to: a sign and its weight
    decision_signs: Mapping[str, Mapping[str, float]]  # a sign and its weight for each decision
    classes: Mapping[str, frozenset[str]]  # class -> its words, those of two words left out


def load_vocabulary(folder: Path | None = None) -> Vocabulary:
    """The shipped vocabulary, with the files of `folder` laid over it.

    Raises VocabularyError naming file and key where something is wrong.
    """
    return _load(folder)


@lru_cache(maxsize=4)
def _load(folder: Path | None) -> Vocabulary:
    classes = opened_classes(words_of("classes", folder))
    data = {name: with_classes(words_of(name, folder), classes, f"{name}.toml") for name in _FILES}
    colours, parts, traits = data["colours"], data["parts"], data["traits"]
    for part, entry in parts.items():
        if entry.get("kind") not in _KINDS:
            raise VocabularyError(f"parts.toml: {part}.kind: must be one of {', '.join(_KINDS)}")
    term_table, terms, near, alone, predicate, never = {}, [], [], [], [], []
    for trait, values in traits.items():
        for value, entry in values.items():
            label = f"{trait}.{value}"
            if not entry.get("said") and not entry.get("near"):
                raise VocabularyError(f"traits.toml: {label}: needs 'said' or 'near'")
            term_table[label] = Term(
                trait=trait,
                value=value,
                beside=tuple(entry.get("beside", ())),
                reach=entry.get("reach", 3),
            )
            terms += [(label, phrase) for phrase in entry.get("said", ())]
            near += [(label, phrase) for phrase in entry.get("near", ())]
            alone += [(label, phrase) for phrase in entry.get("alone", ())]
            predicate += [(label, phrase) for phrase in entry.get("predicate", ())]
            never += [(label, phrase) for phrase in entry.get("never", ())]
    units = {
        name: Unit(name=name, mm=float(entry["mm"]), metric=system == "metric")
        for system in ("metric", "imperial")
        for name, entry in data["units"][system].items()
    }
    it = f"{classes['it']}|you {classes['plant_noun']}?"
    cues, counts, decisions = data["cues"], data["counts"], data["decisions"]
    counted = {k: v for k, v in counts.items() if "nouns" in v}
    single = {
        name: frozenset(word for word in said.split("|") if "_" not in word)
        for name, said in classes.items()
    }
    return Vocabulary(
        classes=single,
        turn_signs=weights_of("turn_signs"),
        decision_signs=weights_of("decision_signs"),
        trade=trade_words(
            data["trade_words"]["said"],
            data["trade_words"].get("twins", {}),
            data["trade_words"].get("unless", {}),
        ),
        basic_colours=frozenset(colours["basic"]),
        blends=frozenset(
            pair
            for first, seconds in colours["blends"].items()
            for second in seconds
            for pair in ((first, second), (second, first))
        ),
        colours=_book(colours["words"]),
        ish=_book(colours["ish"]),
        misheard_colours=_book(colours["misheard"]),
        modifiers=_book(colours["modifiers"]),
        things=frozenset(colours["things"]["said"]),
        said_of_colours=frozenset(colours["followed"]["said"]),
        fragrant_colours=frozenset(colours["fragrant"]["said"]),
        places=_book(colours["places"]),
        colour_habits={habit: _book({habit: said}) for habit, said in colours["habits"].items()},
        parts=_book({part: entry["said"] for part, entry in parts.items()}),
        part_kinds={part: entry["kind"] for part, entry in parts.items()},
        terms=PhraseBook(terms),
        near_terms=PhraseBook(near),
        alone_terms=PhraseBook(alone),
        predicate_terms=PhraseBook(predicate),
        never_terms=PhraseBook(never),
        term_table=term_table,
        units=_book(
            {
                name: entry["said"]
                for system in ("metric", "imperial")
                for name, entry in data["units"][system].items()
            }
        ),
        unit_table=units,
        other_units=_book({"other": data["units"]["other"]["said"]}),
        coins=_book({str(coin["mm"]): coin["said"] for coin in data["coins"]["coin"]}),
        subjects=_book(data["measures"]["subject"]),
        dimensions=_book(data["measures"]["dimension"]),
        size_comparisons=_book({"compared": data["measures"]["compared"]["said"]}),
        size_limits=_book({"limit": data["measures"]["limit"]["said"]}),
        size_ways=_book({"way": data["measures"]["way"]["said"]}),
        size_topics=_book(data["measures"]["topic"]),
        size_again=_book(data["measures"]["again"]),
        slips=_book({"slip": data["measures"]["slip"]["said"]}),
        counted=_book({trait: entry["nouns"] for trait, entry in counted.items()}),
        between={trait: frozenset(entry["between"]) for trait, entry in counted.items()},
        cuttings_exist=_book({"exist": counts["count_cuttings"]["exist"]}),
        count_gone_before=_book({"gone": counts["gone"]["before"]}),
        count_gone_after=_book({"gone": counts["gone"]["after"]}),
        struck_before=_book({"struck": counts["struck"]["before"]}),
        struck_after=_book({"struck": counts["struck"]["after"]}),
        sown=_book({"sown": counts["seeds"]["sown"]}),
        sown_before=_book({"sown": counts["sown"]["before"]}),
        sown_after=_book({"sown": counts["sown"]["after"]}),
        unsown=_book({"unsown": counts["sown"]["unsown"]}),
        sown_put=_book({"sown": counts["sown"]["put"]}),
        germinated=_book({"germinated": counts["germinated"]["said"]}),
        germinated_before=_book({"germinated": counts["germinated"]["before"]}),
        decisions=_book({name: _any_it(entry["said"], it) for name, entry in decisions.items()}),
        decisions_last=_book(
            {name: _any_it(entry.get("last", ()), it) for name, entry in decisions.items()}
        ),
        decisions_done=_book(
            {name: _any_it(entry.get("done", ()), it) for name, entry in decisions.items()}
        ),
        decisions_deeds=_book(
            {name: _any_it(entry.get("deed", ()), it) for name, entry in decisions.items()}
        ),
        decisions_refused=_book(
            {name: _any_it(entry.get("refused", ()), it) for name, entry in decisions.items()}
        ),
        decisions_judged=_book(
            {name: _any_it(entry.get("judged", ()), it) for name, entry in decisions.items()}
        ),
        decisions_bare=_book({name: entry.get("bare", ()) for name, entry in decisions.items()}),
        decisions_never=_book(
            {name: _any_it(entry.get("never", ()), it) for name, entry in decisions.items()}
        ),
        decision_things=_book({"thing": classes["thing"].split("|")}),
        plant_nouns=_book({"plant": classes["plant_noun"].split("|")}),
        decision_kin=_book({"kin": classes["kin"].split("|")}),
        cues={
            habit: _book({habit: [*entry.get("said", ()), *entry.get("reversed", ())]})
            for habit, entry in cues.items()
        },
        never_cues={habit: _book({habit: entry.get("never", ())}) for habit, entry in cues.items()},
        parent_cues=_book(
            {
                f"{parent} {side}": cues[parent][side]
                for parent in ("seed_parent", "pollen_parent")
                for side in ("before", "after")
            }
            | {
                "cross reversed": cues["cross"]["reversed"],
                "similar after": cues["similar"]["after"],
                "similar weak": cues["similar"]["weak"],
            }
        ),
    )


def _any_it(said: Iterable[str], it: str) -> list[str]:
    """The phrases of decisions, where a lone "it" stands for whatever points at a plant.

    "bin it" is "bin that", "bin this fella" and "bin those seedlings".
    """
    return [" ".join(it if word == "it" else word for word in phrase.split()) for phrase in said]


def _book(by_label: Mapping[str, Any]) -> PhraseBook:
    return PhraseBook((label, phrase) for label, said in by_label.items() for phrase in said)
