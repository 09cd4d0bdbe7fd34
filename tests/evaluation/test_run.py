"""`diary evaluate`: a folder of scripts, and a diary's own corrections."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from diary.cli import main
from diary.errors import UsageError
from diary.evaluation.gold import load_script
from diary.evaluation.run import evaluate
from diary.linking.document import PlantKind
from diary.pipeline import add
from diary.records.corrections import Add, Confirm, Reject, Seen, SetSeedling, SetValue
from diary.records.journal import correct
from diary.records.record import Moment, Span
from diary.records.recordings import clips
from diary.records.store import Store, open_store

GOLD = Path(__file__).parents[1] / "gold"
WALK = """WEBVTT

00:00:01.000 --> 00:00:04.000
This is twenty-three oh four.

00:00:04.500 --> 00:00:09.000
Five centimetres across, with a dark maroon blotch. It's a double.
"""


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """A diary with one short walk in it."""
    opened = open_store(tmp_path / "diary")
    walk = tmp_path / "walk 2031-06-02.vtt"
    walk.write_text(WALK, encoding="utf-8")
    add(opened, walk)
    yield opened
    opened.close()


def _span(moment: Moment) -> Span:
    return Span(recording=moment.recording, start_ms=moment.start_ms, end_ms=moment.end_ms)


def test_one_script_or_a_folder_of_them() -> None:
    one = evaluate(GOLD / "dev" / "dev-01.json")
    assert [s.script for s in one.scripts] == ["dev-01"]
    assert one.score.all.f1 > 0.8


def test_the_command_tells_and_prints_figures() -> None:
    path = str(GOLD / "dev" / "dev-01.json")
    ran = CliRunner().invoke(main, ["evaluate", path])
    assert ran.exit_code == 0
    assert "How far it can be believed" in ran.output
    figures = json.loads(CliRunner().invoke(main, ["evaluate", path, "--json"]).output)
    assert set(figures["figures"]) >= {"size", "colour", "all", "link", "jumps", "dates"}
    assert figures["scripts"]["dev-01"]["f1"] == round(figures["figures"]["all"]["f1"], 3)
    assert sum(one["times"] for one in figures["commonest"]) == len(figures["mistakes"])


def test_what_is_no_script_is_refused_with_its_place(tmp_path: Path) -> None:
    with pytest.raises(UsageError, match="no gold scripts"):
        evaluate(tmp_path)
    script = json.loads((GOLD / "dev" / "dev-01.json").read_text(encoding="utf-8"))
    script["clips"][0]["first"] = "one"
    broken = tmp_path / "broken.json"
    broken.write_text(json.dumps(script), encoding="utf-8")
    with pytest.raises(UsageError, match=r"broken\.json.*clips"):
        load_script(broken)


def test_a_script_that_was_not_spoken_is_told(tmp_path: Path) -> None:
    ran = CliRunner().invoke(
        main, ["evaluate", str(GOLD / "dev" / "dev-01.json"), "--audio", str(tmp_path)]
    )
    assert ran.exit_code == 1
    assert "dev-01: not spoken" in ran.output


def test_a_diary_s_own_corrections(store: Store) -> None:
    recording = store.db.execute("SELECT id FROM recordings").fetchone()[0]
    (clip,) = clips(store, recording)
    by_trait = {record.trait: record for record in clip.records}
    size, colour, form = (by_trait[t] for t in ("bloom_diameter", "colour", "bloom_form"))
    correct(store, SetValue(value=55), at=_span(size.moment), seen=Seen(trait="bloom_diameter"))
    correct(store, Confirm(), at=_span(colour.moment), seen=Seen(trait="colour"))
    correct(store, Reject(), at=_span(form.moment), seen=Seen(trait="bloom_form"))
    correct(store, Add(trait="scent", value="none"), at=_span(form.moment))
    correct(
        store,
        SetSeedling(kind=PlantKind.SEEDLING, title="23-05"),
        at=_span(clip.moment),
        seen=Seen(plant="23-04"),
    )
    folder = str(store.folder)
    ran = CliRunner().invoke(main, ["evaluate", "--diary", folder, "--json"])
    rows = {row["what"]: row for row in json.loads(ran.output)["corrected"]}
    assert (rows["size"]["heard"], rows["size"]["changed"]) == (1, 1)
    assert rows["size"]["share"] == 1.0
    assert (rows["colour"]["heard"], rows["colour"]["confirmed"]) == (1, 1)
    assert (rows["form"]["heard"], rows["form"]["taken_out"], rows["form"]["added"]) == (1, 1, 1)
    assert (rows["link"]["heard"], rows["link"]["changed"]) == (1, 1)
    assert rows["decision"]["share"] is None
    told = CliRunner().invoke(main, ["evaluate", "--diary", folder]).output
    assert "100.0 %" in told


def test_an_empty_diary_says_what_to_do(tmp_path: Path) -> None:
    open_store(tmp_path / "empty").close()
    ran = CliRunner().invoke(main, ["evaluate", "--diary", str(tmp_path / "empty")])
    assert ran.exit_code == 0
    assert "diary add" in ran.output
