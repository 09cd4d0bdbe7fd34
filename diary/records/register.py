"""The register: seedlings, crosses and named plants the breeder keeps on record."""

import json
import re
from dataclasses import dataclass
from datetime import date
from typing import Any

from diary.errors import NotFound, UsageError
from diary.records.correction_rows import corrections_of_kind
from diary.records.corrections import Mishearing, live
from diary.records.plant_links import link_plants
from diary.records.register_rows import bump_revision, register_identities, rows, write_rows
from diary.records.store import Store, now


@dataclass(frozen=True, slots=True, kw_only=True)
class StatusChange:
    """The status from this day on, and why."""

    status: str
    day: date | None = None
    reason: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Seedling:
    """A numbered seedling. Parents are names or numbers; `cross` is a cross's code.

    Dates are as written (by us: ISO, "2031", "2031-03" or "2031-03-02"). `status` is the
    latest of `history`. `former` are numbers it went by before, and
    numbers merged into it. `extra` keeps columns of an imported file that we have no
    field for, so that the export gives them back.
    """

    number: str
    cross: str | None = None
    seed_parent: str | None = None
    pollen_parent: str | None = None
    sown: str | None = None
    pricked_out: str | None = None
    first_flower: str | None = None
    place: str | None = None
    status: str | None = None
    name: str | None = None
    note: str | None = None
    history: tuple[StatusChange, ...] = ()
    former: tuple[str, ...] = ()
    extra: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Cross:
    """One cross: seed parent first. `day` as written, like Seedling.sown."""

    code: str
    seed_parent: str | None = None
    pollen_parent: str | None = None
    day: str | None = None
    seeds_sown: int | None = None
    germinated: int | None = None
    note: str | None = None
    extra: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedPlant:
    """A cultivar or a named seedling, what else it is called and how it is misheard."""

    name: str
    synonyms: tuple[str, ...] = ()
    mishearings: tuple[str, ...] = ()
    seed_parent: str | None = None
    pollen_parent: str | None = None
    note: str | None = None
    extra: tuple[tuple[str, str], ...] = ()


def natural(number: str) -> tuple[tuple[int, str], ...]:
    """A key that sorts 23-4 before 23-10, and 22-14 before 22-14A."""
    return tuple(
        (int(piece), "") if piece[0] in "0123456789" else (-1, piece.casefold())
        for piece in re.findall(r"[0-9]+|[^0-9]+", number)
    )


def seedlings(store: Store) -> tuple[Seedling, ...]:
    """Every seedling on record, in natural order of number; merged ones are one."""
    return _on_record(store, None)


def seedling_numbered(store: Store, number: str) -> Seedling | None:
    """The seedling with this present number; quick where the register is long."""
    return next(iter(_on_record(store, number)), None)


def _on_record(store: Store, only: str | None) -> tuple[Seedling, ...]:
    identities = register_identities(store)
    former: dict[str, list[str]] = {}
    for old, number in identities.present.items():
        if old != number:
            former.setdefault(number, []).append(old)
    history: dict[int, list[StatusChange]] = {}
    for seedling_id, status, day, reason in store.db.execute(
        "SELECT seedling, status, day, reason FROM status_history ORDER BY day, id"
    ):
        change = StatusChange(status=status, day=_day(day), reason=reason)
        history.setdefault(seedling_id, []).append(change)
    merged: dict[str, dict[str, Any]] = {}
    statuses: dict[str, list[StatusChange]] = {}
    among = None if only is None else (only, *former.get(only, ()))
    for row in rows(store, "seedlings", among):
        number = identities.number(row["number"])
        if only is not None and number != only:
            continue
        statuses.setdefault(number, []).extend(history.get(row["id"], ()))
        if number not in merged or row["number"] == number:
            merged[number] = merged.get(number, {}) | _filled(row)
        else:
            merged[number] = _filled(row) | merged[number]
    return tuple(
        _seedling(
            merged[number],
            number,
            statuses[number],
            identities.names.get(number),
            tuple(former.get(number, ())),
        )
        for number in sorted(merged, key=natural)
    )


