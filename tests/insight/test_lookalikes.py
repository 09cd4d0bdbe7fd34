"""Look-alikes of a diary that was read from talk, through the store, as a person meets them."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from diary.errors import NotFound
from diary.insight.lookalikes import lookalikes, sister_groups
from diary.insight.overview import Overview, overview
from diary.pipeline import add
from diary.records.register import NamedPlant, Seedling, save_named_plant, save_seedling
from diary.records.store import open_store

from .say import season, shown

GOLD = Path(__file__).parent.parent / "gold" / "dev"


def read(name: str, folder: Path) -> Overview:
    """A gold script as captions, read into a diary with the script's own register."""
    script = json.loads((GOLD / f"{name}.json").read_text("utf-8"))
    store = open_store(folder / "diary")
    try:
        for row in script["register"]:
            save_seedling(
                store,
                Seedling(
                    number=row["number"],
                    seed_parent=row["seed_parent"] or None,
                    pollen_parent=row["pollen_parent"] or None,
                ),
            )
        for cultivar in script["cultivars"]:
            save_named_plant(store, NamedPlant(name=cultivar))
        segments, at = [], 0.0
        for text in script["utterances"]:
            length = max(2.0, 0.35 * len(text.split()))
            segments.append({"start": at, "end": at + length, "text": text})
            at += length + 0.3
        path = folder / f"{name}.json"
        path.write_text(json.dumps({"segments": segments}), encoding="utf-8")
        add(store, path)
        return overview(store)
    finally:
        store.close()


def rank(look: Overview, one: str, other: str) -> int:
    found = lookalikes(look, one, limit=100).nearest
    return [neighbour.plant.key for neighbour in found].index(other) + 1


@pytest.mark.parametrize(
    ("name", "pairs"),
    [
        (
            "dev-09",
            [
                ("24-11B", "24-11A"),
                ("24-11C", "24-11A"),
                ("24-11D", "24-11C"),
                ("24-17B", "24-17A"),
            ],
        ),
        ("dev-11", [("22.6", "17.3")]),
    ],
)
def test_pairs_called_alike_are_among_the_three_nearest_as_read(
    name: str, pairs: list[tuple[str, str]], tmp_path: Path
) -> None:
    look = read(name, tmp_path)
    ranks = {(one, other): (rank(look, one, other), rank(look, other, one)) for one, other in pairs}
    assert all(min(both) <= 3 for both in ranks.values()), ranks


def test_what_the_speaker_calls_alike_is_shown_and_not_used() -> None:
    plain = (shown("7", "colour bloom red"), shown("8", "colour bloom white"))
    with_word = (*plain, shown("7", "similar_to - 8", said="the spitting image of eight"))
    before, after = lookalikes(season(*plain), "7"), lookalikes(season(*with_word), "7")
    assert before.nearest[0].likeness.distance == after.nearest[0].likeness.distance
    assert before.said == ()
    assert [(one.plant.key, one.other) for one in after.said] == [("7", "8")]
    assert lookalikes(season(*with_word), "8").said == after.said


def test_a_plant_not_described_has_none() -> None:
    look = season(shown("7", "decision - keep"), shown("8", "colour bloom white"))
    with pytest.raises(NotFound, match="Nothing was said of the looks of 7"):
        lookalikes(look, "7")
    with pytest.raises(NotFound, match="No plant '9'"):
        lookalikes(look, "9")


def test_discarded_sisters_are_left_out_unless_asked_for() -> None:
    same = ("colour upper_petals wine", "colour throat white", "bloom_diameter - 50")
    parents = ("seed_parent - Tansy", "pollen_parent - Wexholt")
    look = season(shown("7A", *same, *parents), shown("7B", *same, *parents, "decision - discard"))
    assert sister_groups(look) == ()
    (group,) = sister_groups(look, discarded=True)
    assert [one.key for one in group.plants] == ["7A", "7B"]


def test_an_unregistered_number_is_a_sister_where_numbers_go_by_cross() -> None:
    on_record = {"24-11A": "Tansy", "24-11B": "Tansy", "24-71A": "Dusk", "24-71B": "Dusk"}
    look = season(
        shown("24-11C", "colour bloom red"),
        seedlings=tuple(
            Seedling(number=number, seed_parent=seed, pollen_parent="Lad")
            for number, seed in on_record.items()
        ),
    )
    (description,) = look.descriptions()
    assert description.parents == ("Tansy", "Lad")
    # presumed only: nothing is put into the pedigree
    assert look.pedigree().of("24-11C").seed_parent is None


def test_plants_of_two_groups_are_not_compared() -> None:
    look = season(shown("7", "colour bloom red"), shown("8", "colour bloom red"))
    apart = replace(look, groups={"7": "pelargonium", "8": "dahlia"})
    assert [near.plant.key for near in lookalikes(look, "7").nearest] == ["8"]
    assert lookalikes(apart, "7").nearest == ()
