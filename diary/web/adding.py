"""Adding recordings in the background: from a drop or the inbox, with copies and stills after."""

from dataclasses import replace
from pathlib import Path

from starlette.requests import Request
from starlette.responses import Response

from diary.errors import Cancelled, DiaryError, NotFound
from diary.pipeline import Progress, add
from diary.records.recordings import Recording, clips, recordings
from diary.records.shelf import shelf
from diary.records.store import Store, open_store
from diary.settings import Settings
from diary.speech.settings import SpeechSettings
from diary.web.desk import Desk, as_json, desk_of
from diary.web.playing import make_still, prepare, preview_path, start_preview
from diary.web.recording import first_doubt
from diary.web.works import Outcome, Report, Work


def start_adding(desk: Desk, path: Path) -> Work:
    """Put the adding of a file into the queue."""

    def doing(settings: Settings, report: Report) -> Outcome:
        store = open_store(settings.folder)
        try:
            # the file's name, not the diary's short one: what was dropped is found again
            added = add(
                store,
                path,
                speech=SpeechSettings(model=settings.model),
                report=lambda progress: report(replace(progress, name=path.name)),
            )
            recording = added.recording
            doubt = first_doubt(clips(store, recording.id))
            _stills(store, recording, report)
        finally:
            store.close()
        if recording.kind in ("video", "audio") and not prepare(settings, recording.id):
            _start_preview(desk, recording)
        at = f"?t={doubt / 1000:g}&doubt=1" if doubt is not None else ""
        said = None if added.new else "It was here already."
        return Outcome(recording=recording.id, page=f"/recordings/{recording.id}{at}", message=said)

    return desk.works.start("add", path.name, doing)


def _stills(store: Store, recording: Recording, report: Report) -> None:
    """One picture a clip; a page makes on demand what is missing."""
    if recording.kind != "video":
        return
    cut = clips(store, recording.id)
    for count, clip in enumerate(cut):
        report(Progress(stage="pictures", name=recording.title, share=count / len(cut)))
        try:
            make_still(store, recording.id, clip.moment.start_ms, clip.moment.end_ms)
        except Cancelled:
            raise
        except DiaryError:
            return


def _start_preview(desk: Desk, recording: Recording) -> None:
    with desk.store() as store:
        if not preview_path(store, recording.id).is_file():
            start_preview(desk, shelf(store, [recording.id])[recording.id])


def page(request: Request) -> Response:
    """Where recordings are dropped, what is being done with them, and the inbox folder."""
    desk = desk_of(request)
    with desk.store() as store:
        unread = [one for one in recordings(store) if not one.complete]
    busy = {work.name for work in desk.works.all() if work.state in ("waiting", "working")}
    return desk.page(
        request,
        "add.html",
        unread=[one for one in unread if one.path.name not in busy],
        inbox=desk.settings.folder / "inbox",
    )


def works(request: Request) -> Response:
    """Everything that runs, waits or ended, as JSON, with what each can say of its time left."""
    return as_json({"works": desk_of(request).works.all()})


def cancel(request: Request) -> Response:
    """Stop one; what was heard until then is kept."""
    return _found(desk_of(request).works.cancel(request.path_params["work"]))


def resume(request: Request) -> Response:
    """Go on with one that was stopped or failed."""
    return _found(desk_of(request).works.resume(request.path_params["work"]))


def go_on(request: Request) -> Response:
    """Go on with a recording that was never heard to its end."""
    desk = desk_of(request)
    wanted = request.path_params["recording"]
    with desk.store() as store:
        found = next((one for one in recordings(store) if one.id == wanted), None)
    if found is None:
        raise NotFound("That recording is no longer in the diary.")
    return as_json(start_adding(desk, found.path))


def _found(work: Work | None) -> Response:
    if work is None:
        raise NotFound("There is no such work any more.")
    return as_json(work)
