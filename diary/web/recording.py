"""Recordings: the list of them, and one with its player, clips and transcript."""

from datetime import date

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from diary.errors import UsageError
from diary.linking.document import Band
from diary.pipeline import Progress, read_again
from diary.records.record import RecordClip, RecordingId
from diary.records.recordings import (
    change_recording,
    clips,
    recording,
    recordings,
    remove_recording,
    transcript,
    walk,
)
from diary.records.store import open_store
from diary.settings import Settings
from diary.web.desk import Desk, desk_of, form_of
from diary.web.marked import marked_lines
from diary.web.shown import moments_of, shelf_of
from diary.web.works import Outcome, Report, Work


def shelf_page(request: Request) -> Response:
    """All recordings, the latest walk first."""
    desk = desk_of(request)
    with desk.store() as store:
        everything = recordings(store)
    groups = sorted({one.group for one in everything if one.group})
    return desk.page(
        request, "recordings.html", recordings=tuple(reversed(everything)), groups=groups
    )


def page(request: Request) -> Response:
    """One recording: what was said, what was understood of it, and everything to put it right."""
    desk = desk_of(request)
    with desk.store() as store:
        found = recording(store, request.path_params["recording"])
        heard = transcript(store, found.id)
        cut = clips(store, found.id)
        parts = walk(store, found.id)
        others = [one for one in recordings(store) if one.id != found.id]
        shelf = shelf_of(store, moments_of(cut))
    duration = found.duration_ms or max(
        (c.moment.end_ms for c in cut), default=heard.words[-1].end_ms if heard.words else 1
    )
    return desk.page(
        request,
        "recording.html",
        recording=found,
        clips=cut,
        lines=marked_lines(heard, cut),
        duration=max(1, duration),
        plays=found.kind in ("video", "audio"),
        walk=parts if len(parts) > 1 else (),
        others=others,
        groups=sorted({one.group for one in (found, *others) if one.group}),
        shelf=shelf,
        doubt=first_doubt(cut),
        work=_work_on(desk, found.id, found.title),
    )


def _work_on(desk: Desk, recording_id: RecordingId, title: str) -> Work | None:
    running = [one for one in desk.works.all() if one.state in ("waiting", "working")]
    return next((w for w in running if w.recording == recording_id or w.name == title), None)


def first_doubt(cut: tuple[RecordClip, ...]) -> int | None:
    """Where the first thing is that is not sure, in ms."""
    moments = [
        *(clip.moment for clip in cut if clip.band is not Band.SURE),
        *(one.moment for clip in cut for one in clip.records if one.band is not Band.SURE),
        *(one.moment for clip in cut for one in clip.proposals),
    ]
    return min((moment.start_ms for moment in moments), default=None)


def change(request: Request) -> Response:
    """Set title, day, plant group, or the recording it goes on from."""
    said = form_of(request)
    desk = desk_of(request)
    with desk.store() as store:
        before = recording(store, request.path_params["recording"])
        try:
            day = date.fromisoformat(said["recorded"]) if said.get("recorded") else None
        except ValueError as error:
            raise UsageError(f"{said['recorded']!r} is no day. Write it as 2031-06-02.") from error
        joins = recording(store, said["joins"]).id if said.get("joins") else None
        after = change_recording(
            store,
            before.id,
            recorded=day,
            title=said.get("title") or None,
            group=said.get("group") or None,
            joins=joins,
        )
    if (before.recorded, before.joins) != (after.recorded, after.joins) and after.complete:
        start_reading(desk, after.id, after.title)
    return RedirectResponse(f"/recordings/{before.id}", status_code=303)


def remove(request: Request) -> Response:
    """Take the recording out of the diary; its file and its corrections stay."""
    with desk_of(request).store() as store:
        remove_recording(store, recording(store, request.path_params["recording"]).id)
    return RedirectResponse("/recordings", status_code=303)


def again(request: Request) -> Response:
    """Read the stored words anew; every correction is kept."""
    desk = desk_of(request)
    with desk.store() as store:
        found = recording(store, request.path_params["recording"])
    start_reading(desk, found.id, found.title)
    return RedirectResponse(f"/recordings/{found.id}", status_code=303)


def start_reading(desk: Desk, recording_id: RecordingId, title: str) -> Work:
    """Put reading anew into the queue."""

    def doing(settings: Settings, report: Report) -> Outcome:
        store = open_store(settings.folder)
        try:
            report(Progress(stage="reading", name=title))
            read_again(store, recording_id, report=report)
        finally:
            store.close()
        return Outcome(recording=recording_id, page=f"/recordings/{recording_id}")

    return desk.works.start("read", title, doing)
