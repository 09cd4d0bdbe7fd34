"""The files of words: the shipped ones, the breeder's own laid over them, classes opened.

A phrase may name a class of classes.toml in angle brackets, "on|for the <heap>".
"""

import re
import tomllib
from collections.abc import Mapping
from importlib import resources
from pathlib import Path
from typing import Any

import msgspec

from diary.errors import VocabularyError


def opened_classes(table: Mapping[str, list[str]]) -> dict[str, str]:
    """Each class as alternatives; a class may name others that stand above it."""
    classes: dict[str, str] = {}
    for name, words in table.items():
        classes[name] = "|".join(with_classes(words, classes, f"classes.toml: {name}"))
    return classes


def with_classes(value: Any, classes: Mapping[str, str], where: str) -> Any:
    """The entry with each "<class>" replaced by its words as alternatives."""
    if isinstance(value, dict):
        return {key: with_classes(inner, classes, f"{where}.{key}") for key, inner in value.items()}
    if isinstance(value, list):
        return [with_classes(inner, classes, where) for inner in value]
    if not isinstance(value, str):
        return value
    try:
        return re.sub(r"<(\w+)>", lambda named: classes[named[1]], value)
    except KeyError as missing:
        raise VocabularyError(
            f"{where}: no class {missing} in classes.toml: '{value}'. Add it there, or mend it."
        ) from missing


def weights_of(name: str) -> dict[str, dict[str, float]]:
    """A shipped file of weights that were learnt: kind and sign, or sign and kind."""
    shipped = resources.files("diary.data").joinpath(f"{name}.json").read_text(encoding="utf-8")
    return msgspec.json.decode(shipped, type=dict[str, dict[str, float]])


def words_of(name: str, folder: Path | None) -> dict[str, Any]:
    """The shipped file of words, with the breeder's own of that name laid over it."""
    shipped = resources.files("diary.data").joinpath(f"{name}.toml").read_text(encoding="utf-8")
    table = tomllib.loads(shipped)
    own = folder / f"{name}.toml" if folder is not None else None
    if own is not None and own.is_file():
        try:
            table |= tomllib.loads(own.read_text(encoding="utf-8"))
        except (tomllib.TOMLDecodeError, UnicodeDecodeError) as fault:
            raise VocabularyError(f"{own}: {fault}. Mend the file or move it away.") from fault
    return table
