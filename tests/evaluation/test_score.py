"""Scoring: by a script and readings written down here, figures worked out by hand.

Precision, recall and F1 as van Rijsbergen (Information Retrieval, 1979) defines them, from
memory.
"""

from dataclasses import replace
from datetime import date

import pytest

from diary.evaluation.bands import band_shares
from diary.evaluation.gold import (
    GoldClip,
    GoldObservation,
    GoldScript,
    GoldSeedling,
    captions,
    steady_times,
)
from diary.evaluation.mistakes import Kind, commonest, mistakes
from diary.evaluation.score import Scored, Tally, score_reading, total
from diary.linking.document import (
    Band,
    Clip,
    Evidence,
    Observation,
    Plant,
    PlantKind,
    Reading,
    Value,
)

WHY = Evidence(rule="by hand", words="", score=0.9)
SCRIPT = GoldScript(
    id="by-hand",
    kind="punctuated",
    group="pelargonium",
    recorded=date(2031, 6, 2),
    register=(GoldSeedling(number="23-04"),),
    cultivars=("Fenmarsh Lad",),
    utterances=(
        "This is twenty-three oh four.",
        "It's a dark maroon with a cream throat, five centimetres across.",
        "And here is twenty-three eleven, a double, very like Fenmarsh Lad.",
    ),
    clips=(
        GoldClip(
            first=0,
            last=1,
            plant="23-04",
            observations=(
                GoldObservation(
                    u=1, quote="dark maroon", trait="colour", part="bloom", value="maroon",
                    modifiers=("dark",), accept=("burgundy",),
                ),
                GoldObservation(
                    u=1, quote="cream throat", trait="colour", part="throat", value="cream"
                ),
                GoldObservation(
                    u=1, quote="five centimetres across", trait="bloom_diameter", value=50
                ),
            ),
        ),
        GoldClip(
            first=2,
            last=2,
            plant="23-11",
            observations=(
                GoldObservation(u=2, quote="a double", trait="bloom_form", value="double"),
                GoldObservation(
                    u=2, quote="very like Fenmarsh Lad", trait="similar_to",
                    value="Fenmarsh Lad", optional=True,
                ),
            ),
        ),
    ),
)  # fmt: skip
TIMES = steady_times(SCRIPT)


def saw(
    trait: str,
    value: Value,
    u: int,
    part: str | None = None,
    *modifiers: str,
    band: Band = Band.SURE,
) -> Observation:
    """An observation in an utterance."""
    return Observation(
        trait=trait, value=value, part=part, modifiers=modifiers, text="as said", first_word=0,
        last_word=0, start_ms=TIMES[u][0], end_ms=TIMES[u][1], confidence=0.9, band=band,
        evidence=WHY,
    )  # fmt: skip


def clip(number: str, first: int, last: int, *observations: Observation) -> Clip:
    """A clip from one utterance to another."""
    return Clip(
        start_ms=TIMES[first][0],
        end_ms=TIMES[last][1],
        first_word=0,
        last_word=0,
        day=date(2031, 6, 2),
        plant=Plant(kind=PlantKind.SEEDLING, number=number),
        confidence=0.9,
        band=Band.SURE,
        observations=tuple(o for o in observations if o.band is not Band.UNSURE),
        proposals=tuple(o for o in observations if o.band is Band.UNSURE),
        evidence=WHY,
    )


RIGHT = (
    saw("colour", "maroon", 1, "bloom", "dark"),
    saw("colour", "cream", 1, "throat"),
    saw("bloom_diameter", 50, 1),
)
DOUBLE = saw("bloom_form", "double", 2)


def scored(*clips: Clip) -> Scored:
    """The score of these clips."""
    return score_reading(SCRIPT, TIMES, Reading(clips=clips))


def test_all_right_is_one_everywhere() -> None:
    score = scored(clip("23-04", 0, 1, *RIGHT), clip("23-11", 2, 2, DOUBLE)).score
    assert score.all == Tally(4, 4, 4)
    assert score.all.f1 == score.link.f1 == 1.0
    assert score.jumps.share == score.days.share == score.modifiers.share == 1.0


def test_nothing_told_finds_nothing() -> None:
    score = scored().score
    assert score.all == Tally(0, 0, 4)
    assert (score.all.precision, score.all.recall, score.all.f1) == (1.0, 0.0, 0.0)
    assert score.days.share is None


def test_f1_by_hand() -> None:
    """Two right of three told and four asked: P 2/3, R 1/2, F1 4/7."""
    score = scored(
        clip("23-04", 0, 1, *RIGHT[:2], saw("habit", "compact", 1)), clip("23-11", 2, 2)
    ).score
    assert score.all == Tally(2, 3, 4)
    assert score.all.f1 == pytest.approx(4 / 7)
    assert score.families["form"] == Tally(0, 1, 1)


