"""Mis-heard names where a name is to be expected (splittings as captions make them: common
practice).
"""

import pytest

from tests.reading.said import mentions, on_record

NAMES = ("Winnow Grange", "Widow Quill", "Mossy Gate", "Fenmarsh Lad")


@pytest.mark.parametrize(
    ("said", "names"),
    [
        ("the father was with oh quill", ["Widow Quill"]),
        ("fenmarsh lad crossed with moss he gate", ["Fenmarsh Lad", "Mossy Gate"]),
        ("it goes well with oh quill pens", []),
        ("he's at the moss he gate", []),
        ("the mother was with the others", []),
    ],
)
def test_less_close_where_a_name_is_expected(said: str, names: list[str]) -> None:
    found = mentions(said, on_record(("23-04",), NAMES)).refs
    assert [ref.title for ref in found if not ref.is_number] == names
