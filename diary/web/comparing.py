"""Two to four plants side by side, trait by trait, with players that run in step."""

from starlette.requests import Request
from starlette.responses import Response

from diary.records.pages import plant_page
from diary.web.desk import desk_of
from diary.web.shown import moments_of, shelf_of, trait_rows

MOST = 4  # columns


def page(request: Request) -> Response:
    """The plants named by `p`, each a column."""
    desk = desk_of(request)
    wanted = list(dict.fromkeys(request.query_params.getlist("p")))[:MOST]
    with desk.store() as store:
        pages = [plant_page(store, key) for key in wanted]
        shelf = shelf_of(store, [m for page in pages for m in moments_of(page.clips)])
    rows = [{(r.trait, r.part): r for r in trait_rows(p.beliefs, p.records)} for p in pages]
    order = [(r.trait, r.part) for p in pages for r in trait_rows(p.beliefs, p.records)]
    first = [next((c for c in reversed(p.clips) if shelf.playable(c.moment)), None) for p in pages]
    return desk.page(
        request,
        "compare.html",
        pages=pages,
        first=first,
        traits=list(dict.fromkeys(order)),
        rows=rows,
        shelf=shelf,
    )
