"""Putting right: every change on a page is one correction event; undo, redo, the list of them."""

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from diary.errors import UsageError
from diary.records.corrections import Correction
from diary.records.journal import correct, journal, redo, undo, withdraw
from diary.web.desk import as_json, desk_of, json_of
from diary.web.events import asked
from diary.web.shown import shelf_of

SHOWN = 200  # of the latest corrections


def put_right(request: Request) -> Response:
    """Append the events of one POST, in order, and say what the last is called."""
    body = json_of(request)
    events = body.get("events")
    if not isinstance(events, list) or not events:
        raise UsageError("Nothing was asked for.")
    with desk_of(request).store() as store:
        # all are understood before any is put down
        changes = [asked(store, event) for event in events]
        done = [correct(store, one.change, at=one.at, seen=one.seen) for one in changes]
    return as_json({"ids": [one.id for one in done], "told": told(done[-1])})


def undo_last(request: Request) -> Response:
    """Withdraw the last event."""
    with desk_of(request).store() as store:
        undone = undo(store)
    return as_json({"told": f"Undone: {told(undone)}" if undone else "Nothing to undo"})


def redo_last(request: Request) -> Response:
    """Bring back what was undone last."""
    with desk_of(request).store() as store:
        again = redo(store)
    return as_json({"told": f"Done again: {told(again)}" if again else "Nothing to do again"})


def withdraw_one(request: Request) -> Response:
    """Withdraw one event of the list."""
    with desk_of(request).store() as store:
        withdraw(store, request.path_params["id"])
    return RedirectResponse("/corrections", status_code=303)


def page(request: Request) -> Response:
    """What was put right, latest first, each to be taken back."""
    desk = desk_of(request)
    with desk.store() as store:
        entries = tuple(reversed(journal(store)))
        shown = [one for one in entries if type(one.correction.change).__name__ != "Withdraw"]
        spans = [one.correction.span for one in shown[:SHOWN]]
        shelf = shelf_of(store, [span for span in spans if span is not None])  # type: ignore[misc]
    return desk.page(
        request,
        "corrections.html",
        entries=[(entry, told(entry.correction)) for entry in shown[:SHOWN]],
        more=max(0, len(shown) - SHOWN),
        shelf=shelf,
    )


_TOLD = {
    "SetSeedling": "the clip is of {title}",
    "SetTrait": "it is about {trait}",
    "SetPart": "the part is {part}",
    "SetUnit": "the unit is {unit}",
    "SetValue": "the value is {value}",
    "SetSpan": "the clip has other ends",
    "Reject": "not an observation",
    "Confirm": "it is right",
    "Add": "added {trait} {value}",
    "Split": "split, the second is of {title}",
    "Join": "clips joined",
    "AddClip": "a clip of {title}",
    "RemoveClip": "clip removed",
    "SetDate": "the day is {day}",
    "NamePlant": "the plant is {title}",
    "MergePlants": "two plants are one",
    "Mishearing": "“{heard}” means “{meant}”",
    "Renumber": "{number} is now {to}",
    "GiveName": "{number} is named '{name}'",
    "Dismiss": "a question needs no answer",
    "Withdraw": "taken back",
}


def told(correction: Correction) -> str:
    """An event in a few words."""
    change = correction.change
    fields = {
        name: str(getattr(change, name)).replace("_", " ") for name in change.__dataclass_fields__
    }
    text = _TOLD[type(change).__name__].format_map(fields)
    seen = correction.seen
    about = " ".join(str(one) for one in (seen.plant, seen.part or seen.trait) if one)
    return f"{about.replace('_', ' ')}: {text}" if about else text
