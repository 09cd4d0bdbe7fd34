"""Readable by everyone: axe-core finds nothing serious; nothing runs off a 360-pixel phone."""

from pathlib import Path
from typing import Any
from urllib.parse import quote

import pytest
from playwright.sync_api import Browser, Page

from tests.web.conftest import Served, ready

pytestmark = pytest.mark.browser
PAGES = (
    "/", "/plants/23-04", "/plants/23-09", "/recordings", "/review", "/find?q=salmon", "/find",
    "/lists/keep", "/lists/discard", "/crosses", "/crosses/23", "/register",
    "/register/entry/23-04", "/names", "/exports", "/compare?p=23-04&p=23-07", "/corrections",
    "/help", "/add", "/nowhere",
)  # fmt: skip


def axe() -> str:
    """axe-core as it comes with a test library; it is no part of the program."""
    import axe_playwright_python

    return (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text("utf-8")


def look(page: Page, script: str) -> list[str]:
    """Serious and critical findings by axe-core's own grading, WCAG 2.2 A and AA."""
    page.evaluate(script)
    found: dict[str, Any] = page.evaluate(
        "axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']})"
    )
    return [
        f"{one['id']}: {one['nodes'][0]['html'][:150]} {one['nodes'][0]['failureSummary'][:200]}"
        for one in found["violations"]
        if one["impact"] in ("serious", "critical")
    ]


@pytest.mark.parametrize("light", ["light", "dark"])
def test_axe_finds_nothing_serious(browser: Browser, served: Served, light: str) -> None:
    context = browser.new_context(color_scheme=light, reduced_motion="reduce")  # type: ignore[arg-type]
    page = context.new_page()
    script, found = axe(), []
    page.goto(f"{served.url}/recordings")
    recording = page.locator(".rows a").last.get_attribute("href") or ""
    for address in (*PAGES, recording):
        page.goto(served.url + address)
        ready(page)
        if address == recording:
            page.keyboard.press("n")  # with the tools of a clip open
        found += [f"{address} {one}" for one in look(page, script)]
    context.close()
    assert found == []


def test_nothing_runs_off_a_360_pixel_phone(browser: Browser, served: Served) -> None:
    context = browser.new_context(
        viewport={"width": 360, "height": 740}, is_mobile=True, has_touch=True
    )
    page = context.new_page()
    wide = []
    page.goto(f"{served.url}/recordings")
    recording = page.locator(".rows a").last.get_attribute("href") or ""
    unnamed = quote("?", safe="")
    for address in (*PAGES, recording, f"/plants/{unnamed}"):
        page.goto(served.url + address)
        ready(page)
        if page.evaluate("document.documentElement.scrollWidth") > 360:
            wide.append(address)
        small = page.evaluate(
            "[...document.querySelectorAll('main button, main .button')].filter(b => b.offsetParent"
            " && !b.closest('.band, .timeline') && b.offsetHeight < 40).map(b => b.outerHTML)"
        )
        assert small == [], address
    context.close()
    assert wide == []


def test_no_page_asks_anybody_else(page: Page, served: Served) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    for address in PAGES:
        page.goto(served.url + address)
        ready(page)
    assert [url for url in asked if not url.startswith((served.url, "data:"))] == []
