"""Names for things in BrAPI: the same thing gets the same id at every export. Pure."""

from functools import cache
from uuid import uuid5

from diary.export.annotations import NAMESPACE


@cache
def db_id(kind: str, *parts: str) -> str:
    """An id for a thing of this kind, from what it is called in the diary."""
    return str(uuid5(NAMESPACE, chr(31).join((kind, *parts))))


def pui(kind: str, *parts: str) -> str:
    """A permanent unique identifier: an IRI."""
    return f"urn:uuid:{db_id(kind, *parts)}"


def name_of(text: str) -> str:
    """A name that is not empty."""
    return " ".join(text.split()) or "unnamed"
