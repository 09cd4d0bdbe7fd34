"""The gold scripts as a regression: no set may fall below its floors (floors.toml)."""

import tomllib
from functools import cache
from pathlib import Path

import pytest

from diary.evaluation.run import Evaluation, evaluate
from diary.linking.document import Band

GOLD = Path(__file__).parent
FLOORS = tomllib.loads((GOLD / "floors.toml").read_text(encoding="utf-8"))
SETS = ("dev", "practice", "blind", "fresh", "unseen")


@cache
def _evaluated(name: str) -> Evaluation:
    return evaluate(GOLD / name)


def _figures(name: str) -> dict[str, float]:
    score = _evaluated(name).score
    tallies = {**score.families, "all": score.all, "link": score.link}
    shares = {"jumps": score.jumps, "dates": score.days, "modifiers": score.modifiers}
    return {what: tally.f1 for what, tally in tallies.items()} | {
        what: share.share or 0.0 for what, share in shares.items()
    }


@pytest.mark.parametrize(
    ("name", "what"), [(name, what) for name in SETS for what in FLOORS.get(name, {})]
)
def test_a_set_stays_at_or_above_its_floor(name: str, what: str) -> None:
    assert _figures(name)[what] >= FLOORS[name][what]


@pytest.mark.parametrize("name", SETS)
def test_every_script_gives_a_sound_document(name: str) -> None:
    outcome = _evaluated(name)
    assert len(outcome.scripts) == len(list((GOLD / name).glob("*.json")))
    assert outcome.problems == ()


@pytest.mark.parametrize("name", SETS)
def test_every_family_has_a_floor(name: str) -> None:
    assert set(FLOORS[name]) == set(_figures(name))


@pytest.mark.parametrize("name", ["dev"])
def test_what_is_said_to_be_sure_is_seldom_wrong(name: str) -> None:
    for band in _evaluated(name).bands:
        if band.aim is not None and band.told >= 20:
            assert (band.share or 0.0) <= band.aim, f"{band.what} {band.band.value}"


def test_the_bands_cover_everything_told() -> None:
    outcome = _evaluated("dev")
    told = sum(b.told for b in outcome.bands if b.what == "links")
    assert told == sum(len(one.told) for one in outcome.scripts)
    assert {b.band for b in outcome.bands} == set(Band)
