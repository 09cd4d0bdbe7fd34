"""Frozen values to JSON text and back, checked against their types. The one door to msgspec."""

from collections.abc import Mapping
from dataclasses import fields
from typing import Any, TypeVar

import msgspec

T = TypeVar("T")


def to_json(value: object) -> str:
    """The value as compact JSON: dataclasses as objects, tuples as lists, dates as ISO."""
    return msgspec.json.encode(value).decode()


def from_json(text: str, kind: type[T]) -> T:
    """The value of type `kind` that `to_json` wrote. ValueError names the field that is wrong."""
    return msgspec.json.decode(text, type=kind)


def from_plain(value: object, kind: type[T]) -> T:
    """Parsed JSON as a value of type `kind`. ValueError where it is none, or has more fields."""
    if isinstance(value, Mapping) and hasattr(kind, "__dataclass_fields__"):
        unknown = set(value) - {field.name for field in fields(kind)}  # type: ignore[arg-type]
        if unknown:
            raise ValueError(f"unknown field {sorted(unknown)[0]!r}")
    return msgspec.convert(value, type=kind)


def to_plain(value: object) -> Any:
    """The value as dicts, lists, text and numbers."""
    return msgspec.to_builtins(value)
