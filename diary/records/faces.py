"""The clip that shows a plant best, for its picture in a list: the latest filmed one that says
something of it."""

from diary.records.clip_rows import moment_of
from diary.records.record import Moment
from diary.records.store import Store


def faces(store: Store) -> dict[str, Moment]:
    """One filmed clip for each plant key that has any."""
    found: dict[str, Moment] = {}
    for row in store.db.execute(
        "SELECT k.key, c.recording, c.start_ms, c.end_ms, c.day, c.text FROM clips c "
        "JOIN plant_keys k ON k.own_key = c.own_key "
        "JOIN recordings g ON g.id = c.recording AND g.removed_at IS NULL AND g.kind = 'video' "
        "ORDER BY EXISTS (SELECT 1 FROM records r WHERE r.clip = c.id) DESC, c.day DESC, "
        "c.start_ms"
    ):
        found.setdefault(row[0], moment_of(row[1:]))
    return found
