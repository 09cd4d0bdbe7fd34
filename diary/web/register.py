"""The register: seedlings and named plants on record, entered, changed, imported."""

import tempfile
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from diary.errors import UsageError
from diary.records.corrections import GiveName, MergePlants, Renumber
from diary.records.journal import correct
from diary.records.register import (
    NamedPlant,
    Seedling,
    crosses,
    named_plants,
    number_format,
    save_named_plant,
    save_seedling,
    seedling,
    seedlings,
    set_number_format,
    set_status,
)
from diary.records.register_csv import apply_plan, plan_import
from diary.web.desk import desk_of, form_of, json_of
from diary.web.shown import plant_url

AT_ONCE = 300
FIELDS = (
    "cross",
    "seed_parent",
    "pollen_parent",
    "sown",
    "pricked_out",
    "first_flower",
    "place",
    "note",
)


def page(request: Request) -> Response:
    """Every seedling on record."""
    desk = desk_of(request)
    typed = request.query_params.get("q", "").strip()
    with desk.store() as store:
        everyone = seedlings(store)
        format_now = number_format(store)
        codes = [cross.code for cross in crosses(store)]
    fits = [one for one in everyone if typed.casefold() in _words(one)]
    return desk.page(
        request,
        "register.html",
        seedlings=fits[:AT_ONCE],
        found=len(fits),
        total=len(everyone),
        typed=typed,
        format_now=format_now,
        codes=codes,
        fields=FIELDS,
    )


def _words(one: Seedling) -> str:
    said = (one.number, one.name, one.cross, one.seed_parent, one.pollen_parent, one.place)
    return " ".join(word for word in (*said, one.status) if word).casefold()


def edit(request: Request) -> Response:
    """One entry, to be changed."""
    desk = desk_of(request)
    number = request.path_params["number"]
    with desk.store() as store:
        found = seedling(store, number) or Seedling(number=number)
        codes = [cross.code for cross in crosses(store)]
    return desk.page(request, "seedling_entry.html", seedling=found, fields=FIELDS, codes=codes)


def save(request: Request) -> Response:
    """Write one entry; a status goes into its history."""
    said = form_of(request)
    number = said.get("number", "")
    if not number:
        raise UsageError("An entry needs a number.")
    with desk_of(request).store() as store:
        before = seedling(store, number)
        given: dict[str, Any] = {name: said[name] for name in FIELDS if name in said}
        save_seedling(store, replace(Seedling(number=number), **given))
        status = said.get("status")
        if status and (before is None or before.status != status):
            set_status(store, number, status, day=_day(said), reason=said.get("reason") or None)
    return RedirectResponse(plant_url(number), status_code=303)


def _day(said: dict[str, str]) -> date | None:
    try:
        return date.fromisoformat(said["status_day"]) if said.get("status_day") else None
    except ValueError as error:
        raise UsageError(f"{said['status_day']!r} is no day. Write it as 2031-06-02.") from error


def rename(request: Request) -> Response:
    """Renumber, merge or name a seedling: corrections, so that they undo."""
    said = form_of(request)
    number = said.get("number", "")
    with desk_of(request).store() as store:
        target = number
        if said.get("to"):
            correct(store, Renumber(number=number, to=said["to"]))
            target = said["to"]
        if said.get("into"):
            correct(store, MergePlants(number=number, into=said["into"]))
            target = said["into"]
        if said.get("name"):
            correct(store, GiveName(number=number, name=said["name"]))
    return RedirectResponse(plant_url(target), status_code=303)


def names(request: Request) -> Response:
    """Named plants, what else they go by, and how they are misheard."""
    desk = desk_of(request)
    with desk.store() as store:
        everyone = named_plants(store)
        seen = {one.plant.key: one.clips for one in desk.plants(store)}
    return desk.page(request, "names.html", names=everyone, seen=seen)


def save_name(request: Request) -> Response:
    """Write one named plant; several names at once, one a line, with nothing else."""
    said = form_of(request)
    lines = [line.strip() for line in said.get("name", "").splitlines() if line.strip()]
    if not lines:
        raise UsageError("An entry needs a name.")
    with desk_of(request).store() as store:
        for name in lines:
            save_named_plant(
                store,
                NamedPlant(
                    name=name,
                    synonyms=_list(said.get("synonyms")),
                    mishearings=_list(said.get("mishearings")),
                    seed_parent=said.get("seed_parent") or None,
                    pollen_parent=said.get("pollen_parent") or None,
                    note=said.get("note") or None,
                ),
            )
    return RedirectResponse("/names", status_code=303)


def _list(text: str | None) -> tuple[str, ...]:
    return tuple(piece.strip() for piece in (text or "").split(";") if piece.strip())


def save_format(request: Request) -> Response:
    """Set the number format by an example; empty: learn it from the register."""
    said = form_of(request)
    with desk_of(request).store() as store:
        set_number_format(store, said.get("example") or None)
    return RedirectResponse("/register", status_code=303)


def import_csv(request: Request) -> Response:
    """A pasted or picked table: first what it would do, then, told so, the import itself."""
    body = json_of(request)
    text = str(body.get("text", ""))
    desk = desk_of(request)
    with tempfile.TemporaryDirectory() as folder, desk.store() as store:
        path = Path(folder) / "table.csv"
        path.write_text(text, "utf-8")
        try:
            plan = plan_import(store, path)
            if body.get("apply"):
                apply_plan(store, plan, overwrite=bool(body.get("overwrite")))
        except UsageError as error:
            raise UsageError(str(error).replace(str(path), "the table")) from error
    return desk.page(request, "_import.html", plan=plan, applied=bool(body.get("apply")))
