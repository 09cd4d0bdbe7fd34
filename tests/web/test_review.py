"""The review list by keyboard alone, down to the empty list that says so."""

import pytest
from playwright.sync_api import Page, expect

from diary.records.review import review_list
from diary.records.store import open_store
from tests.web.conftest import Served, ready, until

pytestmark = pytest.mark.browser


def left(served: Served) -> int:
    store = open_store(served.folder)
    found = len(review_list(store))
    store.close()
    return found


def test_the_whole_list_is_answered_by_keyboard_alone(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/review")
    ready(page)
    first = page.locator(".question[aria-current]")
    expect(first).to_contain_text("Is this 23-09?")
    page.keyboard.press("ArrowDown")
    expect(page.locator(".question[aria-current]")).to_contain_text("Shown without a number")
    page.keyboard.press("ArrowUp")
    page.keyboard.press("1")
    expect(page.locator(".question", has_text="Is this 23-09?")).to_have_count(0)
    page.keyboard.press("g")
    page.keyboard.type("23-15")
    page.keyboard.press("Enter")
    expect(page.locator(".question", has_text="Shown without a number")).to_have_count(0)
    for _ in range(12):
        # after the last answer the page comes anew
        page.locator(".question[aria-current], .empty.done").first.wait_for()
        if page.locator(".empty.done").count():
            break
        ready(page)
        question = page.locator(".question[aria-current]")
        answered = question.get_attribute("data-question")
        page.keyboard.press("y")
        gone = page.locator(f".question[data-question='{answered}']")
        expect(gone).to_have_count(0)
    page.reload()
    expect(page.locator(".empty.done")).to_contain_text("Nothing to check")
    assert left(served) == 0


def test_each_question_brings_its_moment(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/review")
    ready(page)
    page.locator(".question", has_text="Perhaps double").click()
    expect(page.locator("#playing")).to_contain_text("Bench walk, early June")
    until(page, "document.querySelector('#screen').currentTime > 25")


def test_an_answer_is_undone(page: Page, served: Served) -> None:
    before = left(served)
    page.goto(f"{served.url}/review")
    ready(page)
    page.keyboard.press("q")
    expect(page.locator("#left")).to_have_text(str(before - 1))
    page.keyboard.press("u")
    expect(page.locator("#left")).to_have_text(str(before))
    assert left(served) == before
