"""Crosses and what came of them, parents, and sisters too alike to keep both."""

from datetime import date

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from diary.errors import NotFound, UsageError
from diary.insight.progeny import progeny
from diary.records.choosing import shades_of
from diary.records.register import Cross, save_cross
from diary.web.desk import desk_of, form_of
from diary.web.shown import shelf_of


def page(request: Request) -> Response:
    """Every cross with its counts."""
    desk = desk_of(request)
    with desk.store() as store:
        everything = desk.memo.get("progeny", lambda: progeny(desk.overview(store)))
    return desk.page(request, "crosses.html", crosses=everything, today=date.today())


def one(request: Request) -> Response:
    """One cross: its seedlings as pictures, and how their traits are spread."""
    desk = desk_of(request)
    number = request.path_params["place"]
    with desk.store() as store:
        everything = desk.memo.get("progeny", lambda: progeny(desk.overview(store)))
        wanted = [one for one in everything if (one.code or one.formula) == number]
        if not wanted:
            raise NotFound(f"No cross {number!r} is on record.")
        found = wanted[0]
        summaries = {summary.plant.key: summary for summary in desk.plants(store)}
        faces = desk.faces(store)
        here = {plant.key: faces.get(plant.key) for plant in found.plants}
        shelf = shelf_of(store, here.values())
    return desk.page(
        request,
        "cross.html",
        cross=found,
        plants=[summaries[plant.key] for plant in found.plants if plant.key in summaries],
        faces=here,
        shelf=shelf,
        shades_of=shades_of,
    )


def save(request: Request) -> Response:
    """Write one cross."""
    said = form_of(request)
    if not said.get("code"):
        raise UsageError("A cross needs a code, such as 24-03.")
    with desk_of(request).store() as store:
        save_cross(
            store,
            Cross(
                code=said["code"],
                seed_parent=said.get("seed_parent") or None,
                pollen_parent=said.get("pollen_parent") or None,
                day=said.get("day") or None,
                seeds_sown=_count(said.get("seeds_sown")),
                germinated=_count(said.get("germinated")),
                note=said.get("note") or None,
            ),
        )
    return RedirectResponse("/crosses", status_code=303)


def _count(text: str | None) -> int | None:
    if not text:
        return None
    if not text.isdigit():
        raise UsageError(f"{text!r} is no whole number.")
    return int(text)
