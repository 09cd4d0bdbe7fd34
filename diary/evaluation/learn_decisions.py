"""What the words of a sentence weigh for each decision, learnt from talks with their answers.

`python -m diary.evaluation.learn_decisions PLACE... > diary/data/decision_signs.json` writes
the file anew; a place is a gold script, a file of sayings that decide
(tests/gold/deciding.json), or a folder of them. The weights are those of a logistic regression
(scikit-learn) for each decision, of the sentences in which it is made against all others.
"""

import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import msgspec

from diary.evaluation.gold import captions, load_script, steady_times
from diary.evaluation.learn import paths_of
from diary.evaluation.lessons import spoken
from diary.linking.decisions.signs import DecisionSigns
from diary.linking.weights import ALWAYS
from diary.reading.known import Known, KnownName, KnownSeedling
from diary.reading.mentions import find_mentions
from diary.reading.misheard.eye import eyes_respelt
from diary.reading.misheard.trade_words import respelt
from diary.reading.tokens import tokenise
from diary.reading.vocabulary import load_vocabulary
from diary.speech.transcript import Transcript

_STRENGTH = 1.0  # the inverse of the penalty; 1 and 4 tried, leaving out one author at a time
_LEAST = 0.1  # a lighter weight moves nothing
_EVERYBODYS = 2  # a sign of one sentence only is nobody's habit


class Deciding(msgspec.Struct, frozen=True, kw_only=True):
    """Utterances about one plant; a decision is its utterance, its kind, whether optional."""

    utterances: tuple[str, ...]
    decisions: tuple[tuple[int, str, bool], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """What speaks in a sentence, what is decided in it, and what is left open."""

    signs: frozenset[str]
    decided: frozenset[str]
    open: frozenset[str] = field(default_factory=frozenset)


def sentences(path: Path) -> Iterator[Sentence]:
    """All sentences of a gold script; of sayings, each utterance is one."""
    if path.read_bytes().lstrip().startswith(b"["):
        for saying in msgspec.json.decode(path.read_bytes(), type=list[Deciding]):
            yield from _of_saying(saying)
    else:
        yield from _of_script(path)


def _of_saying(saying: Deciding) -> Iterator[Sentence]:
    known = Known(
        seedlings=tuple(KnownSeedling(number=number) for number in _NUMBERS),
        names=tuple(KnownName(name=name) for name in _NAMES),
    )
    starts = [0]
    for utterance in saying.utterances:
        starts.append(starts[-1] + len(utterance.split()))
    heard = list(_heard(spoken(saying.utterances), known))
    for n, start in enumerate(starts[:-1]):
        said = [signs for word, signs in heard if start <= word < starts[n + 1]]
        told = [(kind, optional) for at, kind, optional in saying.decisions if at == n]
        yield Sentence(
            signs=frozenset().union(*said),
            decided=frozenset(kind for kind, optional in told if not optional),
            open=frozenset(kind for kind, optional in told if optional),
        )


# What the sayings of the tests may speak of.
_NUMBERS = "24-09", "24-13", "24-22"
_NAMES = "Quilted Heron", "Copper Lantern", "Fenmarsh Lad", "Rosewater Alibi"


def _of_script(path: Path) -> Iterator[Sentence]:
    script = load_script(path)
    starts = [0]
    for utterance in script.utterances:
        starts.append(starts[-1] + len(_words(utterance)))
    told: list[tuple[int, str, bool]] = []  # the middle word of a decision
    stretches: list[tuple[int, int, set[str]]] = []
    for clip in script.clips:
        decisions = [one for one in clip.observations if one.trait == "decision"]
        for one in decisions:
            utterance = script.utterances[one.u]
            before = len(_words(utterance[: max(0, utterance.find(one.quote))]))
            at = starts[one.u] + before + len(_words(one.quote)) // 2
            told.append((at, str(one.value), one.optional))
            told += [(at, str(value), True) for value in one.accept]
        kinds = {str(one.value) for one in decisions}
        stretches.append((starts[clip.first], starts[clip.last + 1], kinds))
    heard = list(_heard(captions(script, steady_times(script)), script.known))
    ends = [word for word, _ in heard[1:]] + [starts[-1]]
    for (start, signs), end in zip(heard, ends, strict=True):
        here = [(kind, optional) for at, kind, optional in told if start <= at < end]
        decided = {kind for kind, optional in here if not optional}
        # said once more in the same clip, it is not told a second time
        again = {kind for a, b, kinds in stretches if a <= start < b for kind in kinds}
        spoken_of = {kind for kind in again if f"a way to {kind}" in signs}
        yield Sentence(
            signs=frozenset(signs),
            decided=frozenset(decided),
            open=frozenset({kind for kind, _ in here} | spoken_of) - decided,
        )


def _words(text: str) -> list[str]:
    return [word for word in text.split() if any(c.isalnum() for c in word)]  # no lone dash


def _heard(transcript: Transcript, known: Known) -> Iterator[tuple[int, set[str]]]:
    """Each sentence: its first word, and what speaks in it."""
    vocabulary = load_vocabulary(None)
    talk = eyes_respelt(respelt(tokenise(transcript), vocabulary.trade), vocabulary)
    if not talk.tokens:
        return
    signs = DecisionSigns(find_mentions(talk, vocabulary, known))
    for start, stop in signs.sentences():
        yield talk.tokens[start].word, signs.of(start, stop)


def learnt(every: Iterable[Sentence]) -> dict[str, dict[str, float]]:
    """The weights: sign, decision, weight."""
    from sklearn.feature_extraction import DictVectorizer
    from sklearn.linear_model import LogisticRegression

    those = list(every)
    often = Counter(sign for one in those for sign in one.signs)
    table = DictVectorizer()
    rows = table.fit_transform(
        [{sign: 1.0 for sign in one.signs if often[sign] >= _EVERYBODYS} for one in those]
    )
    names = table.get_feature_names_out()
    weights: dict[str, dict[str, float]] = {ALWAYS: {}}
    for kind in sorted({kind for one in those for kind in one.decided}):
        told = [n for n, one in enumerate(those) if kind not in one.open]
        model = LogisticRegression(C=_STRENGTH, max_iter=5000)
        model.fit(rows[told], [kind in those[n].decided for n in told])
        weights[ALWAYS][kind] = round(float(model.intercept_[0]), 2)
        for sign, weight in zip(names, model.coef_[0], strict=True):
            if abs(weight) >= _LEAST:
                weights.setdefault(str(sign), {})[kind] = round(float(weight), 2)
    return weights


def written(weights: Mapping[str, Mapping[str, float]]) -> bytes:
    """The weights as the text of decision_signs.json, a sign a line."""
    lines = (
        b" " + msgspec.json.encode(sign) + b": " + msgspec.json.encode(weights[sign])
        for sign in sorted(weights)
    )
    return b"{\n" + b",\n".join(lines) + b"\n}\n"


def main(places: Sequence[str]) -> None:
    """Learn from all the places hold and print the file."""
    every = (sentence for path in paths_of(places) for sentence in sentences(path))
    sys.stdout.buffer.write(written(learnt(every)))


if __name__ == "__main__":
    main(sys.argv[1:])
