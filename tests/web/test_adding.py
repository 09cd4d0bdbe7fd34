"""A recording dropped on a page, seen through to its clips; uploads, inbox, background work."""

import time
from pathlib import Path

import httpx
import pytest
from playwright.sync_api import Page, expect

from diary.errors import UsageError
from diary.pipeline import Progress
from diary.settings import Settings
from diary.web.dropping import safe_name
from diary.web.inbox import Inbox
from diary.web.works import Outcome, Report, Work, Works
from tests.web.conftest import Served, ready

CAPTIONS = """WEBVTT

00:00:00.000 --> 00:00:06.000
Right, this is twenty-three oh four again, and it's a soft salmon pink.

00:00:06.000 --> 00:00:12.000
About five centimetres across. That one's a keeper.

00:00:12.000 --> 00:00:18.000
Next is twenty-three oh nine, which is a bright scarlet with a white throat.
"""
DROP = """([name, text]) => {
  const data = new DataTransfer();
  data.items.add(new File([text], name, {type: "text/vtt", lastModified: 1938000000000}));
  for (const kind of ["dragenter", "dragover", "drop"])
    document.body.dispatchEvent(
      new DragEvent(kind, {dataTransfer: data, bubbles: true, cancelable: true}));
}"""


@pytest.mark.browser
def test_a_dropped_recording_is_seen_through_to_its_page(page: Page, served: Served) -> None:
    page.goto(f"{served.url}/lists")  # any page takes a drop
    ready(page)
    page.evaluate(DROP, ["2031-08-01 walk.vtt", CAPTIONS])
    page.wait_for_url("**/recordings/*", timeout=60_000)
    expect(page.locator("h1")).to_contain_text("2031-08-01 walk")
    expect(page.locator("#cliplist")).to_contain_text("23-04")
    expect(page.locator("#cliplist")).to_contain_text("salmon")
    expect(page.locator("#transcript")).to_contain_text("soft salmon pink")
    assert (served.folder / "recordings" / "2031-08-01 walk.vtt").is_file()


@pytest.mark.browser
def test_markup_in_captions_and_file_name_is_shown_as_text(page: Page, served: Served) -> None:
    evil = CAPTIONS.replace("again", "<script>window.hurt = 1</script> <img src=x onerror=hurt()>")
    page.goto(f"{served.url}/add")
    ready(page)
    page.evaluate(DROP, ["<script>window.hurt=1<script>.vtt", evil])
    page.wait_for_url("**/recordings/*", timeout=60_000)
    expect(page.locator("#transcript")).to_contain_text("window.hurt")
    assert page.locator("#main script, #main img[onerror]").count() == 0
    page.goto(f"{served.url}/recordings")
    expect(page.locator(".rows")).to_contain_text("script")
    page.goto(f"{served.url}/find?q=salmon")
    assert page.evaluate("typeof window.hurt") == "undefined"


def begin(client: httpx.Client, name: str, size: int) -> dict[str, object]:
    told = {"name": name, "size": size, "modified": 1}
    answer = client.post("/uploads", json=told)
    answer.raise_for_status()
    found: dict[str, object] = answer.json()
    return found


def test_an_upload_that_was_cut_off_goes_on_where_it_was(served: Served) -> None:
    content = CAPTIONS.encode()
    with httpx.Client(base_url=served.url) as client:
        upload = begin(client, "a.vtt", len(content))["upload"]
        client.put(f"/uploads/{upload}?from=0", content=content[:50])
        again = begin(client, "a.vtt", len(content))
        assert again == {"upload": upload, "from": 50}
        # a piece that does not fit is refused, and told where to go on
        wrong = client.put(f"/uploads/{upload}?from=10", content=content[10:])
        assert wrong.status_code == 409
        assert wrong.json()["from"] == 50
        last = client.put(f"/uploads/{upload}?from=50", content=content[50:])
        assert last.json()["work"]["kind"] == "add"
    assert (served.folder / "recordings" / "a.vtt").read_bytes() == content


def test_more_than_was_announced_is_refused(served: Served) -> None:
    with httpx.Client(base_url=served.url) as client:
        upload = begin(client, "b.vtt", 10)["upload"]
        assert client.put(f"/uploads/{upload}?from=0", content=b"x" * 11).status_code == 400
    assert not (served.folder / "recordings" / "b.vtt").exists()


@pytest.mark.parametrize(
    ("name", "safe"),
    [
        ("../../diary.sqlite", "diary.sqlite"),
        ("..\\..\\walk.mp4", "walk.mp4"),
        ("/etc/passwd", "passwd"),
        (".hidden.mp4", "hidden.mp4"),
        ("a\x00b\n.mp4", "a_b_.mp4"),
        ("é" * 300 + ".mp4", "é" * 98 + ".mp4"),
    ],
)
def test_a_name_cannot_lead_out_of_the_folder(name: str, safe: str) -> None:
    assert safe_name(name) == safe


@pytest.mark.parametrize("name", ["", "..", "/", "a/.."])
def test_no_name_is_refused(name: str) -> None:
    with pytest.raises(UsageError, match="no name"):
        safe_name(name)


def test_an_upload_is_known_by_its_id_alone(served: Served) -> None:
    with httpx.Client(base_url=served.url) as client:
        for upload in ("..%2F..%2Fdiary", "0" * 32, "diary.sqlite"):
            answer = client.put(f"/uploads/{upload}?from=0", content=b"x")
            assert answer.status_code == 404


def test_the_inbox_takes_a_file_that_has_stopped_growing(tmp_path: Path) -> None:
    found: list[Path] = []
    inbox = Inbox(tmp_path, found.append)
    file = tmp_path / "walk.vtt"
    file.write_text("WEBVTT")
    inbox.look()
    file.write_text("WEBVTT\n\nmore")
    inbox.look()
    assert found == []
    inbox.look()
    inbox.look()
    assert found == [file]


def wait_for(works: Works, work: Work, state: str) -> Work:
    until = time.monotonic() + 20
    while (now := works.get(work.id)) is None or now.state != state:
        assert time.monotonic() < until, now
        time.sleep(0.01)
    return now


def test_work_is_stopped_at_its_next_step_and_taken_up_again(tmp_path: Path) -> None:
    works = Works(Settings(folder=tmp_path))
    done: list[int] = []

    def doing(settings: Settings, report: Report) -> Outcome:
        while len(done) < 5 or not done:
            report(Progress(stage="listening", name="walk", share=len(done) / 5))
            done.append(1)
            time.sleep(0.05)
        return Outcome(page="/recordings/x")

    work = works.start("add", "walk.mp4", doing)
    assert works.start("add", "walk.mp4", doing).id == work.id  # not twice at a time
    wait_for(works, work, "working")
    works.cancel(work.id)
    stopped = wait_for(works, work, "stopped")
    assert stopped.progress is not None
    again = works.resume(work.id)
    assert again is not None
    assert wait_for(works, again, "done").page == "/recordings/x"
    works.stop()


def test_work_that_fails_says_why_and_the_next_goes_on(tmp_path: Path) -> None:
    works = Works(Settings(folder=tmp_path))

    def failing(settings: Settings, report: Report) -> Outcome:
        raise UsageError("the card is out")

    first = works.start("add", "a.mp4", failing)
    second = works.start("add", "b.mp4", lambda settings, report: Outcome())
    assert wait_for(works, first, "failed").message == "the card is out"
    wait_for(works, second, "done")
    works.stop()
