"""Groups of near-identical sisters and the one that grows best."""

from diary.insight.description import Description, describe
from diary.insight.growing import Growth, growth
from diary.insight.sisters import SisterGroup, near_identical
from diary.records.beliefs import Belief

from .say import belief, plant

CROSS = ("Merrowdown Silk", "Lord Ambrick")


def seedling(
    number: str, *beliefs: Belief, parents: tuple[str, str] = CROSS
) -> tuple[Description, Growth]:
    return describe(plant(number), beliefs, parents=parents), growth(plant(number), beliefs)


def wine(start_ms: int = 0, size: float = 50) -> tuple[Belief, ...]:
    return (
        belief("colour", "wine", "upper petals", start_ms=start_ms),
        belief("colour", "mauve", "lower petals", start_ms=start_ms + 1),
        belief("colour", "white", "throat", start_ms=start_ms + 2),
        belief("bloom_diameter", size, start_ms=start_ms + 3),
    )


def groups(*seedlings: tuple[Description, Growth]) -> tuple[SisterGroup, ...]:
    return near_identical(
        [description for description, _ in seedlings],
        {entry.plant.key: entry for _, entry in seedlings},
    )


def test_sisters_that_look_the_same_are_found_with_the_better_grower() -> None:
    found = groups(
        seedling("11A", *wine(), belief("habit", "compact", text="lovely compact plant")),
        seedling("11B", *wine(5000, 45), belief("habit", "leggy")),
        seedling("11C", belief("colour", "salmon", "bloom"), belief("marking", "spots")),
    )
    assert [[one.key for one in group.plants] for group in found] == [["11A", "11B"]]
    group = found[0]
    assert group.best is not None
    assert group.best.plant.key == "11A"
    assert [(point.words, point.points) for point in group.best.points] == [("habit: compact", 1.0)]
    assert group.best.points[0].moments[0].text == "lovely compact plant"
    assert [moment.start_ms for moment in group.moments["11B"]] == [0, 5000, 5001, 5002, 5003]


def test_strangers_are_no_sisters_however_alike() -> None:
    assert not groups(
        seedling("11A", *wine()), seedling("12A", *wine(), parents=("Candle Wharf", "Osier Bank"))
    )


def test_reciprocal_crosses_are_sisters() -> None:
    assert groups(seedling("11A", *wine()), seedling("12A", *wine(), parents=CROSS[::-1]))


def test_without_evidence_no_best_is_named() -> None:
    (group,) = groups(seedling("11A", *wine()), seedling("11B", *wine()))
    assert group.best is None


def test_many_more_heads_tip_the_balance() -> None:
    both = (seedling("11A", *wine()), seedling("11B", *wine()))
    counts = {"11A": {"count_heads": 3.0}, "11B": {"count_heads": 9.0}}
    (group,) = near_identical(
        [description for description, _ in both],
        {entry.plant.key: entry for _, entry in both},
        counts=counts,
    )
    assert group.best is not None
    assert group.best.plant.key == "11B"
    assert group.best.points[-1].words == "most heads: 9"


def test_a_chain_of_small_steps_is_no_group() -> None:
    # each is near the next, and the ends are 48 mm apart: over the limit of 0.15 used here
    chain = [
        seedling(f"11{letter}", *wine(0, size))
        for letter, size in zip("ABCDE", (30.0, 42.0, 54.0, 66.0, 78.0), strict=True)
    ]
    found = near_identical(
        [description for description, _ in chain],
        {entry.plant.key: entry for _, entry in chain},
        within=0.15,
    )
    assert sorted(len(group.plants) for group in found) == [2, 3]
    assert all(pair.distance <= 0.15 for group in found for pair in group.likenesses)


def test_too_little_said_is_no_identity() -> None:
    assert not groups(
        seedling("11A", belief("colour", "wine", "bloom")),
        seedling("11B", belief("colour", "wine", "bloom")),
    )
