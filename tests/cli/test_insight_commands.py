"""list, lookalikes, progeny and pedigree, run as a person would."""

import json
from pathlib import Path

from tests.cli.conftest import Run

TWO_SISTERS = """WEBVTT

00:00.000 --> 00:04.000
Right, this is 23-11.

00:04.000 --> 00:10.000
The upper petals are a deep wine, the lower petals are mauve, and it has a white throat.

00:10.000 --> 00:15.000
It's a lovely compact plant, five centimetres across.

00:15.000 --> 00:18.000
Next is 23-12.

00:18.000 --> 00:24.000
The upper petals are wine, the lower petals are a pale mauve, and it has a white throat.

00:24.000 --> 00:28.000
Four and a half centimetres across, and it's leggy.

00:28.000 --> 00:32.000
I'll spray it tonight.
"""


def sisters(run: Run, tmp_path: Path) -> None:
    register = "number,seed_parent,pollen_parent\n" + "".join(
        f"{number},Tansy Wharf,Wexholt Plum\n" for number in ("23-11", "23-12", "23-13")
    )
    (tmp_path / "sisters.csv").write_text(register)
    run("register", "import", "sisters.csv", "--yes")
    path = tmp_path / "sisters.vtt"
    path.write_text(TWO_SISTERS)
    run("add", path, "--date", "2031-06-09")


def test_list_keep_quotes_the_sentence(run: Run, walk: Path) -> None:
    said = run("list", "keep").output
    assert "To keep, as of" in said
    assert "23-04  keep  2031-06-02  bench-walk@0:1" in said
    assert "that's a keeper." in said
    entries = json.loads(run("list", "keep", "--json").stdout)["entries"]
    assert [entry["plant"]["key"] for entry in entries] == ["23-04"]
    assert entries[0]["moment"]["recording"]


def test_list_without_a_name_counts_them_all(run: Run, walk: Path) -> None:
    said = run("list").output
    assert "keep          1" in said
    assert "discard       1" in said
    lists = json.loads(run("list", "--json").stdout)
    assert len(lists) == 12


def test_an_unknown_list_is_refused(run: Run, walk: Path) -> None:
    assert "There are: keep" in run("list", "kept", code=2).output


def test_a_promise_to_spray_comes_with_the_usual_caution(run: Run, tmp_path: Path) -> None:
    sisters(run, tmp_path)
    said = run("list", "promised").output
    assert "I'll spray it tonight." in said
    assert "follow the product's label and local rules" in said


def test_lookalikes_group_sisters_and_name_the_better(run: Run, tmp_path: Path) -> None:
    sisters(run, tmp_path)
    said = run("lookalikes").output
    assert "23-11, 23-12  (of Tansy Wharf and Wexholt Plum)" in said
    assert "grows best: 23-11, habit: compact (sisters@0:1" in said
    near = json.loads(run("lookalikes", "23-11", "--json").stdout)
    assert near["nearest"][0]["plant"]["key"] == "23-12"
    assert "colour of throat: both white" in run("lookalikes", "23-11").output
    run("lookalikes", "23-13", code=7)


def test_progeny_of_all_crosses_of_one_parent_and_of_a_trait(run: Run, tmp_path: Path) -> None:
    sisters(run, tmp_path)
    said = run("progeny").output
    assert "'Tansy Wharf' \u00d7 'Wexholt Plum'" in said
    assert "flowered    2 of 3 (21% to 94%)" in said
    parent = run("progeny", "tansy wharf").output
    assert "Tansy Wharf: seed parent of 3, pollen parent of 0" in parent
    assert "white: 2 of 2 (34% to 100%): 23-11, 23-12" in parent
    assert (
        "2 of 2 (34% to 100%) described: 23-11, 23-12"
        in run("progeny", "--wanted", "white throat").output
    )
    assert json.loads(run("progeny", "--json").stdout)[0]["flowered"]["count"] == 2
    run("progeny", "nobody", code=7)
    run("progeny", "--wanted", "sparkly", code=2)


def test_progeny_unused(run: Run, tmp_path: Path) -> None:
    sisters(run, tmp_path)
    found = json.loads(run("progeny", "--unused", "--json").stdout)
    assert found["untested"] == []
    run("progeny", "--unused", "--wanted", "white throat")


def test_pedigree_in_text_and_as_a_picture(run: Run, walk: Path, tmp_path: Path) -> None:
    said = run("pedigree", "23-04", "--svg", "family.svg").output
    assert said.splitlines()[:4] == [
        "23-04",
        "├─ seed parent: 'Tansy Wharf'",
        "└─ pollen parent: 'Wexholt Plum'",
        "inbreeding: 0",
    ]
    assert (tmp_path / "family.svg").read_text("utf-8").startswith("<svg")
    assert json.loads(run("pedigree", "23-04", "--json").stdout)["purdy"] == (
        "Tansy Wharf/Wexholt Plum"
    )
    assert "children: 23-04" in run("pedigree", "Tansy Wharf").output
    run("pedigree", "nobody", code=7)
