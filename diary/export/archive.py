"""The whole diary in one file, to keep or to carry elsewhere, and back again.

An archive is a ZIP file with the database, stills, the breeder's corrections and the register
as text files that need no program, and, if asked for, the recordings themselves. Its
`manifest.json` holds the SHA-256 of every file; `restore` writes nothing in place before all
of them are found right.
"""

import hashlib
import json
import os
import shutil
import tempfile
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import asdict, dataclass
from pathlib import Path, PurePosixPath
from typing import IO, Any

from diary import __version__
from diary.errors import NotFound, StoreError, UsageError
from diary.export.cells import ENCODING, to_csv
from diary.export.tables import tables
from diary.insight.overview import overview
from diary.records.journal import export_lines
from diary.records.record import RecordingId
from diary.records.recordings import locate, recordings
from diary.records.register_csv import export_csv
from diary.records.store import DATABASE_NAME, Store, now, open_store
from diary.records.upkeep import copy_database, move_recording, problems

FORMAT = 1
MANIFEST = "manifest.json"
MEDIA = "recordings"
_CHUNK = 1 << 20
_README = """This is a diary of seedlings, archived by the program "diary" ({version}) on {made_at}.

To bring it back:   diary restore THIS.zip FOLDER

Without the program: readable/ holds plants, observations, crosses, recordings and the register
as CSV (UTF-8), and every correction as one line of JSON. A text in CSV that a spreadsheet might
run as a formula has an apostrophe in front. diary.sqlite is an SQLite 3 database. manifest.json
gives the SHA-256 of each file here.
"""

