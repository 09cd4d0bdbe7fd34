"""Learning what the words of a decision weigh, and that the shipped weights were learnt so."""

from pathlib import Path

import msgspec
import pytest

from diary.evaluation.learn_decisions import Sentence, learnt, main, sentences, written
from diary.linking.weights import ALWAYS, chances
from diary.reading.vocabulary import load_vocabulary

GOLD = Path(__file__).parents[1] / "gold"
KINDS = {"keep", "discard", "watch", "propagate", "breed", "show", "name", "repot"}


def sentence(words: str, *decided: str, left_open: str = "") -> Sentence:
    return Sentence(
        signs=frozenset(words.split()),
        decided=frozenset(decided),
        open=frozenset(left_open.split()),
    )


def test_words_weigh_for_the_decision_they_stand_in() -> None:
    shown = [sentence("it stays", "keep"), sentence("it goes", "discard")] * 6
    weights = learnt(shown)
    stays, goes = chances(weights, ("it", "stays")), chances(weights, ("it", "goes"))
    assert stays["keep"] > 0.5 > stays["discard"]
    assert goes["discard"] > 0.5 > goes["keep"]


def test_what_is_left_open_teaches_nothing() -> None:
    shown = [sentence("it stays", "keep"), sentence("it goes", "discard")] * 6
    open_too = [*shown, *([sentence("it stays perhaps", left_open="keep")] * 6)]
    assert "keep" not in learnt(open_too).get("perhaps", {})


def test_each_decision_of_a_script_lies_in_one_sentence() -> None:
    path = GOLD / "dev" / "dev-01.json"
    clips = msgspec.json.decode(path.read_bytes())["clips"]
    told = [o for c in clips for o in c["observations"] if o["trait"] == "decision"]
    asked = [o for o in told if not o.get("optional")]
    heard = [kind for one in sentences(path) for kind in one.decided]
    assert sorted(heard) == sorted(o["value"] for o in asked)


def test_the_shipped_weights_know_the_sayings() -> None:
    weights = load_vocabulary().decision_signs
    assert set(weights[ALWAYS]) == KINDS
    right = of = 0
    for one in sentences(GOLD / "deciding.json"):
        likely = chances(weights, one.signs)
        of += len(KINDS - one.open)
        right += sum((likely[k] >= 0.5) == (k in one.decided) for k in KINDS - one.open)
    assert of > 10_000
    assert right / of >= 0.98


def test_the_file_is_printed_as_it_is_read(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    main([str(GOLD / "dev" / "dev-01.json"), str(GOLD / "dev" / "dev-02.json")])
    printed = capsysbinary.readouterr().out
    weights = msgspec.json.decode(printed, type=dict[str, dict[str, float]])
    assert weights[ALWAYS]
    assert written(weights) == printed
