"""Which plants of different recordings are one: the breeder's merges, and the register.

Writes `plant_keys`: for each plant as one recording knows it, the plant of the diary.
"""

from dataclasses import dataclass

from diary.linking.document import PlantKind
from diary.records.correction_rows import corrections_of_kind
from diary.records.corrections import Correction, MergePlants, live
from diary.records.placing import place
from diary.records.record import PlantRef, Span
from diary.records.register_rows import bump_revision, register_identities
from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shown:
    """One clip, as far as merging asks."""

    own_key: str
    start_ms: int
    end_ms: int


def link_plants(store: Store) -> None:
    """Work out all plants of the diary anew; the caller holds the transaction."""
    bump_revision(store)
    identities = register_identities(store)
    own: dict[str, PlantRef] = {}
    for own_key, kind, name in store.db.execute(
        "SELECT c.own_key, c.own_kind, min(g.name) FROM clips c "
        "JOIN recordings g ON g.id = c.recording GROUP BY c.own_key, c.own_kind"
    ):
        if own_key.startswith("?"):
            label = own_key.split("/", 1)[1]
            own[own_key] = PlantRef(kind=PlantKind.UNNAMED, key=own_key, title=f"{label} ({name})")
        else:
            own.setdefault(own_key, identities.plant(PlantKind(kind), own_key))
    groups = _Groups(own)
    for correction in live(corrections_of_kind(store, "MergePlants")):
        change, span = correction.change, correction.span
        if not isinstance(change, MergePlants) or span is None:
            continue
        merged = False
        first, second = _shown(store, span), None
        if change.other is not None:
            second = _shown(store, change.other)
        elif change.into is not None:
            second = change.into
            own.setdefault(second, identities.plant(PlantKind.SEEDLING, second))
        if first is not None and second is not None:
            merged = groups.join(first, second)
        _set_state(store, correction, "applied" if merged else "unplaced")
    store.db.execute("DELETE FROM plant_keys")
    store.db.conn.executemany(
        "INSERT INTO plant_keys (own_key, key, kind, title) VALUES (?, ?, ?, ?)",
        [
            (own_key, plant.key, plant.kind.value, plant.title)
            for own_key in own
            for plant in [groups.plant(own_key)]
        ],
    )


class _Groups:
    """Plants that were said to be one; a group has at most one numbered or named plant."""

    def __init__(self, own: dict[str, PlantRef]) -> None:
        self._own = own
        self._parent: dict[str, str] = {}

    def _root(self, key: str) -> str:
        while key in self._parent:
            key = self._parent[key]
        return key

    def plant(self, own_key: str) -> PlantRef:
        return self._own[self._root(own_key)]

    def join(self, first: str, second: str) -> bool:
        """One plant from now on; False if both have different numbers or names."""
        one, other = self._root(first), self._root(second)
        if one == other or self._own[one].key == self._own[other].key:
            return True
        unnamed = PlantKind.UNNAMED
        if self._own[one].kind is not unnamed and self._own[other].kind is not unnamed:
            return False
        if self._own[one].kind is unnamed and (
            self._own[other].kind is not unnamed or self._own[other].key < self._own[one].key
        ):
            one, other = other, one
        self._parent[other] = one
        return True


def _shown(store: Store, span: Span) -> str | None:
    """The plant, as its recording knows it, of the clip at this place."""
    clips = [
        _Shown(own_key=own_key, start_ms=start_ms, end_ms=end_ms)
        for own_key, start_ms, end_ms in store.db.execute(
            "SELECT own_key, start_ms, end_ms FROM clips WHERE recording = ? "
            "AND start_ms < ? AND end_ms > ? ORDER BY start_ms",
            [span.recording, span.end_ms, span.start_ms],
        )
    ]
    placed = place(span.start_ms, span.end_ms, clips)
    return None if placed is None else placed.chosen.own_key


def _set_state(store: Store, correction: Correction, state: str) -> None:
    span = correction.span
    store.db.execute(
        "INSERT OR REPLACE INTO placements (correction, recording, state) VALUES (?, ?, ?)",
        [correction.id, span.recording if span else None, state],
    )
