"""From the first released schema to the present one, with corrections in it."""

import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest
import sqlite_utils

from diary.errors import StoreError
from diary.records.corrections import Renumber, SetValue
from diary.records.journal import correct, journal
from diary.records.migrations import APPEND_ONLY, DERIVED, MIGRATIONS, PRECIOUS
from diary.records.record import RecordingId, Span
from diary.records.register import seedlings
from diary.records.store import DATABASE_NAME, Store, open_store

# The first schema ever released, with a recording, a seedling and two corrections in it:
# what `sqlite3 diary.sqlite .dump` prints. Never to be changed.
FIRST = Path(__file__).parent / "schema_0001.sql"


def from_the_first_schema(folder: Path) -> Store:
    folder.mkdir()
    connection = sqlite3.connect(folder / DATABASE_NAME)
    connection.executescript(FIRST.read_text(encoding="utf-8"))
    connection.close()
    return open_store(folder)


def test_corrections_come_through_every_migration(tmp_path: Path) -> None:
    store = from_the_first_schema(tmp_path / "diary")
    entries = journal(store)
    assert [type(entry.correction.change) for entry in entries] == [SetValue, Renumber]
    first = entries[0].correction
    assert first.change == SetValue(value=45)
    assert first.span == Span(recording=RecordingId("f" * 64), start_ms=2000, end_ms=4000)
    assert first.seen.value == 80
    assert [(one.number, one.former) for one in seedlings(store)] == [("24-01", ("23-04",))]
    assert MIGRATIONS.pending(store.db) == []
    assert set(store.db.table_names()) >= {*PRECIOUS, *DERIVED}
    # and it goes on being a journal
    correct(store, Renumber(number="24-01", to="24-02"))
    assert [one.number for one in seedlings(store)] == ["24-02"]


def test_a_copy_is_kept_before_anything_is_migrated(tmp_path: Path) -> None:
    store = from_the_first_schema(tmp_path / "diary")
    (copy,) = (store.folder / "backups").iterdir()
    old = sqlite3.connect(copy)
    assert old.execute("SELECT count(*) FROM corrections").fetchone() == (2,)
    tables = {name for (name,) in old.execute("SELECT name FROM sqlite_master")}
    assert "clips" not in tables
    old.close()
    store.close()
    open_store(store.folder).close()
    assert len(list((store.folder / "backups").iterdir())) == 1


def test_a_new_diary_needs_no_copy(store: Store) -> None:
    assert not (store.folder / "backups").exists()


@pytest.mark.parametrize("table", APPEND_ONLY)
def test_what_is_append_only_refuses_everything_else(tmp_path: Path, table: str) -> None:
    store = from_the_first_schema(tmp_path / "diary")
    assert store.db.execute(f"SELECT count(*) FROM {table}").fetchone()[0] > 0
    column = "made_at"
    for statement in (
        f"UPDATE {table} SET {column} = 'x'",
        f"DELETE FROM {table}",
        f"INSERT OR REPLACE INTO {table} SELECT * FROM {table}",
    ):
        with pytest.raises(sqlite3.IntegrityError, match="only ever added to"):
            store.db.execute(statement)


def test_every_table_of_ours_is_strict(store: Store) -> None:
    for table in (*PRECIOUS, *DERIVED):
        assert store.db.table(table).strict, table


def test_the_connection_keeps_promises(store: Store) -> None:
    assert store.db.execute("PRAGMA foreign_keys").fetchone() == (1,)
    assert store.db.execute("PRAGMA journal_mode").fetchone() == ("wal",)
    with pytest.raises(sqlite3.IntegrityError):
        store.db.execute(
            "INSERT INTO transcripts (recording, words_from, made_at, body) VALUES ('x','','','')"
        )


def test_a_diary_of_a_newer_program_is_left_alone(store: Store) -> None:
    with store.db.atomic():
        store.db.execute(
            "INSERT INTO _sqlite_migrations (migration_set, name, applied_at) "
            "VALUES ('diary', 'm999_tomorrow', '')"
        )
    with pytest.raises(StoreError, match="newer version"):
        open_store(store.folder)


def test_a_folder_that_cannot_be_a_diary_is_told_in_a_line(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder")
    with pytest.raises(StoreError, match="cannot be opened"):
        open_store(tmp_path / "file")
    with pytest.raises(StoreError, match="no diary here yet"):
        open_store(tmp_path / "nothing", create=False)


def test_a_damaged_database_is_told_in_a_line(tmp_path: Path) -> None:
    (tmp_path / DATABASE_NAME).write_bytes(b"not a database at all, but long enough to look" * 40)
    with pytest.raises(StoreError, match="cannot be opened"):
        open_store(tmp_path)


def test_migrations_are_listed_once() -> None:
    names = [step.name for step in MIGRATIONS.pending(sqlite_utils.Database(memory=True))]
    assert names == sorted(names)
    assert names[0] == "m001_precious"


def test_programs_that_begin_one_diary_at_once_all_get_it(tmp_path: Path) -> None:
    begin = (
        "import sys; from pathlib import Path; from diary.records.store import open_store; "
        "open_store(Path(sys.argv[1]))"
    )
    command = [sys.executable, "-c", begin, str(tmp_path / "diary")]
    started = [subprocess.Popen(command, stderr=subprocess.PIPE) for _ in range(4)]
    told = [one.communicate()[1].decode() for one in started]
    assert [one.returncode for one in started] == [0] * 4, told
    assert MIGRATIONS.pending(open_store(tmp_path / "diary").db) == []
