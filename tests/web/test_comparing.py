"""Sisters side by side: chosen on the bench, played in step, each clip from its own start."""

import pytest
from playwright.sync_api import Page, expect

from tests.web.conftest import Served, ready, until

pytestmark = pytest.mark.browser
FILMS = "[...document.querySelectorAll('video.step')]"


def test_two_chosen_on_the_bench_play_in_step(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/")
    ready(page)
    for number in ("23-07", "23-11"):
        page.get_by_role("checkbox", name=number).check()
    page.get_by_role("button", name="Compare side by side").click()
    ready(page)
    until(page, f"{FILMS}.length === 2 && {FILMS}.every(film => film.readyState >= 2)")
    page.get_by_role("button", name="Play in step").click()
    until(page, f"{FILMS}.every(film => !film.paused)")
    wanted = "film => film.currentTime - Number(film.dataset.start) / 1000"
    until(page, f"{FILMS}.map({wanted}).every(since => since > 0.3)")
    first, second = page.evaluate(f"{FILMS}.map({wanted})")
    assert first == pytest.approx(second, abs=0.3)
    assert page.evaluate(f"{FILMS}.map(film => film.muted)") == [False, True]
    page.keyboard.press("Space")
    page.get_by_role("button", name="Play in step").blur()
    until(page, f"{FILMS}.every(film => film.paused)")


def test_what_is_known_of_both_stands_in_one_row(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/compare?p=23-04&p=23-07")
    throat = page.get_by_role("row").filter(has=page.get_by_role("rowheader", name="throat"))
    expect(throat.get_by_role("cell").nth(0)).to_contain_text("not said")
    expect(throat.get_by_role("cell").nth(1)).to_contain_text("cream")


def test_with_no_plant_chosen_it_says_how_to_choose(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/compare")
    expect(page.get_by_role("main")).to_contain_text("Tick “compare” on two to four seedlings")