OnFile = Callable[[str], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchivedFile:
    """One file of an archive: its name there, its length, its SHA-256 in hex."""

    name: str
    bytes: int
    sha256: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchivedRecording:
    """A recording as the archive knows it; `file` is its name there, None if not taken along."""

    id: str
    name: str
    path: str
    file: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Archive:
    """What is in an archive. `missing` names recordings that were asked for and not found."""

    path: Path
    made_at: str
    files: tuple[ArchivedFile, ...]
    recordings: tuple[ArchivedRecording, ...]
    missing: tuple[str, ...] = ()


def make_archive(
    store: Store, out: Path, *, media: bool = False, on_file: OnFile = lambda name: None
) -> Archive:
    """Write the diary to `out`; the file is whole when it is there. An older one is replaced."""
    if out.is_dir():
        raise UsageError(f"{out} is a folder: name a file, such as {out / 'diary.zip'}.")
    out.parent.mkdir(parents=True, exist_ok=True)
    partial = out.with_name(f"{out.name}.{os.getpid()}.partial")
    made_at = now()
    files: list[ArchivedFile] = []
    taken: list[ArchivedRecording] = []
    missing: list[str] = []
    try:
        with (
            tempfile.TemporaryDirectory() as scratch,
            zipfile.ZipFile(partial, "w", zipfile.ZIP_DEFLATED, allowZip64=True) as bundle,
        ):
            copy = Path(scratch) / DATABASE_NAME
            copy_database(store, copy)
            for name, source in ((DATABASE_NAME, copy), *_stills(store)):
                on_file(name)
                files.append(_put(bundle, name, source))
            for name, text in _readable(store, made_at):
                on_file(name)
                files.append(_put_text(bundle, name, text))
            for one in recordings(store, removed=True):
                file: str | None = None
                if media:
                    try:
                        source = locate(store, one.id)
                    except NotFound:
                        missing.append(f"{one.name} ({one.path})")
                    else:
                        file = f"{MEDIA}/{one.id[:8]}/{source.name}"
                        on_file(file)
                        files.append(_put(bundle, file, source))
                taken.append(
                    ArchivedRecording(id=one.id, name=one.name, path=str(one.path), file=file)
                )
            manifest = {
                "format": FORMAT,
                "program": __version__,
                "made_at": made_at,
                "files": [asdict(file) for file in files],
                "recordings": [asdict(one) for one in taken],
            }
            bundle.writestr(MANIFEST, json.dumps(manifest, ensure_ascii=False, indent=1))
        partial.replace(out)
    except OSError as error:
        raise StoreError(f"The archive {out} could not be written: {error.strerror}.") from error
    finally:
        partial.unlink(missing_ok=True)
    return Archive(
        path=out,
        made_at=made_at,
        files=tuple(files),
        recordings=tuple(taken),
        missing=tuple(missing),
    )


def _stills(store: Store) -> Iterator[tuple[str, Path]]:
    for path in sorted(store.stills.rglob("*")) if store.stills.is_dir() else ():
        if path.is_file() and not path.name.endswith(".partial"):
            yield f"stills/{path.relative_to(store.stills).as_posix()}", path


def _readable(store: Store, made_at: str) -> Iterator[tuple[str, str]]:
    yield "README.txt", _README.format(version=__version__, made_at=made_at)
    lines = "".join(line.rstrip("\n") + "\n" for line in export_lines(store))
    yield "readable/corrections.jsonl", lines
    for table in ("seedlings", "crosses", "names"):
        yield f"readable/register-{table}.csv", export_csv(store, table)
    for held in tables(overview(store)):
        yield f"readable/{held.name}.csv", to_csv(held)


def _put(bundle: zipfile.ZipFile, name: str, source: Path) -> ArchivedFile:
    digest, length = hashlib.sha256(), 0
    # films and stills do not get smaller
    info = zipfile.ZipInfo.from_file(source, name, strict_timestamps=False)
    packed = name.endswith((".sqlite", ".txt", ".csv"))
    info.compress_type = zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED
    with source.open("rb") as reading, bundle.open(info, "w", force_zip64=True) as writing:
        while chunk := reading.read(_CHUNK):
            digest.update(chunk)
            length += len(chunk)
            writing.write(chunk)
    return ArchivedFile(name=name, bytes=length, sha256=digest.hexdigest())


def _put_text(bundle: zipfile.ZipFile, name: str, text: str) -> ArchivedFile:
    raw = text.encode(ENCODING if name.endswith(".csv") else "utf-8")
    bundle.writestr(name, raw)
    return ArchivedFile(name=name, bytes=len(raw), sha256=hashlib.sha256(raw).hexdigest())


def read_manifest(path: Path) -> Archive:
    """What an archive says it holds. Raises StoreError if it is none, or of a later format."""
    try:
        with zipfile.ZipFile(path) as bundle:
            return _manifest(path, bundle)
    except (OSError, zipfile.BadZipFile) as error:
        raise StoreError(f"{path} is no archive of a diary, or is damaged ({error}).") from error


def _manifest(path: Path, bundle: zipfile.ZipFile) -> Archive:
    try:
        held: dict[str, Any] = json.loads(bundle.read(MANIFEST))
        if held["format"] > FORMAT:
            raise StoreError(
                f"{path} was written by a newer version of this program ({held['program']}). "
                "Install that version to restore it."
            )
        return Archive(
            path=path,
            made_at=held["made_at"],
            files=tuple(ArchivedFile(**file) for file in held["files"]),
            recordings=tuple(ArchivedRecording(**one) for one in held["recordings"]),
        )
    except (KeyError, TypeError, ValueError, zipfile.BadZipFile) as error:
        raise StoreError(f"{path} is no archive of a diary: its manifest is {error!r}.") from error


def restore(path: Path, folder: Path, *, on_file: OnFile = lambda name: None) -> Archive:
    """Bring an archive back as the diary in `folder`, which must be new or empty.

    Every file is checked against its SHA-256, and the database by SQLite, before the folder
    appears. Recordings in the archive come to lie in the folder; the others are looked for
    where they were. Raises StoreError, and leaves nothing behind.
    """
    folder = folder.expanduser().absolute()
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise StoreError(f"{folder} is not empty: restore into a new folder, then compare.")
    held = read_manifest(path)
    folder.parent.mkdir(parents=True, exist_ok=True)
    partial = Path(tempfile.mkdtemp(prefix=f".{folder.name}.", dir=folder.parent))
    try:
        with zipfile.ZipFile(path) as bundle:
            for file in held.files:
                on_file(file.name)
                _take(path, bundle, file, partial)
        _settle(held, partial, folder)
        if folder.is_dir():
            folder.rmdir()
        partial.replace(folder)
    except (OSError, zipfile.BadZipFile) as error:
        raise StoreError(f"{path} could not be restored: {error}. Nothing was written.") from error
    finally:
        shutil.rmtree(partial, ignore_errors=True)
    return held


def _take(path: Path, bundle: zipfile.ZipFile, file: ArchivedFile, into: Path) -> None:
    """Unpack one file and compare it with the manifest."""
    name = PurePosixPath(file.name)
    # a made-up archive must not write outside the folder
    if name.is_absolute() or ".." in name.parts or "\\" in file.name or ":" in file.name:
        raise StoreError(f"{path}: {file.name!r} would lie outside the diary. Nothing was written.")
    target = into.joinpath(*name.parts)
    target.parent.mkdir(parents=True, exist_ok=True)
    digest, length = hashlib.sha256(), 0
    try:
        packed: IO[bytes] = bundle.open(file.name)
    except KeyError as error:
        raise StoreError(f"{path}: {file.name} is missing. Nothing was written.") from error
    with packed, target.open("xb") as writing:
        while chunk := packed.read(_CHUNK):
            digest.update(chunk)
            length += len(chunk)
            if length > file.bytes:
                break
            writing.write(chunk)
    if length != file.bytes or digest.hexdigest() != file.sha256:
        raise StoreError(
            f"{path}: {file.name} is damaged (its checksum is not the one in the manifest). "
            "Nothing was written. Use another copy of the archive."
        )


def _settle(held: Archive, partial: Path, folder: Path) -> None:
    """Check the database, and point it at the recordings that came along."""
    store = open_store(partial, create=False)
    try:
        found = problems(store)
        if found:
            raise StoreError(f"{held.path}: {found[0]} Nothing was written.")
        for one in held.recordings:
            if one.file is not None:
                place = folder.joinpath(*PurePosixPath(one.file).parts)
                move_recording(store, RecordingId(one.id), place)
    finally:
        store.close()
