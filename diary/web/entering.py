"""The door of a shared diary: the pass phrase, asked once a browser."""

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from diary.web.desk import desk_of, form_of
from diary.web.guard import COOKIE, PassPhrase


def page(request: Request) -> Response:
    """Ask for it."""
    return desk_of(request).page(request, "enter.html", wrong=False)


def enter(request: Request) -> Response:
    """Let in who knows it."""
    phrase: PassPhrase | None = request.app.state.phrase
    if phrase is None:
        return RedirectResponse("/", status_code=303)
    token = phrase.admit(form_of(request).get("phrase", ""))
    if token is None:
        return desk_of(request).page(request, "enter.html", 403, wrong=True)
    answer = RedirectResponse("/", status_code=303)
    answer.set_cookie(COOKIE, token, httponly=True, samesite="strict", max_age=30 * 86_400)
    return answer
