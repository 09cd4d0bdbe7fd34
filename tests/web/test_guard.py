"""Who may ask: names, origins, the pass phrase; and what a path cannot reach."""

from pathlib import Path

import pytest
from starlette.testclient import TestClient

from diary.settings import Settings
from diary.web.app import create_app
from diary.web.guard import PassPhrase

HERE = {"Host": "127.0.0.1:8642"}
PHONE = ("192.168.7.20", 50000)


@pytest.fixture
def client(tmp_path: Path) -> TestClient:
    return TestClient(
        create_app(Settings(folder=tmp_path), inbox=False), base_url="http://127.0.0.1:8642"
    )


def shared(tmp_path: Path, phrase: PassPhrase) -> TestClient:
    app = create_app(Settings(folder=tmp_path), phrase=phrase, hosts=["192.168.7.5"], inbox=False)
    return TestClient(app, base_url="http://192.168.7.5:8642", client=PHONE)


def test_an_empty_diary_says_what_to_do_next(client: TestClient) -> None:
    answer = client.get("/")
    assert answer.status_code == 200
    assert "Choose recordings" in answer.text


@pytest.mark.parametrize("host", ["diary.example", "127.0.0.1.example", "192.168.7.5", ""])
def test_another_name_is_refused(client: TestClient, host: str) -> None:
    """DNS rebinding: a page of another name that was pointed at this machine."""
    assert client.get("/", headers={"Host": host}).status_code == 421


def test_a_change_asked_for_by_another_site_is_refused(client: TestClient) -> None:
    for headers in (
        {"Origin": "http://garden.example"},
        {"Origin": "null"},
        {"Origin": "http://127.0.0.1:9999"},
        {"Sec-Fetch-Site": "cross-site"},
    ):
        assert client.post("/undo", headers=headers).status_code == 403
    own = client.post("/undo", headers={"Origin": "http://127.0.0.1:8642"})
    assert own.json() == {"told": "Nothing to undo"}


def test_nothing_but_our_own_may_run(client: TestClient) -> None:
    policy = client.get("/").headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy
    assert "script-src 'self'" in policy
    assert client.get("/").headers["X-Content-Type-Options"] == "nosniff"


@pytest.mark.parametrize(
    "path",
    ["/static/", "/static/../app.py", "/static/%2e%2e/app.py", "/media/../diary.sqlite",
     "/media/..%2Fdiary.sqlite", "/still/..%2F..%2Fx/0/1.jpg", "/exports/..%2Fdiary.sqlite"],
)  # fmt: skip
def test_no_folder_is_listed_and_no_path_leads_out(client: TestClient, path: str) -> None:
    assert client.get(path).status_code == 404


def test_a_shared_diary_asks_for_the_phrase(tmp_path: Path) -> None:
    with shared(tmp_path, PassPhrase("quiet green bench")) as phone:
        assert phone.get("/works").status_code == 401
        asked = phone.get("/", headers={"Accept": "text/html"})
        assert asked.url.path == "/enter"
        assert phone.post("/enter", data={"phrase": "green bench"}).status_code == 403
        assert phone.get("/works").status_code == 401
        assert phone.post("/enter", data={"phrase": " Quiet green bench "}).url.path == "/"
        assert phone.get("/works").status_code == 200


def test_guessing_is_slow() -> None:
    phrase = PassPhrase("quiet green bench")
    for guess in range(PassPhrase.TRIES):
        assert phrase.admit(str(guess)) is None
    assert phrase.admit("quiet green bench") is None  # too many tries: wait a minute


def test_this_machine_needs_no_phrase(tmp_path: Path) -> None:
    app = create_app(Settings(folder=tmp_path), phrase=PassPhrase("quiet green bench"), inbox=False)
    client = TestClient(app, base_url="http://127.0.0.1:8642", client=("127.0.0.1", 1))
    assert client.get("/works").status_code == 200
