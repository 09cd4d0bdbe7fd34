"""A change asked for on a page, as a correction event: JSON in, (change, place, seen) out."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from diary.errors import NotFound, UsageError
from diary.linking.document import PlantKind
from diary.records.codec import from_plain
from diary.records.corrections import KINDS, Change, Seen, Withdraw
from diary.records.observation_changes import MM_PER
from diary.records.pages import find_plant, plant_page
from diary.records.record import Span
from diary.records.store import Store
from diary.web.choices import COUNTS, LENGTHS

TITLED = ("SetSeedling", "Split", "AddClip", "NamePlant")  # changes that name a plant
_NUMBER = re.compile(r"[0-9]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One change that a page asks for."""

    change: Change
    at: Span | None
    seen: Seen


def asked(store: Store, body: Mapping[str, Any]) -> Asked:
    """What `{"kind": ..., "change": {...}, "at": {...}, "seen": {...}}` asks for.

    A plant's kind is found by its title; a length may be given as a number with its unit.
    Raises UsageError saying what is wrong.
    """
    kind = str(body.get("kind"))
    if kind not in KINDS or KINDS[kind] is Withdraw:
        raise UsageError(f"There is no correction {kind!r}.")
    change = dict(body.get("change") or {})
    if kind in TITLED:
        change |= _plant(store, str(change.get("title", "")))
    seen_trait = (body.get("seen") or {}).get("trait")
    if kind in ("SetValue", "Add"):
        change = _valued(change, str(change.get("trait") or body.get("trait") or seen_trait), kind)
    if kind == "MergePlants" and change.get("key"):
        change = _merged(store, str(change["key"]))
    try:
        return Asked(
            change=from_plain(change, KINDS[kind]),
            at=from_plain(body["at"], Span) if body.get("at") else None,
            seen=from_plain(body.get("seen") or {}, Seen),
        )
    except (ValueError, TypeError) as error:
        raise UsageError(f"This cannot be put down: {error}") from error


def _plant(store: Store, title: str) -> dict[str, Any]:
    title = title.strip()
    if not title:
        raise UsageError("Say which plant: a number or a name.")
    try:
        plant = find_plant(store, title)
    except NotFound:
        # not yet on record: a name has no digit
        kind = PlantKind.SEEDLING if _NUMBER.search(title) else PlantKind.CULTIVAR
        return {"kind": kind.value, "title": title}
    if plant.kind is PlantKind.UNNAMED:
        return {"kind": plant.kind.value, "title": plant.key.rpartition("/")[2]}
    return {"kind": plant.kind.value, "title": plant.key}


def _merged(store: Store, key: str) -> dict[str, Any]:
    """The unnumbered plant at this place is the one with that key: shown at its first clip."""
    clips = plant_page(store, key).clips
    if not clips:
        raise UsageError(f"{key} was never shown, so it cannot be the same plant.")
    moment = clips[0].moment
    return {
        "other": {
            "recording": moment.recording,
            "start_ms": moment.start_ms,
            "end_ms": moment.end_ms,
        }
    }


def _valued(change: dict[str, Any], trait: str, kind: str) -> dict[str, Any]:
    """Numbers as numbers; a length in mm, from the unit it was given in."""
    value = change.get("value")
    unit = change.pop("unit", None) or "mm"
    if kind == "Add":
        change["unit"] = "mm" if trait in LENGTHS else "count" if trait in COUNTS else None
    if value is None or str(value).strip() == "":
        raise UsageError("Say what the value is.")
    if trait in LENGTHS or trait in COUNTS:
        try:
            number = float(str(value).replace(",", "."))
        except ValueError as error:
            raise UsageError(f"{value!r} is no number.") from error
        if trait in COUNTS:
            change["value"] = round(number)
        elif unit in MM_PER:
            change["value"] = round(number * MM_PER[unit], 1)
        else:
            raise UsageError(f"{unit!r} is no unit of length. There are: {', '.join(MM_PER)}.")
    return change
