"""What a screen needs of plants: one page a plant, one row a plant for the list."""

import difflib
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from diary.errors import NotFound
from diary.linking.document import PlantKind
from diary.records.beliefs import Belief, believe
from diary.records.clip_rows import load_clips, plant_of, record_of
from diary.records.record import PlantRef, Record, RecordClip
from diary.records.register import (
    Cross,
    NamedPlant,
    Seedling,
    crosses,
    named_plants,
    natural,
    seedling_numbered,
    seedlings,
)
from diary.records.register_rows import register_identities, revision
from diary.records.same_plant import propose_same
from diary.records.store import Store

PARENTS = ("seed_parent", "pollen_parent")


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantPage:
    """All that is known of one plant.

    `seedling` is None for a named plant, an unnumbered one, and a number not on record.
    `clips` are in order of day and time, each with the words said and its records;
    `records` are those of all clips, proposals left out. `conflicts` are the beliefs that
    something speaks against. `also` are other plants that may be the same one.
    """

    plant: PlantRef
    seedling: Seedling | None
    named: NamedPlant | None
    cross: Cross | None
    clips: tuple[RecordClip, ...]
    records: tuple[Record, ...]
    beliefs: tuple[Belief, ...]
    conflicts: tuple[Belief, ...]
    also: tuple[PlantRef, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantSummary:
    """One row of the list of plants: its register entry, what is believed, when it was seen.

    Plants on record that were never seen have no clips; plants seen and not on record have
    no `seedling`. Parents are those of the register, else those heard.
    """

    plant: PlantRef
    seedling: Seedling | None
    seed_parent: str | None
    pollen_parent: str | None
    beliefs: tuple[Belief, ...]
    clips: int
    first_seen: date | None
    last_seen: date | None

    def values(self, trait: str, part: str | None = None) -> tuple[Belief, ...]:
        """The beliefs about one trait (of one part, where given)."""
        return tuple(
            belief
            for belief in self.beliefs
            if belief.trait == trait and (part is None or belief.part == part)
        )


_ORDER = (PlantKind.SEEDLING, PlantKind.CULTIVAR, PlantKind.UNNAMED)


_latest: dict[Path, tuple[str, tuple[PlantSummary, ...]]] = {}


def plants(store: Store) -> tuple[PlantSummary, ...]:
    """Every plant of the diary (seedlings, named plants seen, unnumbered ones), by kind, key.

    A fixed number of queries however many plants there are; one, where nothing has changed
    since this program last asked. Beliefs rest on records that leave out evidence and what
    was first heard: see `plant_page` for those.
    """
    now = revision(store)
    kept = _latest.get(store.folder)
    if kept is None or kept[0] != now or not now:
        kept = _latest[store.folder] = (now, _plants(store))
    return kept[1]


def _plants(store: Store) -> tuple[PlantSummary, ...]:
    identities = register_identities(store)
    on_record = {one.number: one for one in seedlings(store)}
    by_code = {cross.code: cross for cross in crosses(store)}
    seen: dict[PlantRef, tuple[int, date | None, date | None]] = {}
    for kind, key, title, count, first, last in store.db.execute(
        "SELECT k.kind, k.key, min(k.title), count(*), min(c.day), max(c.day) FROM clips c "
        "JOIN plant_keys k ON k.own_key = c.own_key "
        "JOIN recordings g ON g.id = c.recording AND g.removed_at IS NULL "
        "GROUP BY k.kind, k.key"
    ):
        plant = plant_of((kind, key, title))
        seen[plant] = (count, _day(first), _day(last))
    keys = {plant.key for plant in seen}
    for number in on_record:
        if number not in keys:
            seen[identities.seedling(number)] = (0, None, None)
    records = _records(store)
    summaries = []
    for plant, (count, first_seen, last_seen) in seen.items():
        seedling = on_record.get(plant.key)
        beliefs = believe(records.get(plant.key, ()))
        parents = _parents(seedling, by_code, beliefs)
        summaries.append(
            PlantSummary(
                plant=plant,
                seedling=seedling,
                seed_parent=parents[0],
                pollen_parent=parents[1],
                beliefs=beliefs,
                clips=count,
                first_seen=first_seen,
                last_seen=last_seen,
            )
        )
    return tuple(
        sorted(summaries, key=lambda one: (_ORDER.index(one.plant.kind), natural(one.plant.key)))
    )


def _records(store: Store) -> dict[str, list[Record]]:
    found: dict[str, list[Record]] = {}
    for row in store.db.execute(
        "SELECT k.kind, k.key, k.title, r.recording, r.start_ms, r.end_ms, r.day, r.text, "
        "r.trait, r.value, r.part, r.unit, r.modifiers, r.petals, r.hedged, r.negated, "
        "r.confidence, r.band, r.origin, r.doubtful, "
        "CASE r.origin WHEN 'corrected' THEN r.heard ELSE 'null' END "
        "FROM records r JOIN clips c ON c.id = r.clip "
        "JOIN plant_keys k ON k.own_key = c.own_key "
        "JOIN recordings g ON g.id = c.recording AND g.removed_at IS NULL "
        "WHERE r.proposal = 0"
    ):
        found.setdefault(row[1], []).append(record_of(row))
    return found


def _day(text: str | None) -> date | None:
    return date.fromisoformat(text) if text else None


def _parents(
    seedling: Seedling | None, by_code: dict[str, Cross], beliefs: tuple[Belief, ...]
) -> tuple[str | None, str | None]:
    """Seed and pollen parent: the register's, its cross's, else as heard."""
    cross = by_code.get(seedling.cross or "") if seedling else None
    heard = {belief.trait: str(belief.value) for belief in beliefs if belief.trait in PARENTS}
    seed = (seedling and seedling.seed_parent) or (cross and cross.seed_parent)
    pollen = (seedling and seedling.pollen_parent) or (cross and cross.pollen_parent)
    return seed or heard.get("seed_parent"), pollen or heard.get("pollen_parent")


def plant_page(store: Store, which: str) -> PlantPage:
    """The page of a number, former number, name or key. Raises NotFound with near numbers."""
    plant = find_plant(store, which)
    clips = load_clips(store, "k.key = ?", [plant.key])
    records = tuple(record for clip in clips for record in clip.records)
    beliefs = believe(records)
    seedling = seedling_numbered(store, plant.key)
    titles = {plant.key, seedling.name if seedling else None}
    return PlantPage(
        plant=plant,
        seedling=seedling,
        named=next((one for one in named_plants(store) if one.name in titles), None),
        cross=next(
            (one for one in crosses(store) if seedling and one.code == seedling.cross), None
        ),
        clips=clips,
        records=records,
        beliefs=beliefs,
        conflicts=tuple(belief for belief in beliefs if belief.conflict),
        also=_also(store, plant),
    )


def find_plant(store: Store, which: str) -> PlantRef:
    """The plant of a number, former number, name, title or key. Raises NotFound."""
    identities = register_identities(store)
    at_once = store.db.execute(
        "SELECT kind, key, title FROM plant_keys WHERE key = ? LIMIT 1", [identities.number(which)]
    ).fetchone()
    if at_once and which.casefold() not in identities.titles:
        return plant_of(at_once)
    everyone = {
        plant.key: plant
        for plant in map(plant_of, store.db.execute("SELECT kind, key, title FROM plant_keys"))
    }
    for number in set(identities.present.values()):
        everyone.setdefault(number, identities.seedling(number))
    for name, (kind, title) in identities.titles.items():
        plant = identities.plant(kind, title)
        everyone.setdefault(plant.key, plant)
        if name == which.casefold():
            return everyone[plant.key]
    key = identities.number(which)
    if key in everyone:
        return everyone[key]
    wanted = which.strip().casefold()
    for plant in everyone.values():
        if wanted in (plant.key.casefold(), plant.title.casefold()):
            return plant
    near = difflib.get_close_matches(which, everyone, n=3, cutoff=0.6)
    hint = f" Did you mean {', '.join(near)}?" if near else " `diary find` searches all words."
    raise NotFound(f"No plant {which!r} in this diary.{hint}")


def _also(store: Store, plant: PlantRef) -> tuple[PlantRef, ...]:
    """Unnumbered plants of other recordings that may be this one."""
    if plant.kind is not PlantKind.UNNAMED:
        return ()
    pairs = [
        (pair.first.plant, pair.second.plant) for pair in propose_same(unnamed_and_around(store))
    ]
    others = [
        two if one.key == plant.key else one
        for one, two in pairs
        if plant.key in (one.key, two.key)
    ]
    return tuple(dict.fromkeys(others))


def unnamed_and_around(store: Store) -> tuple[RecordClip, ...]:
    """The clips of every recording that shows an unnumbered plant, recording by recording."""
    clips = load_clips(
        store,
        "c.recording IN (SELECT u.recording FROM clips u JOIN plant_keys w "
        "ON w.own_key = u.own_key WHERE w.kind = 'unnamed')",
    )
    return tuple(sorted(clips, key=lambda c: (c.moment.recording, c.moment.start_ms)))