@pytest.mark.parametrize(
    ("told", "right"),
    [
        (saw("bloom_diameter", 50.9, 1), 1),  # within two in a hundred
        (saw("bloom_diameter", 51.1, 1), 0),
        (saw("colour", "burgundy", 1, "bloom"), 1),  # as good
        (saw("colour", "maroon", 1, "edge"), 0),
    ],
)
def test_how_near_is_right(told: Observation, right: int) -> None:
    assert scored(clip("23-04", 0, 1, told)).score.all.right == right


def test_what_is_optional_gains_and_loses_nothing() -> None:
    like = saw("similar_to", "fenmarsh lad", 2)
    score = scored(clip("23-11", 2, 2, DOUBLE, like)).score
    assert score.families["likeness"] == Tally(0, 0, 0)
    assert score.all == Tally(1, 1, 4)


def test_what_is_no_term_of_ours_is_not_scored() -> None:
    score = scored(clip("23-04", 0, 1, saw("colour", "claret", 1, "bloom"))).score
    assert score.families["colour"] == Tally(0, 0, 2)


def test_a_marking_beside_its_coloured_part_is_no_error() -> None:
    script = replace(
        SCRIPT,
        clips=(
            replace(
                SCRIPT.clips[0],
                observations=(
                    GoldObservation(
                        u=1, quote="dark maroon", trait="colour", part="blotch", value="maroon"
                    ),
                ),
            ),
        ),
    )
    told = Reading(clips=(clip("23-04", 0, 1, saw("marking", "blotch", 1)),))
    assert score_reading(script, TIMES, told).score.all == Tally(0, 0, 1)


def test_the_wrong_plant_costs_its_observations_and_its_time() -> None:
    score = scored(clip("23-04", 0, 1, *RIGHT), clip("23-12", 2, 2, DOUBLE)).score
    assert score.all == Tally(3, 4, 4)
    assert score.link.right < score.link.asked == score.link.told
    assert score.jumps.share == 0.5


def test_an_unnamed_plant_is_known_by_its_place() -> None:
    script = replace(SCRIPT, clips=(SCRIPT.clips[0], replace(SCRIPT.clips[1], plant="unnamed:1")))
    unnamed = replace(
        clip("23-11", 2, 2, DOUBLE), plant=Plant(kind=PlantKind.UNNAMED, label="unlabelled A")
    )
    told = Reading(clips=(clip("23-04", 0, 1, *RIGHT), unnamed))
    assert score_reading(script, TIMES, told).score.all == Tally(4, 4, 4)


def test_a_broken_reading_scores_as_an_empty_one() -> None:
    late = clip("23-11", 2, 2, DOUBLE)
    one = scored(late, clip("23-04", 0, 1, *RIGHT))
    assert one.problems
    assert one.score.all == Tally(0, 0, 4)


def test_scores_of_scripts_add_up() -> None:
    one = scored(clip("23-04", 0, 1, *RIGHT))
    assert total([one, one]).all == Tally(6, 6, 8)


def test_mistakes_are_paired_and_counted() -> None:
    one = scored(
        clip("23-04", 0, 1, RIGHT[0], saw("colour", "cream", 1, "edge"), saw("habit", "weak", 1)),
        clip("23-12", 2, 2),
    )
    kinds = [(m.trait, m.kind) for m in mistakes(one)]
    assert sorted(kinds, key=str) == sorted(
        [
            ("colour", Kind.PART),
            ("habit", Kind.INVENTED),
            ("bloom_diameter", Kind.MISSED),
            ("bloom_form", Kind.MISSED),
            ("link", Kind.LINK),
        ],
        key=str,
    )
    (first, *_) = commonest([*mistakes(one), *mistakes(one)])
    assert first.times == 2


def test_shares_of_the_bands() -> None:
    proposal = saw("bloom_form", "single", 2, band=Band.UNSURE)
    guess = saw("habit", "weak", 1, band=Band.LIKELY)
    one = scored(clip("23-04", 0, 1, *RIGHT, guess), clip("23-12", 2, 2, proposal))
    shares = {(b.what, b.band): (b.wrong, b.told) for b in band_shares([one])}
    assert shares["observations", Band.SURE] == (0, 3)
    assert shares["observations", Band.LIKELY] == (1, 1)
    assert shares["observations", Band.UNSURE] == (1, 1)
    assert shares["links", Band.SURE] == (1, 2)


def test_captions_hold_every_word_in_order() -> None:
    for kind in ("punctuated", "captions"):
        transcript = captions(replace(SCRIPT, kind=kind), TIMES)
        assert transcript.text == " ".join(SCRIPT.utterances)
        starts = [word.start_ms for word in transcript.words]
        assert starts == sorted(starts)
        assert transcript.words[0].start_ms == 1000
