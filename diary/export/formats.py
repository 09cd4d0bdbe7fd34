"""Every format the diary can be exported in, by its name: one call for commands and pages."""

import json
import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from diary.errors import StoreError, UsageError
from diary.export.annotations import annotation_collection
from diary.export.brapi import brapi_documents
from diary.export.captions import cues, subrip, webvtt
from diary.export.cells import ENCODING, to_csv, to_xlsx
from diary.export.chapters import chapter_lines, chapters_webvtt
from diary.export.tables import TABLE_NAMES, tables
from diary.insight.overview import Overview, overview
from diary.records.recordings import Recording, clips, recording, transcript
from diary.records.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class ExportedFile:
    """One file of an export: its name, its media type, and its content."""

    name: str
    media_type: str
    content: bytes


# of one recording: name, what its file is called, media type, what it is
RECORDING_FORMATS = {
    "webvtt": ("vtt", "text/vtt", "captions, WebVTT"),
    "srt": ("srt", "application/x-subrip", "captions, SubRip"),
    "chapters": ("chapters.vtt", "text/vtt", "plants as chapters, WebVTT"),
    "chapter-lines": ("chapters.txt", "text/plain", "plants as lines for a video's description"),
}
# of the whole diary
DIARY_FORMATS = {
    "csv": "one table, CSV",
    "xlsx": "all tables, a spreadsheet",
    "annotations": "W3C Web Annotations with media fragments, JSON-LD",
    "brapi": "BrAPI 2.1: germplasm, crosses, pedigree, variables, observations, JSON",
}
FORMATS = (*DIARY_FORMATS, *RECORDING_FORMATS)

_XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
_JSON_LD = 'application/ld+json;profile="http://www.w3.org/ns/anno.jsonld"'


def export(
    store: Store, name: str, *, which: str | None = None, table: str = "plants"
) -> tuple[ExportedFile, ...]:
    """The files of one format. `which` names the recording, where the format is of one.

    Raises UsageError for an unknown format or table, NotFound for an unknown recording.
    """
    if name in RECORDING_FORMATS:
        if which is None:
            raise UsageError(f"Name the recording: diary export {name} RECORDING")
        return (_of_recording(store, name, recording(store, which)),)
    if name not in DIARY_FORMATS:
        raise UsageError(f"There is no format {name!r}. There are: {', '.join(FORMATS)}.")
    return _WHOLE[name](overview(store), table)


def _of_recording(store: Store, name: str, one: Recording) -> ExportedFile:
    if one.kind == "note":
        raise UsageError(f"{one.name} is a typed note: it has no times to make {name} of.")
    words, found = transcript(store, one.id), clips(store, one.id)
    make: dict[str, Callable[[], str]] = {
        "webvtt": lambda: webvtt(cues(words)),
        "srt": lambda: subrip(cues(words)),
        "chapters": lambda: chapters_webvtt(found, one.duration_ms),
        "chapter-lines": lambda: chapter_lines(found, one.duration_ms),
    }
    suffix, media_type, _ = RECORDING_FORMATS[name]
    return ExportedFile(
        name=f"{one.name}.{suffix}", media_type=media_type, content=make[name]().encode("utf-8")
    )


def _csv(look: Overview, table: str) -> tuple[ExportedFile, ...]:
    if table not in TABLE_NAMES:
        raise UsageError(f"There is no table {table!r}. There are: {', '.join(TABLE_NAMES)}.")
    chosen = next(one for one in tables(look) if one.name == table)
    content = to_csv(chosen).encode(ENCODING)
    return (ExportedFile(name=f"{table}.csv", media_type="text/csv", content=content),)


def _xlsx(look: Overview, table: str) -> tuple[ExportedFile, ...]:
    return (ExportedFile(name="diary.xlsx", media_type=_XLSX, content=to_xlsx(tables(look))),)


def _annotations(look: Overview, table: str) -> tuple[ExportedFile, ...]:
    content = _json(annotation_collection(look))
    return (ExportedFile(name="annotations.jsonld", media_type=_JSON_LD, content=content),)


def _brapi(look: Overview, table: str) -> tuple[ExportedFile, ...]:
    return tuple(
        ExportedFile(name=f"{name}.json", media_type="application/json", content=_json(document))
        for name, document in brapi_documents(look).items()
    )


def _json(document: object) -> bytes:
    return json.dumps(document, ensure_ascii=False, indent=2).encode("utf-8") + b"\n"


_WHOLE: dict[str, Callable[[Overview, str], tuple[ExportedFile, ...]]] = {
    "csv": _csv,
    "xlsx": _xlsx,
    "annotations": _annotations,
    "brapi": _brapi,
}


def write_files(files: tuple[ExportedFile, ...], out: Path) -> tuple[Path, ...]:
    """Write an export: one file as `out` (or into it, if it is a folder), several into `out`.

    Each file is whole when it is there. Raises StoreError.
    """
    single = len(files) == 1 and not out.is_dir()
    written = []
    try:
        for file in files:
            path = out if single else out / file.name
            path.parent.mkdir(parents=True, exist_ok=True)
            partial = path.with_name(f"{path.name}.{os.getpid()}.partial")
            try:
                partial.write_bytes(file.content)
                partial.replace(path)
            finally:
                partial.unlink(missing_ok=True)
            written.append(path)
    except OSError as error:
        raise StoreError(f"{out} could not be written: {error.strerror}.") from error
    return tuple(written)
