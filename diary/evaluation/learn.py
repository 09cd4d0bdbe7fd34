"""What the signs of a turn weigh, learnt from talks whose turns are told.

`python -m diary.evaluation.learn PLACE... > diary/data/turn_signs.json` writes the file anew;
a place is a gold script, a file of sayings, or a folder of them. The weights are those of a
logistic regression (scikit-learn), one for numbers, one for names, one for numbers cut short
and one for places where no plant is named: of each of them it is known whether the talk turns
there.
"""

import sys
from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import msgspec

from diary.evaluation.lessons import Lesson, lessons
from diary.linking.document import Plant, PlantKind
from diary.linking.heard import hear
from diary.linking.turns.events import events
from diary.linking.turns.lead_ins import lead_ins
from diary.linking.turns.signs import Signs
from diary.linking.turns.walk import FIRST_WORDS, Turn, Walk
from diary.linking.turns.weighed import what_speaks
from diary.linking.weights import ALWAYS
from diary.reading.mentions import Mentions, Ref
from diary.reading.vocabulary import load_vocabulary

_STRENGTH = 1.0  # the inverse of the penalty, best by leaving out one author at a time
_LEAST = 0.05  # a lighter weight moves nothing


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """A place where the talk may turn: its signs, and whether it does."""

    kind: str
    signs: tuple[str, ...]
    turns: bool
    weight: float = 1.0


def examples(lesson: Lesson) -> Iterator[Example]:
    """Every place where the talk may turn, but those of the plant in hand."""
    heard = hear(lesson.talk, load_vocabulary(None), lesson.known)
    if heard is None:
        return
    mentions = heard.mentions
    leads = lead_ins(mentions, heard.ends)
    signs = Signs(mentions, heard.statements, leads)
    words = [token.word for token in mentions.talk.tokens]
    begun = [bisect_left(words, one.begins) for one in lesson.shown]
    met: set[int] = set()
    for event in events(mentions):
        ref, word = event.ref, words[event.at]
        here = next(
            (
                n
                for n, one in enumerate(lesson.shown)
                if (n not in met or ref is None or ref.cut is not None)
                and _fits(one.plant, ref)
                and one.told[0] <= word < one.told[1]
            ),
            None,
        )
        past = [n for n, start in enumerate(begun) if start <= event.at and n != here]
        walk = _walked(mentions, [(lesson.shown[n].plant, begun[n]) for n in past])
        if ref is not None and ref.cut is None:
            if here is not None:
                met.add(here)
            elif walk.current is not None and walk.current.title == ref.title:
                continue
        if word < lesson.since:
            continue
        kind, about = what_speaks(mentions, event, signs, leads, walk)
        yield Example(kind=kind, signs=about, turns=here is not None, weight=lesson.weight)


def _fits(plant: Plant, ref: Ref | None) -> bool:
    """Whether the plant of a clip is the one that is named; without a name, one unnamed."""
    if ref is None:
        return plant.kind is PlantKind.UNNAMED
    if ref.cut is None:
        return plant.title == ref.title
    digits, letter = "".join(ref.cut[0]), ref.cut[1].upper()
    figures = "".join(c for c in plant.number or "" if c.isdigit())
    return figures.endswith(digits) and (plant.number or "").upper().endswith(letter)


def _walked(mentions: Mentions, past: Sequence[tuple[Plant, int]]) -> Walk:
    """The walk that has come to these plants, each from its token on."""
    walk = Walk()
    for plant, start in past:
        turn = Turn(at=start, said=start, plant=plant, score=1.0, rule="told")
        walk.turn_to(turn, mentions.talk.texts[start : start + FIRST_WORDS])
    return walk


def learnt(shown: Iterable[Example]) -> dict[str, dict[str, float]]:
    """The weights of the signs, by what may be turned to."""
    from sklearn.feature_extraction import DictVectorizer
    from sklearn.linear_model import LogisticRegression

    every = list(shown)
    weights: dict[str, dict[str, float]] = {}
    for kind in sorted({one.kind for one in every}):
        those = [one for one in every if one.kind == kind]
        if len({one.turns for one in those}) < 2:
            continue  # nothing to tell apart
        table = DictVectorizer()
        rows = table.fit_transform([dict.fromkeys(one.signs, 1.0) for one in those])
        model = LogisticRegression(C=_STRENGTH, max_iter=5000)
        model.fit(rows, [one.turns for one in those], [one.weight for one in those])
        told = zip(table.get_feature_names_out(), model.coef_[0], strict=True)
        weights[kind] = {ALWAYS: round(float(model.intercept_[0]), 2)} | {
            sign: round(float(weight), 2) for sign, weight in told if abs(weight) >= _LEAST
        }
    return weights


def written(weights: Mapping[str, Mapping[str, float]]) -> bytes:
    """The weights as the text of turn_signs.json, a sign a line."""
    return msgspec.json.format(msgspec.json.encode(weights, order="sorted"), indent=1) + b"\n"


def paths_of(places: Iterable[str]) -> list[Path]:
    """The files that the places name, those of a folder in order."""
    return [
        path
        for place in map(Path, places)
        for path in (sorted(place.glob("*.json")) if place.is_dir() else [place])
    ]


def main(places: Sequence[str]) -> None:
    """Learn from all the places hold and print the file."""
    every = (lesson for path in paths_of(places) for lesson in lessons(path))
    sys.stdout.buffer.write(written(learnt(one for lesson in every for one in examples(lesson))))


if __name__ == "__main__":
    main(sys.argv[1:])
