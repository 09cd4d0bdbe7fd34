"""The bench view: plants as a grid of stills and colour swatches, filtered and sorted."""

from dataclasses import replace
from urllib.parse import urlencode

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from diary.errors import UsageError
from diary.records.choosing import (
    ORDERS,
    Wish,
    arrange,
    bloom_mm,
    choose,
    cross_of,
    decision_of,
    offered,
    shades_of,
)
from diary.records.recordings import recordings
from diary.web.desk import desk_of
from diary.web.shown import shelf_of

PAGE = 60  # plants at a time: a phone's memory, not a rule


def bench(request: Request) -> Response:
    """The grid; with no plant at all, what to do first."""
    desk = desk_of(request)
    asked = request.query_params
    wish = _wish(asked)
    order = asked.get("order", "number")
    first = max(0, int(_number(asked.get("from")) or 0))
    with desk.store() as store:
        everything = desk.plants(store)
        chosen = arrange(choose(everything, wish), order)
        shown = chosen[first : first + PAGE]
        faces = desk.faces(store)
        here = {one.plant.key: faces.get(one.plant.key) for one in shown}
        shelf = shelf_of(store, here.values())
        some = bool(everything) or bool(recordings(store))
    kept = [(name, value) for name, value in asked.multi_items() if name != "from" and value]
    return desk.page(
        request,
        "bench.html" if some else "welcome.html",
        plants=shown,
        faces=here,
        shelf=shelf,
        total=len(everything),
        found=len(chosen),
        first=first,
        next=urlencode([*kept, ("from", str(first + PAGE))])
        if first + PAGE < len(chosen)
        else None,
        before=urlencode([*kept, ("from", str(max(0, first - PAGE)))]) if first else None,
        wish=wish,
        plain=wish == Wish(),
        order=order,
        orders={name: words for name, (words, _) in ORDERS.items()},
        offered=desk.memo.get("offered", lambda: offered(everything)),
        shades_of=shades_of,
        cross_of=cross_of,
        decision_of=decision_of,
        bloom_mm=bloom_mm,
    )


def _wish(asked: object) -> Wish:
    get = asked.get  # type: ignore[attr-defined]
    season = _number(get("season"))
    wish = Wish(
        kind=get("kind") or None,
        cross=get("cross") or None,
        colour=get("colour") or None,
        form=get("form") or None,
        decision=get("decision") or None,
        season=int(season) if season else None,
    )
    return replace(wish, least_mm=_number(get("least")), most_mm=_number(get("most")))


def _number(text: str | None) -> float | None:
    if not text:
        return None
    try:
        return float(text)
    except ValueError as error:
        raise UsageError(f"{text!r} is no number.") from error


def suggest(request: Request) -> Response:
    """Plants whose number or name begins with, or holds, what was typed: for forms."""
    desk = desk_of(request)
    typed = request.query_params.get("q", "").strip().casefold()
    with desk.store() as store:
        everyone = desk.plants(store)
    fits = [one.plant for one in everyone if typed in one.plant.title.casefold()]
    fits.sort(key=lambda plant: not plant.title.casefold().startswith(typed))
    return JSONResponse(
        [{"key": one.key, "title": one.title, "kind": one.kind.value} for one in fits[:30]]
    )
