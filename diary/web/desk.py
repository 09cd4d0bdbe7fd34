"""What every handler has at hand: settings, the diary opened for one request, kept views, pages."""

import json
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any
from urllib.parse import parse_qsl

import jinja2
from anyio import from_thread
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.templating import Jinja2Templates

from diary.errors import UsageError
from diary.insight.overview import Overview, assemble, overview
from diary.insight.swatches import srgb_of
from diary.records.codec import to_plain
from diary.records.faces import faces
from diary.records.pages import PlantSummary, plants
from diary.records.record import Moment
from diary.records.register import crosses, named_plants
from diary.records.review import ReviewItem, review_list
from diary.records.store import Store, open_store
from diary.settings import Settings
from diary.web import choices, wording
from diary.web.memo import Memo
from diary.web.works import Works


class Desk:
    """One a server. `store()` opens the diary for one request; nothing else is shared."""

    def __init__(self, settings: Settings) -> None:
        self.settings = settings
        open_store(settings.folder).close()  # made or migrated before anybody waits for a page
        self.memo = Memo(settings.folder)
        self.works = Works(settings)
        self.templates = Jinja2Templates(env=_environment())

    @contextmanager
    def store(self) -> Iterator[Store]:
        """The diary, for the thread of one request."""
        store = open_store(self.settings.folder)
        try:
            yield store
        finally:
            store.close()

    def close(self) -> None:
        """Stop what runs in the background (what is finished is kept) and let go."""
        self.works.stop()
        self.memo.close()

    # views of the whole diary, made again only when something was written

    def plants(self, store: Store) -> tuple[PlantSummary, ...]:
        """Every plant, one row each."""
        return self.memo.get("plants", lambda: plants(store))

    def faces(self, store: Store) -> dict[str, Moment]:
        """The filmed clip that stands for each plant."""
        return self.memo.get("faces", lambda: faces(store))

    def review(self, store: Store) -> tuple[ReviewItem, ...]:
        """The review list."""
        return self.memo.get("review", lambda: review_list(store))

    def looks(self, store: Store) -> Overview:
        """The overview without what was said word by word: enough to compare plants."""
        return self.memo.get(
            "looks",
            lambda: assemble(self.plants(store), (), crosses(store), named_plants(store)),
        )

    def overview(self, store: Store) -> Overview:
        """The whole overview."""
        return self.memo.get("overview", lambda: overview(store))

    def page(
        self, request: Request, template: str, /, status: int = 200, **values: Any
    ) -> Response:
        """A page, with what every page shows."""
        waiting = self.memo.peek("review")
        common = {
            "to_check": None if waiting is None else len(waiting),
            "here": request.url.path,
            "shared": getattr(request.app.state, "shared", False),
        }
        return self.templates.TemplateResponse(
            request, template, common | values, status_code=status
        )


def desk_of(request: Request) -> Desk:
    """The desk of the server that got this request."""
    desk: Desk = request.app.state.desk
    return desk


def form_of(request: Request) -> dict[str, str]:
    """The fields of a posted form, from a handler's own thread; the last of each name."""
    body = from_thread.run(request.body)
    fields = parse_qsl(body.decode("utf-8", "replace"), keep_blank_values=True)
    return {name: value.strip() for name, value in fields}


def json_of(request: Request) -> dict[str, Any]:
    """A posted JSON object, from a handler's own thread. UsageError where it is none."""
    try:
        body = json.loads(from_thread.run(request.body))
    except ValueError as error:
        raise UsageError("That was not understood: no JSON.") from error
    if not isinstance(body, dict):
        raise UsageError("That was not understood: no JSON object.")
    return body


def as_json(value: object, status: int = 200) -> JSONResponse:
    """Frozen values, dates and enums as JSON."""
    return JSONResponse(to_plain(value), status_code=status)


def _environment() -> jinja2.Environment:
    environment = jinja2.Environment(
        loader=jinja2.PackageLoader("diary.web"),
        autoescape=True,  # every text on a page may come from a recording
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=jinja2.StrictUndefined,
    )
    environment.filters |= {
        "trait": wording.trait_name,
        "day": wording.day_text,
        "clock": wording.clock_text,
        "lasts": wording.length_text,
        "hue": wording.hue,
    }
    environment.globals |= {
        "about": wording.about,
        "said": wording.said_value,
        "review_kinds": wording.REVIEW_KINDS,
        "swatch": srgb_of,
        "choices": choices,
    }
    return environment
