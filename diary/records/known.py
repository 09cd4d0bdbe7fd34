"""What is on record, in the form in which reading and recognition use it."""

from diary.reading.known import Known
from diary.records.store import Store


def known(store: Store) -> Known:
    """Seedlings (present and former numbers), names, learnt mishearings, number format."""
    raise NotImplementedError
