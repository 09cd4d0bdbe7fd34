"""The working lists: what to keep, discard, propagate, look at again."""

from datetime import date

from starlette.requests import Request
from starlette.responses import Response

from diary.insight.lists import all_lists
from diary.web.desk import desk_of
from diary.web.shown import shelf_of


def page(request: Request) -> Response:
    """All lists by name, and the entries of the one chosen."""
    desk = desk_of(request)
    chosen = request.path_params.get("name")
    today = date.today()
    with desk.store() as store:
        everything = desk.memo.get(
            f"lists {today}", lambda: all_lists(desk.overview(store), on=today)
        )
        if chosen is None:
            found = next((one for one in everything if one.entries), everything[0])
        else:
            found = next((one for one in everything if one.name == chosen), everything[0])
        shelf = shelf_of(store, [entry.moment for entry in found.entries])
    return desk.page(request, "lists.html", lists=everything, chosen=found, shelf=shelf)