def _seedling(
    row: dict[str, Any],
    number: str,
    history: list[StatusChange],
    name: str | None,
    former: tuple[str, ...],
) -> Seedling:
    return Seedling(
        number=number,
        cross=row.get("cross_code"),
        seed_parent=row.get("seed_parent"),
        pollen_parent=row.get("pollen_parent"),
        sown=row.get("sown"),
        pricked_out=row.get("pricked_out"),
        first_flower=row.get("first_flower"),
        place=row.get("place"),
        status=history[-1].status if history else None,
        name=name,
        note=row.get("note"),
        history=tuple(history),
        former=former,
        extra=_pairs(row.get("extra", "[]")),
    )


def _filled(row: dict[str, Any]) -> dict[str, Any]:
    return {field: value for field, value in row.items() if value not in (None, "[]")}


def _pairs(text: str) -> tuple[tuple[str, str], ...]:
    return tuple((heading, value) for heading, value in json.loads(text))


def _day(text: str | None) -> date | None:
    return date.fromisoformat(text) if text else None


def seedling(store: Store, number: str) -> Seedling | None:
    """The seedling with this number, former number or name, or None."""
    wanted = number.casefold()
    for one in seedlings(store):
        called = (one.number, *one.former, one.name or one.number)
        if wanted in (title.casefold() for title in called):
            return one
    return None


def crosses(store: Store) -> tuple[Cross, ...]:
    """Every cross on record, by code."""
    found = [
        Cross(
            code=row["code"],
            seed_parent=row["seed_parent"],
            pollen_parent=row["pollen_parent"],
            day=row["day"],
            seeds_sown=row["seeds_sown"],
            germinated=row["germinated"],
            note=row["note"],
            extra=_pairs(row["extra"]),
        )
        for row in rows(store, "crosses")
    ]
    return tuple(sorted(found, key=lambda cross: natural(cross.code)))


def named_plants(store: Store) -> tuple[NamedPlant, ...]:
    """Every named plant on record, by name; learnt mishearings included."""
    learnt: dict[str, list[str]] = {}
    for correction in live(corrections_of_kind(store, "Mishearing")):
        if isinstance(correction.change, Mishearing):
            meant = correction.change.meant.casefold()
            learnt.setdefault(meant, []).append(correction.change.heard)
    found = []
    for row in rows(store, "names"):
        known = tuple(json.loads(row["mishearings"]))
        further = [heard for heard in learnt.get(row["name"].casefold(), ()) if heard not in known]
        found.append(
            NamedPlant(
                name=row["name"],
                synonyms=tuple(json.loads(row["synonyms"])),
                mishearings=(*known, *dict.fromkeys(further)),
                seed_parent=row["seed_parent"],
                pollen_parent=row["pollen_parent"],
                note=row["note"],
                extra=_pairs(row["extra"]),
            )
        )
    return tuple(sorted(found, key=lambda plant: plant.name.casefold()))


def save_seedling(store: Store, row: Seedling) -> Seedling:
    """Write a seedling's fields (not name, history, former: see below); new if unknown.

    A field that is None stays as it is; "" clears it. Raises UsageError for a number that
    was given to another plant before.
    """
    identities = register_identities(store)
    present = identities.number(row.number)
    if present != row.number:
        raise UsageError(
            f"{row.number} is a former number of {present}. Change that entry, or choose "
            "another number."
        )
    filed = _filed_as(store, row.number, identities.former(row.number))
    entry: dict[str, Any] = {"number": filed} | _given(
        cross_code=row.cross,
        seed_parent=row.seed_parent,
        pollen_parent=row.pollen_parent,
        sown=row.sown,
        pricked_out=row.pricked_out,
        first_flower=row.first_flower,
        place=row.place,
        name=row.name,
        note=row.note,
    )
    if row.extra:
        entry["extra"] = json.dumps(row.extra, ensure_ascii=False)
    with store.db.atomic():
        write_rows(store, "seedlings", [entry])
        link_plants(store)
    before = seedling(store, row.number)
    if row.status and before and row.status != before.status:
        return set_status(store, row.number, row.status)
    return _must(before, row.number)


