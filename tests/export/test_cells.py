"""Tables out and in again: nothing run as a formula, nothing changed."""

import csv
import io

import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st

from diary.export.cells import ENCODING, Table, from_csv, guard, to_csv, to_xlsx, unguard

# OWASP, "CSV Injection": texts that begin with = + - @, tab or line end (or full-width forms)
ATTACKS = [
    '=HYPERLINK("http://example.invalid","click")',
    "=1+1",
    "+44 1632 960000",
    "-2+3+cmd|' /C calc'!A0",
    "@SUM(1,2)",
    "\t=1+1",
    "\r=1+1",
    "\uff1d1+1",
]
ODD = [
    "Tilda's Waistcoat",
    "'Quill Harbour'",
    "'=quoted",
    "''=twice",
    'double "quotes", commas; semicolons',
    "two\nlines",
    "two\r\nlines",
    "\u00c9t\u00e9 \u017dlut\u00e1 \u6885\u82b1 \U0001f338",
    "\u200fright to left \u05d0",
    "e\u0301 combining",
    " leading and trailing ",
    "",
    "0012",
    "1e5",
    "2031-05-18",
    "TRUE",
    "x" * 30_000,
]


def one_column(texts: list[str]) -> Table:
    return Table(name="odd", headings=("text",), rows=tuple((text,) for text in texts))


@pytest.mark.parametrize("text", ATTACKS)
def test_no_cell_of_csv_starts_like_a_formula(text: str) -> None:
    ((written,),) = list(csv.reader(io.StringIO(to_csv(one_column([text])), newline="")))[1:]
    assert written.startswith("'")
    assert unguard(written) == text


@pytest.mark.parametrize("text", ATTACKS)
def test_no_cell_of_a_workbook_is_a_formula(text: str) -> None:
    book = openpyxl.load_workbook(io.BytesIO(to_xlsx([one_column([text])])))
    cell = book["odd"]["A2"]
    assert cell.data_type == "s"
    assert cell.hyperlink is None


@given(st.text())
def test_guard_comes_off_exactly(text: str) -> None:
    assert unguard(guard(text)) == text
    assert not guard(text).startswith(("=", "+", "-", "@", "\t", "\r", "\n"))


@given(st.lists(st.lists(st.text(), min_size=3, max_size=3)))
def test_any_text_comes_back_from_csv(rows: list[list[str]]) -> None:
    table = Table(name="t", headings=("a", "b", "c"), rows=tuple(tuple(row) for row in rows))
    assert from_csv(to_csv(table), "t") == table


def test_ten_thousand_rows_in_and_out_unchanged() -> None:
    texts = [*ATTACKS, *ODD]
    rows = tuple((f"24-{row:04d}", texts[row % len(texts)], str(row)) for row in range(10_000))
    table = Table(name="plants", headings=("number", "note", "count"), rows=rows)
    stored = to_csv(table).encode(ENCODING)
    assert from_csv(stored.decode(ENCODING), "plants") == table


def test_a_workbook_of_ten_thousand_rows_holds_every_cell() -> None:
    texts = [text for text in ODD if "\r" not in text]  # the format itself has one line end
    rows = tuple((f"24-{row:04d}", texts[row % len(texts)], row / 4) for row in range(10_000))
    table = Table(name="plants", headings=("number", "note", "count"), rows=rows)
    book = openpyxl.load_workbook(io.BytesIO(to_xlsx([table])), read_only=True)
    read = list(book["plants"].iter_rows(values_only=True))
    assert len(read) == 10_001
    assert [(a, b or "", c) for a, b, c in read[1:]] == list(rows)


def test_a_text_longer_than_a_cell_ends_in_an_ellipsis_in_the_workbook_only() -> None:
    # 32,767 UTF-16 units a cell: the limit of the xlsx format
    long = "\U0001f338" * 20_000
    table = one_column([long])
    book = openpyxl.load_workbook(io.BytesIO(to_xlsx([table])))
    cell = book["odd"]["A2"].value
    assert isinstance(cell, str)
    assert cell.endswith("\u2026")
    assert long.startswith(cell[:-1])
    assert from_csv(to_csv(table)).rows == ((long,),)


def test_numbers_stay_numbers() -> None:
    table = Table(name="n", headings=("a", "b", "c"), rows=((-3, 57.5, None),))
    assert to_csv(table).splitlines()[1] == "-3,57.5,"
    book = openpyxl.load_workbook(io.BytesIO(to_xlsx([table])))
    assert [cell.value for cell in book["n"][2]] == [-3, 57.5, None]


def test_a_sheets_name_obeys_the_format() -> None:
    name = "a[b]:c*d?e/f\\" + "g" * 40
    table = Table(name=name, headings=("a",), rows=())
    book = openpyxl.load_workbook(io.BytesIO(to_xlsx([table])))
    assert book.sheetnames == ["a-b--c-d-e-f-" + "g" * 18]
