"""Putting right in a real browser: each change is there after a reload and after reading again."""

import pytest
from playwright.sync_api import Page, expect

from diary.records.journal import journal
from diary.records.readings import load_reading
from diary.records.recordings import recordings
from diary.records.store import open_store
from tests.records.making import reread
from tests.web.conftest import Served, ready, until

pytestmark = pytest.mark.browser


def open_june(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/recordings")
    page.get_by_role("link", name="Bench walk, early June").click()
    expect(page.locator("body")).to_have_attribute("data-ready", "yes")


def kinds(served: Served) -> list[str]:
    store = open_store(served.folder)
    found = [type(entry.correction.change).__name__ for entry in journal(store)]
    store.close()
    return found


def test_a_corrected_colour_outlives_reload_and_reading_again(page: Page, served: Served) -> None:
    open_june(page, served)
    page.locator("#c0 .obs", has_text="salmon").get_by_role("button").first.click()
    page.keyboard.press("v")
    dialog = page.locator("#dlg-observation")
    dialog.get_by_label("Value").fill("coral")
    dialog.get_by_role("button", name="Keep").click()
    expect(page.locator("#c0 .observations")).to_contain_text("coral")
    expect(page.locator("#c0 .observations")).to_contain_text("heard: deep salmon")
    page.reload()
    expect(page.locator("#c0 .observations")).to_contain_text("coral")
    store = open_store(served.folder)
    june = next(one for one in recordings(store) if one.title == "Bench walk, early June")
    reread(store, june.id, load_reading(store, june.id))
    store.close()
    page.reload()
    expect(page.locator("#c0 .observations")).to_contain_text("coral")
    page.goto(f"{served.url}/plants/23-04")
    expect(page.locator("#cliplist")).to_contain_text("coral")


def test_a_length_may_be_given_in_another_unit(page: Page, served: Served) -> None:
    open_june(page, served)
    page.locator("#c0 .obs", has_text="45 mm").get_by_role("button").first.click()
    page.locator(".toolrow").get_by_role("button", name="Change").click()
    dialog = page.locator("#dlg-observation")
    dialog.get_by_label("Value").fill("2")
    dialog.get_by_label("Unit").select_option("in")
    dialog.get_by_role("button", name="Keep").click()
    # 2 inches of 25.4 mm (international yard and pound agreement, 1959)
    expect(page.locator("#c0 .observations")).to_contain_text("50.8 mm")


def test_part_and_trait_can_be_changed(page: Page, served: Served) -> None:
    open_june(page, served)
    page.locator("#c1 .obs", has_text="cream").get_by_role("button").first.click()
    page.keyboard.press("v")
    dialog = page.locator("#dlg-observation")
    dialog.get_by_label("Part").select_option("edge")
    dialog.get_by_role("button", name="Keep").click()
    expect(page.locator("#c1 .obs", has_text="cream")).to_contain_text("edge")


def test_rejecting_and_confirming_by_key(page: Page, served: Served) -> None:
    open_june(page, served)
    page.locator("#c0 .obs", has_text="compact").get_by_role("button").first.click()
    page.keyboard.press("x")
    expect(page.locator("#c0")).not_to_contain_text("compact")
    page.locator("#c1 .obs.proposed").get_by_role("button").first.click()
    page.keyboard.press("y")
    expect(page.locator("#c1 .obs.proposed")).to_have_count(0)
    expect(page.locator("#c1 .obs", has_text="double")).to_have_count(1)


def test_a_clip_is_given_to_another_seedling_and_undone(page: Page, served: Served) -> None:
    open_june(page, served)
    page.locator("#c1 .when").click()
    page.keyboard.press("g")
    dialog = page.locator("#dlg-plant")
    dialog.get_by_label("Number or name").fill("23-09")
    dialog.get_by_role("button", name="Keep").click()
    expect(page.locator("#c1 h3")).to_contain_text("23-09")
    page.keyboard.press("u")
    expect(page.locator("#c1 h3")).to_contain_text("23-07")
    page.keyboard.press("i")
    expect(page.locator("#c1 h3")).to_contain_text("23-09")
    page.goto(f"{served.url}/plants/23-09")
    expect(page.locator("#cliplist > .clip")).to_have_count(2)


def test_an_unnamed_plant_gets_its_number_and_all_clips_follow(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/?kind=unnamed")
    page.locator(".card a.face").click()
    expect(page.locator("body")).to_have_attribute("data-ready", "yes")
    page.get_by_role("button", name="Give it its number").click()
    dialog = page.locator("#dlg-plant")
    dialog.get_by_label("Number or name").fill("23-15")
    dialog.get_by_role("button", name="Keep").click()
    page.wait_for_url("**/plants/23-15")
    expect(page.locator("h1")).to_contain_text("23-15")
    expect(page.locator("#cliplist > .clip")).to_have_count(1)
    assert kinds(served) == ["NamePlant"]


def test_two_numbers_for_one_plant_become_one_and_it_undoes(page: Page, served: Served) -> None:
    open_june(page, served)
    page.locator("#c1 .when").click()
    page.keyboard.press("m")
    dialog = page.locator("#dlg-plant")
    dialog.get_by_label("Number or name").fill("23-11")
    dialog.get_by_role("button", name="Keep").click()
    expect(page.locator("#c1 h3")).to_contain_text("23-11")
    page.goto(f"{served.url}/plants/23-11")
    expect(page.locator("#cliplist > .clip")).to_have_count(2)
    assert kinds(served) == ["MergePlants"]
    ready(page)
    page.keyboard.press("u")
    expect(page.locator("#cliplist > .clip")).to_have_count(1)


def test_clips_are_split_joined_moved_made_and_removed(page: Page, served: Served) -> None:
    open_june(page, served)
    clips = page.locator("#cliplist > .clip")
    page.locator("#c0 .when").click()
    page.evaluate("document.querySelector('#screen').currentTime = 11")
    until(page, "Math.abs(document.querySelector('#screen').currentTime - 11) < 0.1")
    page.keyboard.press("s")
    page.locator("#dlg-plant").get_by_label("Number or name").fill("23-11")
    page.locator("#dlg-plant").get_by_role("button", name="Keep").click()
    expect(clips).to_have_count(4)
    expect(page.locator("#c1 h3")).to_contain_text("23-11")
    page.locator("#c0 .when").click()
    page.keyboard.press("j")
    expect(clips).to_have_count(3)
    page.locator("#c2 .when").click()
    page.keyboard.press("d")
    expect(clips).to_have_count(2)
    page.evaluate("document.querySelector('#screen').currentTime = 36")
    page.keyboard.press("c")
    page.locator("#dlg-plant").get_by_label("Number or name").fill("Quill Harbour")
    page.locator("#dlg-plant").get_by_role("button", name="Keep").click()
    expect(clips).to_have_count(3)
    page.locator("#c1 .when").click()
    page.evaluate("document.querySelector('#screen').currentTime = 25")
    until(page, "Math.abs(document.querySelector('#screen').currentTime - 25) < 0.1")
    page.keyboard.press("[")
    expect(page.locator("#c1 .when")).to_contain_text("0:25")
    assert kinds(served) == ["Split", "Join", "RemoveClip", "AddClip", "SetSpan"]


def test_words_marked_become_an_observation(page: Page, served: Served) -> None:
    open_june(page, served)
    page.locator("#transcript").focus()
    for _ in range(12):
        page.keyboard.press("ArrowRight")
    page.keyboard.press("Shift+ArrowRight")
    page.keyboard.press("a")
    dialog = page.locator("#dlg-observation")
    dialog.get_by_label("Trait").select_option("habit")
    dialog.get_by_label("Value").fill("bushy")
    dialog.get_by_role("button", name="Keep").click()
    expect(page.locator("#c0 .observations")).to_contain_text("bushy")


def test_a_mishearing_is_taught(page: Page, served: Served) -> None:
    open_june(page, served)
    page.keyboard.press("h")
    dialog = page.locator("#dlg-mishearing")
    dialog.get_by_label("It said").fill("quill harper")
    dialog.get_by_label("I meant").fill("Quill Harbour")
    dialog.get_by_role("button", name="Remember").click()
    expect(page.locator("#toast")).to_contain_text("Remembered")
    page.goto(f"{served.url}/names")
    expect(page.get_by_role("row", name="Quill Harbour")).to_contain_text("quill harper")


def test_what_two_tabs_put_right_is_all_kept(page: Page, served: Served) -> None:
    open_june(page, served)
    other = page.context.new_page()
    open_june(other, served)
    for tab, value in ((page, "compact"), (other, "salmon")):
        tab.locator("#c0 .obs", has_text=value).get_by_role("button").first.click()
        tab.keyboard.press("x")
        expect(tab.locator("#c0 .observations")).not_to_contain_text(value)
    page.reload()
    expect(page.locator("#c0 .obs")).to_have_count(3)
    assert kinds(served) == ["Reject", "Reject"]
