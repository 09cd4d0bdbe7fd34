"""An open diary with two walks, a register and a correction in it."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from diary.records.corrections import Seen, SetValue
from diary.records.journal import correct
from diary.records.record import Span
from diary.records.register import Cross, Seedling, save_cross, save_seedling
from diary.records.store import Store, open_store
from tests.records.making import clip, observation, seedling, stored, talk, unnamed


@pytest.fixture
def diary_store(tmp_path: Path) -> Iterator[Store]:
    # deep enough that a lost file is not found in the folder of another test
    store = open_store(tmp_path / "garden" / "films" / "diary")
    save_cross(
        store,
        Cross(
            code="11",
            seed_parent="Merrowdown Silk",
            pollen_parent="Lord Ambrick",
            seeds_sown=40,
            germinated=21,
        ),
    )
    for number in ("24-11A", "24-11B"):
        save_seedling(store, Seedling(number=number, cross="11"))
    words = talk("So A stays and here is the size of it. " * 8)
    walk = stored(
        store,
        "walk",
        words,
        clip(
            seedling("24-11A"),
            0,
            10_000,
            observation("bloom_diameter", 80, 1000, 3000, unit="mm", text="eight centimetres"),
            observation("colour", "wine", 3000, 4000, part="upper petals", text="a deep wine"),
            observation("decision", "keep", 4000, 5000, text="So A stays"),
        ),
        clip(unnamed("the pink one"), 10_000, 20_000),
    )
    stored(store, "later", talk("And B. " * 8), clip(seedling("24-11B"), 0, 5_000))
    correct(
        store,
        SetValue(value=50),
        at=Span(recording=walk.id, start_ms=1000, end_ms=3000),
        seen=Seen(trait="bloom_diameter"),
    )
    store.stills.mkdir()
    (store.stills / "one.jpg").write_bytes(b"\xff\xd8 a still \xff\xd9")
    yield store
    store.close()