def _filed_as(store: Store, number: str, former: tuple[str, ...]) -> str:
    """The number under which the entry was first written."""
    filed = {row["number"] for row in rows(store, "seedlings")}
    return next((one for one in (number, *former) if one in filed), number)


def _given(**fields: object) -> dict[str, object]:
    return {name: value or None for name, value in fields.items() if value is not None}


def _must(row: Seedling | None, number: str) -> Seedling:
    if row is None:
        raise NotFound(f"No seedling {number} on record. Enter it first.")
    return row


def save_cross(store: Store, row: Cross) -> Cross:
    """Write a cross; new if its code is unknown. A field that is None stays as it is."""
    entry: dict[str, Any] = {"code": row.code} | _given(
        seed_parent=row.seed_parent, pollen_parent=row.pollen_parent, day=row.day, note=row.note
    )
    for field in ("seeds_sown", "germinated"):
        if getattr(row, field) is not None:
            entry[field] = getattr(row, field)
    if row.extra:
        entry["extra"] = json.dumps(row.extra, ensure_ascii=False)
    with store.db.atomic():
        write_rows(store, "crosses", [entry])
    return next(cross for cross in crosses(store) if cross.code == row.code)


def save_named_plant(store: Store, row: NamedPlant) -> NamedPlant:
    """Write a named plant; new if its name is unknown. Other names are added to, not lost."""
    before = next((plant for plant in named_plants(store) if plant.name == row.name), row)
    entry: dict[str, Any] = {
        "name": row.name,
        "synonyms": _list(before.synonyms, row.synonyms),
        "mishearings": _list(before.mishearings, row.mishearings),
    } | _given(seed_parent=row.seed_parent, pollen_parent=row.pollen_parent, note=row.note)
    if row.extra:
        entry["extra"] = json.dumps(row.extra, ensure_ascii=False)
    with store.db.atomic():
        write_rows(store, "names", [entry])
        link_plants(store)
    return next(plant for plant in named_plants(store) if plant.name == row.name)


def _list(*words: tuple[str, ...]) -> str:
    return json.dumps(
        list(dict.fromkeys(one for some in words for one in some)), ensure_ascii=False
    )


def set_status(
    store: Store, number: str, status: str, *, day: date | None = None, reason: str | None = None
) -> Seedling:
    """Add to a seedling's history; nothing of the past is changed. Raises NotFound."""
    found = _must(seedling(store, number), number)
    filed = _filed_as(store, found.number, found.former)
    with store.db.atomic():
        store.db.execute(
            "INSERT INTO status_history (seedling, status, day, reason, made_at) "
            "SELECT id, ?, ?, ?, ? FROM seedlings WHERE number = ?",
            [status, day.isoformat() if day else None, reason, now(), filed],
        )
        bump_revision(store)
    return _must(seedling(store, number), number)


def number_format(store: Store) -> str | None:
    """The number format by example, as the breeder set it ('23-04'), or None."""
    row = store.db.execute("SELECT value FROM preferences WHERE key = 'number_format'").fetchone()
    return None if row is None else str(row[0])


def set_number_format(store: Store, example: str | None) -> None:
    """Set or clear the format. Raises UsageError if the example holds no digit."""
    if example is not None and not any(character.isdigit() for character in example):
        raise UsageError(f"{example!r} shows no number. Give one as you write it: '23-04'")
    with store.db.atomic():
        store.db.execute("DELETE FROM preferences WHERE key = 'number_format'")
        if example is not None:
            store.db.execute(
                "INSERT INTO preferences (key, value) VALUES ('number_format', ?)",
                [example.strip()],
            )
