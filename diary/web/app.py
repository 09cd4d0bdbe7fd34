"""The web pages as one application: every route in one list, and the server's beginning and end."""

import threading
from collections.abc import AsyncIterator, Iterable
from contextlib import asynccontextmanager
from pathlib import Path

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import BaseRoute, Mount, Route
from starlette.staticfiles import StaticFiles

from diary.errors import DiaryError, NotFound, UsageError
from diary.records.recordings import recordings
from diary.settings import Settings
from diary.web import (
    adding,
    bench,
    comparing,
    correcting,
    crosses,
    dropping,
    entering,
    exporting,
    finding,
    lists,
    plant,
    playing,
    recording,
    register,
    reviewing,
)
from diary.web.desk import Desk, desk_of
from diary.web.guard import Guard, PassPhrase
from diary.web.inbox import Inbox

_POST = ["POST"]
STATIC = Path(__file__).parent / "static"


def _help(request: Request) -> Response:
    return desk_of(request).page(request, "help.html")


ROUTES: list[BaseRoute] = [
    # seedlings and other plants
    Route("/", bench.bench),
    Route("/plants.json", bench.suggest),
    Route("/plants/{key:path}", plant.page),
    Route("/alike/{key:path}", plant.alike),
    Route("/compare", comparing.page),
    # recordings, and playing them
    Route("/recordings", recording.shelf_page),
    Route("/recordings/{recording}", recording.page),
    Route("/recordings/{recording}/change", recording.change, methods=_POST),
    Route("/recordings/{recording}/remove", recording.remove, methods=_POST),
    Route("/recordings/{recording}/again", recording.again, methods=_POST),
    Route("/recordings/{recording}/go-on", adding.go_on, methods=_POST),
    Route("/media/{recording}", playing.media),
    Route("/preview/{recording}", playing.ask_preview, methods=_POST),
    Route("/peaks/{recording}", playing.peaks),
    Route("/still/{recording}/{start:int}/{end:int}.jpg", playing.still),
    # adding
    Route("/add", adding.page),
    Route("/uploads", dropping.begin, methods=_POST),
    Route("/uploads/{upload}", dropping.receive, methods=["PUT"]),
    Route("/uploads/{upload}", dropping.forget, methods=["DELETE"]),
    Route("/works", adding.works),
    Route("/works/{work:int}/cancel", adding.cancel, methods=_POST),
    Route("/works/{work:int}/resume", adding.resume, methods=_POST),
    # putting right
    Route("/put-right", correcting.put_right, methods=_POST),
    Route("/undo", correcting.undo_last, methods=_POST),
    Route("/redo", correcting.redo_last, methods=_POST),
    Route("/corrections", correcting.page),
    Route("/corrections/{id}/withdraw", correcting.withdraw_one, methods=_POST),
    Route("/review", reviewing.page),
    Route("/review", reviewing.answer, methods=_POST),
    # finding and keeping order
    Route("/find", finding.page),
    Route("/lists", lists.page),
    Route("/lists/{name}", lists.page),
    Route("/crosses", crosses.page),
    Route("/crosses", crosses.save, methods=_POST),
    Route("/crosses/{place:path}", crosses.one),
    Route("/register", register.page),
    Route("/register", register.save, methods=_POST),
    Route("/register/format", register.save_format, methods=_POST),
    Route("/register/rename", register.rename, methods=_POST),
    Route("/register/import", register.import_csv, methods=_POST),
    Route("/register/entry/{number:path}", register.edit),
    Route("/names", register.names),
    Route("/names", register.save_name, methods=_POST),
    Route("/exports", exporting.page),
    Route("/exports/{name}", exporting.one),
    Route("/help", _help),
    # who may come in
    Route("/enter", entering.page),
    Route("/enter", entering.enter, methods=_POST),
    Mount("/static", StaticFiles(directory=STATIC), name="static"),
]


def _warm(desk: Desk) -> None:
    """Load what is slow to load before somebody waits for it; whoever asks first waits less."""
    from diary.reading.vocabulary import load_vocabulary

    load_vocabulary()
    with desk.store() as store:
        desk.plants(store)
        desk.review(store)


def create_app(
    settings: Settings,
    *,
    phrase: PassPhrase | None = None,
    hosts: Iterable[str] = (),
    inbox: bool = True,
) -> Starlette:
    """The application over one diary. With a `phrase` it may be reached by other `hosts` too.

    Raises StoreError if the diary cannot be opened.
    """
    desk = Desk(settings)
    watch = Inbox(settings.folder / "inbox", lambda path: adding.start_adding(desk, path))

    @asynccontextmanager
    async def life(app: Starlette) -> AsyncIterator[None]:
        if inbox:
            with desk.store() as store:
                known = frozenset(one.path for one in recordings(store, removed=True))
            watch.start(known)
        warming = threading.Thread(target=_warm, args=(desk,), daemon=True)
        warming.start()
        yield
        warming.join(timeout=60)
        if inbox:
            watch.stop()
        desk.close()

    app = Starlette(
        routes=ROUTES,
        middleware=[Middleware(Guard, hosts=tuple(hosts), phrase=phrase)],
        exception_handlers={DiaryError: _explained, 404: _not_there},
        lifespan=life,
    )
    app.state.desk = desk
    app.state.phrase = phrase
    app.state.shared = phrase is not None
    return app


def _explained(request: Request, error: Exception) -> Response:
    status = 404 if isinstance(error, NotFound) else 400 if isinstance(error, UsageError) else 500
    return _told(request, str(error), status)


def _not_there(request: Request, error: Exception) -> Response:
    return _told(request, "There is no such page in this diary.", 404)


def _told(request: Request, message: str, status: int) -> Response:
    """An error as a page, or as JSON to a script."""
    if request.method != "GET" and "text/html" not in request.headers.get("accept", ""):
        return JSONResponse({"told": message}, status_code=status)
    return desk_of(request).page(request, "error.html", status, message=message)
