"""Who may ask: Host and Origin are checked, and a pass phrase where the diary is shared."""

import hmac
import secrets
import time
from collections.abc import Iterable
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import HTTPConnection
from starlette.responses import PlainTextResponse, RedirectResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

COOKIE = "diary_pass"
LOOPBACK = ("127.0.0.1", "localhost", "::1")
SAFE = frozenset({"GET", "HEAD", "OPTIONS"})
# scripts, pictures and media come from this server and nowhere else
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; "
    "img-src 'self' data:; media-src 'self'; connect-src 'self'; font-src 'none'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors 'none'; manifest-src 'self'"
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
}


class PassPhrase:
    """The pass phrase of one run of the server. Slow to guess: few tries a minute."""

    TRIES = 8  # a minute, from everywhere together

    def __init__(self, phrase: str) -> None:
        self._phrase = phrase.strip()
        self._token = secrets.token_urlsafe(32)
        self._tries: list[float] = []

    def admit(self, said: str) -> str | None:
        """The token to be shown from now on, or None for a wrong phrase or too many tries."""
        now = time.monotonic()
        self._tries = [moment for moment in self._tries if now - moment < 60]
        if len(self._tries) >= self.TRIES:
            return None
        if hmac.compare_digest(said.strip().casefold().encode(), self._phrase.casefold().encode()):
            return self._token
        self._tries.append(now)
        return None

    def knows(self, token: str | None) -> bool:
        """Whether this token was given out by `admit`."""
        return token is not None and hmac.compare_digest(token, self._token)


class Guard:
    """Middleware. `hosts` are the names this server goes by, beside those of loopback.

    A Host of another name is refused (DNS rebinding); so is a change asked for by a page
    of another origin (cross-site requests). With a `phrase`, who does not come from this
    machine must have said it.
    """

    OPEN = ("/enter", "/static/")  # what is needed to say the phrase

    def __init__(
        self, app: ASGIApp, hosts: Iterable[str] = (), phrase: PassPhrase | None = None
    ) -> None:
        self._app = app
        self._hosts = {host.casefold() for host in (*LOOPBACK, *hosts)}
        self._phrase = phrase

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let through, or answer with a refusal."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return

        async def send_with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers.setdefault(name, value)
            await send(message)

        refusal = self._refusal(scope)
        app = refusal if refusal is not None else self._app
        await app(scope, receive, send_with_headers)

    def _refusal(self, scope: Scope) -> ASGIApp | None:
        headers = Headers(scope=scope)
        if _name(headers.get("host", "")) not in self._hosts:
            return PlainTextResponse("This diary does not go by that name.", status_code=421)
        if scope["method"] not in SAFE and not _same_origin(headers):
            return PlainTextResponse("This change was asked for by another site.", status_code=403)
        if self._phrase is None or _from_here(scope) or scope["path"].startswith(self.OPEN):
            return None
        if self._phrase.knows(HTTPConnection(scope).cookies.get(COOKIE)):
            return None
        if scope["method"] == "GET" and "text/html" in headers.get("accept", ""):
            return RedirectResponse("/enter", status_code=303)
        return PlainTextResponse("Say the pass phrase first: /enter", status_code=401)


def _name(host: str) -> str:
    """The name of a Host header, without its port."""
    return (urlsplit(f"//{host}").hostname or "").casefold()


def _same_origin(headers: Headers) -> bool:
    origin = headers.get("origin")
    if origin is not None:
        return urlsplit(origin).netloc.casefold() == headers.get("host", "").casefold()
    # browsers tell; what is no browser carries no cookie of another's and may pass
    return headers.get("sec-fetch-site", "same-origin") in ("same-origin", "none")


def _from_here(scope: Scope) -> bool:
    client = scope.get("client")
    return client is not None and client[0] in LOOPBACK
