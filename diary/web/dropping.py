"""Files dropped on a page: streamed to disk in pieces that can be taken up again, then added."""

import contextlib
import hashlib
import json
import os
import re
import shutil
import threading
from collections.abc import AsyncIterator
from pathlib import Path

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from diary.errors import NotFound, UsageError
from diary.web.adding import start_adding
from diary.web.desk import as_json, desk_of, json_of

UPLOADS, RECORDINGS = "uploads", "recordings"  # folders inside the diary's own
LEFT_FREE = 200_000_000  # bytes that stay free on the disk, for the diary itself
_busy: set[str] = set()
_busy_lock = threading.Lock()


def begin(request: Request) -> Response:
    """Say what is coming: {"name", "size", "modified"}. Answers where to go on from.

    The same file gives the same id, so that what was cut off is found again.
    """
    body = json_of(request)
    name, size = safe_name(str(body.get("name", ""))), body.get("size")
    if not isinstance(size, int) or size <= 0:
        raise UsageError(f"{name}: the file is empty.")
    folder = desk_of(request).settings.folder / UPLOADS
    folder.mkdir(parents=True, exist_ok=True)
    told = f"{name}|{size}|{body.get('modified')}"
    upload = hashlib.sha256(told.encode()).hexdigest()[:32]
    part = folder / f"{upload}.part"
    there = part.stat().st_size if part.is_file() else 0
    if shutil.disk_usage(folder).free - LEFT_FREE < size - there:
        raise UsageError(f"{name}: the disk has no room for it. Free some, and drop it again.")
    (folder / f"{upload}.json").write_text(json.dumps({"name": name, "size": size}))
    part.touch()
    return JSONResponse({"upload": upload, "from": there})


async def receive(request: Request) -> Response:
    """Take the bytes from offset `from` on; when all are there, add the recording."""
    desk = desk_of(request)
    upload = request.path_params["upload"]
    folder = desk.settings.folder / UPLOADS
    told, part = folder / f"{upload}.json", folder / f"{upload}.part"
    if not (re.fullmatch(r"[0-9a-f]{32}", upload) and told.is_file()):
        raise NotFound("Nothing was announced under that name: drop the file again.")
    about = json.loads(told.read_text())
    with _busy_lock:
        if upload in _busy:
            return JSONResponse({"from": part.stat().st_size, "busy": True}, status_code=409)
        _busy.add(upload)
    try:
        there = part.stat().st_size
        if request.query_params.get("from") != str(there):
            return JSONResponse({"from": there}, status_code=409)
        there = await _write(part, request.stream(), there, about["size"])
        if there < about["size"]:
            return JSONResponse({"from": there})
        path = await run_in_threadpool(
            _settle, part, desk.settings.folder / RECORDINGS, about["name"]
        )
        told.unlink()
    finally:
        with _busy_lock:
            _busy.discard(upload)
    return as_json({"from": there, "work": start_adding(desk, path)})


async def _write(part: Path, stream: AsyncIterator[bytes], there: int, size: int) -> int:
    """Append what comes, never more than was announced; returns the length now."""
    from starlette.requests import ClientDisconnect

    with part.open("ab") as file, contextlib.suppress(ClientDisconnect):
        async for chunk in stream:
            if there + len(chunk) > size:
                raise UsageError("More came than was announced: drop the file again.")
            await run_in_threadpool(file.write, chunk)
            there += len(chunk)
    return there


def _settle(part: Path, folder: Path, name: str) -> Path:
    """Give the whole file its own name, a free one, on disk for good."""
    folder.mkdir(parents=True, exist_ok=True)
    with part.open("rb") as file:
        os.fsync(file.fileno())
    stem, suffix = Path(name).stem, Path(name).suffix
    path, count = folder / name, 1
    while path.exists():
        count += 1
        path = folder / f"{stem}-{count}{suffix}"
    return part.rename(path)


def forget(request: Request) -> Response:
    """Throw away what has come of an upload."""
    upload = request.path_params["upload"]
    if re.fullmatch(r"[0-9a-f]{32}", upload):
        folder = desk_of(request).settings.folder / UPLOADS
        (folder / f"{upload}.json").unlink(missing_ok=True)
        (folder / f"{upload}.part").unlink(missing_ok=True)
    return JSONResponse({})


def safe_name(name: str) -> str:
    """The last part of a file name, with nothing that leads out of a folder or hides it."""
    last = re.split(r"[\\/]", name)[-1]
    last = re.sub(r"[\x00-\x1f\x7f:*?\"<>|]", "_", last).strip().lstrip(".")
    if not last:
        raise UsageError("The file has no name.")
    stem, suffix = Path(last).stem, Path(last).suffix
    while len(f"{stem}{suffix}".encode()) > 200:  # file systems take 255 bytes
        stem = stem[:-1]
    return f"{stem}{suffix[:20]}"
