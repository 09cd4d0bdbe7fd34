"""What was said that belongs into the register, for the breeder to confirm."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from diary.errors import NotFound
from diary.linking.document import PlantKind, Suggestion
from diary.records.beliefs import Belief
from diary.records.clip_rows import moment_of, plant_of
from diary.records.correction_rows import corrections_of_kind
from diary.records.corrections import Dismiss, live
from diary.records.identity import Identities
from diary.records.pages import PARENTS, PlantSummary, plants
from diary.records.placing import place
from diary.records.readings import all_suggestions, walk_of
from diary.records.record import Moment, PlantRef, RecordingId
from diary.records.register import (
    Cross,
    NamedPlant,
    Seedling,
    crosses,
    save_cross,
    save_named_plant,
    save_seedling,
    set_status,
)
from diary.records.register_rows import register_identities
from diary.records.resolve import own_key
from diary.records.store import Store

DATES = {
    "sown": "was sown",
    "pricked_out": "was pricked out",
    "first_flower": "first flowered",
}
TIMES = "\N{MULTIPLICATION SIGN}"  # of a cross, seed parent first (ICNCP)
STATUSES = frozenset({"keep", "discard", "watch"})


@dataclass(frozen=True, slots=True, kw_only=True)
class RegisterSuggestion:
    """One proposed entry. `kind` as in linking's Suggestion, and "parents" and "status".

    `id` is stable over re-reading. `before` is what the register holds now, if anything.
    """

    id: str
    kind: str
    plant: PlantRef | None
    value: str
    day: date | None
    moment: Moment
    before: str | None
    sentence: str  # "Put on record: 23-04 first flowered on 2 June 2031"


def dismissed(store: Store) -> frozenset[str]:
    """The questions that need no answer."""
    return frozenset(
        event.change.question
        for event in live(corrections_of_kind(store, "Dismiss"))
        if isinstance(event.change, Dismiss)
    )


def suggestions(store: Store) -> tuple[RegisterSuggestion, ...]:
    """All that is not yet on record and not dismissed, latest first."""
    return suggestions_for(store, plants(store))


def suggestions_for(
    store: Store, summaries: tuple[PlantSummary, ...]
) -> tuple[RegisterSuggestion, ...]:
    """As `suggestions`, for a caller that has the plants already."""
    done = dismissed(store)
    found: dict[str, RegisterSuggestion] = {}
    for one in (*_from_talk(store, summaries), *_from_beliefs(store, summaries)):
        if one.id not in done:
            found[one.id] = one
    return tuple(sorted(found.values(), key=lambda one: one.moment.day or date.min, reverse=True))


def _from_talk(store: Store, summaries: tuple[PlantSummary, ...]) -> Iterator[RegisterSuggestion]:
    identities = register_identities(store)
    entries = {one.plant.key: one.seedling for one in summaries}
    pairs = {(cross.seed_parent, cross.pollen_parent) for cross in crosses(store)}
    for recording_id, heard in all_suggestions(store):
        plant = _plant_at(store, identities, recording_id, heard)
        moment = Moment(
            recording=recording_id,
            start_ms=heard.start_ms,
            end_ms=heard.end_ms,
            day=heard.day,
            text=heard.text,
        )
        if heard.kind == "unknown_name":
            if heard.value.casefold() not in identities.titles:
                sentence = f"Put on record: the named plant '{heard.value}'"
                yield _suggestion(heard.kind, None, heard.value, moment, None, sentence)
        elif plant is None or plant.kind is PlantKind.UNNAMED:
            continue
        elif heard.kind in DATES:
            entry = entries.get(plant.key)
            before = getattr(entry, heard.kind) if entry else None
            day = _iso(heard.value) or heard.day
            if day is not None and before != day.isoformat():
                sentence = f"Put on record: {plant.title} {DATES[heard.kind]} on {_words(day)}"
                yield _suggestion(heard.kind, plant, day.isoformat(), moment, before, sentence, day)
        elif heard.kind == "crossed" and (plant.key, heard.value) not in pairs:
            sentence = f"Put on record: {plant.title} {TIMES} {heard.value}, crossed"
            if heard.day:
                sentence += f" on {_words(heard.day)}"
            yield _suggestion("crossed", plant, heard.value, moment, None, sentence)


def _plant_at(
    store: Store, identities: Identities, recording_id: RecordingId, heard: Suggestion
) -> PlantRef | None:
    """The plant of the clip it was said in, as corrected; else the one the reader named."""
    clips = [
        _At(start_ms=row[0], end_ms=row[1], plant=plant_of(row[2:5]))
        for row in store.db.execute(
            "SELECT c.start_ms, c.end_ms, k.kind, k.key, k.title FROM clips c "
            "JOIN plant_keys k ON k.own_key = c.own_key "
            "WHERE c.recording = ? AND c.start_ms < ? AND c.end_ms > ?",
            [recording_id, heard.end_ms, heard.start_ms],
        )
    ]
    placed = place(heard.start_ms, heard.end_ms, clips)
    if placed is not None:
        return placed.chosen.plant
    if heard.plant is None or heard.plant.kind is PlantKind.UNNAMED:
        return None
    return identities.plant(heard.plant.kind, own_key(heard.plant, walk_of(store, recording_id)))


@dataclass(frozen=True, slots=True, kw_only=True)
class _At:
    start_ms: int
    end_ms: int
    plant: PlantRef


def _from_beliefs(
    store: Store, summaries: tuple[PlantSummary, ...]
) -> Iterator[RegisterSuggestion]:
    by_code = {cross.code: cross for cross in crosses(store)}
    first_seen = _first_moments(store)
    for one in summaries:
        if one.plant.kind is not PlantKind.SEEDLING:
            continue
        entry = one.seedling
        if entry is None:
            if one.plant.key in first_seen:
                moment = first_seen[one.plant.key]
                sentence = f"Put on record: seedling {one.plant.title}"
                yield _suggestion(
                    "unknown_number", one.plant, one.plant.key, moment, None, sentence
                )
            continue
        cross = by_code.get(entry.cross or "")
        heard = {b.trait: b for b in one.beliefs if b.trait in PARENTS and b.sources}
        on_record = entry.seed_parent or entry.pollen_parent or (cross and cross.seed_parent)
        if heard and not on_record:
            seed, pollen = (_value(heard.get(trait)) for trait in PARENTS)
            value = f"{seed or '?'} {TIMES} {pollen or '?'}"
            moment = next(iter(heard.values())).sources[0]
            sentence = f"Put on record: {one.plant.title} is {value} (seed parent first)"
            yield _suggestion("parents", one.plant, value, moment, None, sentence)
        yield from _status(one, entry)


def _status(one: PlantSummary, entry: Seedling) -> Iterator[RegisterSuggestion]:
    for belief in one.values("decision"):
        last = entry.history[-1] if entry.history else None
        newer = last is None or last.day is None or (belief.day and belief.day >= last.day)
        if belief.value in STATUSES and belief.value != entry.status and newer and belief.sources:
            value = str(belief.value)
            sentence = f"Put on record: {one.plant.title}, status '{value}'"
            yield _suggestion(
                "status", one.plant, value, belief.sources[0], entry.status, sentence, belief.day
            )


def _value(belief: Belief | None) -> str | None:
    return None if belief is None else str(belief.value)


def _first_moments(store: Store) -> dict[str, Moment]:
    found: dict[str, Moment] = {}
    for row in store.db.execute(
        "SELECT k.key, c.recording, c.start_ms, c.end_ms, c.day, c.text FROM clips c "
        "JOIN plant_keys k ON k.own_key = c.own_key "
        "JOIN recordings g ON g.id = c.recording AND g.removed_at IS NULL "
        "WHERE k.kind = 'seedling' ORDER BY c.day, g.added_at, c.start_ms"
    ):
        found.setdefault(row[0], moment_of(row[1:6]))
    return found


def _suggestion(
    kind: str,
    plant: PlantRef | None,
    value: str,
    moment: Moment,
    before: str | None,
    sentence: str,
    day: date | None = None,
) -> RegisterSuggestion:
    return RegisterSuggestion(
        id=f"register:{kind}:{plant.key if plant else ''}:{value}",
        kind=kind,
        plant=plant,
        value=value,
        day=day or moment.day,
        moment=moment,
        before=before,
        sentence=sentence,
    )


def _iso(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def _words(day: date) -> str:
    return f"{day.day} {day:%B} {day.year}"


def accept(store: Store, suggestion_id: str) -> RegisterSuggestion:
    """Write a suggestion into the register. Raises NotFound."""
    one = next((s for s in suggestions(store) if s.id == suggestion_id), None)
    if one is None:
        raise NotFound("That suggestion is no longer open: it is on record, or was dismissed.")
    number = one.plant.key if one.plant else ""
    with store.db.atomic():
        match one.kind:
            case "unknown_name":
                save_named_plant(store, NamedPlant(name=one.value))
            case "unknown_number":
                save_seedling(store, Seedling(number=one.value))
            case "sown" | "pricked_out" | "first_flower":
                save_seedling(store, _dated(number, one.kind, one.value))
            case "crossed":
                code = f"{number} {TIMES} {one.value}"
                save_cross(
                    store,
                    Cross(
                        code=code,
                        seed_parent=number,
                        pollen_parent=one.value,
                        day=one.day.isoformat() if one.day else None,
                    ),
                )
            case "parents":
                seed, pollen = (p if p != "?" else None for p in one.value.split(f" {TIMES} ", 1))
                save_seedling(
                    store, Seedling(number=number, seed_parent=seed, pollen_parent=pollen)
                )
            case "status":
                set_status(store, number, one.value, day=one.day, reason=one.moment.text or None)
    return one


def _dated(number: str, kind: str, day: str) -> Seedling:
    return Seedling(
        number=number,
        sown=day if kind == "sown" else None,
        pricked_out=day if kind == "pricked_out" else None,
        first_flower=day if kind == "first_flower" else None,
    )
