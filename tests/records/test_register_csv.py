"""The register in and out of CSV: nothing silently overwritten, nothing lost on the way."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diary.errors import UsageError
from diary.records.columns import guess_columns, guess_table, told_apart
from diary.records.csv_text import from_csv, guarded, to_csv, unguarded
from diary.records.register import (
    crosses,
    named_plants,
    number_format,
    seedling,
    seedlings,
    set_number_format,
    set_status,
)
from diary.records.register_csv import apply_plan, export_csv, import_names, plan_import
from diary.records.store import Store, open_store
from tests.records.making import JUNE_2, csv_file

PLAIN = """number,seed_parent,pollen_parent,sown,status
23-04,Fenmarsh Lad,Copper Lantern,2030-02-01,growing
23-10,Fenmarsh Lad,,2030,
23-9,,,"March, or so",keep
"""


def taken_in(store: Store, tmp_path: Path, text: str, **how: object) -> int:
    plan = plan_import(store, csv_file(tmp_path, text))
    return apply_plan(store, plan, **how)  # type: ignore[arg-type]


def test_the_breeders_own_file_comes_back_as_it_was(store: Store, tmp_path: Path) -> None:
    assert taken_in(store, tmp_path, PLAIN) == 3
    assert export_csv(store) == PLAIN
    plan = plan_import(store, csv_file(tmp_path, PLAIN))
    assert (plan.new, plan.filled, plan.changed, plan.same) == ((), (), (), 3)
    assert apply_plan(store, plan) == 0
    assert [one.number for one in seedlings(store)] == ["23-04", "23-9", "23-10"]


def test_other_headings_and_further_columns_come_back_too(store: Store, tmp_path: Path) -> None:
    text = "Plant no;Mother;Pot;Father\n23-04;Fenmarsh Lad;9 cm;Copper Lantern\n"
    plan = plan_import(store, csv_file(tmp_path, text), mapping={"Plant no": "number"})
    assert plan.mapping == (
        ("Plant no", "number"),
        ("Mother", "seed_parent"),
        ("Pot", None),
        ("Father", "pollen_parent"),
    )
    apply_plan(store, plan)
    assert seedlings(store)[0].extra == (("Pot", "9 cm"),)
    assert export_csv(store) == text.replace(";", ",")


def test_nothing_is_overwritten_unasked(store: Store, tmp_path: Path) -> None:
    taken_in(store, tmp_path, PLAIN)
    other = (
        PLAIN.replace("Fenmarsh Lad,Copper Lantern", "Fenmarsh Lad,Brindle Moth")
        .replace("Fenmarsh Lad,,2030", "Fenmarsh Lad,Copper Lantern,2030")
        .replace("growing", "discard")
    )
    plan = plan_import(store, csv_file(tmp_path, other))
    assert [(one.entry, one.field, one.before, one.after) for one in plan.changed] == [
        ("23-04", "pollen_parent", "Copper Lantern", "Brindle Moth"),
        ("23-04", "status", "growing", "discard"),
    ]
    assert [(one.entry, one.field) for one in plan.filled] == [("23-10", "pollen_parent")]
    assert apply_plan(store, plan) == 1
    assert export_csv(store).splitlines()[1:3] == [
        "23-04,Fenmarsh Lad,Copper Lantern,2030-02-01,growing",
        "23-10,Fenmarsh Lad,Copper Lantern,2030,",
    ]
    apply_plan(store, plan, overwrite=True)
    assert export_csv(store) == other
    kept = seedling(store, "23-04")
    assert kept is not None
    assert [change.status for change in kept.history] == ["growing", "discard"]


def test_a_status_keeps_its_day_and_reason(store: Store, tmp_path: Path) -> None:
    taken_in(store, tmp_path, PLAIN)
    set_status(store, "23-9", "discard", day=JUNE_2, reason="weak, and it has rust")
    text = export_csv(store)
    assert (
        text.splitlines()[3] == '23-9,,,"March, or so",discard,2031-06-02,"weak, and it has rust"'
    )
    other = open_store(tmp_path / "other")
    taken_in(other, tmp_path, text)
    assert export_csv(other) == text
    other.close()


def test_crosses_and_names(store: Store, tmp_path: Path) -> None:
    text = "code,seed_parent,pollen_parent,day,seeds_sown,germinated\nC1,A Lad,B Lass,2030,12,1\n"
    taken_in(store, tmp_path, text)
    assert (crosses(store)[0].seeds_sown, crosses(store)[0].germinated) == (12, 1)
    assert export_csv(store, "crosses") == text
    listed = tmp_path / "names.txt"
    listed.write_text("# ours\nFenmarsh Lad | Fen Lad\n'Copper Lantern'\n\nFenmarsh Lad\n")
    assert import_names(store, listed) == 2
    assert import_names(store, listed) == 0
    assert [(one.name, one.synonyms) for one in named_plants(store)] == [
        ("Copper Lantern", ()),
        ("Fenmarsh Lad", ("Fen Lad",)),
    ]
    assert "Fenmarsh Lad,Fen Lad" in export_csv(store, "names")


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("", "the file is empty"),
        ("colour,size\nred,2\n", "looks like the number"),
        ("number,sown\n,2030\n", "line 2: no number"),
        ("number,sown\n1-1,\n1-2,\n1-1,\n", "line 4: 1-1 is on line 2"),
        ("number,sown\n1-1,2030,more\n", "line 2: more cells"),
        ("code,seed_parent,seeds_sown\nC1,A,many\n", "seeds_sown is 'many'"),
        ("number,status,status_day\n1-1,keep,June\n", "'June' is no date"),
    ],
)
def test_a_faulty_file_is_told_with_its_line(
    store: Store, tmp_path: Path, text: str, fault: str
) -> None:
    with pytest.raises(UsageError, match=fault):
        plan_import(store, csv_file(tmp_path, text))
    assert seedlings(store) == ()


def test_a_file_in_an_older_encoding(store: Store, tmp_path: Path) -> None:
    path = tmp_path / "register.csv"
    path.write_bytes("number,note\n1-1,près de la porte\n".encode("cp1252"))
    apply_plan(store, plan_import(store, path))
    assert seedlings(store)[0].note == "près de la porte"


def test_cells_that_a_spreadsheet_would_run_are_made_harmless() -> None:
    # the characters named by OWASP, "CSV Injection"
    for cell in ("=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "'=1"):
        assert guarded(cell).startswith("'")
        assert unguarded(guarded(cell)) == cell
    assert guarded("23-04") == "23-04"
    assert guarded("'Tis") == "'Tis"


@given(st.lists(st.lists(st.text(), min_size=2, max_size=2), max_size=5))
def test_any_text_goes_through_csv_unchanged(rows: list[list[str]]) -> None:
    kept = [row for row in rows if any(cell.strip() for cell in row)]
    headings, found = from_csv(to_csv(["one", "two"], rows))
    assert headings == ["one", "two"]
    assert [cells for _, cells in found] == kept


NASTY = (
    st.text(st.characters(exclude_categories=("Cs", "Cc")), min_size=1, max_size=30)
    .map(str.strip)
    .filter(bool)
)


@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.dictionaries(NASTY, st.tuples(NASTY, NASTY), min_size=1, max_size=6))
def test_any_register_goes_out_and_in_unchanged(
    tmp_path_factory: pytest.TempPathFactory, entries: dict[str, tuple[str, str]]
) -> None:
    folder = tmp_path_factory.mktemp("round")
    text = to_csv(["number", "place", "Ödd col"], [[n, *cells] for n, cells in entries.items()])
    store = open_store(folder / "diary")
    apply_plan(store, plan_import(store, csv_file(folder, text)))
    assert export_csv(store) == text
    assert {one.number: one.place for one in seedlings(store)} == {
        number: place for number, (place, _) in entries.items()
    }
    store.close()


def test_ten_thousand_rows_go_out_and_in_unchanged(store: Store, tmp_path: Path) -> None:
    rows = [[f"{year}-{n:04d}", "Fenmarsh Lad" * 20] for year in range(10) for n in range(1000)]
    text = to_csv(["number", "seed_parent"], rows)
    assert taken_in(store, tmp_path, text) == 10_000
    assert export_csv(store) == text


def test_guessing_columns() -> None:
    assert guess_table(["code", "seed parent", "germinated"]) == "crosses"
    assert guess_table(["Name", "Synonyms"]) == "names"
    assert guess_table(["No.", "Cross", "Date sown"]) == "seedlings"
    guessed = dict(guess_columns(["Label", "Number", "Pollen parent", "Pot"], "seedlings"))
    assert guessed == {
        "Label": None,
        "Number": "number",
        "Pollen parent": "pollen_parent",
        "Pot": None,
    }
    assert told_apart(["a", "", "a"]) == ["a", "column 2", "a (2)"]


def test_number_format(store: Store) -> None:
    assert number_format(store) is None
    set_number_format(store, "R23/104")
    assert number_format(store) == "R23/104"
    with pytest.raises(UsageError, match="shows no number"):
        set_number_format(store, "abc")
    set_number_format(store, None)
    assert number_format(store) is None
