"""Media, stills, the outline of the sound: files of the diary by recording id, never by path."""

import mimetypes
import threading
from pathlib import Path

from starlette.requests import Request
from starlette.responses import FileResponse, JSONResponse, Response

from diary.errors import DiaryError, MediaError, NotFound
from diary.pipeline import Progress
from diary.records.record import RecordingId
from diary.records.recordings import locate
from diary.records.shelf import Shelved, shelf
from diary.records.store import Store, open_store
from diary.settings import Settings
from diary.web.desk import Desk, as_json, desk_of
from diary.web.works import Outcome, Report

LONGEST_STILL_MS = 60_000  # of a long clip the first minute is looked through
_FOREVER = {"Cache-Control": "private, max-age=31536000, immutable"}
_one_still = threading.Semaphore(1)  # decoding film takes a core: one picture at a time


def _shelved(store: Store, which: str) -> Shelved:
    found = shelf(store, [RecordingId(which)]).get(RecordingId(which))
    if found is None:
        raise NotFound(f"No recording {which[:12]!r} in this diary.")
    return found


def preview_path(store: Store, recording: RecordingId) -> Path:
    """Where the copy for browsers is, or would be."""
    return store.previews / f"{recording}.mp4"


def still_path(store: Store, recording: RecordingId, start_ms: int, end_ms: int) -> Path:
    """Where the still of a stretch is, or would be."""
    return store.stills / f"{recording}-{start_ms}-{end_ms}.jpg"


def media(request: Request) -> Response:
    """The recording's sound and picture, with Range: the browsers' copy where there is one."""
    with desk_of(request).store() as store:
        found = _shelved(store, request.path_params["recording"])
        if found.kind not in ("video", "audio"):
            raise NotFound(f"{found.title} has no sound or picture to play.")
        copy = preview_path(store, found.id)
        path = copy if copy.is_file() else locate(store, found.id)
    kind = mimetypes.guess_type(path.name)[0] or ""
    if path.suffix.lower() in (".m4v", ".mov"):
        kind = "video/mp4"  # the same boxes; browsers refuse to try video/quicktime
    if not kind.startswith(("video/", "audio/")):
        kind = "application/octet-stream"
    return FileResponse(
        path,
        media_type=kind,
        headers={"Cache-Control": "private, max-age=0, must-revalidate"},
        content_disposition_type="inline",
    )


def still(request: Request) -> Response:
    """The sharpest picture of a stretch; made once."""
    start_ms, end_ms = request.path_params["start"], request.path_params["end"]
    with desk_of(request).store() as store:
        found = _shelved(store, request.path_params["recording"])
        path = make_still(store, found.id, start_ms, end_ms)
    if path is None:
        return Response(status_code=404)
    return FileResponse(path, media_type="image/jpeg", headers=_FOREVER)


def make_still(store: Store, recording: RecordingId, start_ms: int, end_ms: int) -> Path | None:
    """The file of the still, made if it is not there; None where there is no picture."""
    from diary.media.stills import sharpest_still

    path = still_path(store, recording, start_ms, end_ms)
    if path.is_file():
        return path
    with _one_still:
        if path.is_file():
            return path
        try:
            last = min(end_ms, start_ms + LONGEST_STILL_MS)
            found = sharpest_still(locate(store, recording), start_ms, last)
        except MediaError:
            return None
        if found is None:
            return None
        _write(path, found.jpeg)
    return path


def peaks(request: Request) -> Response:
    """The outline of the sound, ten bytes a second; made once."""
    from diary.media.peaks import waveform_peaks

    with desk_of(request).store() as store:
        found = _shelved(store, request.path_params["recording"])
        path = store.previews / f"{found.id}.peaks"
        if not path.is_file():
            try:
                _write(path, waveform_peaks(locate(store, found.id)))
            except MediaError:
                return Response(status_code=404)
    return FileResponse(path, media_type="application/octet-stream", headers=_FOREVER)


def _write(path: Path, content: bytes) -> None:
    """Whole or not at all."""
    path.parent.mkdir(parents=True, exist_ok=True)
    partial = path.with_name(f"{path.name}.{threading.get_ident()}.partial")
    partial.write_bytes(content)
    partial.replace(path)


def ask_preview(request: Request) -> Response:
    """Make a copy that browsers play: asked for by a page whose player could not play it."""
    desk = desk_of(request)
    with desk.store() as store:
        found = _shelved(store, request.path_params["recording"])
        if preview_path(store, found.id).is_file():
            return JSONResponse({"state": "done"})
    return as_json(start_preview(desk, found))


def start_preview(desk: Desk, found: Shelved) -> object:
    """Put the making of a preview into the queue."""

    def doing(settings: Settings, report: Report) -> Outcome:
        from diary.media.preview import make_preview

        store = open_store(settings.folder)
        try:

            def told(at_ms: int) -> None:
                share = min(1.0, at_ms / found.duration_ms) if found.duration_ms else None
                report(Progress(stage="making a copy to play", name=found.title, share=share))

            make_preview(locate(store, found.id), preview_path(store, found.id), on_progress=told)
        finally:
            store.close()
        return Outcome(recording=found.id)

    return desk.works.start("preview", found.title, doing)


def prepare(settings: Settings, recording: RecordingId) -> bool:
    """Whether browsers play the recording as it is; True too where there is nothing to play."""
    from diary.media.preview import plays_in_browsers
    from diary.media.probe import probe

    store = open_store(settings.folder)
    try:
        path = locate(store, recording)
        return plays_in_browsers(probe(path), path)
    except DiaryError:
        return True
    finally:
        store.close()
