"""Learning what the signs of a turn weigh, and that the shipped weights were learnt so."""

from pathlib import Path

import msgspec
import pytest

from diary.evaluation.learn import Example, examples, learnt, main, written
from diary.evaluation.lessons import lessons
from diary.linking.weights import ALWAYS, chance
from diary.reading.vocabulary import load_vocabulary

GOLD = Path(__file__).parents[1] / "gold"


def test_a_sign_weighs_what_it_tells_apart() -> None:
    shown = [Example(kind="number", signs=("next", "the"), turns=True)] * 6
    shown += [Example(kind="number", signs=("than", "the"), turns=False)] * 6
    weights = learnt(shown)["number"]
    assert chance(weights, ("next",)) > 0.5 > chance(weights, ("than",))
    assert abs(weights.get("the", 0.0)) < abs(weights["next"])


def test_a_script_is_a_lesson_whole_and_cut_off_after_each_turn() -> None:
    path = GOLD / "dev" / "dev-01.json"
    clips = len(msgspec.json.decode(path.read_bytes())["clips"])
    found = list(lessons(path))
    assert len(found) == 1 + clips + (clips - 1)
    assert len(found[0].shown) == clips
    assert all(len(lesson.shown) <= 2 for lesson in found[1:])


def test_each_turn_of_a_script_is_an_example() -> None:
    whole = next(iter(lessons(GOLD / "dev" / "dev-01.json")))
    numbered = [one for one in examples(whole) if one.kind == "number" and one.turns]
    told = [one for one in whole.shown if one.plant.number]
    assert 0 < len(numbered) <= len(told)
    assert any(not one.turns for one in examples(whole))


def test_the_shipped_weights_know_the_sayings() -> None:
    weights = load_vocabulary().turn_signs
    shown = [one for lesson in lessons(GOLD / "sayings.json") for one in examples(lesson)]
    right = sum((chance(weights[one.kind], one.signs) >= 0.5) == one.turns for one in shown)
    assert len(shown) > 900
    assert right / len(shown) >= 0.97


def test_the_file_is_printed_as_it_is_read(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    main([str(GOLD / "dev" / "dev-01.json"), str(GOLD / "dev" / "dev-02.json")])
    printed = capsysbinary.readouterr().out
    weights = msgspec.json.decode(printed, type=dict[str, dict[str, float]])
    assert all(ALWAYS in signs for signs in weights.values())
    assert written(weights) == printed
