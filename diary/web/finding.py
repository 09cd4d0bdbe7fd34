"""Find: words and traits in one question, each hit with its moment."""

from starlette.requests import Request
from starlette.responses import Response

from diary.records.search import Found, find
from diary.web.desk import desk_of
from diary.web.shown import shelf_of

MOST = 200


def page(request: Request) -> Response:
    """The question, how it was understood, and what was found."""
    desk = desk_of(request)
    asked = request.query_params.get("q", "").strip()
    with desk.store() as store:
        found = find(store, asked, limit=MOST) if asked else Found(hits=(), understood=())
        shelf = shelf_of(store, [hit.moment for hit in found.hits])
    return desk.page(request, "find.html", asked=asked, found=found, shelf=shelf, most=MOST)
