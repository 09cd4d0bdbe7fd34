"""The gold scripts themselves: every quote stands in its utterance, every term is one of ours."""

import re
import tomllib
from importlib import resources
from pathlib import Path

import pytest

from diary.evaluation.gold import load_script
from diary.evaluation.measure import measure

PATHS = sorted(Path(__file__).parent.glob("*/*.json"))
PARTS = tomllib.loads(
    resources.files("diary.data").joinpath("parts.toml").read_text(encoding="utf-8")
)


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_answers_are_by_the_words_and_the_vocabulary(path: Path) -> None:
    script, scale = load_script(path), measure()
    last = -1
    for clip in script.clips:
        assert clip.first > last
        last = clip.last
        assert re.fullmatch(r"unnamed:\w+|cultivar:.+|[^:]+", clip.plant)
        for one in clip.observations:
            assert clip.first <= one.u <= clip.last
            assert one.quote.lower() in script.utterances[one.u].lower()
            assert one.trait in scale.family
            terms = scale.terms.get(one.trait)
            for value in (one.value, *one.accept):
                assert terms is None or value in terms
            if one.trait == "colour":
                assert {one.part, *one.accept_part} <= set(PARTS)
