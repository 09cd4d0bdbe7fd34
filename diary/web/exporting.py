"""Exports to download: tables, the register, corrections, captions, chapters, open formats."""

import io
import json
import zipfile
from collections.abc import Callable
from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from diary.errors import NotFound
from diary.export.annotations import annotation_collection
from diary.export.brapi import brapi_documents
from diary.export.captions import cues, webvtt
from diary.export.cells import to_csv, to_xlsx
from diary.export.chapters import chapters_webvtt
from diary.export.tables import tables
from diary.records.journal import export_lines
from diary.records.register_csv import export_csv
from diary.records.store import Store
from diary.web.desk import Desk, desk_of

Make = Callable[[Desk, Store], str | bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class Export:
    """One file to download."""

    file: str
    kind: str
    heading: str
    words: str  # what it is good for
    make: Make


def _table(name: str) -> Make:
    def make(desk: Desk, store: Store) -> str:
        return next(to_csv(one) for one in tables(desk.overview(store)) if one.name == name)

    return make


def _register(table: str) -> Make:
    return lambda desk, store: export_csv(store, table)


def _workbook(desk: Desk, store: Store) -> bytes:
    return to_xlsx(tables(desk.overview(store)))


def _corrections(desk: Desk, store: Store) -> str:
    return "".join(f"{line}\n" for line in export_lines(store))


def _brapi(desk: Desk, store: Store) -> bytes:
    documents = brapi_documents(desk.overview(store))
    return _zip({f"{name}.json": _json(found) for name, found in documents.items()})


def _annotations(desk: Desk, store: Store) -> str:
    return _json(annotation_collection(desk.overview(store)))


def _captions(desk: Desk, store: Store) -> bytes:
    files = {}
    for walk in desk.overview(store).walks:
        one = walk.recording
        if one.kind in ("video", "audio"):
            files[f"{one.name}.vtt"] = webvtt(cues(walk.transcript))
            files[f"{one.name}.chapters.vtt"] = chapters_webvtt(walk.clips, one.duration_ms)
    return _zip(files)


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, indent=2, default=str)


def _zip(files: dict[str, str]) -> bytes:
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in files.items():
            archive.writestr(name, text)
    return made.getvalue()


_CSV, _JSON = "text/csv; charset=utf-8", "application/json"
_ZIP = "application/zip"
_XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
EXPORTS: dict[str, Export] = {
    one.file: one
    for one in (
        Export(file="diary.xlsx", kind=_XLSX, heading="Everything as a workbook", make=_workbook,
               words="Plants, observations, crosses and recordings, a sheet each."),
        Export(file="plants.csv", kind=_CSV, heading="Plants", make=_table("plants"),
               words="One row a plant, as it is believed to be now."),
        Export(file="observations.csv", kind=_CSV, heading="Observations",
               make=_table("observations"),
               words="One row for each thing said, with its recording, second and words."),
        Export(file="register.csv", kind=_CSV, heading="Register", make=_register("seedlings"),
               words="The seedlings on record; it can be imported again."),
        Export(file="crosses.csv", kind=_CSV, heading="Crosses", make=_register("crosses"),
               words="The crosses on record; it can be imported again."),
        Export(file="names.csv", kind=_CSV, heading="Named plants", make=_register("names"),
               words="Names, other names and mishearings; it can be imported again."),
        Export(file="captions.zip", kind=_ZIP, heading="Captions and chapters", make=_captions,
               words="WebVTT for every recording: what was said, and a chapter for each plant."),
        Export(file="corrections.jsonl", kind="application/x-ndjson", heading="Corrections",
               make=_corrections,
               words="Everything you put right, one a line: worth a backup of its own."),
        Export(file="brapi.zip", kind=_ZIP, heading="BrAPI", make=_brapi,
               words="For breeding databases that read BrAPI 2.1, a file for each call."),
        Export(file="annotations.json", kind=_JSON, heading="Web Annotations",
               make=_annotations,
               words="Every clip and observation, pointing at its stretch of the recording."),
    )
}  # fmt: skip


def page(request: Request) -> Response:
    """What can be taken out."""
    return desk_of(request).page(request, "exports.html", exports=tuple(EXPORTS.values()))


def one(request: Request) -> Response:
    """One export, made now."""
    name = request.path_params["name"]
    if name not in EXPORTS:
        raise NotFound(f"There is no export {name!r}.")
    export = EXPORTS[name]
    desk = desk_of(request)
    with desk.store() as store:
        content = export.make(desk, store)
    headers = {"Content-Disposition": f'attachment; filename="{export.file}"'}
    return Response(content, media_type=export.kind, headers=headers)
