"""From a plant to its clips in a real browser: the player is where the clip begins."""

import httpx
import pytest
from playwright.sync_api import Page, expect

from tests.web.conftest import Served, ready, until

pytestmark = pytest.mark.browser
NOW = "document.querySelector('#screen').currentTime"


def test_second_clip_of_a_seedling_plays_from_its_start(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/plants/23-07")
    page.goto(f"{served.url}/")
    page.get_by_role("link", name="23-04").click()
    ready(page)
    clips = page.locator("#cliplist > .clip")
    expect(clips).to_have_count(2)
    clips.nth(1).get_by_role("button", name="Play the clip").click()
    until(page, f"{NOW} > 0 && !document.querySelector('#screen').paused")
    assert page.evaluate(NOW) == pytest.approx(0.0, abs=0.5)
    # one that does not begin at nought
    page.goto(f"{served.url}/plants/23-11")
    ready(page)
    page.locator("#cliplist > .clip").first.get_by_role("button", name="Play the clip").click()
    until(page, f"{NOW} >= 12")
    assert page.evaluate(NOW) == pytest.approx(12.5, abs=0.5)


def test_the_film_is_loaded_before_a_clip_is_asked_for(page: Page, served: Served) -> None:
    """So that opening a clip needs no more than a seek in a file that is there."""
    page.goto(f"{served.url}/plants/23-07")
    until(page, "document.querySelector('#screen').readyState >= 2")
    assert page.evaluate(NOW) == pytest.approx(21.5, abs=0.1)


def test_play_all_goes_from_one_recording_to_the_next(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/plants/23-04")
    ready(page)
    page.get_by_role("button", name="Play all 2 clips").click()
    until(page, f"{NOW} > 0.2")
    first = page.evaluate("document.querySelector('#screen').src")
    page.evaluate("document.querySelector('#screen').currentTime = 21.6")  # the clip ends at 21.5
    until(page, f"document.querySelector('#screen').src !== '{first}'")
    until(page, f"{NOW} > 0.2")
    expect(page.locator("#playing")).to_contain_text("Bench walk, July")


def test_a_click_on_a_word_jumps_there_and_the_words_follow(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/plants/23-04")
    page.get_by_role("link", name="Bench walk, early June").first.click()
    ready(page)
    page.locator(".w", has_text="compact").first.click()
    start = float(page.locator(".w", has_text="compact").first.get_attribute("data-s") or 0) / 1000
    until(page, f"{NOW} >= {start}")
    assert page.evaluate(NOW) == pytest.approx(start, abs=0.5)
    expect(page.locator(".w.now")).to_have_count(1)
    # what was understood is marked in its words, and the click chose it
    expect(page.locator(".obs[aria-current=true]")).to_contain_text("compact")


def test_a_memo_shows_its_sound_and_a_click_there_jumps(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/recordings")
    page.get_by_role("link", name="Memo by the door").click()
    ready(page)
    wave = page.locator("#wave")
    expect(wave).to_be_visible()
    inked = (
        "(wave => wave.width > 0 && wave.getContext('2d')"
        ".getImageData(0, 0, wave.width, wave.height).data.some(value => value > 0))"
        "(document.querySelector('#wave'))"
    )
    until(page, inked)
    until(page, "document.querySelector('#screen').readyState >= 1")
    wide = wave.bounding_box()
    assert wide is not None
    wave.click(position={"x": wide["width"] / 2, "y": wide["height"] / 2})
    until(page, f"{NOW} > 1")
    assert page.evaluate(NOW) == pytest.approx(6.0, abs=0.5)  # the memo lasts 12 s


def test_a_band_of_the_time_line_plays_its_clip(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/recordings")
    page.get_by_role("link", name="Bench walk, early June").click()
    ready(page)
    page.locator(".band", has_text="23-07").click()
    start = page.locator("#c1").evaluate("clip => JSON.parse(clip.dataset.clip).start_ms") / 1000
    until(page, f"{NOW} >= {start}")
    assert page.evaluate(NOW) == pytest.approx(start, abs=0.5)
    expect(page.locator("#c1")).to_have_attribute("aria-current", "true")


def test_media_answers_range_requests(served: Served) -> None:
    """RFC 9110, 14: a part of the file, 206 and Content-Range; 416 beyond its end."""
    from diary.records.recordings import recordings
    from diary.records.store import open_store

    store = open_store(served.folder)
    film = next(one for one in recordings(store) if one.kind == "video")
    store.close()
    whole = film.path.read_bytes()
    with httpx.Client(base_url=served.url) as client:
        answer = client.get(f"/media/{film.id}", headers={"Range": "bytes=100-199"})
        assert answer.status_code == 206
        assert answer.headers["Content-Range"] == f"bytes 100-199/{len(whole)}"
        assert answer.content == whole[100:200]
        beyond = client.get(f"/media/{film.id}", headers={"Range": f"bytes={len(whole)}-"})
        assert beyond.status_code == 416


def test_film_that_browsers_do_not_play_gets_a_copy(page: Page, served: Served) -> None:
    """MPEG-4 part 2 in Matroska plays in no browser."""
    from diary.media.probe import probe
    from diary.records.record import RecordingId
    from diary.records.recordings import content_hash, enter_recording
    from diary.records.store import open_store
    from tests.records.making import clip, seedling, talk
    from tests.web.film import film
    from tests.web.garden import JUNE, MAROON, SALMON, read

    path = film(served.folder.parent / "old camera.mkv", [(SALMON, MAROON, 4)], codec="mpeg4")
    store = open_store(served.folder)
    recording = enter_recording(
        store, path, recording_id=RecordingId(content_hash(path)), kind="video",
        duration_ms=probe(path).duration_ms, recorded=JUNE, recorded_from="given",
    )  # fmt: skip
    read(store, recording, talk("Number twenty three oh nine."), clip(seedling("23-09"), 0, 4000))
    store.close()
    page.goto(f"{served.url}/recordings/{recording.id}")
    ready(page)
    page.get_by_role("button", name="Play the clip of 23-09").click()
    until(page, "document.querySelector('#screen').videoWidth > 0", seconds=60)
    assert (served.folder / "previews" / f"{recording.id}.mp4").is_file()
