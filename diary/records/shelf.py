"""What a player needs of recordings, by their ids: one cheap query, no counting."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from diary.records.record import RecordingId
from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelved:
    """A recording as a player sees it. `kind` is "video", "audio", "captions" or "note"."""

    id: RecordingId
    name: str
    title: str
    kind: str
    duration_ms: int | None
    recorded: date | None


def shelf(store: Store, ids: Iterable[RecordingId]) -> dict[RecordingId, Shelved]:
    """Those of `ids` that are in the diary, by id."""
    wanted = tuple(dict.fromkeys(ids))
    found: dict[RecordingId, Shelved] = {}
    for first in range(0, len(wanted), 500):  # SQLite takes a limited number of parameters
        some = wanted[first : first + 500]
        for row in store.db.execute(
            "SELECT id, name, title, kind, duration_ms, recorded FROM recordings "
            f"WHERE id IN ({', '.join('?' for _ in some)})",
            some,
        ):
            found[RecordingId(row[0])] = Shelved(
                id=RecordingId(row[0]),
                name=row[1],
                title=row[2],
                kind=row[3],
                duration_ms=row[4],
                recorded=date.fromisoformat(row[5]) if row[5] else None,
            )
    return found
