"""The vocabulary: loaded, checked, and laid over by the breeder's own files."""

from pathlib import Path

import pytest

from diary.errors import VocabularyError
from diary.evaluation.measure import measure
from diary.reading.vocabulary import load_vocabulary


def test_the_shipped_vocabulary_says_every_scored_term() -> None:
    vocabulary, scale = load_vocabulary(), measure()
    said = {(term.trait, term.value) for term in vocabulary.term_table.values()}
    for trait in ("bloom_form", "bloom_size", "habit", "foliage", "flowering", "scent", "health"):
        assert {value for t, value in said if t == trait} == set(scale.terms[trait])


def test_units_are_the_exact_ones() -> None:
    """The inch of 1959 is 25.4 mm, the foot twelve of them (from memory; pint agrees)."""
    table = load_vocabulary().unit_table
    assert table["inch"].mm == 25.4
    assert table["foot"].mm == pytest.approx(304.8)
    assert (table["millimetre"].mm, table["centimetre"].mm, table["metre"].mm) == (1, 10, 1000)


def test_own_words_are_laid_over_the_shipped_ones(tmp_path: Path) -> None:
    (tmp_path / "parts.toml").write_text(
        '[throat]\nkind = "organ"\nsaid = ["gullet"]\n', encoding="utf-8"
    )
    own = load_vocabulary(tmp_path)
    assert [f.label for f in own.parts.find(["gullet"])] == ["throat"]
    assert own.parts.find(["throat"]) == []
    assert own.parts.find(["eye"]) != []


@pytest.mark.parametrize(
    ("name", "text", "message"),
    [
        ("parts.toml", "[throat\n", r"parts\.toml"),
        ("parts.toml", '[throat]\nkind = "hole"\nsaid = ["gullet"]\n', r"throat\.kind"),
        ("traits.toml", "[habit.compact]\n", r"habit\.compact"),
    ],
)
def test_a_mistake_is_told_with_file_and_key(
    tmp_path: Path, name: str, text: str, message: str
) -> None:
    (tmp_path / name).write_text(text, encoding="utf-8")
    with pytest.raises(VocabularyError, match=message):
        load_vocabulary(tmp_path)


def test_a_class_of_words_stands_in_a_phrase(tmp_path: Path) -> None:
    (tmp_path / "classes.toml").write_text('heap = ["heap", "compost_heap"]\nit = ["it"]\n')
    (tmp_path / "decisions.toml").write_text('[discard]\nsaid = ["on the <heap>"]\n')
    book = load_vocabulary(tmp_path).decisions
    assert [f.label for f in book.find("on the compost heap with it".split())] == ["discard"]
    assert not book.find("on the bench with it".split())


def test_a_class_that_is_missing_is_named(tmp_path: Path) -> None:
    (tmp_path / "decisions.toml").write_text('[discard]\nsaid = ["on the <hoop>"]\n')
    with pytest.raises(VocabularyError, match=r"decisions\.toml\.discard\.said: no class 'hoop'"):
        load_vocabulary(tmp_path)
