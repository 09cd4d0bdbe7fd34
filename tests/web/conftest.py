"""A server of our own over an invented diary, and Debian's Chromium to look at it."""

import shutil
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
import uvicorn
from playwright.sync_api import Browser, Page, sync_playwright

from diary.settings import Settings
from diary.web.app import create_app
from tests.web.garden import plant_garden

CHROMIUM = "/usr/bin/chromium"
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--no-first-run",
    "--disable-component-update",
    "--disable-sync",
    "--disable-quic",
    "--autoplay-policy=no-user-gesture-required",
]


class Served:
    """A diary in its folder, and the address of its pages."""

    def __init__(self, folder: Path, model: str = "tiny.en") -> None:
        self.folder = folder
        app = create_app(Settings(folder=folder, model=model))
        config = uvicorn.Config(app, host="127.0.0.1", port=0, log_level="warning")
        self._server = uvicorn.Server(config)
        self._thread = threading.Thread(target=self._server.run, daemon=True)
        self._thread.start()
        until = time.monotonic() + 60
        while not self._server.started:
            assert time.monotonic() < until, "the server did not begin"
            time.sleep(0.02)
        port = self._server.servers[0].sockets[0].getsockname()[1]
        self.url = f"http://127.0.0.1:{port}"

    def stop(self) -> None:
        self._server.should_exit = True
        self._thread.join(timeout=30)


@pytest.fixture(scope="session")
def planted(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The invented diary, made once; tests work on copies."""
    folder = tmp_path_factory.mktemp("garden")
    plant_garden(folder)
    return folder


@pytest.fixture
def served(planted: Path, tmp_path: Path) -> Iterator[Served]:
    """A copy of the invented diary, served. Its recordings stay where they were made."""
    shutil.copytree(planted / "diary", tmp_path / "diary")
    server = Served(tmp_path / "diary")
    yield server
    server.stop()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Debian's Chromium, without a window."""
    if not Path(CHROMIUM).is_file():
        pytest.skip(f"no {CHROMIUM}: apt install chromium")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield started
        started.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page of its own; an error in a script of ours fails the test."""
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    opened = context.new_page()
    opened.set_default_timeout(20_000)
    errors: list[str] = []
    opened.on("pageerror", lambda error: errors.append(str(error)))
    yield opened
    context.close()
    assert errors == []


def until(page: Page, expression: str, *, seconds: float = 20) -> None:
    """Wait until the expression is true; asked from outside, as the pages forbid `eval`."""
    end = time.monotonic() + seconds
    while not page.evaluate(expression):
        assert time.monotonic() < end, f"never came true: {expression}"
        page.wait_for_timeout(40)


def ready(page: Page) -> None:
    """Wait until the page hears keys and clicks."""
    until(page, "document.body.dataset.ready === 'yes'")
