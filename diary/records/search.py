"""Finding: words that were said, and traits ("white throat", "bloom over 50 mm").

Words are looked for in what was said, whatever was understood of it; traits in the records,
with corrections applied. A plant must have all traits asked for; its moments are the hits.
"""

from dataclasses import dataclass

from diary.records.clip_rows import moment_of, plant_of, record_of
from diary.records.question import Condition, Question, understand
from diary.records.record import Moment, PlantRef, Record
from diary.records.register_rows import register_identities
from diary.records.store import Store

MOST = 5000  # places looked at where only some plants are asked about


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """One place found. `plant` is None for words outside every clip.

    `why` is "words", "plant", or the trait found, as in "colour of throat: white".
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
    question = understand(words)
    plants = _plants_named(store, words)
    hits: list[Hit] = []
    understood: list[str] = []
    for plant in plants:
        understood.append(f"plant: {plant.title}")
        if plant.title.casefold() == words.strip().casefold() or plant.key == words.strip():
            hits.extend(_clips_of(store, plant))
    if question.conditions:
        understood.extend(condition.told for condition in question.conditions)
        hits.extend(_with_traits(store, question, plants))
    if question.words:
        understood.append(f"words: {' '.join(question.words)}")
        hits.extend(_with_words(store, question.words, plants, limit))
    best: dict[tuple[str, int], Hit] = {}
    for hit in sorted(hits, key=lambda one: -one.score):
        best.setdefault((hit.moment.recording, hit.moment.start_ms), hit)
    return Found(hits=tuple(best.values())[:limit], understood=tuple(understood))


def _plants_named(store: Store, words: str) -> tuple[PlantRef, ...]:
    """The plants whose number or name is among the words of the question."""
    identities = register_identities(store)
    asked = f" {' '.join(words.casefold().split())} "
    named: dict[str, PlantRef] = {}
    for number in identities.present:
        if f" {number.casefold()} " in asked:
            plant = identities.seedling(number)
            named[plant.key] = plant
    for title, (kind, name) in identities.titles.items():
        if f" {title} " in asked:
            plant = identities.plant(kind, name)
            named[plant.key] = plant
    for row in store.db.execute("SELECT kind, key, title FROM plant_keys"):
        if f" {row[1].casefold()} " in asked:
            named.setdefault(row[1], plant_of(row))
    return tuple(named.values())


def _clips_of(store: Store, plant: PlantRef) -> list[Hit]:
    rows = store.db.execute(
        "SELECT c.recording, c.start_ms, c.end_ms, c.day, c.text FROM clips c "
        "JOIN plant_keys k ON k.own_key = c.own_key "
        "JOIN recordings g ON g.id = c.recording AND g.removed_at IS NULL "
        "WHERE k.key = ? ORDER BY c.day, c.start_ms",
        [plant.key],
    )
    return [Hit(moment=moment_of(row), plant=plant, why="plant", score=2.0) for row in rows]


def _with_traits(store: Store, question: Question, only: tuple[PlantRef, ...]) -> list[Hit]:
    found: list[list[Record]] = [_records(store, one) for one in question.conditions]
    having = [{record.plant.key for record in records} for records in found]
    plants = set.intersection(*having)
    if only:
        plants &= {plant.key for plant in only}
    return [
        Hit(
            moment=record.moment,
            plant=record.plant,
            why=condition.told if condition.least is None else _size(record),
            score=1 + record.confidence,
        )
        for condition, records in zip(question.conditions, found, strict=True)
        for record in records
        if record.plant.key in plants
    ]


def _size(record: Record) -> str:
    return f"{record.trait.replace('_', ' ')}: {record.value} {record.unit or 'mm'}"


def _records(store: Store, condition: Condition) -> list[Record]:
    where = [f"r.trait IN ({', '.join('?' for _ in condition.traits)})"]
    values: list[object] = [*condition.traits]
    if condition.value is not None:
        where.append("r.value = ?")
        values.append(condition.value)
    if condition.part is not None:
        where.append("r.part = ?")
        values.append(condition.part)
    if condition.least is not None:
        where.append("typeof(r.value) != 'text' AND r.value BETWEEN ? AND ?")
        values += [condition.least, condition.most]
    rows = store.db.execute(
        "SELECT k.kind, k.key, k.title, r.recording, r.start_ms, r.end_ms, r.day, r.text, "
        "r.trait, r.value, r.part, r.unit, r.modifiers, r.petals, r.hedged, r.negated, "
        "r.confidence, r.band, r.origin, r.doubtful "
        "FROM records r JOIN clips c ON c.id = r.clip "
        "JOIN plant_keys k ON k.own_key = c.own_key "
        "JOIN recordings g ON g.id = c.recording AND g.removed_at IS NULL "
        f"WHERE r.proposal = 0 AND r.negated = 0 AND {' AND '.join(where)}",
        values,
    )
    return [record_of(row) for row in rows]


def _with_words(
    store: Store, words: tuple[str, ...], only: tuple[PlantRef, ...], limit: int
) -> list[Hit]:
    # every word quoted: nothing a person types is an operator of the search engine
    match = " ".join('"' + word.replace('"', '""') + '"' for word in words)
    # the best are chosen before anything is looked up about them: a common word is said
    # tens of thousands of times in a season
    rows = store.db.execute(
        "SELECT u.recording, u.start_ms, u.end_ms, coalesce(c.day, g.recorded), u.text, "
        "k.kind, k.key, k.title, best.score "
        "FROM (SELECT f.rowid, bm25(utterances_fts) AS score FROM utterances_fts f "
        "WHERE utterances_fts MATCH ? ORDER BY score LIMIT ?) best "
        "JOIN utterances u ON u.id = best.rowid "
        "JOIN recordings g ON g.id = u.recording AND g.removed_at IS NULL "
        "LEFT JOIN clips c ON c.recording = u.recording "
        "AND c.start_ms <= (u.start_ms + u.end_ms) / 2 AND c.end_ms > (u.start_ms + u.end_ms) / 2 "
        "LEFT JOIN plant_keys k ON k.own_key = c.own_key ORDER BY best.score",
        [match, limit if not only else MOST],
    ).fetchall()
    keys = {plant.key for plant in only}
    hits = []
    for row in rows:
        plant = plant_of(row[5:8]) if row[5] else None
        if keys and (plant is None or plant.key not in keys):
            continue
        relevance = -row[8] / (1 - row[8])  # bm25 is negative, the better the lower
        hits.append(Hit(moment=moment_of(row[0:5]), plant=plant, why="words", score=relevance))
    return hits
