"""Finding: words that were said, and traits ("white throat", "bloom over 50 mm")."""

from dataclasses import dataclass

from diary.records.record import Moment, PlantRef
from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """One place found. `plant` is None for words outside every clip.

    `why` is "words" or the trait found, as in "colour of throat: white".
    """

    moment: Moment
    plant: PlantRef | None
    why: str
    score: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The hits, best first, and how the question was understood."""

    hits: tuple[Hit, ...]
    understood: tuple[str, ...]  # "colour of throat: white", "words: picotee", ...


def find(store: Store, words: str, *, limit: int = 200) -> Found:
    """Search words, traits, sizes, numbers and names in one question."""
    raise NotImplementedError
